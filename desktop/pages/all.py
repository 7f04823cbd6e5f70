"""All pages in the order of the job, and which page is open."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt

from desktop.canvas.board import Canvas
from desktop.pages.view import PageView
from desktop.state.shown import Page, Shown


class Pages:
    """The pages of the window. Only the open page follows what is shown; another catches up when it is opened."""

    def __init__(self, views: Sequence[PageView]) -> None:
        self.views = tuple(views)
        self.open = self.views[0]
        self._view_of = {view.page: view for view in self.views}

    @property
    def all(self) -> tuple[Page, ...]:
        """The pages in the order of the job."""
        return tuple(view.page for view in self.views)

    def named(self, name: str) -> Page:
        """The page with this name. KeyError if there is no such page."""
        return {page.name: page for page in self.all}[name]

    def follow(self, new: Shown | None) -> None:
        """Open the page of what is shown, and show it there. All pages forget the job when it is closed (None)."""
        if new is None:
            for view in self.views:
                view.forget()
            return
        before, self.open = self.open, self._view_of[new.page]
        if before is not self.open:
            before.leave()
        self.open.show_present(new)

    def focus_first(self, reason: Qt.FocusReason = Qt.FocusReason.OtherFocusReason) -> None:
        """Give the keys to the first place of the open page."""
        self.open.first_places[0].setFocus(reason)

    def zoom_in(self) -> None:
        """Show the face larger. Nothing happens on a page without a canvas."""
        self._on_canvas(Canvas.zoom_in)

    def zoom_out(self) -> None:
        """Show the face smaller."""
        self._on_canvas(Canvas.zoom_out)

    def zoom_whole(self) -> None:
        """Show the whole face."""
        self._on_canvas(Canvas.zoom_whole)

    def _on_canvas(self, zoom: Callable[[Canvas], None]) -> None:
        if self.open.face is not None:
            zoom(self.open.face.canvas)
