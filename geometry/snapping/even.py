"""Notices equal spacing and equal size: a person who sets parts out by eye looks for them.

Axis 0 is across and axis 1 is up; on a plan axis 1 is out from the wall. `geometry.snapping.snap` uses it.
"""

from collections.abc import Collection, Mapping
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import WELD_MM, Box, Point
from geometry.seen.columns import Flags, Floats
from shared.job import Face, Unit, View
from shared.trade.kinds import Kind, usual
from shared.written.units import length_words

Guide = tuple[Point, Point]
"""A line to show, from point to point."""

LEAST_GAP_MM = 1.0
"""Parts nearer than this touch: that is not spacing (common practice, no source)."""

_NO_NAMES: Mapping[str, str] = MappingProxyType({})


class Peers(NamedTuple):
    """The parts with which another part is compared: their boxes (n x 4), and what each is called.

    `ways` are the words for a size along either axis. `unit` is the unit in which gaps are told.
    """

    boxes: Floats
    names: tuple[str, ...] = ()
    ways: tuple[str, str] = ("wide", "high")
    unit: Unit = Unit.MM


NOBODY = Peers(np.empty((0, 4)))


class Noticed(NamedTuple):
    """How far to go along an axis to make things even, what is even then, in words, and the lines that show it."""

    by_mm: float
    words: str
    guides: tuple[Guide, ...]


def peers(
    face: Face,
    kind: Kind,
    without: Collection[str] = (),
    names: Mapping[str, str] = _NO_NAMES,
    unit: Unit = Unit.MM,
) -> Peers:
    """The parts of a kind on a face, except those `without`. Doors and drawer fronts count as one kind here.

    `names` gives by id what a part is called; a part that is not in it is called by its name or its kind.
    """
    alike = {other for other, row in usual().items() if row.front} if usual()[kind].front else {kind}
    found = [part for part in face.parts if part.kind in alike and part.id not in without]
    boxes = np.array([outline_box(part.outline) for part in found], dtype=np.float64).reshape(-1, 4)
    called = tuple(names.get(part.id) or part.called for part in found)
    return Peers(boxes, called, ("wide", "high" if face.view is View.ELEVATION else "deep"), unit)


def evenly_spaced(box: Box, among: Peers, axis: int, reach_mm: float) -> Noticed | None:
    """How a dragged box (left, bottom, right, top) comes to be evenly spaced; None when that is out of reach.

    It is evenly spaced half way between its neighbours, or as far from one neighbour as that is from the next one
    beyond. Neighbours are the nearest of the boxes that overlap it in the other axis.
    """
    near = among.boxes[_share_band(among.boxes, box, axis)]
    low, high = near[:, axis], near[:, axis + 2]
    before, after = _last(near, high <= box[axis] + reach_mm, high), _first(near, low >= box[axis + 2] - reach_mm, low)
    found = []
    if before is not None and after is not None:
        found.append(_centred(box, before, after, axis))
    if after is not None:
        beyond = _first(near, low >= after[axis + 2] - WELD_MM, low)
        found.append(_repeated(box, after, beyond, axis))
    if before is not None:
        beyond = _last(near, high <= before[axis] + WELD_MM, high)
        found.append(_repeated(box, before, beyond, axis))
    reached = [each for each in found if each is not None and abs(each[0]) <= reach_mm]
    if not reached:
        return None
    by, gap, pairs = min(reached, key=lambda each: abs(each[0]))
    stands = _shifted(box, axis, by)
    guides = tuple(_gap_line(one or stands, other or stands, axis) for one, other in pairs)
    return Noticed(by, f"evenly spaced: {length_words(gap, among.unit)}", guides)


def same_size(here: Point, opposite: Point, among: Peers, axis: int, reach_mm: float) -> Noticed | None:
    """How a pulled corner makes a box as large as another part along an axis; None when that is out of reach.

    `opposite` is the corner of the box that stays. Of several parts of that size, the nearest to that corner is named.
    """
    size = abs(here[axis] - opposite[axis])
    if not among.names or size <= WELD_MM:
        return None
    boxes = among.boxes
    more = boxes[:, axis + 2] - boxes[:, axis] - size
    least = np.abs(more).min()
    if least > reach_mm:
        return None
    middle = (boxes[:, :2] + boxes[:, 2:]) / 2 - np.array(opposite)
    away = np.where(np.abs(more) <= least + WELD_MM, np.hypot(middle[:, 0], middle[:, 1]), np.inf)
    row = int(np.argmin(away))
    left, bottom, right, top = map(float, boxes[row])
    by = float(more[row]) * (-1.0 if here[axis] < opposite[axis] else 1.0)
    guide = ((left, bottom), (right, bottom)) if axis == 0 else ((left, bottom), (left, top))
    return Noticed(by, f"as {among.ways[axis]} as {among.names[row]}", (guide,))


_Spacing = tuple[float, float, tuple[tuple[Box | None, Box | None], ...]]
"""How far to go, the gap there is then, and the pairs of boxes between which it lies; None is the box that goes."""


def _share_band(boxes: Floats, box: Box, axis: int) -> Flags:
    across = 1 - axis
    shared: Flags = (boxes[:, across] < box[across + 2] - WELD_MM) & (boxes[:, across + 2] > box[across] + WELD_MM)
    return shared


def _first(boxes: Floats, able: Flags, at: Floats) -> Box | None:
    return _chosen(boxes, int(np.argmin(np.where(able, at, np.inf)))) if able.any() else None


def _last(boxes: Floats, able: Flags, at: Floats) -> Box | None:
    return _chosen(boxes, int(np.argmax(np.where(able, at, -np.inf)))) if able.any() else None


def _chosen(boxes: Floats, row: int) -> Box:
    left, bottom, right, top = map(float, boxes[row])
    return left, bottom, right, top


def _centred(box: Box, before: Box, after: Box, axis: int) -> _Spacing | None:
    gap = (after[axis] - before[axis + 2] - (box[axis + 2] - box[axis])) / 2
    if gap < LEAST_GAP_MM:
        return None
    return before[axis + 2] + gap - box[axis], gap, ((before, None), (None, after))


def _repeated(box: Box, neighbour: Box, beyond: Box | None, axis: int) -> _Spacing | None:
    """The spacing that puts a box as far from its neighbour as that is from the next one beyond; None without one."""
    if beyond is None:
        return None
    if beyond[axis] > neighbour[axis]:
        gap = beyond[axis] - neighbour[axis + 2]
        found: _Spacing = (neighbour[axis] - gap - box[axis + 2], gap, ((None, neighbour), (neighbour, beyond)))
    else:
        gap = neighbour[axis] - beyond[axis + 2]
        found = (neighbour[axis + 2] + gap - box[axis], gap, ((beyond, neighbour), (neighbour, None)))
    return found if gap >= LEAST_GAP_MM else None


def _shifted(box: Box, axis: int, by: float) -> Box:
    left, bottom, right, top = box
    return (left + by, bottom, right + by, top) if axis == 0 else (left, bottom + by, right, top + by)


def _gap_line(one: Box, other: Box, axis: int) -> Guide:
    """The line across the gap between two boxes, in the middle of the band that they share."""
    across = 1 - axis
    middle = (max(one[across], other[across]) + min(one[across + 2], other[across + 2])) / 2
    low, high = one[axis + 2], other[axis]
    return ((low, middle), (high, middle)) if axis == 0 else ((middle, low), (middle, high))
