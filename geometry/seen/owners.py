"""Finds the part that is seen on either side of each piece."""

from typing import NamedTuple

import numpy as np
import shapely

from geometry.seen.columns import Flags, Floats, Stack, Whole, ramp, rows_where
from geometry.seen.pieces import Pieces, Stretches
from shared.errors import JobError

AT_ONCE = 16_384
"""How many pieces are looked at together: a face of a few thousand parts has no more; a heap would fill the memory."""


MOST_LOOKS = 8_000_000
"""How many looks a face may take, two seconds of them (measured): at a part, or at each side of one that is no box.

A wall of 20 000 boxes takes 160 000 (measured). 400 circles on one spot take 128 million.
"""

LOOKS_AT_ONCE = 500_000
"""How many looks at sides are taken together: a look takes some 100 bytes."""


class Owners(NamedTuple):
    """The places in the stack of the parts seen on the left and on the right of each piece; -1 for no part."""

    left: Whole
    right: Whole


def owners_of(stack: Stack, stretches: Stretches, pieces: Pieces) -> Owners:
    """The front part on either side of each piece, of those that end on the piece and those that cover its middle.

    JobError where finding it would take more than `MOST_LOOKS`.
    """
    tree = shapely.STRtree(shapely.box(stack.left, stack.bottom, stack.right, stack.top))
    nobody = np.full(len(pieces.x), -1, dtype=np.intp)
    owners = Owners(nobody, nobody)
    looks = 0
    for begin in range(0, len(pieces.x), AT_ONCE):
        some = slice(begin, begin + AT_ONCE)
        piece, part = tree.query(shapely.points(pieces.x[some], pieces.y[some]))
        looks += len(part) + int(stack.number[part[~stack.plain[part]]].sum())
        _refuse_tangle(looks)
        owners = in_front(stack, stretches, pieces, (begin + piece, part), owners)
    return owners


def in_front(stack: Stack, stretches: Stretches, pieces: Pieces, over: tuple[Whole, Whole], behind: Owners) -> Owners:
    """The owners of the pieces, where `behind` are the owners found so far.

    `over` are pairs of a piece and a part that may cover it. A part that covers the piece, or ends on it, takes the
    place of the owner so far if it is in front of that owner.
    """
    piece, part = over
    many = len(stack.first)
    own = stack.sides.part[stretches.side]
    ends_here = np.sort(stretches.piece * many + own)
    key = piece * many + part
    found = np.minimum(np.searchsorted(ends_here, key), len(ends_here) - 1)
    passes = ends_here[found] != key
    piece, part = piece[passes], part[passes]
    inside = covers(stack, part, pieces.x[piece], pieces.y[piece])
    piece, part = piece[inside], part[inside]
    left, right = behind.left.copy(), behind.right.copy()
    np.maximum.at(left, piece, part)
    np.maximum.at(right, piece, part)
    on_left = stack.interior_left[own] == (stretches.along > 0)
    np.maximum.at(left, stretches.piece[on_left], own[on_left])
    np.maximum.at(right, stretches.piece[~on_left], own[~on_left])
    return Owners(left, right)


def covers(stack: Stack, part: Whole, x: Floats, y: Floats) -> Flags:
    """Whether each part covers the point given with it; arcs are exact. The point must not lie on its outline."""
    inside = (stack.left[part] < x) & (x < stack.right[part]) & (stack.bottom[part] < y) & (y < stack.top[part])
    shaped = rows_where(inside & ~stack.plain[part])
    batch = np.cumsum(stack.number[part[shaped]]) // LOOKS_AT_ONCE
    for rows in np.split(shaped, rows_where(batch[1:] != batch[:-1]) + 1) if len(shaped) else ():
        inside[rows] = _odd(stack, part[rows], x[rows], y[rows])
    return inside


def _refuse_tangle(looks: int) -> None:
    if looks > MOST_LOOKS:
        raise JobError(
            "too many parts with many sides lie on or across each other to be measured",
            do="remove copies, draw them with fewer corners, or spread them over several faces",
        )


def _odd(stack: Stack, part: Whole, x: Floats, y: Floats) -> Flags:
    """Whether each point lies inside its part: a ray to the right from it crosses the chords an odd number of times.

    Each arc's segment that holds the point turns the answer over. A point on a chord counts as moved a hair up, or to
    the right for an upright chord. It does so for the chord and for the segment, so that a point on the chord of an arc
    is judged by the arc alone.
    """
    sides = stack.sides
    count = stack.number[part]
    row = ramp(stack.first[part], count)
    x, y = np.repeat(x, count), np.repeat(y, count)
    x0, y0, y1 = sides.x0[row], sides.y0[row], sides.y1[row]
    dx, dy = sides.x1[row] - x0, y1 - y0
    turn = dx * (y - y0) - dy * (x - x0)
    turn = np.where(turn == 0, np.where(dx == 0, -dy, dx), turn)
    crossed = ((y0 <= y) != (y1 <= y)) & ((turn > 0) == (dy > 0))
    sweep = sides.sweep[row]
    near = (x - sides.cx[row]) ** 2 + (y - sides.cy[row]) ** 2 < sides.radius[row] ** 2
    crossed ^= (turn * sweep < 0) & near
    odd: Flags = np.bitwise_xor.reduceat(crossed, np.cumsum(count) - count)
    return odd
