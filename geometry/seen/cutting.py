"""Finds where the sides of a face meet: where one ends on another, and where two cross."""

from typing import NamedTuple

import numpy as np
import shapely

from geometry.seen.columns import Columns, Flags, Floats, Whole, position, rows_where


class Meetings(NamedTuple):
    """All places where sides of different parts meet.

    Each side in `touched` passes through the start of the side in `vertex`. Each pair of sides in `one` and `other`
    crosses at (`x`, `y`).
    """

    vertex: Whole
    touched: Whole
    one: Whole
    other: Whole
    x: Floats
    y: Floats


def meetings(sides: Columns, one: Whole, other: Whole, tolerance: float) -> Meetings:
    """Where the given pairs of sides meet.

    A side that ends within the tolerance of another touches it. Two straight sides cross only when all four ends are
    clear of the other's line; otherwise the touching end already is the place where they meet.
    """
    straight = (sides.sweep[one] == 0) & (sides.sweep[other] == 0)
    from_other, from_one = _start_aside(sides, one, other), _start_aside(sides, other, one)
    ends_on_other = _passes(sides, other, sides.x0[one], sides.y0[one], from_other, tolerance)
    ends_on_one = _passes(sides, one, sides.x0[other], sides.y0[other], from_one, tolerance)
    if straight.all():
        found = [_lines_crossing(sides, one, other, from_other, from_one, tolerance)]
    else:
        lines = one[straight], other[straight], from_other[straight], from_one[straight]
        found = [_lines_crossing(sides, *lines, tolerance)]
        found += _arcs_crossing(sides, one[~straight], other[~straight], tolerance)
    first, second, x, y = (np.concatenate(column) for column in zip(*found, strict=True))
    return Meetings(
        np.concatenate((one[ends_on_other], other[ends_on_one])),
        np.concatenate((other[ends_on_other], one[ends_on_one])),
        first,
        second,
        x,
        y,
    )


def with_passing(sides: Columns, met: Meetings, tolerance: float) -> Meetings:
    """The same meetings, and one more for every side that passes within the tolerance of where two others cross.

    It is needed only when sides run so close to each other that it is not plain which of them meet.
    """
    boxes = shapely.box(sides.left, sides.bottom, sides.right, sides.top)
    at, side = shapely.STRtree(boxes).query(shapely.points(met.x, met.y), predicate="dwithin", distance=tolerance)
    away = _aside(sides, side, met.x[at], met.y[at])
    passes = _passes(sides, side, met.x[at], met.y[at], away, tolerance)
    at, side = at[passes], side[passes]
    return met._replace(
        one=np.concatenate((met.one, side)),
        other=np.concatenate((met.other, side)),
        x=np.concatenate((met.x, met.x[at])),
        y=np.concatenate((met.y, met.y[at])),
    )


Crossings = tuple[Whole, Whole, Floats, Floats]


def _passes(sides: Columns, side: Whole, x: Floats, y: Floats, away: Floats, tolerance: float) -> Flags:
    """Whether each point lies on its side. `away` is how far it lies from the side's line or circle."""
    near = np.abs(away) <= tolerance
    rows = rows_where(near)
    on = side[rows]
    along = position(sides, on, x[rows], y[rows])
    reach = tolerance / sides.length[on]
    near[rows] = (along >= -reach) & (along <= 1 + reach)
    return near


def _aside(sides: Columns, side: Whole, x: Floats, y: Floats) -> Floats:
    """How far each point lies to the left of its straight side's line, or outside its arc's circle."""
    x0, y0 = sides.x0[side], sides.y0[side]
    away = ((sides.x1[side] - x0) * (y - y0) - (sides.y1[side] - y0) * (x - x0)) / sides.length[side]
    bent = rows_where(sides.sweep[side] != 0)
    if len(bent):
        arc = side[bent]
        away[bent] = np.hypot(x[bent] - sides.cx[arc], y[bent] - sides.cy[arc]) - sides.radius[arc]
    return away


def _start_aside(sides: Columns, one: Whole, other: Whole) -> Floats:
    """How far the start of each side in `one` lies from the line or circle of the side in `other`."""
    return _aside(sides, other, sides.x0[one], sides.y0[one])


