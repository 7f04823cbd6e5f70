"""The outline of a part measured exactly, arcs included, and the check that it can be measured.

`geometry.outlines.sides` measures one side.
"""

import math
from bisect import bisect_right
from collections.abc import Iterator
from functools import lru_cache

from geometry.outlines.contacts import meet
from geometry.outlines.sides import WELD_MM, Box, Point, Side, sides
from shared.errors import OutlineError
from shared.job import Outline

MOST_BULGE = 1000.0
"""An arc of a greater bulge is a whole circle with a gap of less than a quarter of a degree: a slip, not a shape."""

REACH_MM = 1e9
"""Beyond this (1000 km) the rounding of floats is coarser than a tape; the job's own limits are far lower."""

FEW_SIDES = 16
"""Up to this many sides it does not matter which way they are swept."""

KEPT = 8192
"""How many outlines' boxes are remembered: they are asked for again and again, and only a dragged part's changes."""


def area_mm2(outline: Outline) -> float:
    """The area enclosed, whichever way round the outline runs; 0 for an outline without vertices.

    It is the trapezium sum over the chords plus the segment of each arc. Coordinates are taken from the first vertex,
    so that a part far from the face's corner loses no digits.
    """
    return abs(signed_area_mm2(outline))


def signed_area_mm2(outline: Outline) -> float:
    """The area enclosed, positive for an anticlockwise outline; 0 for an outline without vertices."""
    if not outline:
        return 0.0
    x, y = outline[0].x, outline[0].y
    total = 0.0
    for side in sides(outline):
        total += ((side.x0 - x) * (side.y1 - y) - (side.x1 - x) * (side.y0 - y)) / 2 + side.segment_mm2
    return total


def perimeter_mm(outline: Outline) -> float:
    """The length of all sides, along the arcs; 0 for an outline without vertices."""
    return sum(side_lengths_mm(outline))


def side_lengths_mm(outline: Outline) -> tuple[float, ...]:
    """The length of the side that leaves each vertex, along its arc; 0 at a repeated vertex."""
    lengths = {side.vertex: side.length_mm for side in sides(outline)}
    return tuple(lengths.get(index, 0.0) for index in range(len(outline)))


@lru_cache(maxsize=KEPT)
def outline_box(outline: Outline) -> Box:
    """The smallest upright box round an outline with its arcs: left, bottom, right, top. ValueError for no vertices."""
    if not outline:
        raise ValueError("an outline without vertices has no box")
    if not any(vertex.bulge for vertex in outline):
        xs, ys = [vertex.x for vertex in outline], [vertex.y for vertex in outline]
        return (min(xs), min(ys), max(xs), max(ys))
    return joined([side.box for side in sides(outline)])


def joined(boxes: list[Box]) -> Box:
    """The smallest box round all these boxes. ValueError for an empty list."""
    left, bottom, right, top = zip(*boxes, strict=True)
    return (min(left), min(bottom), max(right), max(top))


def flattened(outline: Outline, sagitta_mm: float) -> tuple[Point, ...]:
    """Points round an outline, in its direction. No chord between them leaves its arc by more than `sagitta_mm`.

    It is for showing only: measure with the functions above, which are exact.
    """
    return tuple(point for side in sides(outline) for point in side.points(sagitta_mm))


def contains(outline: Outline, x: float, y: float) -> bool:
    """Whether a point lies inside an outline or, to a nanometre, on it; arcs are exact.

    A ray to the right from a point inside crosses the chords an odd number of times. Each arc's segment that holds the
    point turns the answer over. A point level with a vertex or on a chord counts as moved a hair up and to the right,
    as in `Side.is_beside`.
    """
    inside = False
    for side in sides(outline):
        if side.distance_mm(x, y) <= WELD_MM:
            return True
        if (side.y0 <= y) != (side.y1 <= y):
            inside ^= x < side.x0 + (y - side.y0) * (side.x1 - side.x0) / (side.y1 - side.y0)
        if side.bulge and side.is_beside(x, y):
            cx, cy = side.centre
            inside ^= (x - cx) * (x - cx) + (y - cy) * (y - cy) < side.radius_mm * side.radius_mm
    return inside


