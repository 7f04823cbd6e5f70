"""Adjusts readings together by weighted least squares, and says which of them to doubt.

The unknowns are positions along a line (`adjust_positions`) or points in the plane (`adjust_distances`). Each reading
weighs as the inverse square of its standard deviation, so the standard deviation of unit weight is 1. The formulas
are those of any textbook of adjustment (Gauss-Markov model; Baarda's test of normalised residuals), from memory.
Published examples check the figures (`tests/checks`). `geometry.set_out.lines` turns a face's readings into these.
"""

from collections.abc import Collection, Iterable, Sequence
from math import hypot
from statistics import NormalDist
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from geometry.outlines.sides import Point
from shared.errors import JobError

ALPHA = 0.05
"""The chance that sound readings raise any doubt at all; all readings of one adjustment share it."""

UNCHECKED = 1e-7
"""A reading with a smaller redundancy number than this is checked by no other."""

TOLD_APART = 1e-6
"""Two readings cannot be told apart when the square of their residuals' correlation is nearer to 1 than this."""

MOST_STEPS = 30
SETTLED_MM = 1e-7
"""Points are settled when an iteration moves no coordinate by more than this."""

Floats = NDArray[np.float64]


class Observed(NamedTuple):
    """A reading from one unknown to another, by their numbers, and its standard deviation before adjustment; in mm.

    Along a line the reading is the position of `end` less that of `start`; in the plane it is their distance.
    """

    start: int
    end: int
    length_mm: float
    sd_mm: float


class Doubt(NamedTuple):
    """Readings, by their numbers, of which one is wrong. If there are several, nothing tells which.

    `off_mm` is for each of them how much longer it is than the readings that are not in doubt say.
    """

    observed: tuple[int, ...]
    off_mm: tuple[float, ...]


class Adjustment(NamedTuple):
    """Unknowns and readings after adjustment, each in the order they were given.

    For each unknown: `values` are positions, or x and y of each point in turn, in mm. `sds` are their standard
    deviations, as those of the readings before adjustment make them; 0 for what was fixed. `hanging` are the unknowns
    that no chain of readings joins to a fixed one: their values are counted from the first of their group.
    For each reading: `residuals` are adjusted less read, in mm. `redundancies` tell how far the others check it: 0 is
    not at all, 1 is wholly. `normalised` is |v| / (s0 sqrt(qvv)); 0 for a reading that nothing checks.
    `freedom` is the number of surplus readings. `doubts` are found one after the other, that of the greatest
    normalised residual above `critical` first.
    """

    values: tuple[float, ...]
    sds: tuple[float, ...]
    residuals: tuple[float, ...]
    redundancies: tuple[float, ...]
    normalised: tuple[float, ...]
    freedom: int
    critical: float
    doubts: tuple[Doubt, ...]
    hanging: tuple[int, ...] = ()

    @property
    def points(self) -> tuple[Point, ...]:
        """The values of an adjustment in the plane, as points."""
        return tuple(zip(self.values[::2], self.values[1::2], strict=True))


def critical_value(count: int, alpha: float = ALPHA) -> float:
    """The value that the greatest of `count` normalised residuals exceeds with chance `alpha` at most, if all is sound.

    Each residual has an equal share of alpha (Bonferroni), on both sides of the normal distribution: 1.960 for one.
    """
    return NormalDist().inv_cdf(1 - alpha / (2 * max(count, 1)))


def adjust_positions(observed: Sequence[Observed], count: int, fixed: Collection[int] = (0,)) -> Adjustment:
    """The positions of `count` unknowns along a line; those `fixed` stay at 0.

    Without readings every unknown that is not fixed hangs. ValueError for a number that is no unknown's, or a deviation
    that is not above 0.
    """
    _check(observed, count)
    held, hanging = _held(observed, count, frozenset(fixed))
    free = [unknown for unknown in range(count) if unknown not in held]
    places = {unknown: place for place, unknown in enumerate(free)}
    design = np.zeros((len(observed), len(free)))
    for row, each in enumerate(observed):
        for unknown, sign in ((each.end, 1.0), (each.start, -1.0)):
            if unknown in places:
                design[row, places[unknown]] += sign
    solved = _solved(design, _lengths(observed), _sds(observed))
    return _adjustment(solved, _spread(solved.unknowns, free, count), free, observed, hanging)


