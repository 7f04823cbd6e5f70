"""Things to look at in sizes: those far from the usual ones, at most one of each sort a face. They may be right."""

import math
import tomllib
from collections.abc import Iterator, Sequence
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec

from geometry.outlines.measured import area_mm2, outline_box
from geometry.outlines.sides import Box, sides
from geometry.seen.near import USUAL_LIMIT_MM
from shared.findings import Code, Finding
from shared.job import Face, Part, Unit, View
from shared.trade.kinds import Kind
from shared.written.units import length_words, show_length
from takeoff.surfaces.areas import SAME_MM2

LOW_MM = 200.0
"""A cabinet that begins no higher than this stands on the floor or a plinth (common practice, no source)."""

TALL_MM = 1300.0
"""A cabinet or bench that ends higher than this is no base unit (common practice, no source)."""


class UsualSize(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A row of `data/usual_sizes.toml`, in mm. The fields are explained at the head of that file."""

    least: float
    far: float
    source: str
    most: float = math.inf

    def is_far(self, size_mm: float) -> bool:
        """Whether a size is so far from usual that it is worth a look."""
        return self.off_mm(size_mm) > self.far

    def off_mm(self, size_mm: float) -> float:
        """How far a size lies outside the usual ones, mm; 0 or less for a usual size."""
        return max(self.least - size_mm, size_mm - self.most)

    def words(self, unit: Unit) -> str:
        """The usual sizes, for a sentence: "820 to 920 mm", "at least 100 mm"."""
        if math.isinf(self.most):
            return f"at least {length_words(self.least, unit)}"
        return f"{show_length(self.least, unit)} to {length_words(self.most, unit)}"


class _Measured(NamedTuple):
    """A size, the parts that it was measured on, and the words before and after it in a sentence."""

    size_mm: float
    parts: tuple[Part, ...]
    what: str
    how: str


@cache
def usual_sizes() -> dict[str, UsualSize]:
    """The rows of the table, by name."""
    table = tomllib.loads((files("takeoff") / "data" / "usual_sizes.toml").read_text("utf-8"))
    return msgspec.convert(table, dict[str, UsualSize])


def look_at_sizes(face: Face, unit: Unit) -> Iterator[Finding]:
    """The unusual sizes of a face: of each sort, the size that is farthest off."""
    if face.view is View.PLAN:
        sorts = {"benchtop": _depths(face)}
    else:
        boxes = [(part, outline_box(part.outline)) for part in face.parts]
        sorts = {
            "base_unit": _base_units(boxes),
            "bench": _benches(boxes),
            "kickboard": _kickboards(boxes),
            "clearance_mm" if unit is Unit.MM else "clearance_in": _clearances(boxes),
        }
    for name, measured in sorts.items():
        usual = usual_sizes()[name]
        worst = max(measured, key=lambda each: usual.off_mm(each.size_mm), default=None)
        if worst is not None and usual.is_far(worst.size_mm):
            size = length_words(worst.size_mm, unit)
            message = (
                f"{worst.what} {size} {worst.how}, which is unusual; {usual.words(unit)} is usual. "
                "Measure it again, unless it is meant to be so."
            )
            yield Finding(Code.UNUSUAL_SIZE, message, face.id, tuple(part.id for part in worst.parts))


_Boxed = Sequence[tuple[Part, Box]]


def _depths(plan: Face) -> Iterator[_Measured]:
    """How deep the benchtops of a plan are, out from their wall, or else the shorter way. Only rectangles count."""
    for part in plan.parts:
        left, bottom, right, top = outline_box(part.outline)
        is_box = abs(area_mm2(part.outline) - (right - left) * (top - bottom)) <= SAME_MM2
        if part.kind is Kind.BENCHTOP and is_box:
            tied = {tie.side for tie in plan.ties if tie.part == part.id}
            backs = [side for side in sides(part.outline) if side.vertex in tied]
            level = [abs(side.x1 - side.x0) > abs(side.y1 - side.y0) for side in backs] or [True, False]
            depth = min(top - bottom if each else right - left for each in level)
            yield _Measured(depth, (part,), f"{part.called} is", "deep")


def _base_units(boxes: _Boxed) -> Iterator[_Measured]:
    """How high above the floor the base cabinets end that have no other cabinet on them."""
    usual = usual_sizes()["base_unit"]
    cabinets = [(part, box) for part, box in boxes if part.kind is Kind.CABINET]
    for part, box in cabinets:
        if box[1] > LOW_MM or box[3] > TALL_MM or not usual.is_far(box[3]):
            continue
        if not any(abs(other[1] - box[3]) <= USUAL_LIMIT_MM and _overlap(box, other) for _, other in cabinets):
            yield _Measured(box[3], (part,), f"{part.called} ends", "above the floor")


def _benches(boxes: _Boxed) -> Iterator[_Measured]:
    for part, box in boxes:
        if part.kind is Kind.BENCHTOP and box[3] <= TALL_MM:
            yield _Measured(box[3], (part,), f"{part.called} ends", "above the floor")


def _kickboards(boxes: _Boxed) -> Iterator[_Measured]:
    for part, box in boxes:
        if part.kind is Kind.KICKBOARD:
            yield _Measured(box[3] - box[1], (part,), f"{part.called} is", "high")


def _clearances(boxes: _Boxed) -> Iterator[_Measured]:
    """How far cabinets hang above a bench. A cabinet that stands on the bench does not count."""
    benches = _levels([(part, box) for part, box in boxes if part.kind is Kind.BENCHTOP])
    for part, box in boxes:
        if part.kind is not Kind.CABINET:
            continue
        for bench, level in benches:
            gap = box[1] - level[3]
            if gap > USUAL_LIMIT_MM and _overlap(box, level):
                yield _Measured(gap, (bench, part), f"{part.called} hangs", f"over {bench.called}")


def _levels(benches: _Boxed) -> list[tuple[Part, Box]]:
    """Benchtops side by side at one height, put together under the name of the first."""
    levels: list[tuple[Part, Box]] = []
    for part, box in sorted(benches, key=lambda each: (each[1][3], each[1][0])):
        if levels and levels[-1][1][3] == box[3] and box[0] - levels[-1][1][2] <= USUAL_LIMIT_MM:
            first, (left, bottom, right, top) = levels[-1]
            levels[-1] = (first, (left, min(bottom, box[1]), max(right, box[2]), top))
        else:
            levels.append((part, box))
    return levels


def _overlap(one: Box, other: Box) -> bool:
    """Whether two boxes share a part of their width, so that one is above the other."""
    return min(one[2], other[2]) - max(one[0], other[0]) > USUAL_LIMIT_MM
