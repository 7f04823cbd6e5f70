"""What stands around the pages: bar, strip and totals; and the forms and the list that open over them."""

from PySide6.QtCore import QObject, QPoint, Qt
from PySide6.QtWidgets import QApplication

from desktop.pages.all import Pages
from desktop.rooms.face_form import FaceForm
from desktop.rooms.heights_form import HeightsForm
from desktop.rooms.kitchen_form import KitchenForm
from desktop.state.shown import Shown
from desktop.window.findings_view import FindingsView
from desktop.window.main_window import Window
from desktop.window.page_bar import PageBar
from desktop.window.strip import Strip
from desktop.window.totals_bar import TotalsBar

EDGE = 12


class Frame(QObject):
    """Turns the window to the page that is open, or to the start page if no job is open."""

    def __init__(self, window: Window, bar: PageBar, strip: Strip, pages: Pages, totals: TotalsBar) -> None:
        super().__init__(window)
        self._window = window
        self._bar, self._strip, self._totals = bar, strip, totals
        self._pages = pages
        window.put_around((bar, strip), pages.views, totals)
        self.findings = FindingsView(window)
        self.face_form = FaceForm(window)
        self.kitchen_form = KitchenForm(window)
        self.heights_form = HeightsForm(window)
        window.resized.connect(self.findings.hide)

    def follow(self, old: Shown | None, new: Shown | None) -> None:
        """Show the page that is open, and the job's name in the title."""
        for widget in (self._bar, self._totals):
            widget.setVisible(new is not None)
        self._strip.setVisible(new is not None and new.page.has_strip)
        if old is None or new is None:
            for card in (self.face_form, self.kitchen_form, self.heights_form):
                card.hide()
        if new is None:
            self._window.stack.setCurrentWidget(self._window.start)
            self.findings.hide()
            self._window.say_name("", "", saved=True)
            return
        self._window.stack.setCurrentWidget(self._pages.open)
        title = new.path.stem if new.path else new.job.name
        self._window.say_name(new.job.name, title, _state(new), saved=new.is_saved)
        self._bar.follow(old, new)
        self._strip.follow(old, new)
        self._totals.follow(old, new)
        self.findings.follow(old, new)

    @property
    def below_strip(self) -> QPoint:
        """The place in the window under the strip, where forms open."""
        return self._strip.mapTo(self._window, QPoint(0, self._strip.height()))

    def focus_next_place(self) -> None:
        """Give the keys to the next of strip, face, and what stands beside it."""
        focus, page = QApplication.focusWidget(), self._pages.open
        last = page.beside or page
        if page.beside is not None and focus in page.first_places:
            page.focus_beside()
        elif self._strip.isVisible() and focus is not None and (focus is last or last.isAncestorOf(focus)):
            self._strip.focus_face()
        else:
            self._pages.focus_first(Qt.FocusReason.ShortcutFocusReason)

    def open_findings(self) -> None:
        """Open the list of things to look at, or put it away."""
        if self.findings.isVisible():
            self.findings.hide()
            return
        window = self._window
        top = self._bar.mapTo(window, self._bar.rect().bottomLeft()).y()
        self.findings.open_at(window.width() - EDGE, top + 4, window.height() - top - EDGE)


def _state(shown: Shown) -> str:
    """Whether the job is saved, in words. A job just begun has nothing to lose yet, but is in no file."""
    if not shown.is_saved:
        return "not saved"
    return "saved" if shown.path else "not yet saved"
