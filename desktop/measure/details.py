"""The details at the right of the page Measure: the fields of the picked parts, and what was counted from them.

While nothing is picked, the readings and the photo of the face are there.
"""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from desktop.fields.form_rows import (
    CheckRow,
    ChoiceRow,
    EdgesRow,
    FormRow,
    LevelRow,
    MeasureRow,
    TextRow,
    ThicknessRow,
    ways_of_coating,
    words_of,
)
from desktop.fields.front_rows import centres_row, hinges_row
from desktop.fields.grid import Edit, RowGrid
from desktop.fields.parts import ON_A_PLAN
from desktop.fields.to_look_at import ToLookAt
from desktop.fields.value_rows import TypedRow, always
from desktop.fields.words import NumberWords
from desktop.look.palette import Look
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import counted
from desktop.measure.counted_view import CountedView
from desktop.measure.photo_form import PhotoForm
from desktop.measure.readings_form import ReadingsForm
from desktop.measure.ties_form import TiesForm
from desktop.measure.tile_rows import TileLengthRow, TileShiftRow
from desktop.state.shown import Shown
from desktop.state.store import Store
from geometry.parts.box import BOTTOM, HIGH, LEFT, WIDE
from shared.edits.drawn import with_changed_parts
from shared.edits.locking import refuse_locked
from shared.errors import RecoatError
from shared.findings import Finding, Place
from shared.job import Part, View
from shared.limits import GREATEST_PROFILE_FACTOR
from shared.trade.kinds import Kind, Treatment

WIDTH = 340
"""In this width two lengths such as 141 23/32" fit side by side, each with its label."""
PROFILE = NumberWords("profile", least=1.0, most=GREATEST_PROFILE_FACTOR)
AS_USUAL = Treatment.AS_KIND.words
NOTHING_PICKED = "Nothing is picked. Click a part to see and change its readings, or choose Box and draw one."


class Details(QFrame):
    """Fields on which the picked parts agree show their value. Setting a field sets it for all of them in one edit."""

    def __init__(self, store: Store, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("panel")
        self.setFixedWidth(WIDTH)
        self._store = store
        self.head = Label(self)
        self.to_look_at = ToLookAt(self)
        self.trouble = Label(self)
        self.counted = CountedView(self)
        self.ties = TiesForm(store, self)
        self.readings = ReadingsForm(store, look, self)
        self.photo = PhotoForm(store, self)
        self.finish = ChoiceRow[Part]("Finish", "finish")
        lines: tuple[tuple[FormRow[Part], ...], ...] = (
            (ChoiceRow("Kind", "kind", words_of(Kind)),),
            (TextRow("Name", "name"),),
            (MeasureRow(LEFT), MeasureRow(BOTTOM)),
            (MeasureRow(WIDE), MeasureRow(HIGH)),
            (ChoiceRow("Coated", "treatment", ways_of_coating()),),
            (self.finish,),
            (TextRow("Made of", "made_of"),),
            (TileLengthRow("Tile width", "width_mm"), TileLengthRow("Tile height", "height_mm")),
            (TileLengthRow("Grout", "grout_mm"), TileShiftRow("Shift")),
            (TileLengthRow("Start across", "start_x_mm"), TileLengthRow("Start up", "start_y_mm")),
            (ThicknessRow("Thickness", "thickness_mm"), TypedRow("Profile", "profile_factor", always(PROFILE))),
            (EdgesRow("Edges"),),
            (hinges_row(), centres_row()),
            (LevelRow("Layer", "level"),),
            (CheckRow("covers what is behind", "hides"),),
            (CheckRow("back coated", "back_coated"), CheckRow("locked", "locked")),
        )
        self.fields = RowGrid(lines, self)
        self.rows = self.fields.rows
        self._lay_out()
        self.fields.edited.connect(self._edit)

    def row(self, label: str) -> FormRow[Part]:
        """The row with this label. KeyError if there is no such row."""
        return self.fields.row(label)

    def focus_first(self) -> None:
        """Give the keys to the first field."""
        self.rows[0].setFocus(Qt.FocusReason.ShortcutFocusReason)

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show the picked parts; a word of advice if none is picked."""
        self._say(new)
        if old is not None and old.now is new.now and (old.picked, old.face) == (new.picked, new.face):
            return
        parts = new.picked_parts
        self.trouble.clear()
        set_role(self.head, "head" if parts else "quiet")
        self.head.setText(head_words(parts, new))
        self.fields.setVisible(bool(parts))
        if parts:
            self._fill(parts, new)
        self.counted.show_counted(new)
        self.ties.show_ties(new)
        self.readings.show_readings(new)
        self.photo.show_photo(new)

    def _say(self, shown: Shown) -> None:
        """What is odd in the parts that are picked, or in the face; what is only being tried out changes nothing."""
        if shown.tried is None:
            here = (each for each in shown.findings if each.face == shown.face and each.code.is_said_in(Place.PICKED))
            self.to_look_at.say(each for each in here if _is_about(each, shown.picked))

    def _fill(self, parts: tuple[Part, ...], shown: Shown) -> None:
        self.finish.offer([(AS_USUAL, ""), *((finish.name, finish.id) for finish in shown.job.finishes)])
        face = shown.shown_face
        on_plan = face is not None and face.view is View.PLAN
        self.fields.show_values(parts, shown)
        self.fields.call_rows(ON_A_PLAN if on_plan else {})

    def _edit(self, label: str, edit: Edit[Part]) -> None:
        shown = self._store.open
        try:
            parts = [(part, edit(part)) for part in shown.picked_parts]
            refuse_locked(before for before, after in parts if after.outline != before.outline)
            job = with_changed_parts(shown.job, (after for _, after in parts))
        except RecoatError as error:
            self.trouble.setText(str(error))
            return
        self._store.edit(label, job)

    def _lay_out(self) -> None:
        for label in (self.head, self.trouble):
            label.setWordWrap(True)
        set_role(self.head, "head")
        set_role(self.trouble, "trouble")
        inside = QWidget()
        inside.setObjectName("panel")
        inner = QVBoxLayout(inside)
        inner.setContentsMargins(14, 10, 14, 8)
        inner.setSpacing(8)
        inner.addWidget(self.head)
        inner.addWidget(self.to_look_at)
        for widget in (self.fields, self.trouble, self.counted, self.ties, self.readings, self.photo):
            inner.addWidget(widget)
        inner.addStretch(1)
        area = QScrollArea(self)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setWidget(inside)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(area)


def _is_about(finding: Finding, picked: tuple[str, ...]) -> bool:
    """Whether it is about a picked part; what is about no part is about the face, of which nothing is picked."""
    return not frozenset(finding.parts).isdisjoint(picked) if finding.parts else not picked


def head_words(parts: tuple[Part, ...], shown: Shown) -> str:
    """The picked parts in words; what to do if none is picked."""
    if not parts:
        return NOTHING_PICKED if shown.face else "This job has no face yet. Press + face to add one."
    if len(parts) > 1:
        kinds = {part.kind.value for part in parts}
        return f"{counted(len(parts), 'part', 'parts')}, {', '.join(sorted(kinds))}"
    part = parts[0]
    tag = next((row.tag for row in shown.takeoff.parts if row.id == part.id), "")
    return "  ".join(word for word in (tag, part.called) if word)
