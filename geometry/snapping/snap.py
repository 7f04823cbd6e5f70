"""Finds what a point or a dragged part snaps to, and says it in words.

A point goes to a corner. If none is within reach, it goes to the centre of an arc or the middle of a side; if there is
none of these, onto the nearest side. Along that side, or across and up when there is no side, it also goes in line with
a set-out line, with a corner or centre of another part, or with the ends, floor and top of the face; or it goes to
where sizes become equal. The nearest of these decides. A dragged part goes in line in the same way, or to where gaps
become equal (`geometry.snapping.even`). Nothing pulls from beyond the reach, and nothing pulls what is dragged farther
across or up than the hand took it. Targets are prepared once for the parts that do not move.
"""

import math
from collections.abc import Collection, Sequence
from typing import NamedTuple

import numpy as np

from geometry.outlines.sides import WELD_MM, Box, Point, Side, sides
from geometry.parts.extent import extent
from geometry.seen.columns import Floats
from geometry.snapping.even import NOBODY, Guide, Noticed, Peers, evenly_spaced, same_size
from shared.job import Face, Part, View, Way
from shared.trade.kinds import Kind

SetOut = tuple[Way, float, str]
"""A set-out line: its way (a line read across is upright, one read up is level), where it is, and its words."""

EVERYWHERE = float("nan")
"""Stands for the place along a set-out line: the line crosses the whole face, so it is nearer than any corner."""

ANYWHERE = (math.inf, math.inf)
"""Stands for how far the hand took a part that it does not drag: only the reach counts then."""

Named = tuple[Point, str]
"""A point and what it is, in words."""


class Snap(NamedTuple):
    """Where a point has gone, to what, in words, and the lines that show it; the words are "" if it stays."""

    x: float
    y: float
    words: str = ""
    guides: tuple[Guide, ...] = ()


class Marks(NamedTuple):
    """Points to snap to, or to be in line with: where they are (n x 2), and what each is, in words."""

    at: Floats
    words: tuple[str, ...]


class SnapTargets(NamedTuple):
    """All that can be snapped to on a face.

    `points` are in order of preference. `sides` have their words, and `boxes` (n x 4) are the boxes of the sides.
    `lines` are the points to be in line with, first in x, then in y. `peers` are the parts whose size and spacing are
    compared.
    """

    points: tuple[Marks, ...]
    sides: tuple[tuple[Side, str], ...]
    boxes: Floats
    lines: tuple[Marks, Marks]
    peers: Peers = NOBODY


class Aligned(NamedTuple):
    """How far to go along one axis to be in line with something.

    `words` and `seen_from` say what that is and where; `point` is the point that is in line then, before it goes.
    """

    by_mm: float
    words: str
    seen_from: Point
    point: Point


def snap_targets(
    face: Face,
    moving: Collection[str] = (),
    own: Sequence[Point] = (),
    lines: Sequence[SetOut] = (),
    among: Peers = NOBODY,
) -> SnapTargets:
    """All that can be snapped to: the parts of a face except those `moving`, and the corners of what is drawn (`own`).

    `lines` are the face's set-out lines, each with its words: "on the set-out line at 600". `among` are the parts whose
    spacing and size are compared.
    """
    parts = [part for part in face.parts if part.id not in moving]
    around = [(side, part.called) for part in parts for side in sides(part.outline)]
    corners = [(side.start, f"corner of {name}") for side, name in around]
    corners += [(point, "corner of this outline") for point in own]
    centres = [(side.centre, f"centre of {name}") for side, name in around if side.bulge]
    middles = [(side.middle, f"middle of a side of {name}") for side, name in around]
    inner = [(point, f"in line with {words}") for point, words in corners + centres]
    ends, levels = _bounds(face, [part for part in parts if part.kind is Kind.WALL])
    return SnapTargets(
        (_marks(corners), _marks(centres + middles)),
        tuple((side, f"side of {name}") for side, name in around),
        np.array([side.box for side, _ in around], dtype=np.float64).reshape(-1, 4),
        (
            _marks([((at, EVERYWHERE), words) for way, at, words in lines if way is Way.ACROSS] + ends + inner),
            _marks([((EVERYWHERE, at), words) for way, at, words in lines if way is Way.UP] + levels + inner),
        ),
        among,
    )


def snap(x: float, y: float, targets: SnapTargets, reach_mm: float, opposite: Point | None = None) -> Snap:
    """Where a point goes: to the best target within `reach_mm`. Without a target it stays and has no words.

    A point with an `opposite` is the corner of a box whose opposite corner stays: the box may also become as large as
    another part.
    """
    for marks in targets.points:
        row = _nearest(marks, x, y, reach_mm)
        if row is not None:
            at_x, at_y = map(float, marks.at[row])
            return Snap(at_x, at_y, marks.words[row])
    beside = _nearest_side(targets, x, y, reach_mm)
    if beside:
        return _along_side(targets, beside, (x, y), opposite, reach_mm)
    return _evenly(x, y, targets, (reach_mm, reach_mm), opposite)


