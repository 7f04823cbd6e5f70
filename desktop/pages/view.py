"""What the widget of a page tells the window: its places for the keys, and how it shows the job."""

from PySide6.QtWidgets import QWidget

from desktop.canvas.face_view import FaceView
from desktop.state.shown import Page, Shown
from shared.findings import Finding


class PageView(QWidget):
    """The widget of one page. A page overrides what it has more of than an empty page, which only takes the keys.

    `page` names it and says how the job is shown on it. `face` is the face on its canvas, for a page that wants one.
    `beside` is the pane beside the first place; None if there is no such pane.
    """

    beside: QWidget | None = None

    def __init__(self, page: Page, face: FaceView | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.page, self.face = page, face
        self._last: Shown | None = None

    @property
    def first_places(self) -> tuple[QWidget, ...]:
        """The widget that gets the keys when the page is opened, then others from which F6 goes on in the same way."""
        return (self.face.canvas if self.face else self,)

    def focus_beside(self) -> None:
        """Give the keys to the pane beside."""

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show what differs from `old`, which this page showed last; None if it has shown nothing of this job."""

    def leave(self) -> None:
        """Drop what was only begun, because another page is opened."""

    def tell(self, words: str) -> bool:
        """Say what was refused where the person typed it. False if the page has no place for that."""
        return False

    def open_section_of(self, finding: Finding) -> None:
        """Open the section that says what to do about a finding."""

    def show_present(self, new: Shown) -> None:
        """Show what is shown now, the face first. Call this for the open page only."""
        old, self._last = self._last, new
        self.show_face(new)
        self.follow(old, new)

    def show_face(self, new: Shown) -> None:
        """Show the face with its photo, if the page has a canvas."""
        if self.face is not None:
            self.face.follow(new)

    def forget(self) -> None:
        """Forget what was shown, so that everything is shown anew next time."""
        self._last = None
