"""The form that makes a room from its wall lengths and its usual heights."""

from typing import NamedTuple

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtWidgets import QComboBox, QFormLayout, QHBoxLayout, QVBoxLayout, QWidget

from desktop.fields.card import MARGIN, Card
from desktop.fields.typed import TextLine
from desktop.look.plain import Label
from desktop.look.roles import set_role, set_state
from desktop.look.wording import decimal_sign, own_writing
from desktop.rooms.heights_fields import HeightsFields
from geometry.kitchens.walls import start_kitchen, with_kitchen
from shared.errors import JobError, RecoatError
from shared.job import Corner, Heights, Job, Unit, usual_heights
from shared.limits import LONGEST_TEXT
from shared.typed.pieces import LONGEST_LINE
from shared.typed.walls import WallLength, read_walls

WIDTH = 504
UNITS = (("millimetres", Unit.MM), ("feet and inches", Unit.INCH))
EXAMPLES = {Unit.MM: "2400, 3000, 1800", Unit.INCH: "96, 120, 72 1/2"}
CORNERS = {Corner.INSIDE: "inside corner", Corner.OUTSIDE: "outside corner", Corner.NONE: "no corner"}
ADVICE = (
    "Type them from left to right as you turn round in the room. "
    "2400 out ends in an outside corner, 3000 end in no corner."
)
READ_LINES = 2
MOST_WORDS = 8
"""So many walls and corners fit in two lines. If there are more, the last are shown, which are being typed."""
NEW_JOB, NEXT_ROOM = "New job", "Laundry"


class NewRoom(NamedTuple):
    """What the form says about a new room."""

    name: str
    walls: tuple[WallLength, ...]
    heights: Heights
    unit: Unit


def with_new_room(job: Job | None, new: NewRoom) -> Job:
    """The job with the room added; without a job, a new job of this room that has its name.

    RecoatError if the room is refused.
    """
    if job is None:
        return start_kitchen(new.name, new.walls, new.heights, new.unit)
    return with_kitchen(job, new.name, new.walls, new.heights)


class KitchenForm(Card):
    """Asks for a room; `filled(NewRoom)` says that the person wants it made."""

    filled = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Start", WIDTH, parent)
        self._job: Job | None = None
        self.name = TextLine(self)
        self.unit = QComboBox(self)
        self.walls = TextLine(self)
        self.read = Label(self)
        self.heights = HeightsFields(self)
        self.name.setMaxLength(LONGEST_TEXT)
        self.walls.setMaxLength(LONGEST_LINE)
        self.unit.addItems([words for words, _ in UNITS])
        self._lay_out()
        self.take_return_in(self.name, self.walls, *self.heights.lines)
        self.walls.textChanged.connect(self._hear)
        self.unit.currentIndexChanged.connect(self._change_unit)
        self.heights.told.connect(self.trouble.setText)

    def open_for(self, job: Job | None, place: QPoint) -> None:
        """Open here for one more room. Without a job it is the first room of a new job, whose unit is chosen too."""
        self._job = job
        unit = job.unit if job else self._chosen_unit
        self.do.setText("Add" if job else "Start")
        self._name_label.setText("Room" if job else "Job")
        self.name.setText(NEXT_ROOM if job else NEW_JOB)
        for widget in (self._unit_label, self.unit):
            widget.setVisible(job is None)
        self.unit.setCurrentIndex([each for _, each in UNITS].index(unit))
        self.heights.show_heights(usual_heights(unit), unit)
        self.walls.clear()
        self._hear()
        self.open_at(place, self.walls)

    def fill(self) -> None:
        new = self._new(self.name.text().strip())
        if not new.name:
            raise JobError("the name is missing", do="type one")
        with_new_room(self._job, new)
        self.filled.emit(new)

    @property
    def _chosen_unit(self) -> Unit:
        return UNITS[self.unit.currentIndex()][1]

    def _new(self, name: str) -> NewRoom:
        unit = self._chosen_unit
        walls = read_walls(self.walls.text(), unit, decimal=decimal_sign())
        return NewRoom(name, walls, self.heights.heights(), unit)

    def _change_unit(self) -> None:
        self.heights.change_unit(self._chosen_unit)
        self._hear()

    def _hear(self) -> None:
        """Say what the typed line of walls means, or what is wrong with it."""
        text, unit = self.walls.text(), self._chosen_unit
        self.walls.setPlaceholderText(EXAMPLES[unit])
        trouble, words = False, ADVICE
        if text.strip():
            try:
                words = self._walls_in_words(read_walls(text, unit, decimal=decimal_sign()), unit)
            except RecoatError as error:
                trouble, words = True, str(error)
        set_role(self.read, "trouble" if trouble else "good" if text.strip() else "quiet")
        set_state(self.walls, "wrong", on=trouble)
        self.read.setText(words)

    def _walls_in_words(self, walls: tuple[WallLength, ...], unit: Unit) -> str:
        """The walls in words, each with the letter that it will have, and the corners between them."""
        room = with_new_room(self._job, NewRoom(NEXT_ROOM, walls, usual_heights(unit), unit)).rooms[-1]
        words = []
        for face, wall in zip(room.faces, walls, strict=True):
            words += [f"{face.name} {own_writing(unit).length(wall.length_mm)}", CORNERS[wall.corner]]
        said = words if walls[-1].corner is not Corner.NONE else words[:-1]
        return " · ".join(said if len(said) <= MOST_WORDS else ["…", *said[-MOST_WORDS:]])

    def _lay_out(self) -> None:
        form = QFormLayout()
        first = QHBoxLayout()
        first.setSpacing(8)
        self._unit_label = Label("Lengths in", self)
        self._unit_label.setBuddy(self.unit)
        first.addWidget(self.name, 1)
        first.addWidget(self._unit_label)
        first.addWidget(self.unit)
        self._name_label = Label("Room", self)
        self._name_label.setBuddy(self.name)
        form.addRow(self._name_label, first)
        form.addRow("Walls", self.walls)
        form.addRow("", self.read)
        self.name.setAccessibleName("Name")
        self.walls.setAccessibleName("Walls")
        self.read.setAccessibleName("Walls as read")
        self.read.setWordWrap(True)
        self.read.setMinimumHeight(READ_LINES * self.fontMetrics().lineSpacing())
        self.read.setAlignment(Qt.AlignmentFlag.AlignTop)
        head = Label("Usual sizes in this room", self)
        set_role(head, "head")
        column = QVBoxLayout(self)
        column.setContentsMargins(MARGIN, MARGIN, MARGIN, MARGIN)
        column.setSpacing(8)
        column.addLayout(form)
        column.addWidget(head)
        column.addWidget(self.heights)
        column.addWidget(self.trouble)
        column.addLayout(self.buttons)
