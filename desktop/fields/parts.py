"""The fields of parts: the value on which several parts agree, and a part with a field set."""

from collections.abc import Callable, Iterable
from typing import TypeVar

from msgspec.structs import replace

from geometry.outlines.side_names import side_names
from geometry.parts.box import BOTTOM, HIGH
from shared.job import Part, View
from takeoff.surfaces.coated import coated_sides

Field = TypeVar("Field")
Item = TypeVar("Item")


ON_A_PLAN = {BOTTOM.label: "From wall", HIGH.label: "Depth"}
"""What measures that go up on a wall are called on a plan, where they go out from the wall."""


def agreed(items: Iterable[Item], field: Callable[[Item], Field]) -> Field | None:
    """The value that a field has in all items; None if they differ or there are no items."""
    values = [field(item) for item in items]
    return values[0] if values and all(value == values[0] for value in values) else None


def side_is_coated(part: Part, name: str, view: View) -> bool | None:
    """Whether the edges that face this way are coated: all, none, or some (None)."""
    facing = {index for index, side in enumerate(side_names(part.outline, view)) if side == name}
    coated = facing & set(coated_sides(part))
    return None if coated and coated != facing else bool(coated)


def with_side_coated(part: Part, name: str, view: View, *, coated: bool) -> Part:
    """The part with the edges that face this way coated, or not coated."""
    facing = {index for index, side in enumerate(side_names(part.outline, view)) if side == name}
    before = set(coated_sides(part))
    sides = before | facing if coated else before - facing
    return replace(part, coated_sides=tuple(sorted(sides)))
