"""Finds parts that should touch but miss each other or overlap by a few millimetres."""

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
    """Two parts, by id in drawing order, with sides that face each other and nearly touch.

    `gap_mm` is the widest gap between the two sides; a negative one is an overlap. `length_mm` is how far they go
    beside each other. `sides` are the two sides, each by the index of the vertex that it leaves.
    """

    parts: tuple[str, str]
    gap_mm: float
    length_mm: float
    sides: tuple[int, int]


def near_misses(parts: Sequence[Part], limit_mm: float = USUAL_LIMIT_MM) -> tuple[NearMiss, ...]:
    """The straight sides that face each other with a gap or overlap of at most `limit_mm`, over more length than that.

    There is one for each pair of parts, for its longest pair of sides, in drawing order. Some are left out (common
    practice, no source): those of doors and drawer fronts, which hang with reveals on purpose; those of parts that do
    not hide, as a fridge rolls out and has room beside it; a gap that a third part covers; and a strip along another
    part's border that is no deeper than the overlap.
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
    """The pairs of sides that nearly touch: the places of their parts, the near miss, and the middle of the gap."""
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
    """The directions of sides, of length 1, each with its own part on the left."""
    sides = stack.sides
    size = np.where(stack.interior_left[sides.part[rows]], sides.length[rows], -sides.length[rows])
    return (sides.x1[rows] - sides.x0[rows]) / size, (sides.y1[rows] - sides.y0[rows]) / size


def _are_opposed(stack: Stack, one: Whole, other: Whole) -> Flags:
    (ax, ay), (bx, by) = _ways(stack, one), _ways(stack, other)
    opposed: Flags = (np.abs(ax * by - ay * bx) <= PARALLEL) & (ax * bx + ay * by < 0)
    return opposed


def _between(stack: Stack, one: Whole, other: Whole) -> tuple[Floats, Floats, Floats, Floats]:
    """For each pair of sides: the widest gap over the length they share, that length, and x and y of the gap's middle.

    A negative gap is an overlap.
    """
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
    """How deep the part of each side is, square to the side, by the part's box."""
    part = stack.sides.part[rows]
    ux, uy = _ways(stack, rows)
    depth: Floats = np.abs(uy) * (stack.right - stack.left)[part] + np.abs(ux) * (stack.top - stack.bottom)[part]
    return depth


def _is_covered(parts: Sequence[Part], stack: Stack, pair: tuple[int, int], middle: tuple[float, float]) -> bool:
    """Whether a third part covers this point and is in front of at least one of the two."""
    x, y = middle
    back = min(rank_key(parts[place], place) for place in pair)
    there = (stack.left <= x) & (stack.right >= x) & (stack.bottom <= y) & (stack.top >= y)
    return any(
        place not in pair and rank_key(parts[place], place) > back and contains(parts[place].outline, x, y)
        for place in map(int, np.flatnonzero(there))
    )