def snapped_pull(at: Point, targets: SnapTargets, reach_mm: float, went: Point, opposite: Point | None = None) -> Snap:
    """Where a corner goes that the hand has pulled `went` far across and up, to `at`. The rest is as in `snap`.

    It goes where `snap` says, unless that is farther across or up than the hand took it: then it only goes in line, or
    to where the sizes become equal, within what the hand took it.
    """
    found = snap(*at, targets, reach_mm, opposite)
    across, up = _within(reach_mm, went)
    if abs(found.x - at[0]) <= across and abs(found.y - at[1]) <= up:
        return found
    return _evenly(*at, targets, (across, up), opposite)


def snapped_move(
    points: Sequence[Point],
    targets: SnapTargets,
    reach_mm: float,
    box: Box | None = None,
    went: Point = ANYWHERE,
) -> Snap:
    """How much farther a dragged part goes: `x` and `y` are distances, (0, 0) without words when nothing is near.

    `points` are its corners where the hand has put it. `box` is the box round it; None does not compare its spacing.
    `went` is how far across and up the hand took it: the part goes no farther than that again. If a corner comes to lie
    on another part's corner, that decides, and the words say so. Otherwise, across and up, the nearer decides: a corner
    in line, or equal spacing.
    """
    reach = _within(reach_mm, went)
    way = _in_line(points, targets, reach)
    corners = targets.points[0]
    for x, y in points if way.words else ():
        row = _nearest(corners, x + way.x, y + way.y, WELD_MM)
        if row is not None:
            return way._replace(words=corners.words[row])
    if box is None:
        return way
    even = (evenly_spaced(box, targets.peers, 0, reach[0]), evenly_spaced(box, targets.peers, 1, reach[1]))
    return _in_line(points, targets, reach, even)


def _within(reach_mm: float, went: Point) -> Point:
    """How far across and up something may be pulled that the hand took so far across and up."""
    return min(reach_mm, abs(went[0])), min(reach_mm, abs(went[1]))


def _evenly(x: float, y: float, targets: SnapTargets, reach: Point, opposite: Point | None) -> Snap:
    """Where a point goes to be in line with something, or to make sizes equal, within this reach across and up."""
    sizes = (_sized((x, y), opposite, targets, 0, reach[0]), _sized((x, y), opposite, targets, 1, reach[1]))
    way = _in_line(((x, y),), targets, reach, sizes)
    return way._replace(x=x + way.x, y=y + way.y)


def _marks(named: Sequence[Named]) -> Marks:
    at = np.array([point for point, _ in named], dtype=np.float64).reshape(-1, 2)
    return Marks(at, tuple(words for _, words in named))


def _bounds(face: Face, walls: Sequence[Part]) -> tuple[list[Named], list[Named]]:
    """The points of the face itself to be in line with: its ends; its floor and top. Only a wall has ends and a top."""
    floor = "on the floor" if face.view is View.ELEVATION else "on the wall line"
    if not walls:
        return [], [((0.0, 0.0), floor)]
    left, _, right, top = extent(Face(face.id, face.name, parts=tuple(walls)))
    ends = [((left, 0.0), "at the left end of the face"), ((right, 0.0), "at the right end of the face")]
    return ends, [((left, 0.0), floor), ((left, top), "at the top of the face")]


def _nearest(marks: Marks, x: float, y: float, reach_mm: float) -> int | None:
    if not marks.words:
        return None
    away = np.hypot(marks.at[:, 0] - x, marks.at[:, 1] - y)
    row = int(np.argmin(away))
    return row if away[row] <= reach_mm else None


def _nearest_side(targets: SnapTargets, x: float, y: float, reach_mm: float) -> tuple[Side, str] | None:
    left, bottom, right, top = targets.boxes.T
    near = (left - reach_mm <= x) & (x <= right + reach_mm) & (bottom - reach_mm <= y) & (y <= top + reach_mm)
    reached = [targets.sides[row] for row in map(int, np.flatnonzero(near))]
    best = min(reached, key=lambda pair: pair[0].distance_mm(x, y), default=None)
    return best if best and best[0].distance_mm(x, y) <= reach_mm else None


def _sized(here: Point, opposite: Point | None, targets: SnapTargets, axis: int, reach_mm: float) -> Noticed | None:
    return same_size(here, opposite, targets.peers, axis, reach_mm) if opposite else None


