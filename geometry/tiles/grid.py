"""Cells laid in courses over a region: which lie wholly within it, and which its border meets; and rails across it.

A cell that the border does not meet lies on one side of it, and the cell's middle tells on which. All questions are
asked of the border alone, never cell by cell. `geometry.tiles.tiling` makes tiles and grout lines of it.
"""

from typing import NamedTuple

import numpy as np

from geometry.outlines.sides import WELD_MM
from geometry.seen.columns import Floats, Whole, ramp, rows_where
from shared.errors import JobError

MOST_MET = 400_000
"""How many cells or rails a border may meet: round 100 m by 100 m of the smallest mosaic it meets 80 000 cells."""


class RegionBorder(NamedTuple):
    """The straight pieces of closed rings, one row each: from (x0, y0) to (x1, y1)."""

    x0: Floats
    y0: Floats
    x1: Floats
    y1: Floats

    @property
    def turned(self) -> "RegionBorder":
        """The border with across and up exchanged."""
        return RegionBorder(self.y0, self.x0, self.y1, self.x1)


class Spans(NamedTuple):
    """Stretches of rails: the number of the rail, and where the stretch begins and ends along it. Sorted by those."""

    rail: Whole
    begin: Floats
    end: Floats

    @property
    def length(self) -> float:
        """The length of all stretches together."""
        return float((self.end - self.begin).sum())


class Grid(NamedTuple):
    """Cells that are `across` apart along a course, in courses that are `up` apart, mm.

    Course n is shifted by n times `shift` of `across`. A cell reaches from `left` to `right` and from `low` to `high`,
    counted from its place.
    """

    across: float
    up: float
    shift: float
    left: float
    right: float
    low: float
    high: float


class Cells(NamedTuple):
    """The cells whose middle lies within a region, and the cells that its border meets, each once.

    The first are stretches of neighbours: in a `course`, from the `first` place to the `last`. The second are a course
    and a place each.
    """

    course: Whole
    first: Whole
    last: Whole
    met_course: Whole
    met_place: Whole

    @property
    def met(self) -> int:
        """How many cells the border meets."""
        return len(self.met_course)

    @property
    def whole(self) -> int:
        """How many cells lie wholly within the region."""
        return int((self.last - self.first + 1).sum()) - int(self._in_stretches().sum())

    def whole_places(self) -> tuple[Whole, Whole]:
        """The course and the place of every cell that lies wholly within the region."""
        many = self.last - self.first + 1
        course, place = np.repeat(self.course, many), ramp(self.first, many)
        key, met = self._keys(course, place), self._keys(self.met_course, self.met_place)
        free = ~np.isin(key, met)
        return course[free], place[free]

    def _in_stretches(self) -> Whole:
        """For each cell that the border meets, 1 if its middle lies within the region, else 0."""
        if not len(self.course):
            return np.zeros(0, dtype=np.intp)
        key = self._keys(self.met_course, self.met_place)
        stretch = np.searchsorted(self._keys(self.course, self.first), key, side="right") - 1
        inside = (stretch >= 0) & (key <= self._keys(self.course, self.last)[stretch])
        return inside.astype(np.intp)

    def _keys(self, course: Whole, place: Whole) -> Whole:
        """One number for each cell, in the order of courses, then places."""
        ends = np.concatenate((self.first, self.last, self.met_place))
        low, high = (int(ends.min()), int(ends.max())) if len(ends) else (0, 0)
        return course * (high - low + 1) + (place - low)


def cells_over(border: RegionBorder, grid: Grid) -> Cells:
    """The cells of a grid over the region within a border; no cells for a border without pieces."""
    return Cells(*_stretches(border, grid), *_met(border, grid))


