"""The things to look at: a list over the page, which stays while the person goes through it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QLabel, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from desktop.roles import set_role
from desktop.shown import Shown
from shared.edits import find_face
from shared.findings import Finding

WIDTH = 420
HEIGHT = 360


class FindingsView(QFrame):
    """`chosen(finding)` when one is clicked, or Return pressed on it; Escape puts the list away."""

    chosen = Signal(object)
    put_away = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        set_role(self, "card")
        self.hide()
        self._findings: tuple[Finding, ...] = ()
        self._list = QListWidget(self)
        self._list.setWordWrap(True)
        self._list.setSpacing(4)
        self._list.setFrameShape(QFrame.Shape.NoFrame)
        self._list.setAccessibleName("Things to look at")
        self._list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._list.itemClicked.connect(self._choose)
        self._list.itemActivated.connect(self._choose)
        hint = QLabel("Choose one to go where it is. Esc puts the list away.", self)
        set_role(hint, "quiet")
        column = QVBoxLayout(self)
        column.addWidget(self._list)
        column.addWidget(hint)

    def follow(self, old: Shown | None, new: Shown) -> None:
        """List what there is to look at."""
        findings = new.takeoff.findings
        if old is not None and old.takeoff.findings is findings:
            return
        self._findings = findings
        self._list.clear()
        for finding in findings:
            self._list.addItem(f"{find_face(new.now, finding.face).name}   {finding.message}")
        if not findings:
            self.hide()

    def open_at(self, right: int, top: int, height: int) -> None:
        """Open below this place, with the keys."""
        self.setGeometry(right - WIDTH, top, WIDTH, min(HEIGHT, height))
        self.show()
        self.raise_()
        self._list.setFocus(Qt.FocusReason.PopupFocusReason)
        if self._list.currentRow() < 0:
            self._list.setCurrentRow(0)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
            self.put_away.emit()
        else:
            super().keyPressEvent(event)

    def _choose(self, item: QListWidgetItem) -> None:
        self.chosen.emit(self._findings[self._list.row(item)])
