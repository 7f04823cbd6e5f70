"""The start page, which is shown while no job is open: its buttons are the doors into a job."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, Signal, SignalInstance
from PySide6.QtWidgets import QFrame, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from desktop.look.plain import Label, button_words, tip_words
from desktop.look.roles import set_role

WIDTH = 480
MOST_RECENT = 5


class StartPage(QFrame):
    """The start page. Each door is a button; the door to a new job has the keys first."""

    asked_for_example = Signal()
    asked_for_new = Signal()
    asked_for_file = Signal()
    asked_for_recent = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("paper")
        head = Label("What are you coating?", self)
        set_role(head, "welcome")
        self.trouble = Label(self)
        self.trouble.setWordWrap(True)
        set_role(self.trouble, "trouble")
        self.new = self._door("&Start a kitchen from wall lengths", self.asked_for_new)
        self.file = self._door("&Open a file", self.asked_for_file)
        self.example = self._door("&Look at the example", self.asked_for_example)
        self._recent = QVBoxLayout()
        self._recent.setSpacing(4)
        middle = QVBoxLayout()
        middle.setSpacing(12)
        for widget in (head, self.new, self.file, self.example, self.trouble):
            widget.setFixedWidth(WIDTH)
            middle.addWidget(widget)
        middle.addLayout(self._recent)
        column = QVBoxLayout(self)
        column.addStretch(1)
        column.addLayout(middle)
        column.addStretch(2)
        column.setAlignment(middle, Qt.AlignmentFlag.AlignHCenter)

    def show_recent(self, paths: Sequence[Path]) -> None:
        """Offer the files that were open last."""
        while (item := self._recent.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.deleteLater()
        for path in paths[:MOST_RECENT]:
            link = QPushButton(button_words(f"{path.name}   in {path.parent.name}"), self)
            link.setToolTip(tip_words(str(path)))
            link.setProperty("path", str(path))
            link.setFixedWidth(WIDTH)
            set_role(link, "page")
            link.setAutoDefault(True)
            link.clicked.connect(self._open_recent)
            self._recent.addWidget(link)

    def open_doors(self) -> None:
        """Let the person use the doors: everything behind them is ready now."""
        self.setEnabled(True)
        self.new.setFocus(Qt.FocusReason.OtherFocusReason)

    def tell(self, words: str) -> None:
        """Say what went wrong."""
        self.trouble.setText(words)

    def _door(self, words: str, signal: SignalInstance) -> QPushButton:
        door = QPushButton(words, self)
        set_role(door, "door")
        door.setAutoDefault(True)
        door.setCursor(Qt.CursorShape.PointingHandCursor)
        door.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        door.clicked.connect(signal)
        return door

    def _open_recent(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.asked_for_recent.emit(Path(str(sender.property("path"))))
