"""The sides of all parts of a face as columns of numbers, one row a side. `geometry.seen.arrange` works on them.

A part is known by its place in the stack, counted from the back to the front. A straight side has a sweep of 0.
"""

from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from geometry.outlines.measured import MOST_BULGE
from shared.errors import OutlineError
from shared.job import Part
from shared.trade.kinds import usual

Floats = NDArray[np.float64]
Whole = NDArray[np.intp]
Flags = NDArray[np.bool_]

TURN = 2 * np.pi

FARTHEST_MM = 1e7
"""The greatest distance from the face's corner, 10 km: farther away floats no longer tell a micrometre."""


class Columns(NamedTuple):
    """The sides, one a row. The sides of a part follow each other; sides that go nowhere are left out.

    `part` is the place of the part in the stack. `number` is the index of the vertex that the side leaves. `following`
    is the row of the part's next side. `sweep` is the angle that the side turns through, positive anticlockwise, and
    `angle` the direction of its start, seen from the centre (`cx`, `cy`); radians. `length` is measured along the arc.
    `left`, `bottom`, `right` and `top` are the side's box.
    """

    part: Whole
    number: Whole
    following: Whole
    x0: Floats
    y0: Floats
    x1: Floats
    y1: Floats
    bulge: Floats
    sweep: Floats
    angle: Floats
    cx: Floats
    cy: Floats
    radius: Floats
    length: Floats
    left: Floats
    bottom: Floats
    right: Floats
    top: Floats


class Stack(NamedTuple):
    """The parts of a face from the back to the front, one a row, and all their sides.

    `first` is the row at which a part's sides begin in `sides`, and `number` is how many it has. `interior_left` is
    true of an anticlockwise outline, `plain` of an upright box, `surface` of a part that is no hole. `left`, `bottom`,
    `right` and `top` are the part's box.
    """

    sides: Columns
    first: Whole
    number: Whole
    interior_left: Flags
    plain: Flags
    surface: Flags
    left: Floats
    bottom: Floats
    right: Floats
    top: Floats


def stack_of(parts: Sequence[Part], straight_mm: float) -> Stack:
    """The parts, given from the back to the front, as columns.

    An arc with a sagitta of at most `straight_mm` counts as straight. A straight side no longer than that is left out.
    OutlineError where an outline encloses nothing or holds a number that is not finite.
    """
    sides = _sides(parts, straight_mm)
    count = np.bincount(sides.part, minlength=len(parts)).astype(np.intp)
    every = np.arange(len(parts), dtype=np.intp)
    _refuse(parts, every, count < 2, "it encloses no area")
    first = np.cumsum(count) - count
    area = _signed_areas(sides, first, count)
    _refuse(parts, every, area == 0, "it encloses no area")
    left, bottom = np.minimum.reduceat(sides.left, first), np.minimum.reduceat(sides.bottom, first)
    right, top = np.maximum.reduceat(sides.right, first), np.maximum.reduceat(sides.top, first)
    upright = ((sides.x0 == sides.x1) | (sides.y0 == sides.y1)) & (sides.sweep == 0)
    plain = (count == 4) & np.logical_and.reduceat(upright, first) & (np.abs(area) == (right - left) * (top - bottom))
    surface = np.array([not usual()[part.kind].hole for part in parts])
    return Stack(sides, first, count, area > 0, plain, surface, left, bottom, right, top)


def spread(stack: Stack, places: Whole, total: int) -> Stack:
    """The same parts at these places of a larger stack of `total` parts. The other places are left without sides."""
    row = np.zeros(total, dtype=np.intp)
    row[places] = np.arange(len(places), dtype=np.intp)
    sides = stack.sides._replace(part=places[stack.sides.part])
    wide = Stack._make((sides, *(column[row] for column in stack[1:])))
    return wide._replace(number=_changed(np.zeros(total, dtype=np.intp), places, stack.number))


def filled(stack: Stack, places: Whole, more: Stack) -> Stack:
    """The stack with the parts of `more` at these places, and their sides after all others."""
    rows = len(stack.sides.part)
    later = more.sides._replace(part=places[more.sides.part], following=more.sides.following + rows)
    sides = Columns._make(np.concatenate(pair) for pair in zip(stack.sides, later, strict=True))
    more = more._replace(first=more.first + rows)
    columns = (_changed(old, places, new) for old, new in zip(stack[1:], more[1:], strict=True))
    return Stack._make((sides, *columns))


def _changed(column: NDArray[Any], places: Whole, values: NDArray[Any]) -> NDArray[Any]:
    changed = column.copy()
    changed[places] = values
    return changed


def ramp(starts: Whole, counts: Whole) -> Whole:
    """The rows start, start + 1 and so on, as many as its count says, for each start in turn."""
    ends = np.cumsum(counts)
    total = int(ends[-1]) if len(ends) else 0
    return np.arange(total, dtype=np.intp) + np.repeat(starts - ends + counts, counts)


def rows_where(flags: Flags) -> Whole:
    """The numbers of the rows where the flag is true."""
    return flags.nonzero()[0]


def begins(*columns: Floats | Whole) -> Flags:
    """Whether each row differs from the row before in any column; true of the first row."""
    begin = np.ones(len(columns[0]), dtype=np.bool_)
    begin[1:] = columns[0][1:] != columns[0][:-1]
    for column in columns[1:]:
        begin[1:] |= column[1:] != column[:-1]
    return begin