def _along_side(
    targets: SnapTargets, beside: tuple[Side, str], here: Point, opposite: Point | None, reach_mm: float
) -> Snap:
    """The nearest point of a side; along a level or upright side it also goes to what is within reach there."""
    side, words = beside
    x, y = side.nearest(*here)
    along = 0 if side.y0 == side.y1 else 1
    if side.bulge:
        return Snap(x, y, words)
    if side.x0 != side.x1 and side.y0 != side.y1:
        return _crossing(targets, beside, (x, y), reach_mm)
    ways = _nearer(
        _aligned(targets.lines[along], ((x, y),), along, reach_mm),
        _sized((x, y), opposite, targets, along, reach_mm),
    )
    by = ways[0].by_mm if ways else 0.0
    shift = (by, 0.0) if along == 0 else (0.0, by)
    to = (x + shift[0], y + shift[1])
    if not ways or side.distance_mm(*to) > WELD_MM:
        return Snap(x, y, words)
    return Snap(*to, ", ".join((words, *(way.words for way in ways))), _guides(ways, shift))


def _crossing(targets: SnapTargets, beside: tuple[Side, str], foot: Point, reach_mm: float) -> Snap:
    """A point of a slanting side: where the nearest line within reach, across or up, crosses it; else `foot`."""
    side, words = beside
    ways = []
    for axis in (0, 1):
        way = _aligned(targets.lines[axis], (foot,), axis, reach_mm)
        to = _at_line(side, axis, foot[axis] + way.by_mm) if way else foot
        if way and side.distance_mm(*to) <= WELD_MM and math.dist(foot, to) <= reach_mm:
            ways.append((math.dist(foot, to), to, way))
    if not ways:
        return Snap(*foot, words)
    _, to, way = min(ways)
    return Snap(*to, f"{words}, {way.words}", ((way.seen_from, to),))


def _at_line(side: Side, axis: int, at_mm: float) -> Point:
    """The point of the line through a side that is this far across (axis 0) or up (axis 1)."""
    start, way = side.start, (side.x1 - side.x0, side.y1 - side.y0)
    share = (at_mm - start[axis]) / way[axis]
    across, up = (start[other] + share * way[other] for other in (0, 1))
    return (at_mm, up) if axis == 0 else (across, at_mm)


def _in_line(
    points: Sequence[Point],
    targets: SnapTargets,
    reach: Point,
    noticed: tuple[Noticed | None, Noticed | None] = (None, None),
) -> Snap:
    """How much farther to go across and up to bring one of the points in line, or to make even what was noticed."""
    found = [_nearer(_aligned(targets.lines[axis], points, axis, reach[axis]), noticed[axis]) for axis in (0, 1)]
    across, up = (ways[0].by_mm if ways else 0.0 for ways in found)
    ways = [way for each in found for way in each]
    words = " and ".join(dict.fromkeys(way.words for way in ways))
    return Snap(across, up, words, _guides(ways, (across, up)))


def _nearer(aligned: Aligned | None, noticed: Noticed | None) -> list[Aligned | Noticed]:
    """The nearer of two ways to go; both if they agree; empty when there is neither."""
    ways = [way for way in (aligned, noticed) if way is not None]
    nearest = min(ways, key=lambda way: abs(way.by_mm), default=None)
    return [way for way in ways if nearest is not None and abs(way.by_mm - nearest.by_mm) <= WELD_MM]


def _guides(ways: Sequence[Aligned | Noticed], shift: Point) -> tuple[Guide, ...]:
    """The lines that show what decided; `shift` is how far the points went across and up."""
    guides: list[Guide] = []
    for way in ways:
        if isinstance(way, Noticed):
            guides += way.guides
        else:
            guides.append((way.seen_from, (way.point[0] + shift[0], way.point[1] + shift[1])))
    return tuple(guides)


def _aligned(lines: Marks, points: Sequence[Point], axis: int, reach_mm: float) -> Aligned | None:
    """The nearest line of an axis and the point that goes onto it; None out of reach. A line of axis 0 is upright.

    Of lines equally near, the one seen from nearest counts.
    """
    if not lines.words or not points:
        return None
    here = np.array(points, dtype=np.float64)
    way = lines.at[None, :, axis] - here[:, None, axis]
    nearest = np.abs(way).min()
    if nearest > reach_mm:
        return None
    apart = np.abs(lines.at[None, :, 1 - axis] - here[:, None, 1 - axis])
    equal = np.where(np.abs(way) <= nearest + WELD_MM, np.nan_to_num(apart), np.inf)
    point, row = divmod(int(np.argmin(equal)), len(lines.words))
    seen_x, seen_y = map(float, np.nan_to_num(lines.at[row]))
    return Aligned(float(way[point, row]), lines.words[row], (seen_x, seen_y), points[point])
