"""One page of the window: the widget of a page says all that the window must know of it."""

from PySide6.QtWidgets import QWidget

from desktop.canvas.face_view import FaceView
from desktop.state.shown import Page, Shown
from shared.findings import Finding


class PageView(QWidget):
    """A page fills in what it has. An empty page fills in nothing: it takes the keys itself, nothing is beside it.

    `page` names it and says how the job is shown on it. `face` is the face on its canvas, for a page that wants one.
    `beside` is the pane that stands beside the first place.
    """

    beside: QWidget | None = None

    def __init__(self, page: Page, face: FaceView | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.page, self.face = page, face
        self._last: Shown | None = None

    @property
    def first_places(self) -> tuple[QWidget, ...]:
        """The widget that gets the keys when the page is opened; after it others from which F6 goes on alike."""
        return (self.face.canvas if self.face else self,)

    def focus_beside(self) -> None:
        """Give the keys to the pane beside."""

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show what differs from `old`, which this page showed last; None where it has shown nothing of this job."""

    def leave(self) -> None:
        """Drop what was only begun: another page was opened."""

    def tell(self, words: str) -> bool:
        """Say what is refused where the person typed it; False where the page has no such place."""
        return False

    def open_section_of(self, finding: Finding) -> None:
        """Open the section that says what to do about a finding."""

    def show_present(self, new: Shown) -> None:
        """Show what is shown now, the face first; only the page that is open is asked to."""
        old, self._last = self._last, new
        self.show_face(new)
        self.follow(old, new)

    def show_face(self, new: Shown) -> None:
        """Show the face with its photo, where the page has a canvas."""
        if self.face is not None:
            self.face.follow(new)

    def forget(self) -> None:
        """Forget what was shown, so that all is shown anew next time."""
        self._last = None
