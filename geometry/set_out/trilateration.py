"""Places points one after the other, each by its distances from two that are placed already."""

from collections.abc import Mapping, Sequence
from math import atan2, cos, hypot, sin, sqrt

from geometry.outlines.sides import Point
from shared.errors import JobError

Distances = Mapping[tuple[int, int], float]
"""Distances in mm between points, by their numbers, the lower first."""


def placed(distances: Distances, count: int, names: Sequence[str]) -> tuple[Point, ...]:
    """The corners of a figure that goes round anticlockwise, from the distances between them.

    The first is at (0, 0), the second level to the right of it. Every corner is placed once: surplus distances are left
    to `geometry.set_out.adjusting`. JobError, with the corners' `names`, where three distances make no triangle or too
    few hold a corner.
    """
    if not distances:
        raise JobError(f"no distance reaches {names[0]}", do="measure the sides and a diagonal")
    first, second = min(distances)
    at = {first: (0.0, 0.0), second: (distances[first, second], 0.0)}
    while len(at) < count:
        found = _next(distances, at, count, names)
        if found is None:
            loose = " and ".join(names[corner] for corner in range(count) if corner not in at)
            raise JobError(f"too few distances fix {loose}", do="measure one more, a diagonal for instance")
        at[found[0]] = found[1]
    return _level([at[corner] for corner in range(count)])


def _next(distances: Distances, at: Mapping[int, Point], count: int, names: Sequence[str]) -> tuple[int, Point] | None:
    """A corner that two placed ones hold, and its place; None when no corner is held by two."""
    for corner in range(count):
        by = sorted(other for other in at if _pair(corner, other) in distances)
        if corner not in at and len(by) > 1:
            legs = (distances[_pair(corner, by[0])], distances[_pair(corner, by[1])])
            return corner, _third(corner, by, legs, at, names)
    return None


def _third(
    corner: int, by: Sequence[int], legs: tuple[float, float], at: Mapping[int, Point], names: Sequence[str]
) -> Point:
    """The third corner of a triangle (law of cosines, Euclid II.12), so that the figure goes round anticlockwise."""
    (ax, ay), (bx, by_) = at[by[0]], at[by[1]]
    base = hypot(bx - ax, by_ - ay)
    along = (legs[0] ** 2 - legs[1] ** 2 + base**2) / (2 * base) if base else legs[0]
    if abs(along) > legs[0]:
        a, b, c = names[by[0]], names[by[1]], names[corner]
        what = f"{legs[0]:g}, {legs[1]:g} and {base:g} mm between {a}, {b} and {c} make no triangle"
        raise JobError(what, do="measure these three again")
    off = sqrt(legs[0] ** 2 - along**2) * (-1 if by[0] < corner < by[1] else 1)
    ux, uy = (bx - ax) / base, (by_ - ay) / base
    return ax + along * ux - off * uy, ay + along * uy + off * ux


def _level(points: Sequence[Point]) -> tuple[Point, ...]:
    """The figure moved and turned so that the first point is at (0, 0) and the second to the right of it."""
    (x0, y0), (x1, y1) = points[0], points[1]
    turn = atan2(y1 - y0, x1 - x0)
    across, up = cos(turn), sin(turn)
    return tuple(((x - x0) * across + (y - y0) * up, (y - y0) * across - (x - x0) * up) for x, y in points)


def _pair(one: int, other: int) -> tuple[int, int]:
    return min(one, other), max(one, other)
