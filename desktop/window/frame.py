"""What is always in sight around the pages, and what opens over them."""

from PySide6.QtCore import QObject, QPoint
from PySide6.QtWidgets import QWidget

from desktop.rooms.face_form import FaceForm
from desktop.rooms.heights_form import HeightsForm
from desktop.rooms.kitchen_form import KitchenForm
from desktop.state.shown import Page, Shown
from desktop.window.findings_view import FindingsView
from desktop.window.main_window import Window
from desktop.window.page_bar import PageBar
from desktop.window.strip import Strip
from desktop.window.totals_bar import TotalsBar

EDGE = 12


class Frame(QObject):
    """Turns the window to the page that is open; to the start page where no job is."""

    def __init__(
        self, window: Window, bar: PageBar, strip: Strip, pages: dict[Page, QWidget], totals: TotalsBar
    ) -> None:
        super().__init__(window)
        self._window = window
        self._bar, self._strip, self._totals = bar, strip, totals
        self._pages = pages
        window.put_around((bar, strip), tuple(pages.values()), totals)
        self.findings = FindingsView(window)
        self.face_form = FaceForm(window)
        self.kitchen_form = KitchenForm(window)
        self.heights_form = HeightsForm(window)
        window.resized.connect(self.findings.hide)

    def follow(self, old: Shown | None, new: Shown | None) -> None:
        """Show the page that is open, and the job's name in the title."""
        for widget in (self._bar, self._totals):
            widget.setVisible(new is not None)
        self._strip.setVisible(new is not None and new.page is not Page.BUY)
        if old is None or new is None:
            for card in (self.face_form, self.kitchen_form, self.heights_form):
                card.hide()
        if new is None:
            self._window.stack.setCurrentWidget(self._window.start)
            self.findings.hide()
            self._window.say_name("", "", saved=True)
            return
        self._window.stack.setCurrentWidget(self._pages[new.page])
        title = new.path.stem if new.path else new.job.name
        self._window.say_name(new.job.name, title, _state(new), saved=new.is_saved)
        self._bar.follow(old, new)
        self._strip.follow(old, new)
        self._totals.follow(old, new)
        self.findings.follow(old, new)

    @property
    def below_strip(self) -> QPoint:
        """Where a form opens, in the window."""
        return self._strip.mapTo(self._window, QPoint(0, self._strip.height()))

    def open_findings(self) -> None:
        """Open the list of things to look at, or put it away."""
        if self.findings.isVisible():
            self.findings.hide()
            return
        window = self._window
        top = self._bar.mapTo(window, self._bar.rect().bottomLeft()).y()
        self.findings.open_at(window.width() - EDGE, top + 4, window.height() - top - EDGE)


def _state(shown: Shown) -> str:
    """Whether the job is saved, in words. One just begun has lost nothing yet, but stands in no file."""
    if not shown.is_saved:
        return "not saved"
    return "saved" if shown.path else "not yet saved"
