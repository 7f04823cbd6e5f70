"""The rows of forms: each shows one field of one or several values and says when the person sets it.

`edited(label, edit)` hands over what was done, in words, and a function from a value to the value with the field set.
"""

from collections.abc import Sequence
from enum import Enum
from typing import Generic, TypeVar

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QSpinBox, QVBoxLayout, QWidget

from desktop.fields.chooser import Chooser
from desktop.fields.length import LengthField
from desktop.fields.parts import agreed, side_is_coated, with_side_coated
from desktop.fields.typed import TextLine
from desktop.look.plain import tip_words
from desktop.state.shown import Shown
from geometry.parts.box import BoxMeasure, agreed_mm, with_measure
from shared.job import Part, View
from shared.limits import HIGHEST_LEVEL, LONGEST_TEXT
from shared.trade.kinds import Treatment
from shared.trade.value import Value
from takeoff.surfaces.coated import thickness_mm

Item = TypeVar("Item", bound=Value)

SEVERAL = "several"

MEANS = {
    "Coated": "How it is coated: in place, taken off first, or not at all",
    "Finish": "A finish of its own, if it does not get the finish of its kind",
    "Made of": "What the surface is now, in your own words",
    "Thickness": "How thick the board is. Its coated edges are this wide",
    "Profile": "How much more there is to coat than on a flat surface: 1 is flat, 1.2 is a fifth more, as on mouldings",
    "Layer": "0 is usual for its kind. 1 brings it in front of other kinds, -1 puts it behind them",
    "hides": "What is behind it is not coated. Untick it for what is rolled out of the way, like a fridge",
    "back_coated": "Its back is coated too when it is taken off",
    "locked": "It cannot be moved, resized or deleted until you untick this",
}
"""What fields mean, by their labels or, if they have none, by their names in the value."""
LEAST_WIDTH = 56

SIDES = {View.ELEVATION: ("left", "right", "top", "bottom"), View.PLAN: ("left", "right", "front", "back")}


class FormRow(QWidget, Generic[Item]):
    """A row for one field, by its name in the value; `label` is what a person calls it."""

    edited = Signal(str, object)
    told = Signal(str)

    def __init__(self, label: str, field: str) -> None:
        super().__init__()
        self.label = label
        self.field = field
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)

    def hold(self, editor: QWidget) -> None:
        """Take the widget that the field is edited in."""
        editor.setAccessibleName(self.label)
        self.setToolTip(tip_words(MEANS.get(self.label or self.field, "")))
        self._row.addWidget(editor)
        editor.setMinimumWidth(LEAST_WIDTH)
        self.setFocusProxy(editor)

    def value(self, items: Sequence[Item]) -> object:
        """The value that the field has in all items; None if they differ."""
        return agreed(items, self._of)

    def set(self, value: object) -> None:
        """Say that the person set the field."""

        def edit(item: Item) -> Item:
            return replace(item, **{self.field: value})

        self.edited.emit(f'Change of "{self.label}"', edit)

    def concerns(self, items: Sequence[Item]) -> bool:
        """Whether these items have such a field. If not, the row is not shown."""
        return bool(items)

    def show_values(self, items: Sequence[Item], shown: Shown) -> None:
        """Show the field of these items."""
        raise NotImplementedError

    def _of(self, item: Item) -> object:
        return getattr(item, self.field)


class TextRow(FormRow[Item]):
    """A row for a line of text."""

    def __init__(self, label: str, field: str) -> None:
        super().__init__(label, field)
        self.edit = TextLine(self)
        self.edit.setMaxLength(LONGEST_TEXT)
        self.edit.editingFinished.connect(self._take)
        self.hold(self.edit)

    def show_values(self, items: Sequence[Item], shown: Shown) -> None:
        value = self.value(items)
        if not self.edit.isModified():
            self.edit.put("" if value is None else str(value))
        self.edit.setPlaceholderText(SEVERAL if value is None else "")

    def _take(self) -> None:
        if self.edit.isModified():
            self.edit.setModified(False)
            self.set(self.edit.text())


class ThicknessRow(FormRow[Part]):
    """A row for the thickness of the board. If a part has none of its own, the usual one of its kind is shown."""

    def __init__(self, label: str, field: str) -> None:
        super().__init__(label, field)
        self.edit = LengthField(label, self, zero=True)
        self.edit.taken.connect(self.set)
        self.edit.told.connect(self.told)
        self.hold(self.edit)

    def show_values(self, items: Sequence[Part], shown: Shown) -> None:
        self.edit.show_length(agreed(items, thickness_mm), shown.unit)


class MeasureRow(FormRow[Part]):
    """A row for one measure of the box round each part: setting it moves or resizes every part."""

    def __init__(self, measure: BoxMeasure) -> None:
        super().__init__(measure.label, "outline")
        self._measure = measure
        self.edit = LengthField(measure.label, self, any_sign=measure.is_place)
        self.edit.taken.connect(self.set)
        self.edit.told.connect(self.told)
        self.hold(self.edit)

    def show_values(self, items: Sequence[Part], shown: Shown) -> None:
        self.edit.show_length(agreed_mm(items, self._measure), shown.unit)

    def set(self, value: object) -> None:
        length = float(str(value))

        def edit(part: Part) -> Part:
            return with_measure(part, self._measure, length)

        self.edited.emit(f'Change of "{self.label}"', edit)