def check_outline(outline: Outline, where: str) -> None:
    """Refuse an outline that cannot be measured: OutlineError, which names `where`.

    Such an outline has numbers that are not finite, too few corners, nothing enclosed, an absurd arc, or sides that
    cross, touch or run back along each other.
    """
    _check_numbers(outline, where)
    around = sides(outline)
    _check_arcs(around, where)
    if len(around) < 2 or (len(around) == 2 and not any(side.bulge for side in around)):
        raise OutlineError(
            "the outline has too few corners to enclose an area", where=where, do="give it a third corner or an arc"
        )
    for first, second in _neighbours(around):
        if meet(around[first], around[second], _shared_ends(around, first, second)):
            numbers = [around[place].vertex + 1 for place in (first, second)]
            raise OutlineError(
                f"side {numbers[0]} and side {numbers[1]} of the outline cross, touch or run back along each other",
                where=where,
                do="move a corner so that the sides no longer cross or touch",
            )
    if area_mm2(outline) <= WELD_MM * perimeter_mm(outline):
        raise OutlineError("the outline encloses no area", where=where, do="give it a width and a height")


def _check_numbers(outline: Outline, where: str) -> None:
    for number, vertex in enumerate(outline, 1):
        if not all(map(math.isfinite, (vertex.x, vertex.y, vertex.bulge))):
            raise OutlineError(
                f"corner {number} has a value that is not a number", where=where, do="measure that corner again"
            )
        if max(abs(vertex.x), abs(vertex.y)) > REACH_MM:
            raise OutlineError(f"corner {number} is farther away than 1000 km", where=where, do="check its distances")


def _check_arcs(around: tuple[Side, ...], where: str) -> None:
    for side in around:
        if side.chord_mm <= WELD_MM:
            raise OutlineError(
                f"side {side.vertex + 1} is an arc that begins and ends at one point",
                where=where,
                do="make a circle of two half circles",
            )
        if abs(side.bulge) > MOST_BULGE:
            raise OutlineError(
                f"side {side.vertex + 1} is an arc of almost a whole turn",
                where=where,
                do="check the bulge of that arc",
            )


def crowding(outline: Outline) -> int:
    """How many pairs of sides must be looked at to know that none of an outline's cross, at most."""
    boxes = [side.box for side in sides(outline)]
    return min(_sharing(boxes, 0), _sharing(boxes, 1))


def _sharing(boxes: list[Box], axis: int) -> int:
    """How many pairs of boxes share a stretch from left to right (axis 0), or a stretch up (axis 1)."""
    begins = sorted(box[axis] for box in boxes)
    reached = sum(bisect_right(begins, box[axis + 2] + WELD_MM) for box in boxes)
    return reached - len(boxes) * (len(boxes) + 1) // 2


def _neighbours(around: tuple[Side, ...]) -> Iterator[tuple[int, int]]:
    """All pairs of sides whose boxes meet, by their places, the lower first.

    They are found by sweeping from left to right, or up where that leaves fewer pairs to be looked at.
    """
    boxes = [side.box for side in around]
    if len(around) > FEW_SIDES and _sharing(boxes, 1) < _sharing(boxes, 0):
        boxes = [(bottom, left, top, right) for left, bottom, right, top in boxes]
    begun: list[int] = []
    for place in sorted(range(len(around)), key=lambda place: boxes[place][0]):
        left, bottom, _, top = boxes[place]
        begun = [other for other in begun if boxes[other][2] >= left - WELD_MM]
        for other in begun:
            if boxes[other][1] <= top + WELD_MM and boxes[other][3] >= bottom - WELD_MM:
                yield (min(place, other), max(place, other))
        begun.append(place)


def _shared_ends(around: tuple[Side, ...], first: int, second: int) -> tuple[Point, ...]:
    """The ends that two sides of an outline share because one follows the other; none for sides farther apart."""
    follows = (around[first].end,) if second == first + 1 else ()
    goes_round = (around[first].start,) if first == 0 and second == len(around) - 1 else ()
    return follows + goes_round
