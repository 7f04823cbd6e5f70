"""The window itself: the start page, and space for the pages. It is shown before the rest is put together.

`frame` fills it.
"""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QCloseEvent, QResizeEvent
from PySide6.QtWidgets import QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from desktop.look.plain import Label, title_words
from desktop.look.roles import set_role
from desktop.window.progress import Progress
from desktop.window.start_page import StartPage

NAME = "Recoat"
SIZE = (1280, 720)
LEAST_SIZE = (960, 600)


class Window(QMainWindow):
    """`asked_to_close` says that the person wants to close the window; `close_now` closes it, and `closed` follows."""

    asked_to_close = Signal()
    closed = Signal()
    resized = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setWindowTitle(NAME)
        self.setMinimumSize(*LEAST_SIZE)
        self.resize(*SIZE)
        self._may_close = False
        self.start = StartPage(self)
        self.name = Label(self)
        self.notice = Label(self)
        self.progress = Progress(self)
        self.stack = QStackedWidget(self)
        self.stack.addWidget(self.start)
        self._column = QVBoxLayout()
        self._lay_out()

    def put_around(self, above: Sequence[QWidget], pages: Sequence[QWidget], below: QWidget) -> None:
        """Put in the pages, and the bars above and below them."""
        for place, widget in enumerate(above):
            self._column.insertWidget(place, widget)
        for page in pages:
            self.stack.addWidget(page)
        self._column.addWidget(below)

    def put_on_top(self, widget: QWidget) -> None:
        """Put a widget above all others, over the start page too."""
        self._column.insertWidget(0, widget)

    def say_name(self, name: str, title: str, state: str = "", *, saved: bool) -> None:
        """Say which job is open, and whether it is saved: `state` in words."""
        self.name.setText("  ·  ".join(word for word in (name, state) if word))
        self.name.adjustSize()
        self.menuBar().setCornerWidget(self.name, Qt.Corner.TopRightCorner)
        self.name.show()
        self.setWindowTitle(f"{title_words(title)}[*] - {NAME}" if title else NAME)
        self.setWindowModified(not saved)

    def tell(self, words: str, *, trouble: bool) -> None:
        """Say something above the totals, until something else is said."""
        set_role(self.notice, "trouble" if trouble else "good")
        self.notice.setText(words)
        self.notice.setVisible(bool(words))

    def close_now(self) -> None:
        """Close without asking any more."""
        self._may_close = True
        self.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        if not self._may_close:
            self.asked_to_close.emit()
        # If nothing had to be asked, `close_now` was called meanwhile; Qt does nothing on a close within a close.
        if self._may_close:
            self.closed.emit()
            event.accept()
        else:
            event.ignore()

    def resizeEvent(self, event: QResizeEvent) -> None:
        self.resized.emit()

    def _lay_out(self) -> None:
        set_role(self.name, "quiet")
        self.name.setContentsMargins(0, 0, 14, 0)
        self.notice.setWordWrap(True)
        self.notice.setContentsMargins(14, 4, 14, 4)
        self.notice.hide()
        inside = QWidget(self)
        inside.setLayout(self._column)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addWidget(self.stack, 1)
        self._column.addWidget(self.notice)
        self._column.addWidget(self.progress)
        self.setCentralWidget(inside)
