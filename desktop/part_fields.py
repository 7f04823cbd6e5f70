"""The fields of parts: what they show, agreed between several, and the parts with a field set."""

from collections.abc import Callable, Iterable
from typing import NamedTuple, TypeVar

from msgspec.structs import replace

from geometry.moves import resized
from geometry.outline import outline_box
from geometry.side_names import side_names
from shared.job import Part, View
from takeoff.coated import coated_sides

Field = TypeVar("Field")
Box = tuple[float, float, float, float]


class Measure(NamedTuple):
    """One of the four readings that place a box: how it is read off, and the box with another reading."""

    label: str
    read: Callable[[Box], float]
    set: Callable[[Box, float], Box]
    is_place: bool = False


def _at_left(box: Box, length: float) -> Box:
    return length, box[1], length + box[2] - box[0], box[3]


def _at_bottom(box: Box, length: float) -> Box:
    return box[0], length, box[2], length + box[3] - box[1]


def _as_wide(box: Box, length: float) -> Box:
    return box[0], box[1], box[0] + length, box[3]


def _as_high(box: Box, length: float) -> Box:
    return box[0], box[1], box[2], box[1] + length


def _left(box: Box) -> float:
    return box[0]


def _bottom(box: Box) -> float:
    return box[1]


def _width(box: Box) -> float:
    return box[2] - box[0]


def _height(box: Box) -> float:
    return box[3] - box[1]


LEFT = Measure("From left", _left, _at_left, is_place=True)
BOTTOM = Measure("From floor", _bottom, _at_bottom, is_place=True)
WIDE = Measure("Width", _width, _as_wide)
HIGH = Measure("Height", _height, _as_high)
ON_A_PLAN = {BOTTOM.label: "From wall", HIGH.label: "Depth"}
"""What the readings that run up on a wall are called where they run out from it."""


def agreed(parts: Iterable[Part], field: Callable[[Part], Field]) -> Field | None:
    """The value that a field has in all parts; None where they differ or there are none."""
    values = [field(part) for part in parts]
    return values[0] if values and all(value == values[0] for value in values) else None


def reading(part: Part, measure: Measure) -> float:
    """A reading of the box round a part."""
    return measure.read(outline_box(part.outline))


def with_reading(part: Part, measure: Measure, length_mm: float) -> Part:
    """The part moved or resized to a reading. OutlineError where its outline cannot follow."""
    return resized(part, measure.set(outline_box(part.outline), length_mm))


def side_is_coated(part: Part, name: str, view: View) -> bool | None:
    """Whether the edges that face this way are coated: all, none, or some (None)."""
    facing = {index for index, side in enumerate(side_names(part.outline, view)) if side == name}
    coated = facing & set(coated_sides(part))
    return None if coated and coated != facing else bool(coated)


def with_side_coated(part: Part, name: str, view: View, *, coated: bool) -> Part:
    """The part with the edges that face this way coated, or left."""
    facing = {index for index, side in enumerate(side_names(part.outline, view)) if side == name}
    before = set(coated_sides(part))
    sides = before | facing if coated else before - facing
    return replace(part, coated_sides=tuple(sorted(sides)))
