"""Cells laid in courses over a region: which lie wholly within, and which its border meets.

A cell that the border does not meet lies on one side of it, so its middle says on which. Both questions are asked of
the border alone, never cell by cell.
"""

from typing import NamedTuple

import numpy as np

from geometry.columns import Floats, Whole, ramp


class Border(NamedTuple):
    """The straight pieces of closed rings, one row each: from (x0, y0) to (x1, y1)."""

    x0: Floats
    y0: Floats
    x1: Floats
    y1: Floats


class Grid(NamedTuple):
    """Cells at every `across` along a course and every `up` from course to course.

    Course n is shifted by n times `shift` of `across`. A cell reaches from `left` to `right` and from `low` to `high`
    of its place.
    """

    across: float
    up: float
    shift: float
    left: float
    right: float
    low: float
    high: float


class Cells(NamedTuple):
    """The cells whose middle lies within, as runs along courses, and those that the border meets, each once."""

    course: Whole
    first: Whole
    last: Whole
    met_course: Whole
    met_place: Whole

    @property
    def met(self) -> int:
        """How many the border meets."""
        return len(self.met_course)

    @property
    def whole(self) -> int:
        """How many lie wholly within."""
        return int((self.last - self.first + 1).sum()) - int(self._in_runs().sum())

    def whole_places(self) -> tuple[Whole, Whole]:
        """Course and place of every cell that lies wholly within."""
        many = self.last - self.first + 1
        course, place = np.repeat(self.course, many), ramp(self.first, many)
        key, met = self._keys(course, place), self._keys(self.met_course, self.met_place)
        free = ~np.isin(key, met)
        return course[free], place[free]

    def _in_runs(self) -> Whole:
        """Of each cell that the border meets, whether its middle lies within."""
        if not len(self.course):
            return np.zeros(0, dtype=np.intp)
        key = self._keys(self.met_course, self.met_place)
        run = np.searchsorted(self._keys(self.course, self.first), key, side="right") - 1
        inside = (run >= 0) & (key <= self._keys(self.course, self.last)[run])
        return inside.astype(np.intp)

    def _keys(self, course: Whole, place: Whole) -> Whole:
        """One number for each cell, in the order of courses, then places."""
        ends = np.concatenate((self.first, self.last, self.met_place))
        low, high = (int(ends.min()), int(ends.max())) if len(ends) else (0, 0)
        return course * (high - low + 1) + (place - low)


def cells_over(border: Border, grid: Grid) -> Cells:
    """The cells of a grid over the region within a border; none for no border."""
    return Cells(*_runs(border, grid), *_met(border, grid))


def _runs(border: Border, grid: Grid) -> tuple[Whole, Whole, Whole]:
    """Along the middle of each course, from which to which place middles of cells lie within."""
    middle = (grid.low + grid.high) / 2
    low, high = np.minimum(border.y0, border.y1), np.maximum(border.y0, border.y1)
    first, last = np.ceil((low - middle) / grid.up), np.ceil((high - middle) / grid.up) - 1
    row, course = _spread(first, last)
    y0, x0 = border.y0[row], border.x0[row]
    share = (course * grid.up + middle - y0) / (border.y1[row] - y0)
    along = (x0 + share * (border.x1[row] - x0) - (grid.left + grid.right) / 2) / grid.across - course * grid.shift
    order = np.lexsort((along, course))
    ends = np.ceil(along[order]).astype(np.intp)
    course, begin, end = course[order][::2], ends[::2], ends[1::2] - 1
    some = begin <= end
    return course[some], begin[some], end[some]


def _met(border: Border, grid: Grid) -> tuple[Whole, Whole]:
    """Course and place of the cells that the border meets."""
    row, course = _spread(
        *_reach(np.minimum(border.y0, border.y1), np.maximum(border.y0, border.y1), grid.low, grid.high, grid.up)
    )
    height = course.astype(np.float64) * grid.up
    one, other = _ends_within(border, row, height + grid.low, height + grid.high)
    away = course * grid.shift * grid.across
    which, place = _spread(
        *_reach(np.minimum(one, other) - away, np.maximum(one, other) - away, grid.left, grid.right, grid.across)
    )
    cells = np.unique(np.stack((course[which], place), axis=1), axis=0)
    return cells[:, 0], cells[:, 1]


def _reach(low: Floats, high: Floats, begin: float, end: float, step: float) -> tuple[Floats, Floats]:
    """The first and last of the stretches `begin` to `end`, at every `step`, that what lies from low to high meets."""
    return np.ceil((low - end) / step), np.floor((high - begin) / step)


def _ends_within(border: Border, row: Whole, low: Floats, high: Floats) -> tuple[Floats, Floats]:
    """Where pieces of border begin and end across, of what lies of them between two heights."""
    x0, y0 = border.x0[row], border.y0[row]
    dx, dy = border.x1[row] - x0, border.y1[row] - y0
    level = dy == 0
    rise = np.where(level, 1.0, dy)
    to_low, to_high = (np.clip((height - y0) / rise, 0.0, 1.0) for height in (low, high))
    return np.where(level, x0, x0 + to_low * dx), np.where(level, x0 + dx, x0 + to_high * dx)


def _spread(first: Floats, last: Floats) -> tuple[Whole, Whole]:
    """For each row all whole numbers from its first to its last: the numbers of the rows, and the numbers."""
    begin = first.astype(np.intp)
    many = np.maximum(last.astype(np.intp) - begin + 1, 0)
    return np.repeat(np.arange(len(begin), dtype=np.intp), many), ramp(begin, many)