def adjust_distances(
    start: Sequence[Point],
    observed: Sequence[Observed],
    fixed: Collection[tuple[int, int]] = ((0, 0), (0, 1), (1, 1)),
    names: Sequence[str] = (),
) -> Adjustment:
    """Points in the plane from the distances between them, by Gauss-Newton iterations from where they seem to be.

    `fixed` are the coordinates, as (point, 0 for x or 1 for y), that stay as in `start`. There are three of them, so
    that the figure can neither shift nor turn: by default point 0 stays, and point 1 keeps its height. JobError, with
    the points' `names`, where too few distances hold a point, three contradict each other or the points do not settle.
    ValueError as for `adjust_positions`.
    """
    _check(observed, len(start))
    called = names or [f"point {number}" for number in range(1, len(start) + 1)]
    refuse_broken_triangles(observed, called)
    at = np.array(start, dtype=float).reshape(-1, 2)
    free = [place for place in range(at.size) if divmod(place, 2) not in fixed]
    sds = _sds(observed)
    for _ in range(MOST_STEPS):
        design, apart = _slopes(at, observed)
        design = design[:, free]
        _refuse_loose(design / sds[:, None], free, called)
        solved = _solved(design, _lengths(observed) - apart, sds)
        at = at + _spread(solved.unknowns, free, at.size).reshape(-1, 2)
        if not np.max(np.abs(solved.unknowns), initial=0.0) > SETTLED_MM:
            break
    else:
        raise JobError("the distances do not fit together", do="measure them again, the longest first")
    return _adjustment(solved, at.ravel(), free, observed, ())


def refuse_broken_triangles(observed: Iterable[Observed], names: Sequence[str]) -> None:
    """JobError for a distance that is longer, beyond doubt, than the way round by a third point."""
    known = {frozenset((each.start, each.end)): each for each in observed}
    for pair, long in known.items():
        for by in {point for other in known if other & pair for point in other - pair}:
            legs = [known.get(frozenset((end, by))) for end in (long.start, long.end)]
            if legs[0] is None or legs[1] is None:
                continue
            over = long.length_mm - legs[0].length_mm - legs[1].length_mm
            if over > critical_value(1) * hypot(long.sd_mm, legs[0].sd_mm, legs[1].sd_mm):
                raise JobError(
                    f"from {names[long.start]} to {names[long.end]} is {long.length_mm:g} mm straight, "
                    f"but only {legs[0].length_mm + legs[1].length_mm:g} mm by way of {names[by]}",
                    do="measure these three again",
                )


class _Solved(NamedTuple):
    """A least-squares solution: the unknowns and their deviations, and what it leaves of the readings.

    `residuals` are divided by the readings' deviations. `left` is the unit matrix less the hat matrix: its diagonal
    holds the redundancy numbers.
    """

    unknowns: Floats
    sds: Floats
    residuals: Floats
    left: Floats


def _solved(design: Floats, lengths: Floats, sds: Floats) -> _Solved:
    """The least-squares solution by QR decomposition, with every reading divided by its deviation."""
    columns, triangle = np.linalg.qr(design / sds[:, None])
    inverse = np.linalg.inv(triangle)
    lengths = lengths / sds
    seen = columns.T @ lengths
    return _Solved(
        inverse @ seen,
        np.linalg.norm(inverse, axis=1),
        columns @ seen - lengths,
        np.eye(len(sds)) - columns @ columns.T,
    )


def _adjustment(
    solved: _Solved, values: Floats, free: Sequence[int], observed: Sequence[Observed], hanging: tuple[int, ...]
) -> Adjustment:
    """The adjustment that a solution gives. `values` are the unknowns after it, the fixed ones among them."""
    redundancies = np.clip(np.diag(solved.left), 0.0, 1.0)
    checked = redundancies > UNCHECKED
    critical = critical_value(int(np.count_nonzero(checked)))
    return Adjustment(
        values=_plain(values),
        sds=_plain(_spread(solved.sds, free, values.size)),
        residuals=_plain(solved.residuals * _sds(observed)),
        redundancies=_plain(redundancies),
        normalised=_plain(_normalised(solved.residuals, redundancies)),
        freedom=len(observed) - len(free),
        critical=critical,
        doubts=_doubts(solved, _sds(observed), critical),
        hanging=hanging,
    )