def position(sides: Columns, rows: Whole, x: Floats, y: Floats) -> Floats:
    """How far along its side each point lies: 0 at the start of the side, 1 at its end."""
    x0, y0 = sides.x0[rows], sides.y0[rows]
    dx, dy = sides.x1[rows] - x0, sides.y1[rows] - y0
    share = ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy)
    bent = rows_where(sides.sweep[rows] != 0)
    if len(bent):
        arc = rows[bent]
        sweep = sides.sweep[arc]
        turned = np.arctan2(y[bent] - sides.cy[arc], x[bent] - sides.cx[arc]) - sides.angle[arc]
        turned = np.mod(turned * np.sign(sweep), TURN)
        size = np.abs(sweep)
        # A point on the circle but beyond the arc counts as before its start or after its end, whichever is nearer.
        share[bent] = np.where(turned > (size + TURN) / 2, turned - TURN, turned) / size
    return share


def _sides(parts: Sequence[Part], straight_mm: float) -> Columns:
    counts = np.array([len(part.outline) for part in parts], dtype=np.intp)
    x = np.array([vertex.x for part in parts for vertex in part.outline], dtype=np.float64)
    y = np.array([vertex.y for part in parts for vertex in part.outline], dtype=np.float64)
    bulge = np.array([vertex.bulge for part in parts for vertex in part.outline], dtype=np.float64)
    part = np.repeat(np.arange(len(parts), dtype=np.intp), counts)
    number = ramp(np.zeros_like(counts), counts)
    # NaN fails every comparison, so it is found as well.
    known = (np.abs(x) <= FARTHEST_MM) & (np.abs(y) <= FARTHEST_MM) & (np.abs(bulge) <= MOST_BULGE)
    _refuse(parts, part, ~known, "one of its values is not a number, or is larger than any wall")
    following = _following(counts)
    stays = (np.abs(x[following] - x) <= straight_mm) & (np.abs(y[following] - y) <= straight_mm)
    _refuse(parts, part, stays & (bulge != 0), "one of its arcs starts and ends at the same point")
    if stays.any():
        rows = rows_where(~stays)
        part, number, x, y, bulge = part[rows], number[rows], x[rows], y[rows], bulge[rows]
        following = _following(np.bincount(part, minlength=len(parts)).astype(np.intp))
    return _measured((part, number, following), (x, y, x[following], y[following]), bulge, straight_mm)


def _following(counts: Whole) -> Whole:
    """For each row the next row of its part; after the last comes the first. `counts` are the rows of each part."""
    ends = np.cumsum(counts)
    following = np.arange(1, len(counts) and int(ends[-1]) + 1, dtype=np.intp)
    some = counts > 0
    following[ends[some] - 1] = (ends - counts)[some]
    return following


def _measured(
    rows: tuple[Whole, Whole, Whole], ends: tuple[Floats, Floats, Floats, Floats], bulge: Floats, straight_mm: float
) -> Columns:
    x0, y0, x1, y1 = ends
    dx, dy = x1 - x0, y1 - y0
    length = np.hypot(dx, dy)
    bent = rows_where(np.abs(bulge) * length / 2 > straight_mm)
    sweep, angle, cx, cy, radius = np.zeros((5, len(x0)))
    left, right = np.minimum(x0, x1), np.maximum(x0, x1)
    bottom, top = np.minimum(y0, y1), np.maximum(y0, y1)
    if len(bent):
        b = bulge[bent]
        away = (1 - b * b) / (4 * b)
        sweep[bent] = 4 * np.arctan(b)
        cx[bent] = (x0[bent] + x1[bent]) / 2 - dy[bent] * away
        cy[bent] = (y0[bent] + y1[bent]) / 2 + dx[bent] * away
        angle[bent] = np.arctan2(y0[bent] - cy[bent], x0[bent] - cx[bent])
        radius[bent] = length[bent] * (1 + b * b) / (4 * np.abs(b))
        length[bent] = radius[bent] * np.abs(sweep[bent])
        reaches = [_reaches(angle[bent], sweep[bent], quarter * np.pi / 2) for quarter in range(4)]
        right[bent] = np.where(reaches[0], cx[bent] + radius[bent], right[bent])
        top[bent] = np.where(reaches[1], cy[bent] + radius[bent], top[bent])
        left[bent] = np.where(reaches[2], cx[bent] - radius[bent], left[bent])
        bottom[bent] = np.where(reaches[3], cy[bent] - radius[bent], bottom[bent])
    return Columns(*rows, *ends, bulge, sweep, angle, cx, cy, radius, length, left, bottom, right, top)


def _reaches(angle: Floats, sweep: Floats, way: float) -> Flags:
    """Whether each arc passes the point of its circle that lies in this direction from the centre."""
    turned = np.mod((way - angle) * np.sign(sweep), TURN)
    passes: Flags = turned <= np.abs(sweep)
    return passes


def _signed_areas(sides: Columns, first: Whole, count: Whole) -> Floats:
    """The area of each part, positive for an anticlockwise outline.

    Coordinates are taken from the part's own first vertex, so that no digits are lost.
    """
    x, y = np.repeat(sides.x0[first], count), np.repeat(sides.y0[first], count)
    area = ((sides.x0 - x) * (sides.y1 - y) - (sides.x1 - x) * (sides.y0 - y)) / 2
    area += sides.radius * sides.radius * (sides.sweep - np.sin(sides.sweep)) / 2
    total: Floats = np.add.reduceat(area, first)
    return total


def _refuse(parts: Sequence[Part], part: Whole, wrong: Flags, what: str) -> None:
    """Refuse the part of the first wrong row: OutlineError, with `what` is wrong with it."""
    if wrong.any():
        culprit = parts[int(part[np.argmax(wrong)])]
        raise OutlineError(f"the outline cannot be measured: {what}", where=culprit.called, do="draw it again")
