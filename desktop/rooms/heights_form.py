"""The form for what is usual in a room that is there already."""

from PySide6.QtCore import QPoint, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from desktop.fields.card import MARGIN, Card
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.rooms.heights_fields import HeightsFields
from shared.checks.aids import check_heights
from shared.job import Room, Unit

WIDTH = 504
HOLDS_FOR = "These sizes apply only to what you draw from now on."


class HeightsForm(Card):
    """Asks for the usual heights of a room; `filled(room id, Heights)` says that they are to hold from now on."""

    filled = Signal(str, object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Set", WIDTH, parent)
        self._room = ""
        self.head = Label(self)
        self.heights = HeightsFields(self)
        set_role(self.head, "head")
        says = Label(HOLDS_FOR, self)
        set_role(says, "quiet")
        column = QVBoxLayout(self)
        column.setContentsMargins(MARGIN, MARGIN, MARGIN, MARGIN)
        column.setSpacing(8)
        for widget in (self.head, says, self.heights, self.trouble):
            column.addWidget(widget)
        column.addLayout(self.buttons)
        self.take_return_in(*self.heights.lines)
        self.heights.told.connect(self.trouble.setText)

    def open_for(self, room: Room, unit: Unit, place: QPoint) -> None:
        """Open here for this room."""
        self._room = room.id
        self.head.setText(f"Usual sizes in {room.name}")
        self.heights.show_heights(room.heights, unit)
        self.open_at(place, self.heights.lines[0])

    def fill(self) -> None:
        heights = self.heights.heights()
        check_heights(heights, "")
        self.filled.emit(self._room, heights)
