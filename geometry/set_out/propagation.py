"""How much areas and lengths change with the readings behind them, and so how far they may be off.

A quantity changes by its slope times the change of a reading (first order). Errors of readings are independent, so a
quantity may be off by the root of the sum of the squares of slope times tolerance (the usual law of propagation of
errors).

A reading here is a corner's distance from the left end, or its height from the floor; corners at one distance share one
reading. A bulge is no reading: an arc keeps its shape while its ends move.
"""

import math
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

import numpy as np

from geometry.outlines.measured import signed_area_mm2
from geometry.outlines.sides import sides
from geometry.seen.columns import Floats, Whole, begins, rows_where
from shared.job import Outline

FLAT_BULGE = 1e-5
"""The bulge below which an arc is reckoned by the first term of its series, which is right to ten digits."""

STEPS_A_MM = 1e6
"""Distances are told apart to a millionth of a millimetre: far finer than a tape, far coarser than rounding."""

Piece = tuple[float, float, float, float, float]
"""A straight line or one arc: from x, y, to x, y, and its bulge."""


class Sum(NamedTuple):
    """A quantity: the sum of areas within rings and of lengths of pieces, each times a factor.

    The area of an anticlockwise ring is positive and that of a clockwise ring negative, as in a visible region.
    """

    areas: tuple[tuple[float, Outline], ...] = ()
    lengths: tuple[tuple[float, Piece], ...] = ()


class Slopes(NamedTuple):
    """How much quantities change with readings: one row for each quantity and reading, by their numbers."""

    quantity: Whole
    reading: Whole
    slope: Floats


def outline_area(times: float, outline: Outline) -> tuple[float, Outline]:
    """The area within an outline, whichever way round it runs, for a `Sum`."""
    return (math.copysign(times, signed_area_mm2(outline)) if times else 0.0, outline)


def outline_lengths(times: float, outline: Outline, which: Iterable[int]) -> tuple[tuple[float, Piece], ...]:
    """The lengths of these sides of an outline (by the vertices that they leave), for a `Sum`."""
    wanted = frozenset(which)
    return tuple(
        (times, (side.x0, side.y0, side.x1, side.y1, side.bulge)) for side in sides(outline) if side.vertex in wanted
    )


def slopes_of(sums: Sequence[Sum]) -> Slopes:
    """The slopes of these quantities. A quantity's number is its place among them."""
    return _gathered([_area_slopes(sums), _length_slopes(sums)])


def as_one(slopes: Slopes, quantity: int) -> Slopes:
    """The slopes of the sum of all quantities; the sum gets this number."""
    return _gathered([slopes._replace(quantity=np.full_like(slopes.quantity, quantity))])


def joined(slopes: Iterable[Slopes]) -> Slopes:
    """The slopes of quantities whose parts were reckoned apart; those with the same number are added up."""
    return _gathered([*slopes, _no_slopes()])


def spreads(slopes: Slopes, many: int, tolerance_mm: Callable[[float], float]) -> tuple[float, ...]:
    """How far each of `many` quantities may be off. `tolerance_mm` gives the tolerance of a reading of some length."""
    readings, which = np.unique(slopes.reading, return_inverse=True)
    tolerances = np.array([tolerance_mm(abs(at)) for at in ((readings >> 1) / STEPS_A_MM).tolist()], dtype=np.float64)
    squares = (slopes.slope * tolerances[which]) ** 2 if len(readings) else slopes.slope
    return tuple(np.sqrt(np.bincount(slopes.quantity, squares, minlength=many)).tolist())


def _no_slopes() -> Slopes:
    none = np.zeros(0, dtype=np.intp)
    return Slopes(none, none, np.zeros(0))


def _gathered(slopes: Sequence[Slopes]) -> Slopes:
    """All rows, with the slopes of the same quantity and reading added up."""
    quantity, reading, slope = (np.concatenate(columns) for columns in zip(*slopes, strict=True))
    order = np.lexsort((reading, quantity))
    quantity, reading, slope = quantity[order], reading[order], slope[order]
    first = rows_where(begins(quantity, reading)) if len(quantity) else np.zeros(0, dtype=np.intp)
    return Slopes(quantity[first], reading[first], np.add.reduceat(slope, first) if len(first) else slope)


