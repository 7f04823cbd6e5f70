"""Parts that should touch but miss or overlap by a few millimetres."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from geometry.outlines.measured import contains
from geometry.outlines.sides import WELD_MM
from geometry.parts.rank import rank_key
from geometry.seen.columns import Flags, Floats, Stack, Whole, stack_of
from geometry.seen.neighbours import near_pairs
from shared.job import Part
from shared.trade.kinds import usual

USUAL_LIMIT_MM = 5.0
"""Parts farther apart than this are meant to be apart (common practice, no source)."""

PARALLEL = 0.02
"""Sides whose directions differ by less than this (about one degree, as a sine) face each other."""


class NearMiss(NamedTuple):
    """Two parts, by id in drawing order, whose facing sides miss each other by a gap, or overlap where it is negative.

    `length_mm` is how far they run beside each other, `gap_mm` the widest between them over it. `sides` are the two,
    each by the index of the vertex that it leaves.
    """

    parts: tuple[str, str]
    gap_mm: float
    length_mm: float
    sides: tuple[int, int]


def near_misses(parts: Sequence[Part], limit_mm: float = USUAL_LIMIT_MM) -> tuple[NearMiss, ...]:
    """Where straight sides face each other with a gap or overlap of at most `limit_mm`, over more length than that.

    One for each pair of parts, over the longest pair of sides, in drawing order. Left out (common practice, no source):
    doors and drawer fronts, which hang with reveals on purpose; what does not hide (a fridge rolls out and has room
    beside it); a gap that a third part covers; a strip no deeper than the overlap, along another part's border.
    """
    able = [index for index, part in enumerate(parts) if part.hides and not usual()[part.kind].front]
    if len(able) < 2:
        return ()
    candidates = [parts[index] for index in able]
    found: dict[tuple[str, str], NearMiss] = {}
    stack = stack_of(candidates, WELD_MM)
    for one, other, miss, middle in _facing(candidates, stack, limit_mm):
        best = found.get(miss.parts)
        longer = best is None or miss.length_mm > best.length_mm
        if longer and not (miss.gap_mm > 0 and _is_covered(candidates, stack, (one, other), middle)):
            found[miss.parts] = miss
    return tuple(found.values())


def _facing(parts: Sequence[Part], stack: Stack, limit: float) -> list[tuple[int, int, NearMiss, tuple[float, float]]]:
    """The facing pairs of sides: the places of their parts, the miss, and the middle of what lies between them."""
    sides = stack.sides
    one, other = near_pairs(stack, limit)
    keep = (sides.sweep[one] == 0) & (sides.sweep[other] == 0) & _are_opposed(stack, one, other)
    one, other = one[keep], other[keep]
    gap, length, x, y = _between(stack, one, other)
    keep = (np.abs(gap) > WELD_MM) & (np.abs(gap) <= limit) & (length > limit)
    keep &= -gap < np.minimum(_depth(stack, one), _depth(stack, other)) - WELD_MM
    found = []
    for row in np.flatnonzero(keep):
        first, second = int(sides.part[one[row]]), int(sides.part[other[row]])
        numbers = int(sides.number[one[row]]), int(sides.number[other[row]])
        miss = NearMiss((parts[first].id, parts[second].id), float(gap[row]), float(length[row]), numbers)
        found.append((first, second, miss, (float(x[row]), float(y[row]))))
    return found


def _ways(stack: Stack, rows: Whole) -> tuple[Floats, Floats]:
    """The directions of sides, of length 1, with the part they belong to on the left."""
    sides = stack.sides
    size = np.where(stack.interior_left[sides.part[rows]], sides.length[rows], -sides.length[rows])
    return (sides.x1[rows] - sides.x0[rows]) / size, (sides.y1[rows] - sides.y0[rows]) / size


def _are_opposed(stack: Stack, one: Whole, other: Whole) -> Flags:
    (ax, ay), (bx, by) = _ways(stack, one), _ways(stack, other)
    opposed: Flags = (np.abs(ax * by - ay * bx) <= PARALLEL) & (ax * bx + ay * by < 0)
    return opposed


def _between(stack: Stack, one: Whole, other: Whole) -> tuple[Floats, Floats, Floats, Floats]:
    """Of each pair: the widest signed gap over the length they share, that length, and the middle of the gap there."""
    sides = stack.sides
    ux, uy = _ways(stack, one)
    x, y = sides.x0[one], sides.y0[one]

    def along_and_out(px: Floats, py: Floats) -> tuple[Floats, Floats]:
        return (px - x) * ux + (py - y) * uy, (px - x) * uy - (py - y) * ux

    end, _ = along_and_out(sides.x1[one], sides.y1[one])
    (first, first_out), (last, last_out) = (
        along_and_out(sides.x0[other], sides.y0[other]),
        along_and_out(sides.x1[other], sides.y1[other]),
    )
    low = np.maximum(np.minimum(end, 0), np.minimum(first, last))
    high = np.minimum(np.maximum(end, 0), np.maximum(first, last))
    slope = (last_out - first_out) / (last - first)
    low_out, high_out = first_out + (low - first) * slope, first_out + (high - first) * slope
    gap = np.where(np.abs(low_out) > np.abs(high_out), low_out, high_out)
    half, out = (low + high) / 2, (low_out + high_out) / 4
    return gap, high - low, x + half * ux + out * uy, y + half * uy - out * ux


def _depth(stack: Stack, rows: Whole) -> Floats:
    """How far the part of each side reaches across the side's direction, by its box."""
    part = stack.sides.part[rows]
    ux, uy = _ways(stack, rows)
    depth: Floats = np.abs(uy) * (stack.right - stack.left)[part] + np.abs(ux) * (stack.top - stack.bottom)[part]
    return depth


def _is_covered(parts: Sequence[Part], stack: Stack, pair: tuple[int, int], middle: tuple[float, float]) -> bool:
    """Whether a third part, no further back than both, covers a point between two."""
    x, y = middle
    back = min(rank_key(parts[place], place) for place in pair)
    there = (stack.left <= x) & (stack.right >= x) & (stack.bottom <= y) & (stack.top >= y)
    return any(
        place not in pair and rank_key(parts[place], place) > back and contains(parts[place].outline, x, y)
        for place in map(int, np.flatnonzero(there))
    )
