"""The line above the totals that says what takes long, with a button that stops it."""

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QWidget

from desktop.look.plain import Label

SOON_MS = 500
"""What is done sooner is not told: a line that only flashes up disturbs (common practice, no source)."""


class Progress(QFrame):
    """Hidden as long as nothing takes long. `stopped` says that the person wants no more of what is being done."""

    stopped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("bar")
        self.words = Label(self)
        self.stop = QPushButton("Stop", self)
        self.stop.setAutoDefault(True)
        self.stop.clicked.connect(self.stopped)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(SOON_MS)
        self._soon.timeout.connect(self.show)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 6, 14, 6)
        row.setSpacing(20)
        row.addWidget(self.words)
        row.addWidget(self.stop)
        row.addStretch(1)
        self.hide()

    def say(self, words: str) -> None:
        """Say soon what is being done, unless it is done by then; "" when nothing is."""
        self.words.setText(f"{words} ..." if words else "")
        if words:
            self._soon.start()
        else:
            self._soon.stop()
            self.hide()