def _area_slopes(sums: Sequence[Sum]) -> Slopes:
    """The slopes of areas: of the trapezium sum over the chords and, for an arc, of its segment.

    A segment is a share of the chord's square.
    """
    rings = [(number, times, ring) for number, each in enumerate(sums) for times, ring in each.areas if ring]
    if not rings:
        return _no_slopes()
    count = np.array([len(ring) for _, _, ring in rings], dtype=np.intp)
    vertices = [vertex for _, _, ring in rings for vertex in ring]
    x0, y0, bulge = (np.array([getattr(v, name) for v in vertices]) for name in ("x", "y", "bulge"))
    first = np.cumsum(count) - count
    following = np.arange(1, len(vertices) + 1, dtype=np.intp)
    following[first + count - 1] = first
    x1, y1 = x0[following], y0[following]
    segment = 2 * _segment_share(bulge)
    dx, dy = segment * (x1 - x0), segment * (y1 - y0)
    quantity = np.repeat(np.array([number for number, _, _ in rings], dtype=np.intp), count)
    times = np.repeat(np.array([times for _, times, _ in rings], dtype=np.float64), count)
    by_end = (y1 / 2 - dx, -x1 / 2 - dy, -y0 / 2 + dx, x0 / 2 + dy)
    return _by_ends(quantity, times, (x0, y0, x1, y1), by_end)


def _length_slopes(sums: Sequence[Sum]) -> Slopes:
    """The slopes of lengths. A length is a multiple of its chord, which grows as an end moves along it.

    A piece whose chord is 0 has a slope of 0.
    """
    pieces = [(number, times, piece) for number, each in enumerate(sums) for times, piece in each.lengths]
    if not pieces:
        return _no_slopes()
    x0, y0, x1, y1, bulge = np.array([piece for _, _, piece in pieces], dtype=np.float64).T
    chord = np.hypot(x1 - x0, y1 - y0)
    along = _arc_share(bulge) / np.where(chord > 0, chord, np.inf)
    dx, dy = along * (x1 - x0), along * (y1 - y0)
    quantity = np.array([number for number, _, _ in pieces], dtype=np.intp)
    times = np.array([times for _, times, _ in pieces], dtype=np.float64)
    return _by_ends(quantity, times, (x0, y0, x1, y1), (-dx, -dy, dx, dy))


def _by_ends(quantity: Whole, times: Floats, places: tuple[Floats, ...], slopes: tuple[Floats, ...]) -> Slopes:
    """The slopes by x and y of either end. A reading's number follows its distance; it is even across and odd up."""
    steps = [np.rint(place * STEPS_A_MM).astype(np.intp) * 2 + axis % 2 for axis, place in enumerate(places)]
    return Slopes(np.tile(quantity, 4), np.concatenate(steps), np.concatenate(slopes) * np.tile(times, 4))


def _segment_share(bulge: Floats) -> Floats:
    """The area between chord and arc, divided by the square of the chord: r2 (t - sin t) / 2, r = c (1 + b2) / (4 b).

    For a flat arc it is b / 3, the limit of that formula.
    """
    bent = np.abs(bulge) > FLAT_BULGE
    b = np.where(bent, bulge, 1.0)
    turn = 4 * np.arctan(b)
    share: Floats = np.where(bent, ((1 + b * b) / (4 * b)) ** 2 * (turn - np.sin(turn)) / 2, bulge / 3)
    return share


def _arc_share(bulge: Floats) -> Floats:
    """The length along an arc, divided by its chord: (1 + b2) atan(b) / b; 1 for a straight piece."""
    bent = np.abs(bulge) > FLAT_BULGE
    b = np.where(bent, bulge, 1.0)
    share: Floats = np.where(bent, (1 + b * b) * np.arctan(b) / b, 1.0)
    return share
