"""The rows about tiles in the details: a typed width or height makes a part tiled, an empty one untiled."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from desktop.fields.chooser import Chooser
from desktop.fields.form_rows import SEVERAL, FormRow
from desktop.fields.length import LengthField
from desktop.fields.parts import agreed
from desktop.state.shown import Shown
from shared.job import Part, Unit
from takeoff.surfaces.tiles import SIZES, may_be_tiled, with_tiles, without_tiles

NO_TILES = "none"

SHIFTS = {0.0: "none", 1 / 2: "half", 1 / 3: "a third", 1 / 4: "a quarter"}
"""The share of a tile by which courses are usually shifted, and its name (common practice, no source)."""


class TileField(LengthField):
    """A length that may be left empty: `emptied` says that the person took it away."""

    emptied = Signal()

    def _take(self) -> None:
        if self.isModified() and not self.text().strip():
            self.setModified(False)
            self.told.emit("")
            self.emptied.emit()
            return
        super()._take()


class TileLengthRow(FormRow[Part]):
    """A row for one length of the tiles, by its name in `Tiles`. Parts without tiles show only the width and height."""

    def __init__(self, label: str, measure: str) -> None:
        super().__init__(label, "tiles")
        self._measure = measure
        self._unit = Unit.MM
        self.edit = TileField(label, self, any_sign=measure.startswith("start"), zero=measure == "grout_mm")
        self.edit.taken.connect(self.set)
        self.edit.told.connect(self.told)
        self.edit.emptied.connect(self._empty)
        self.hold(self.edit)

    def concerns(self, items: Sequence[Part]) -> bool:
        return _concern(items, self._measure)

    def show_values(self, items: Sequence[Part], shown: Shown) -> None:
        self._unit = shown.unit
        if any(part.tiles is not None for part in items):
            self.edit.show_length(agreed(items, self._length_of), shown.unit)
        else:
            self.edit.ask(NO_TILES, shown.unit)

    def set(self, value: object) -> None:
        length, unit = float(str(value)), self._unit

        def edit(part: Part) -> Part:
            return with_tiles(part, self._measure, length, unit)

        self.edited.emit(f'Change of "{self.label}"', edit)

    def _empty(self) -> None:
        if self._measure in SIZES:
            self.edited.emit("Remove tiles", without_tiles)
        else:
            self.set(0.0)

    def _length_of(self, part: Part) -> float | None:
        return None if part.tiles is None else float(getattr(part.tiles, self._measure))


class TileShiftRow(FormRow[Part]):
    """A row for the share of a tile by which each course is shifted over the one below."""

    def __init__(self, label: str) -> None:
        super().__init__(label, "tiles")
        self._shifts: tuple[float, ...] = ()
        self.edit = Chooser(self)
        self.edit.setPlaceholderText(SEVERAL)
        self.edit.setSizeAdjustPolicy(Chooser.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.edit.activated.connect(self._take)
        self.hold(self.edit)

    def concerns(self, items: Sequence[Part]) -> bool:
        return _concern(items, "course_shift")

    def show_values(self, items: Sequence[Part], shown: Shown) -> None:
        shift = agreed(items, _shift_of)
        shifts = tuple(SHIFTS) if shift is None or shift in SHIFTS else (*SHIFTS, shift)
        if shifts != self._shifts:
            self._shifts = shifts
            self.edit.clear()
            self.edit.addItems([SHIFTS.get(each, f"{each:g} of a tile") for each in shifts])
        self.edit.setCurrentIndex(-1 if shift is None else shifts.index(shift))

    def _take(self, place: int) -> None:
        shift = self._shifts[place]

        def edit(part: Part) -> Part:
            return with_tiles(part, "course_shift", shift, Unit.MM)

        self.edited.emit(f'Change of "{self.label}"', edit)


def _concern(parts: Sequence[Part], measure: str) -> bool:
    if measure in SIZES:
        return bool(parts) and all(map(may_be_tiled, parts))
    return bool(parts) and all(part.tiles is not None for part in parts)


def _shift_of(part: Part) -> float | None:
    return None if part.tiles is None else part.tiles.course_shift