class ChoiceRow(FormRow[Item]):
    """A row for one of several values, each with words of its own."""

    def __init__(self, label: str, field: str, choices: Sequence[tuple[str, object]] = ()) -> None:
        super().__init__(label, field)
        self._values: tuple[object, ...] = ()
        self.edit = Chooser(self)
        self.edit.setPlaceholderText(SEVERAL)
        self.edit.setSizeAdjustPolicy(Chooser.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.edit.activated.connect(self._take)
        self.hold(self.edit)
        self.offer(choices)

    def offer(self, choices: Sequence[tuple[str, object]]) -> None:
        """Offer these choices instead."""
        values = tuple(value for _, value in choices)
        words = [word for word, _ in choices]
        if values != self._values or words != [self.edit.itemText(place) for place in range(self.edit.count())]:
            self._values = values
            self.edit.clear()
            self.edit.addItems(words)

    def show_values(self, items: Sequence[Item], shown: Shown) -> None:
        value = self.value(items)
        self.edit.setCurrentIndex(self._values.index(value) if value in self._values else -1)

    def _take(self, place: int) -> None:
        self.set(self._values[place])


class CheckRow(FormRow[Item]):
    """A row for yes or no."""

    def __init__(self, words: str, field: str) -> None:
        super().__init__("", field)
        self.edit = QCheckBox(words, self)
        self.edit.clicked.connect(self._take)
        self.hold(self.edit)
        self.edit.setAccessibleName(words)

    def show_values(self, items: Sequence[Item], shown: Shown) -> None:
        show_check(self.edit, self.value(items))

    def _take(self) -> None:
        words, value = self.edit.text(), self.edit.checkState() is not Qt.CheckState.Unchecked

        def edit(item: Item) -> Item:
            return replace(item, **{self.field: value})

        self.edited.emit(f'Change of "{words}"', edit)


class LevelRow(FormRow[Part]):
    """A row for a whole number of levels."""

    def __init__(self, label: str, field: str) -> None:
        super().__init__(label, field)
        self.edit = QSpinBox(self)
        self.edit.setLineEdit(TextLine(self.edit))
        self.edit.setRange(-HIGHEST_LEVEL, HIGHEST_LEVEL)
        self.edit.setKeyboardTracking(False)
        self.edit.setFixedWidth(72)
        self.edit.valueChanged.connect(self.set)
        self.hold(self.edit)
        self._row.addStretch(1)

    def show_values(self, items: Sequence[Part], shown: Shown) -> None:
        value = self.value(items)
        self.edit.blockSignals(True)
        self.edit.setValue(value if isinstance(value, int) else 0)
        self.edit.blockSignals(False)


class EdgesRow(FormRow[Part]):
    """A row that says which edges of the board are coated, by the way they face."""

    def __init__(self, label: str) -> None:
        super().__init__(label, "coated_sides")
        grid = QVBoxLayout()
        grid.setSpacing(2)
        self.boxes = tuple(QCheckBox(self) for _ in range(4))
        for pair in (self.boxes[:2], self.boxes[2:]):
            row = QHBoxLayout()
            for box in pair:
                row.addWidget(box)
            grid.addLayout(row)
        self._row.addLayout(grid)
        self._view = View.ELEVATION
        for box in self.boxes:
            box.clicked.connect(self._take)
        self._shown: tuple[bool | None, ...] = ()

    def show_values(self, items: Sequence[Part], shown: Shown) -> None:
        face = shown.shown_face
        self._view = face.view if face else View.ELEVATION
        names = SIDES[self._view]
        self._shown = tuple(_coated(items, name, self._view) for name in names)
        for box, name, value in zip(self.boxes, names, self._shown, strict=True):
            box.setText(name)
            box.setAccessibleName(f"{name} edge coated")
            show_check(box, value)

    def _take(self) -> None:
        """Set the edge whose box is no longer as it was shown."""
        view = self._view
        for box, name, was in zip(self.boxes, SIDES[view], self._shown, strict=True):
            now = box.checkState() is not Qt.CheckState.Unchecked
            if now is not was:
                self._set_side(name, view, coated=now)
                return

    def _set_side(self, name: str, view: View, *, coated: bool) -> None:
        def edit(part: Part) -> Part:
            return with_side_coated(part, name, view, coated=coated)

        self.edited.emit(f"Change of {name} edge", edit)


def show_check(box: QCheckBox, value: object) -> None:
    """Show yes, no, or (for None) that parts differ."""
    box.setTristate(value is None)
    if value is None:
        box.setCheckState(Qt.CheckState.PartiallyChecked)
    else:
        box.setChecked(bool(value))


def words_of(kind: type[Enum]) -> tuple[tuple[str, object], ...]:
    """The members of an enumeration as choices, by their values."""
    return tuple((str(member.value), member) for member in kind)


def ways_of_coating() -> tuple[tuple[str, object], ...]:
    """The ways in which a part is coated, as choices."""
    return tuple((treatment.words, treatment) for treatment in Treatment)


def _coated(parts: Sequence[Part], name: str, view: View) -> bool | None:
    values = {side_is_coated(part, name, view) for part in parts}
    return values.pop() if len(values) == 1 else None
