"""The window: the pages with what is always in sight around them."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QCloseEvent, QResizeEvent
from PySide6.QtWidgets import QLabel, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from desktop.face_form import FaceForm
from desktop.findings_view import FindingsView
from desktop.page_bar import PageBar
from desktop.roles import set_role
from desktop.shown import Page, Shown
from desktop.start_page import StartPage
from desktop.strip import Strip
from desktop.totals_bar import TotalsBar

SIZE = (1280, 720)
LEAST_SIZE = (960, 600)
NOTICE_MS = 8000
EDGE = 12


class Window(QMainWindow):
    """Shows the start page where no job is open. `asked_to_close` when the person closes it; `close_now` does it."""

    asked_to_close = Signal()
    closed = Signal()

    def __init__(
        self,
        start: StartPage,
        bar: PageBar,
        strip: Strip,
        pages: dict[Page, QWidget],
        totals: TotalsBar,
    ) -> None:
        super().__init__()
        self.setWindowTitle("Recoat")
        self.setMinimumSize(*LEAST_SIZE)
        self.resize(*SIZE)
        self._may_close = False
        self._pages = pages
        self.name = QLabel(self)
        self.notice = QLabel(self)
        self.findings = FindingsView(self)
        self.face_form = FaceForm(self)
        self._bar, self._strip, self._totals = bar, strip, totals
        self._stack = QStackedWidget(self)
        self._start = start
        self._lay_out()

    def follow(self, old: Shown | None, new: Shown | None) -> None:
        """Show the page that is open, and the job's name in the title."""
        for widget in (self._bar, self._strip, self._totals):
            widget.setVisible(new is not None)
        if new is None:
            self._stack.setCurrentWidget(self._start)
            self.findings.hide()
            self.setWindowTitle("Recoat")
            self.name.clear()
            return
        self._stack.setCurrentWidget(self._pages[new.page])
        state = "saved" if new.is_saved else "not saved"
        name = new.path.stem if new.path else new.job.name
        self.name.setText(f"{new.job.name}  ·  {state}")
        self.name.adjustSize()
        self.menuBar().setCornerWidget(self.name, Qt.Corner.TopRightCorner)
        self.name.show()
        self.setWindowTitle(f"{name}[*] - Recoat")
        self.setWindowModified(not new.is_saved)
        self._bar.follow(old, new)
        self._strip.follow(old, new)
        self._totals.follow(old, new)
        self.findings.follow(old, new)

    def open_findings(self) -> None:
        """Open the list of things to look at, or put it away."""
        if self.findings.isVisible():
            self.findings.hide()
        else:
            top = self._bar.mapTo(self, self._bar.rect().bottomLeft()).y()
            self.findings.open_at(self.width() - EDGE, top + 4, self.height() - top - EDGE)

    def tell(self, words: str, *, trouble: bool) -> None:
        """Say something above the totals for a while; trouble stays until something else is said."""
        set_role(self.notice, "trouble" if trouble else "good")
        self.notice.setText(words)
        self.notice.setVisible(bool(words))

    def close_now(self) -> None:
        """Close without asking any more."""
        self._may_close = True
        self.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        if self._may_close:
            self.closed.emit()
            event.accept()
        else:
            event.ignore()
            self.asked_to_close.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        self.findings.hide()

    def _lay_out(self) -> None:
        set_role(self.name, "quiet")
        self.name.setTextFormat(Qt.TextFormat.PlainText)
        self.name.setContentsMargins(0, 0, 14, 0)
        self.notice.setWordWrap(True)
        self.notice.setTextFormat(Qt.TextFormat.PlainText)
        self.notice.setContentsMargins(14, 4, 14, 4)
        self.notice.hide()
        self._stack.addWidget(self._start)
        for page in self._pages.values():
            self._stack.addWidget(page)
        inside = QWidget(self)
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._bar)
        column.addWidget(self._strip)
        column.addWidget(self._stack, 1)
        column.addWidget(self.notice)
        column.addWidget(self._totals)
        self.setCentralWidget(inside)
