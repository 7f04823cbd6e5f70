"""The form that says along which walls the sides of a part on a plan lie, so that a joint there is counted once."""

from msgspec.structs import replace
from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QComboBox, QFrame, QGridLayout, QWidget

from desktop.fields.length import LengthField
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from desktop.state.store import Store
from geometry.edits.tying import tie_along
from geometry.outlines.measured import side_lengths_mm
from geometry.outlines.side_names import side_names
from shared.edits.drawn import with_changed_face
from shared.job import Face, Part, Tie, Unit, View
from shared.trade.kinds import usual

NOWHERE = "nowhere"


class TieRow(QObject):
    """The row for one side: the wall along which it lies, and how far from that wall's left end.

    `decided(side, tie)` gives what the person decides; `tie` is None if the side lies along no wall.
    """

    decided = Signal(int, object)

    def __init__(self, part: Part, side: int, walls: tuple[Face, ...], parent: QWidget) -> None:
        super().__init__(parent)
        self._part = part
        self._side = side
        self._walls = walls
        self._start_mm = 0.0
        self.wall = QComboBox(parent)
        self.wall.addItem(NOWHERE)
        self.wall.addItems([wall.name for wall in walls])
        self.start = LengthField("Distance from the wall's left end", parent, any_sign=True)
        self.wall.activated.connect(self._decide)
        self.start.taken.connect(self._move)

    def show_tie(self, tie: Tie | None, unit: Unit) -> None:
        """Show along which wall the side lies, and from where; None for no wall."""
        ids = [wall.id for wall in self._walls]
        self.wall.setCurrentIndex(ids.index(tie.face) + 1 if tie and tie.face in ids else 0)
        self._start_mm = tie.start_mm if tie else 0.0
        self.start.setEnabled(tie is not None)
        self.start.show_length(self._start_mm, unit)

    def _move(self, start_mm: float) -> None:
        self._start_mm = start_mm
        self._decide()

    def _decide(self) -> None:
        place = self.wall.currentIndex()
        if not place:
            self.decided.emit(self._side, None)
            return
        self.decided.emit(self._side, tie_along(self._part, self._side, self._walls[place - 1].id, self._start_mm))


class TiesForm(QFrame):
    """Shows the straight sides of the one part that is picked on a plan, unless it is a hole. Hidden otherwise.

    Each change is one edit for undo.
    """

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self._sides: tuple[object, ...] = ()
        self.rows: tuple[TieRow, ...] = ()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 8, 0, 0)
        self._grid.setVerticalSpacing(4)
        self.hide()

    def show_ties(self, shown: Shown) -> None:
        """Show along which walls the sides of the picked part lie."""
        face, parts = shown.shown_face, shown.picked_parts
        fits = face is not None and face.view is View.PLAN and len(parts) == 1 and not usual()[parts[0].kind].hole
        self.setVisible(fits)
        if face is None or not fits:
            return
        walls = _walls_round(shown, face)
        sides = (parts[0].id, parts[0].outline, walls, shown.unit)
        if sides != self._sides:
            self._sides = sides
            self._fill(parts[0], walls, shown.unit)
        ties = {tie.side: tie for tie in face.ties if tie.part == parts[0].id}
        for row, side in zip(self.rows, _straight_sides(parts[0]), strict=True):
            row.show_tie(ties.get(side), shown.unit)

    def _fill(self, part: Part, walls: tuple[Face, ...], unit: Unit) -> None:
        while (item := self._grid.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.deleteLater()
        for old in self.rows:
            old.deleteLater()
        head = Label("Which wall each side runs along, and from where", self)
        set_role(head, "quiet")
        self._grid.addWidget(head, 0, 0, 1, 3)
        lengths, names = side_lengths_mm(part.outline), side_names(part.outline, View.PLAN)
        rows = []
        for line, side in enumerate(_straight_sides(part), 1):
            row = TieRow(part, side, walls, self)
            row.decided.connect(self._decide)
            words = f"{names[side]} {own_writing(unit).length(lengths[side])}"
            row.wall.setAccessibleName(f"{words} runs along")
            self._grid.addWidget(Label(words, self), line, 0)
            self._grid.addWidget(row.wall, line, 1)
            self._grid.addWidget(row.start, line, 2)
            rows.append(row)
        self.rows = tuple(rows)

    def _decide(self, side: int, tie: Tie | None) -> None:
        shown = self._store.open
        face, (part,) = shown.shown_face, shown.picked_parts
        if face is None:
            return
        others = tuple(old for old in face.ties if (old.part, old.side) != (part.id, side))
        ties = (*others, tie) if tie else others
        if ties != face.ties:
            self._store.edit("Side along a wall", with_changed_face(shown.job, replace(face, ties=ties)))


def _straight_sides(part: Part) -> tuple[int, ...]:
    return tuple(index for index, vertex in enumerate(part.outline) if not vertex.bulge)


def _walls_round(shown: Shown, plan: Face) -> tuple[Face, ...]:
    """The elevations of the plan's room, in order."""
    room = shown.job.room_of.get(plan.id)
    return tuple(face for face in room.faces if face.view is View.ELEVATION) if room else ()
