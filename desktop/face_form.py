"""A small form for a new face: its name, how it is seen, how large it is."""

from typing import NamedTuple

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QComboBox, QFormLayout, QFrame, QHBoxLayout, QLabel, QLineEdit, QPushButton, QWidget

from desktop.length_field import LengthField
from desktop.roles import set_role
from shared.errors import ReadingError
from shared.job import Unit, View
from shared.limits import LONGEST_TEXT

WIDTH = 360
EDGE = 12
TROUBLE_LINES = 3

KINDS_OF_FACE = (("a wall, seen from the front", View.ELEVATION), ("a benchtop or shelf, seen from above", View.PLAN))


class NewFace(NamedTuple):
    """What the form says."""

    name: str
    view: View
    width_mm: float
    height_mm: float


class FaceForm(QFrame):
    """`filled(NewFace)` when the face is to be added; Escape puts the form away."""

    filled = Signal(object)
    put_away = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        set_role(self, "card")
        self.hide()
        self._unit = Unit.MM
        self.name = QLineEdit(self)
        self.name.setMaxLength(LONGEST_TEXT)
        self.view = QComboBox(self)
        self.view.addItems([words for words, _ in KINDS_OF_FACE])
        self.width_field = LengthField("Width", self)
        self.height_field = LengthField("Height", self)
        self.trouble = QLabel(self)
        self.add = QPushButton("Add", self)
        self.cancel = QPushButton("Cancel", self)
        for button in (self.add, self.cancel):
            button.setAutoDefault(True)
        self._lay_out()
        self.view.currentIndexChanged.connect(self._show_view)
        self.add.clicked.connect(self._fill)
        self.cancel.clicked.connect(self._cancel)
        for field in (self.name, self.width_field, self.height_field):
            field.returnPressed.connect(self._fill)
        for length in (self.width_field, self.height_field):
            length.told.connect(self.trouble.setText)

    def open_at(self, place: QPoint, name: str, unit: Unit) -> None:
        """Open here, with the keys, for a face with this name."""
        self._unit = unit
        self.name.setText(name)
        self.trouble.clear()
        self._show_view()
        self.move(place + QPoint(EDGE, EDGE))
        self.resize(WIDTH, self.sizeHint().height())
        self.show()
        self.raise_()
        self.width_field.setFocus(Qt.FocusReason.PopupFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self._cancel()
        else:
            super().keyPressEvent(event)

    def _lay_out(self) -> None:
        form = QFormLayout(self)
        form.setContentsMargins(14, 14, 14, 14)
        form.addRow("&Name", self.name)
        form.addRow("Face is", self.view)
        form.addRow("&Width", self.width_field)
        self._height_label = QLabel(self)
        self._height_label.setBuddy(self.height_field)
        form.addRow(self._height_label, self.height_field)
        set_role(self.trouble, "trouble")
        self.trouble.setWordWrap(True)
        self.trouble.setMinimumHeight(TROUBLE_LINES * self.fontMetrics().height())
        self.trouble.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.trouble.setTextFormat(Qt.TextFormat.PlainText)
        form.addRow(self.trouble)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.add)
        buttons.addWidget(self.cancel)
        form.addRow(buttons)
        self.view.setAccessibleName("Face is")

    def _show_view(self) -> None:
        view = self._view()
        high = "Height" if view is View.ELEVATION else "Depth"
        self._height_label.setText(f"&{high}")
        self.height_field.setAccessibleName(high)
        self.width_field.ask("3600 or 2400+1200", self._unit)
        self.height_field.ask("2400" if view is View.ELEVATION else "600", self._unit)

    def _view(self) -> View:
        return KINDS_OF_FACE[self.view.currentIndex()][1]

    def _fill(self) -> None:
        try:
            width, height = self.width_field.length_mm(), self.height_field.length_mm()
        except ReadingError as error:
            self.trouble.setText(str(error))
            return
        if not self.name.text().strip():
            self.trouble.setText("A face needs a name; type a letter.")
            return
        self.hide()
        self.filled.emit(NewFace(self.name.text().strip(), self._view(), width, height))

    def _cancel(self) -> None:
        self.hide()
        self.put_away.emit()
