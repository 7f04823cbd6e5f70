"""The form for a new face: its name, from where it is seen, and how large it is."""

from typing import NamedTuple

from PySide6.QtCore import QPoint, Signal
from PySide6.QtWidgets import QComboBox, QFormLayout, QWidget

from desktop.fields.card import MARGIN, Card
from desktop.fields.length import LengthField
from desktop.fields.typed import TextLine
from desktop.look.plain import Label
from shared.errors import JobError
from shared.job import Unit, View
from shared.limits import LONGEST_TEXT

WIDTH = 360

KINDS_OF_FACE = (("a wall, seen from the front", View.ELEVATION), ("a benchtop or shelf, seen from above", View.PLAN))


class NewFace(NamedTuple):
    """What the form says about a new face."""

    name: str
    view: View
    width_mm: float
    height_mm: float


class FaceForm(Card):
    """Asks for a new face; `filled(NewFace)` says that the person wants it added."""

    filled = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Add", WIDTH, parent)
        self._unit = Unit.MM
        self.name = TextLine(self)
        self.name.setMaxLength(LONGEST_TEXT)
        self.view = QComboBox(self)
        self.view.addItems([words for words, _ in KINDS_OF_FACE])
        self.width_field = LengthField("Width", self)
        self.height_field = LengthField("Height", self)
        self._lay_out()
        self.take_return_in(self.name, self.width_field, self.height_field)
        self.view.currentIndexChanged.connect(self._show_view)
        for length in (self.width_field, self.height_field):
            length.told.connect(self.trouble.setText)

    def open_for(self, name: str, unit: Unit, place: QPoint) -> None:
        """Open here. The face gets this name unless the person types another."""
        self._unit = unit
        self.name.setText(name)
        self._show_view()
        self.open_at(place, self.width_field)

    def fill(self) -> None:
        width, height = self.width_field.length_mm(), self.height_field.length_mm()
        name = self.name.text().strip()
        if not name:
            raise JobError("a face needs a name", do="type a letter")
        self.filled.emit(NewFace(name, self._view(), width, height))

    def _lay_out(self) -> None:
        form = QFormLayout(self)
        form.setContentsMargins(MARGIN, MARGIN, MARGIN, MARGIN)
        form.addRow("Name", self.name)
        form.addRow("Face is", self.view)
        form.addRow("Width", self.width_field)
        self._height_label = Label(self)
        self._height_label.setBuddy(self.height_field)
        form.addRow(self._height_label, self.height_field)
        form.addRow(self.trouble)
        form.addRow(self.buttons)
        self.view.setAccessibleName("Face is")

    def _show_view(self) -> None:
        view = self._view()
        high = "Height" if view is View.ELEVATION else "Depth"
        self._height_label.setText(high)
        self.height_field.setAccessibleName(high)
        self.width_field.ask("3600 or 2400+1200", self._unit)
        self.height_field.ask("2400" if view is View.ELEVATION else "600", self._unit)

    def _view(self) -> View:
        return KINDS_OF_FACE[self.view.currentIndex()][1]
