"""Finds the sides of a face that come near each other."""

from typing import NamedTuple

import numpy as np
import shapely

from geometry.seen.columns import Columns, Floats, Stack, Whole, ramp, rows_where
from shared.errors import JobError

BUNDLE = 8
"""How many sides are searched for as one: a rounded box is one bundle."""

AT_ONCE = 512
"""How many bundles are searched for together, so that a heap of parts is refused before it fills the memory."""

MOST_PAIRS = 1_000_000
"""The most pairs of near sides on a face: a heap of 350 parts has as many, a wall of 20 000 has 246 000 (measured)."""


def near_pairs(stack: Stack, tolerance: float) -> tuple[Whole, Whole]:
    """The pairs of sides of different parts whose boxes come near each other; each pair once, the lower row first.

    The search goes by bundles of successive sides of a part. Most parts are one bundle, so that the library's tree is
    small, and an outline of very many sides is still found bundle by bundle. JobError for more than `MOST_PAIRS`.
    """
    bundles = _bundles(stack)
    low, high = _near_bundles(bundles, tolerance)
    # Only those sides of each bundle that reach the other's box are paired, each with each.
    from_low, of_low = _reaching(stack.sides, bundles, low, high, tolerance)
    from_high, of_high = _reaching(stack.sides, bundles, high, low, tolerance)
    many = np.bincount(of_high, minlength=len(low)).astype(np.intp)
    repeats = many[of_low]
    _refuse_heap(int(repeats.sum()))
    one = np.repeat(from_low, repeats)
    other = from_high[ramp((np.cumsum(many) - many)[of_low], repeats)]
    rows = near_boxes(stack.sides, one, stack.sides, other, tolerance)
    return one[rows], other[rows]


def _near_bundles(bundles: "_Bundles", tolerance: float) -> tuple[Whole, Whole]:
    """The pairs of bundles of different parts that come near each other, each pair once, the lower row first."""
    boxes = shapely.box(
        bundles.left - tolerance, bundles.bottom - tolerance, bundles.right + tolerance, bundles.top + tolerance
    )
    tree = shapely.STRtree(boxes)
    lows, highs, count = [], [], 0
    for begin in range(0, max(len(boxes), 1), AT_ONCE):
        low, high = tree.query(boxes[begin : begin + AT_ONCE])
        low = low + begin
        apart = (low < high) & (bundles.part[low] != bundles.part[high])
        lows.append(low[apart])
        highs.append(high[apart])
        count += len(lows[-1])
        _refuse_heap(count)
    return np.concatenate(lows), np.concatenate(highs)


def _refuse_heap(pairs: int) -> None:
    if pairs > MOST_PAIRS:
        raise JobError(
            "too many parts lie on or across each other to be measured",
            do="remove copies, or spread the parts over several faces",
        )


class _Bundles(NamedTuple):
    """Bundles of successive sides of one part, one bundle a row: its first side, its number of sides, its box."""

    part: Whole
    first: Whole
    number: Whole
    left: Floats
    bottom: Floats
    right: Floats
    top: Floats


def _bundles(stack: Stack) -> _Bundles:
    sides = stack.sides
    many = -(-stack.number // BUNDLE)
    part = np.repeat(np.arange(len(many), dtype=np.intp), many)
    begun = BUNDLE * ramp(np.zeros_like(many), many)
    first = stack.first[part] + begun
    return _Bundles(
        part,
        first,
        np.minimum(stack.number[part] - begun, BUNDLE),
        np.minimum.reduceat(sides.left, first),
        np.minimum.reduceat(sides.bottom, first),
        np.maximum.reduceat(sides.right, first),
        np.maximum.reduceat(sides.top, first),
    )


def _reaching(sides: Columns, bundles: _Bundles, bundle: Whole, other: Whole, tolerance: float) -> tuple[Whole, Whole]:
    """The sides of each bundle that come near the box of the pair's other bundle, and the number of their pair."""
    many = bundles.number[bundle]
    side = ramp(bundles.first[bundle], many)
    pair = np.repeat(np.arange(len(bundle), dtype=np.intp), many)
    rows = near_boxes(sides, side, bundles, other[pair], tolerance)
    return side[rows], pair[rows]


def near_boxes(
    boxes: Columns | _Bundles, rows: Whole, others: Columns | _Bundles, against: Whole, tolerance: float
) -> Whole:
    """The numbers of the pairs of boxes that come within the tolerance of each other."""
    return rows_where(
        (boxes.left[rows] <= others.right[against] + tolerance)
        & (boxes.right[rows] >= others.left[against] - tolerance)
        & (boxes.bottom[rows] <= others.top[against] + tolerance)
        & (boxes.top[rows] >= others.bottom[against] - tolerance)
    )