def spans_within(border: RegionBorder, heights: Floats) -> Spans:
    """The stretches of level rails, at these ascending heights, that lie within a border, but not along it.

    A stretch lies within if its two sides do, a weld below it and a weld above it.
    """
    below, above = (_crossings(border, heights + away) for away in (-WELD_MM, WELD_MM))
    rail, x = (np.concatenate(columns) for columns in zip(below, above, strict=True))
    is_above = np.arange(len(rail)) >= len(below[0])
    order = np.lexsort((x, rail))
    rail, x, is_above = rail[order], x[order], is_above[order]
    within = (np.cumsum(~is_above) % 2 == 1) & (np.cumsum(is_above) % 2 == 1)
    begins = rows_where(within[:-1])
    begins = begins[x[begins + 1] - x[begins] > WELD_MM]
    return Spans(rail[begins], x[begins], x[begins + 1])


def clipped(spans: Spans, rail: Whole, low: Floats, high: Floats) -> Spans:
    """The stretches of `spans` that lie on these pieces of their rails; their `rail` is then the number of the piece.

    Each piece is on the rail of that number, from `low` to `high`.
    """
    if not len(spans.rail) or not len(rail):
        return Spans(rail[:0], low[:0], high[:0])
    reach = float(max(spans.end.max(), high.max()) - min(spans.begin.min(), low.min())) + 1.0
    first = np.searchsorted(spans.rail * reach + spans.end, rail * reach + low, side="right")
    last = np.searchsorted(spans.rail * reach + spans.begin, rail * reach + high, side="left") - 1
    piece, span = _spread(first.astype(np.float64), last.astype(np.float64))
    begin, end = np.maximum(spans.begin[span], low[piece]), np.minimum(spans.end[span], high[piece])
    some = end - begin > WELD_MM
    return Spans(piece[some], begin[some], end[some])


def _crossings(border: RegionBorder, heights: Floats) -> tuple[Whole, Floats]:
    """Where level rails cross the border: the rail and how far across. Each rail crosses an even number of times."""
    low, high = np.minimum(border.y0, border.y1), np.maximum(border.y0, border.y1)
    first, last = (np.searchsorted(heights, ends, side="left").astype(np.float64) for ends in (low, high))
    row, rail = _spread(first, last - 1)
    share = (heights[rail] - border.y0[row]) / (border.y1[row] - border.y0[row])
    return rail, border.x0[row] + share * (border.x1[row] - border.x0[row])


def _stretches(border: RegionBorder, grid: Grid) -> tuple[Whole, Whole, Whole]:
    """The stretches of cells whose middles lie within: the course, the first place and the last."""
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


def _met(border: RegionBorder, grid: Grid) -> tuple[Whole, Whole]:
    """The course and the place of each cell that the border meets."""
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
    """The numbers of the first and the last cell that a piece of border from `low` to `high` meets.

    Cells reach from `begin` to `end`, counted from places that are `step` apart.
    """
    return np.ceil((low - end) / step), np.floor((high - begin) / step)


def _ends_within(border: RegionBorder, row: Whole, low: Floats, high: Floats) -> tuple[Floats, Floats]:
    """How far across each piece of border begins and ends, where only its stretch between two heights counts."""
    x0, y0 = border.x0[row], border.y0[row]
    dx, dy = border.x1[row] - x0, border.y1[row] - y0
    level = dy == 0
    rise = np.where(level, 1.0, dy)
    to_low, to_high = (np.clip((height - y0) / rise, 0.0, 1.0) for height in (low, high))
    return np.where(level, x0, x0 + to_low * dx), np.where(level, x0 + dx, x0 + to_high * dx)


def _spread(first: Floats, last: Floats) -> tuple[Whole, Whole]:
    """All whole numbers from the first to the last of each row: for each the row that it is of, and the number.

    JobError for more than `MOST_MET`, before they are made.
    """
    begin = first.astype(np.intp)
    many = np.maximum(last.astype(np.intp) - begin + 1, 0)
    if many.sum() > MOST_MET:
        raise JobError(
            "its border runs through too many tiles to count them",
            do="draw it with fewer corners, or check the size of its tiles",
        )
    return np.repeat(np.arange(len(begin), dtype=np.intp), many), ramp(begin, many)
