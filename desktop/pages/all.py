"""All pages in the order of the job, and which of them is open."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt

from desktop.canvas.board import Canvas
from desktop.pages.view import PageView
from desktop.state.shown import Page, Shown


class Pages:
    """Only the page that is open follows what is shown; another catches up once it is turned to."""

    def __init__(self, views: Sequence[PageView]) -> None:
        self.views = tuple(views)
        self.open = self.views[0]
        self._view_of = {view.page: view for view in self.views}

    @property
    def all(self) -> tuple[Page, ...]:
        """The pages in the order of the job."""
        return tuple(view.page for view in self.views)

    def named(self, name: str) -> Page:
        """The page of this name. KeyError if there is none."""
        return {page.name: page for page in self.all}[name]

    def follow(self, new: Shown | None) -> None:
        """Show what is shown now on the page that is open."""
        if new is None:
            for view in self.views:
                view.forget()
            return
        before, self.open = self.open, self._view_of[new.page]
        if before is not self.open:
            before.leave()
        self.open.show_present(new)

    def focus_first(self, reason: Qt.FocusReason = Qt.FocusReason.OtherFocusReason) -> None:
        """Give the keys to the first place of the page that is open."""
        self.open.first_places[0].setFocus(reason)

    def zoom_in(self) -> None:
        """Nearer to the face."""
        self._on_canvas(Canvas.zoom_in)

    def zoom_out(self) -> None:
        """Farther from the face."""
        self._on_canvas(Canvas.zoom_out)

    def zoom_whole(self) -> None:
        """The whole face."""
        self._on_canvas(Canvas.zoom_whole)

    def _on_canvas(self, zoom: Callable[[Canvas], None]) -> None:
        if self.open.face is not None:
            zoom(self.open.face.canvas)