def _doubts(solved: _Solved, sds: Floats, critical: float) -> tuple[Doubt, ...]:
    """The doubts, one by one: the reading with the greatest normalised residual above the critical value is left out.

    Then the next is sought, and so on, until no residual is above it. Readings that cannot be told apart from the one
    left out are in its doubt too.
    """
    residuals, left = solved.residuals, solved.left
    worst: list[int] = []
    groups: list[tuple[NDArray[np.intp], Floats]] = []
    while residuals.size:
        share = np.diag(left)
        normalised = _normalised(residuals, share)
        most = int(np.argmax(normalised))
        if not normalised[most] > critical:
            break
        checked = np.flatnonzero(share > UNCHECKED)
        together = checked[left[most, checked] ** 2 >= (1 - TOLD_APART) * share[most] * share[checked]]
        groups.append((together, share[most] / left[most, together]))
        worst.append(most)
        residuals, left = _left_out(residuals, left, most)
    off = np.linalg.solve(solved.left[np.ix_(worst, worst)], -solved.residuals[worst])
    return tuple(
        Doubt(tuple(together.tolist()), _plain(error * ratio * sds[together]))
        for error, (together, ratio) in zip(off, groups, strict=True)
    )


def _left_out(residuals: Floats, left: Floats, reading: int) -> tuple[Floats, Floats]:
    """Residuals and `left` after a reading is given an unknown error of its own, so that it says nothing."""
    column = left[:, reading]
    residuals = residuals - column * (residuals[reading] / column[reading])
    left = left - np.outer(column, column) / column[reading]
    left[reading, :] = left[:, reading] = 0.0
    return residuals, left


def _normalised(residuals: Floats, redundancies: Floats) -> Floats:
    checked = redundancies > UNCHECKED
    return np.where(checked, np.abs(residuals) / np.sqrt(np.where(checked, redundancies, 1.0)), 0.0)


def _held(observed: Sequence[Observed], count: int, fixed: frozenset[int]) -> tuple[frozenset[int], tuple[int, ...]]:
    """The unknowns to hold at 0: the fixed ones, and the first of each group that hangs; and all unknowns that hang."""
    group = list(range(count))

    def leader(unknown: int) -> int:
        while group[unknown] != unknown:
            unknown = group[unknown]
        return unknown

    for each in observed:
        one, other = sorted((leader(each.start), leader(each.end)))
        group[other] = one
    standing = {leader(unknown) for unknown in fixed}
    hanging = tuple(unknown for unknown in range(count) if leader(unknown) not in standing)
    return fixed | {leader(unknown) for unknown in hanging}, hanging


def _slopes(at: Floats, observed: Sequence[Observed]) -> tuple[Floats, Floats]:
    """How much each distance changes with each coordinate, and each distance between the points as they are."""
    starts, ends = [each.start for each in observed], [each.end for each in observed]
    between = at[ends] - at[starts]
    apart = np.maximum(np.hypot(between[:, 0], between[:, 1]), SETTLED_MM)
    design = np.zeros((len(observed), at.size))
    rows = np.arange(len(observed))
    for axis in (0, 1):
        slope = between[:, axis] / apart
        design[rows, [2 * point + axis for point in ends]] = slope
        design[rows, [2 * point + axis for point in starts]] = -slope
    return design, apart


def _refuse_loose(design: Floats, free: Sequence[int], names: Sequence[str]) -> None:
    """JobError where some points can move without changing any distance."""
    _, sizes, ways = np.linalg.svd(design)
    holding = int(np.count_nonzero(sizes > 1e-9 * np.max(sizes, initial=0.0)))
    if holding == len(free):
        return
    loose = {free[place] // 2 for way in ways[holding:] for place in np.flatnonzero(np.abs(way) > TOLD_APART).tolist()}
    points = " and ".join(names[point] for point in sorted(loose))
    raise JobError(f"too few distances fix {points}", do="measure one more, a diagonal for instance")


def _check(observed: Sequence[Observed], count: int) -> None:
    for each in observed:
        if not (0 <= each.start < count and 0 <= each.end < count and each.start != each.end and each.sd_mm > 0):
            raise ValueError(each)


def _spread(numbers: Floats, free: Sequence[int], size: int) -> Floats:
    """The numbers at their places among zeros."""
    whole = np.zeros(size)
    whole[list(free)] = numbers
    return whole


def _lengths(observed: Sequence[Observed]) -> Floats:
    return np.array([each.length_mm for each in observed], dtype=float)


def _sds(observed: Sequence[Observed]) -> Floats:
    return np.array([each.sd_mm for each in observed], dtype=float)


def _plain(numbers: Floats) -> tuple[float, ...]:
    return tuple(map(float, numbers))