def _lines_crossing(
    sides: Columns, one: Whole, other: Whole, start: Floats, near: Floats, tolerance: float
) -> Crossings:
    """Crossings of pairs of straight sides.

    `start` is how far the start of each side in `one` lies from the other's line, `near` the same the other way round.
    """
    x0, y0, x1, y1 = sides.x0, sides.y0, sides.x1, sides.y1
    end = _aside(sides, other, x1[one], y1[one])
    rows = rows_where(_is_astride(start, end, tolerance))
    one, other, start, end, near = one[rows], other[rows], start[rows], end[rows], near[rows]
    far = _aside(sides, one, x1[other], y1[other])
    rows = rows_where(_is_astride(near, far, tolerance))
    one, other = one[rows], other[rows]
    share = start[rows] / (start[rows] - end[rows])
    x = x0[one] + share * (x1[one] - x0[one])
    y = y0[one] + share * (y1[one] - y0[one])
    # An upright or level side fixes that coordinate of the crossing to the last digit.
    x = np.where(x0[other] == x1[other], x0[other], x)
    y = np.where(y0[other] == y1[other], y0[other], y)
    return one, other, x, y


def _is_astride(start: Floats, end: Floats, tolerance: float) -> Flags:
    """Whether two ends lie on different sides of a line, both clear of it."""
    astride: Flags = (start * end < 0) & (np.minimum(np.abs(start), np.abs(end)) > tolerance)
    return astride


def _arcs_crossing(sides: Columns, one: Whole, other: Whole, tolerance: float) -> list[Crossings]:
    """Crossings of pairs of which at least one side is an arc."""
    both = (sides.sweep[one] != 0) & (sides.sweep[other] != 0)
    mixed = ~both
    swap = sides.sweep[one] != 0
    line, arc = np.where(swap, other, one)[mixed], np.where(swap, one, other)[mixed]
    found = []
    for (first, second), (foot, way, half) in (
        ((line, arc), _line_and_circle(sides, line, arc, tolerance)),
        ((one[both], other[both]), _two_circles(sides, one[both], other[both], tolerance)),
    ):
        for sign in (1.0, -1.0):
            # Half a chord of 0 is a touch: one point, not two.
            rows = rows_where(half > 0) if sign < 0 else rows_where(half >= 0)
            x = foot[0][rows] + sign * half[rows] * way[0][rows]
            y = foot[1][rows] + sign * half[rows] * way[1][rows]
            inside = _is_between(sides, first[rows], x, y) & _is_between(sides, second[rows], x, y)
            found.append((first[rows][inside], second[rows][inside], x[inside], y[inside]))
    return found


Chord = tuple[tuple[Floats, Floats], tuple[Floats, Floats], Floats]
"""The chord that a line or circle cuts off a circle: its middle, its direction, half its length (-1 for no chord)."""


def _is_between(sides: Columns, rows: Whole, x: Floats, y: Floats) -> Flags:
    along = position(sides, rows, x, y)
    between: Flags = (along > 0) & (along < 1)
    return between


def _line_and_circle(sides: Columns, line: Whole, arc: Whole, tolerance: float) -> Chord:
    length = sides.length[line]
    ux, uy = (sides.x1[line] - sides.x0[line]) / length, (sides.y1[line] - sides.y0[line]) / length
    dx, dy = sides.cx[arc] - sides.x0[line], sides.cy[arc] - sides.y0[line]
    along = dx * ux + dy * uy
    distance = np.abs(dx * uy - dy * ux)
    foot = (sides.x0[line] + along * ux, sides.y0[line] + along * uy)
    return foot, (ux, uy), _half_chord(distance, sides.radius[arc], distance - sides.radius[arc], tolerance)


def _two_circles(sides: Columns, one: Whole, other: Whole, tolerance: float) -> Chord:
    dx, dy = sides.cx[other] - sides.cx[one], sides.cy[other] - sides.cy[one]
    distance = np.hypot(dx, dy)
    r, s = sides.radius[one], sides.radius[other]
    apart = distance > tolerance
    safe = np.where(apart, distance, 1.0)
    ux, uy = dx / safe, dy / safe
    along = (safe * safe + (r - s) * (r + s)) / (2 * safe)
    foot = (sides.cx[one] + along * ux, sides.cy[one] + along * uy)
    # How far the circles are from touching, from outside or from inside; they do not meet while it is above 0.
    gap = np.maximum(distance - (r + s), np.abs(r - s) - distance)
    half = _half_chord(np.abs(along), r, gap, tolerance)
    return foot, (-uy, ux), np.where(apart, half, -1.0)


def _half_chord(distance: Floats, radius: Floats, gap: Floats, tolerance: float) -> Floats:
    """Half the chord at this distance from the centre; 0 for a mere touch, -1 for no meeting."""
    inside = np.maximum(radius - distance, 0.0) * (radius + distance)
    return np.where(gap > tolerance, -1.0, np.where(gap >= -tolerance, 0.0, np.sqrt(inside)))
