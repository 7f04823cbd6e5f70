"""What a point or a dragged part snaps to, said in words.

A point goes to a corner, else to the centre of an arc or the middle of a side, else onto the nearest side, else in
line, across and up, with a corner or centre of another part or with the ends, floor and top of the face. Targets are
prepared once for the parts that do not move.
"""

from collections.abc import Collection, Sequence
from typing import NamedTuple

import numpy as np

from geometry.columns import Floats
from geometry.extent import extent
from geometry.sides import WELD_MM, Point, Side, sides
from shared.job import Face, Part, View
from shared.kinds import Kind

Guide = tuple[Point, Point]
"""A line to show: from what is snapped to, to the snapped point."""

Named = tuple[Point, str]
"""A point and what it is, in words."""


class Snap(NamedTuple):
    """Where a point has gone, to what ("" where it stays where it was), and the lines that show it."""

    x: float
    y: float
    words: str = ""
    guides: tuple[Guide, ...] = ()


class Marks(NamedTuple):
    """Points to snap to, or to be in line with: where (n x 2), and what each is, in words."""

    at: Floats
    words: tuple[str, ...]


class SnapTargets(NamedTuple):
    """All that can be snapped to on a face.

    `points` in order of preference; `sides` with their boxes (n x 4) and words; `lines` holds the points to be in line
    with, in x and in y.
    """

    points: tuple[Marks, ...]
    sides: tuple[tuple[Side, str], ...]
    boxes: Floats
    lines: tuple[Marks, Marks]


class Aligned(NamedTuple):
    """How far to go along one axis to be in line with something, what that is, and which point is then in line."""

    by_mm: float
    words: str
    seen_from: Point
    point: Point


def snap_targets(face: Face, moving: Collection[str] = (), own: Sequence[Point] = ()) -> SnapTargets:
    """What can be snapped to: all parts of a face but those `moving`, and the corners of what is drawn (`own`)."""
    parts = [part for part in face.parts if part.id not in moving]
    around = [(side, part.name or str(part.kind)) for part in parts for side in sides(part.outline)]
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
        (_marks(ends + inner), _marks(levels + inner)),
    )


def snap(x: float, y: float, targets: SnapTargets, reach_mm: float) -> Snap:
    """Where a point goes: to the best target within `reach_mm`; where there is none, it stays and has no words."""
    for marks in targets.points:
        row = _nearest(marks, x, y, reach_mm)
        if row is not None:
            at_x, at_y = map(float, marks.at[row])
            return Snap(at_x, at_y, marks.words[row])
    beside = _nearest_side(targets, x, y, reach_mm)
    if beside:
        return _along_side(targets, beside, x, y, reach_mm)
    return _in_line(((x, y),), targets, reach_mm, moved=(x, y))


def snapped_move(points: Sequence[Point], targets: SnapTargets, reach_mm: float) -> Snap:
    """How much farther a dragged part goes: `x` and `y` are that distance, (0, 0) without words where nothing is near.

    `points` are its corners where the hand has put it. Across and up, the one that is nearest to being in line decides.
    Where a corner of it comes to lie on another's, that is what it says.
    """
    way = _in_line(points, targets, reach_mm, moved=(0.0, 0.0))
    if not way.words:
        return way
    corners = targets.points[0]
    for x, y in points:
        row = _nearest(corners, x + way.x, y + way.y, WELD_MM)
        if row is not None:
            return way._replace(words=corners.words[row])
    return way


def _marks(named: Sequence[Named]) -> Marks:
    at = np.array([point for point, _ in named], dtype=np.float64).reshape(-1, 2)
    return Marks(at, tuple(words for _, words in named))


def _bounds(face: Face, walls: Sequence[Part]) -> tuple[list[Named], list[Named]]:
    """What a face itself offers to be in line with: its ends, and its floor and top. Only a wall says where it ends."""
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


def _along_side(targets: SnapTargets, beside: tuple[Side, str], x: float, y: float, reach_mm: float) -> Snap:
    """The nearest point of a side; along a level or upright one, in line with something where that is within reach."""
    side, words = beside
    x, y = side.nearest(x, y)
    along = 0 if side.y0 == side.y1 else 1
    if side.bulge or (side.x0 != side.x1 and side.y0 != side.y1):
        return Snap(x, y, words)
    found = _aligned(targets.lines[along], ((x, y),), along, reach_mm)
    if not found:
        return Snap(x, y, words)
    to = (x + found.by_mm, y) if along == 0 else (x, y + found.by_mm)
    if side.distance_mm(*to) > WELD_MM:
        return Snap(x, y, words)
    return Snap(*to, f"{words}, {found.words}", ((found.seen_from, to),))


def _in_line(points: Sequence[Point], targets: SnapTargets, reach_mm: float, moved: Point) -> Snap:
    """`moved` and how much farther it goes, so that one of the points is in line across, and one up."""
    found = [_aligned(targets.lines[axis], points, axis, reach_mm) for axis in (0, 1)]
    across, up = (way.by_mm if way else 0.0 for way in found)
    ways = [way for way in found if way]
    guides = tuple((way.seen_from, (way.point[0] + across, way.point[1] + up)) for way in ways)
    words = " and ".join(dict.fromkeys(way.words for way in ways))
    return Snap(moved[0] + across, moved[1] + up, words, guides)


def _aligned(lines: Marks, points: Sequence[Point], axis: int, reach_mm: float) -> Aligned | None:
    """The nearest line of an axis (0: of one x) and the point that goes onto it; of equals, that seen from nearest."""
    if not lines.words or not points:
        return None
    here = np.array(points, dtype=np.float64)
    way = lines.at[None, :, axis] - here[:, None, axis]
    nearest = np.abs(way).min()
    if nearest > reach_mm:
        return None
    apart = np.abs(lines.at[None, :, 1 - axis] - here[:, None, 1 - axis])
    equal = np.where(np.abs(way) <= nearest + WELD_MM, apart, np.inf)
    point, row = divmod(int(np.argmin(equal)), len(lines.words))
    seen_x, seen_y = map(float, lines.at[row])
    return Aligned(float(way[point, row]), lines.words[row], (seen_x, seen_y), points[point])
