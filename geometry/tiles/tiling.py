"""Counts the tiles over a visible region, whole and cut, and measures the grout lines; arcs are followed closely.

Only the border of the region is looked at, so a mosaic takes no longer than large tiles. Lengths are millimetres from
the lower left corner of the tile that all others follow. Course `n` is shifted by n times `course_shift` of a tile and
its grout line. `geometry.tiles.grid` counts the cells.
"""

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from geometry.outlines.measured import flattened
from geometry.outlines.sides import WELD_MM, Point
from geometry.seen.arrangement import Region
from geometry.seen.columns import Floats, Whole
from geometry.tiles.grid import Cells, Grid, RegionBorder, cells_over, clipped, spans_within
from shared.errors import JobError
from shared.job import Tiles, Vertex

SAGITTA_MM = 0.01
"""How far a chord of the border may leave its arc: far below a tape's reading."""

KEPT = 256
"""How many parts are remembered as they were last tiled: a drag changes one of them, or none."""


class Tiling(NamedTuple):
    """How many tiles lie whole within a region, how many its border cuts, and how long its grout lines are."""

    whole: int
    cut: int
    level_mm: float
    upright_mm: float

    @property
    def grout_mm(self) -> float:
        """The length of all grout lines."""
        return self.level_mm + self.upright_mm


class _Laid(NamedTuple):
    """Tiles laid over a region. The border's coordinates are counted from the tile that all others follow."""

    tiles: Tiles
    border: RegionBorder

    @property
    def across(self) -> float:
        """The distance from one tile to the next in its course."""
        return self.tiles.width_mm + self.tiles.grout_mm

    @property
    def up(self) -> float:
        """The distance from one course to the next."""
        return self.tiles.height_mm + self.tiles.grout_mm

    @property
    def half(self) -> float:
        """The distance from the middle of a grout line to the tile."""
        return self.tiles.grout_mm / 2

    @property
    def is_straight(self) -> bool:
        """Whether the tiles of all courses are right above each other."""
        return self.tiles.course_shift in (0.0, 1.0)


class _Lines(NamedTuple):
    """Grout lines of one direction: how far up or across each is, and where it begins and ends along itself."""

    at: Floats
    begin: Floats
    end: Floats

    @property
    def length(self) -> float:
        """The length of all lines together."""
        return float((self.end - self.begin).sum())


@lru_cache(maxsize=KEPT)
def tiling(region: Region, tiles: Tiles, corner: Point) -> Tiling:
    """The tiles of a part over its visible region; all numbers are 0 when nothing of the part is seen.

    `corner` is the lower left corner of the part's box. A tile counts as cut if more than a weld of it is missing. A
    grout line is measured along its middle, as far as the region reaches. Where two lines cross, both go through: for
    whole tiles that gives 1000 / (width + grout) + 1000 / (height + grout) metres a square metre (exact). The border of
    a region is no grout line. JobError where the border runs through too many tiles (`geometry.tiles.grid.MOST_MET`).
    """
    laid = _laid(region, tiles, corner)
    if laid is None:
        return Tiling(0, 0, 0.0, 0.0)
    cells = cells_over(laid.border, _tile_grid(laid))
    return Tiling(cells.whole, cells.met, _levels(laid).length, _uprights_mm(laid))


@lru_cache(maxsize=KEPT)
def grout_lines(region: Region, tiles: Tiles, corner: Point, most: int) -> tuple[tuple[Vertex, Vertex], ...]:
    """The grout lines as straight paths; empty when there would be more than about `most`, or too many to be counted.

    Their lengths sum to `tiling().grout_mm`. `corner` is the lower left corner of the part's box.
    """
    laid = _laid(region, tiles, corner)
    if laid is None or _many(laid) > most:
        return ()
    try:
        level, upright = _levels(laid), _uprights(laid)
    except JobError:  # the takeoff says so; with the fronts hung the border may be longer than there
        return ()
    x, y = corner[0] + tiles.start_x_mm, corner[1] + tiles.start_y_mm
    levels = ((Vertex(a + x, at + y), Vertex(b + x, at + y)) for at, a, b in _rows(level))
    uprights = ((Vertex(at + x, a + y), Vertex(at + x, b + y)) for at, a, b in _rows(upright))
    return (*levels, *uprights)


def _laid(region: Region, tiles: Tiles, corner: Point) -> _Laid | None:
    if not region.rings:
        return None
    x, y = corner[0] + tiles.start_x_mm, corner[1] + tiles.start_y_mm
    rings = [np.array(flattened(ring, SAGITTA_MM)) - (x, y) for ring in region.rings]
    before = np.concatenate(rings)
    after = np.concatenate([np.roll(ring, -1, axis=0) for ring in rings])
    return _Laid(tiles, RegionBorder(before[:, 0], before[:, 1], after[:, 0], after[:, 1]))


def _tile_grid(laid: _Laid) -> Grid:
    width, height = laid.tiles.width_mm, laid.tiles.height_mm
    body = (WELD_MM, width - WELD_MM, WELD_MM, height - WELD_MM)
    return Grid(laid.across, laid.up, laid.tiles.course_shift, *body)


def _upright_cells(laid: _Laid) -> Cells:
    """The pieces of upright grout lines as cells, each from the middle of one level line to the middle of the next."""
    body = (-laid.half - WELD_MM, -laid.half + WELD_MM, -laid.half, laid.up - laid.half)
    return cells_over(laid.border, Grid(laid.across, laid.up, laid.tiles.course_shift, *body))


def _many(laid: _Laid) -> float:
    """About how many grout lines there are, reckoned before any is made."""
    columns, courses = np.ptp(laid.border.x0) / laid.across, np.ptp(laid.border.y0) / laid.up
    return float(courses + (columns if laid.is_straight else columns * courses))


def _levels(laid: _Laid) -> _Lines:
    """All level grout lines within the region."""
    return _rails(laid.border, laid.up, laid.half)


def _uprights(laid: _Laid) -> _Lines:
    """All upright grout lines within the region; piece by piece when courses are shifted."""
    if laid.is_straight:
        return _rails(laid.border.turned, laid.across, laid.half)
    cells = _upright_cells(laid)
    whole, cut = _pieces(laid, *cells.whole_places()), _cut(laid, cells)
    return _Lines(*(np.concatenate(columns) for columns in zip(whole, cut, strict=True)))


def _uprights_mm(laid: _Laid) -> float:
    if laid.is_straight:
        return _uprights(laid).length
    cells = _upright_cells(laid)
    return cells.whole * laid.up + _cut(laid, cells).length


def _rails(border: RegionBorder, step: float, half: float) -> _Lines:
    """The level lines within a border: one at every `step`, each `half` below its course."""
    first, last = np.floor(border.y0.min() / step), np.ceil(border.y0.max() / step) + 1
    at = np.arange(first, last + 1, dtype=np.float64) * step - half
    spans = spans_within(border, at)
    return _Lines(at[spans.rail], spans.begin, spans.end)


def _cut(laid: _Laid, cells: Cells) -> _Lines:
    """The parts, within the region, of those pieces of upright grout lines that the border meets."""
    pieces = _pieces(laid, cells.met_course, cells.met_place)
    at, rail = np.unique(pieces.at, return_inverse=True)
    spans = clipped(spans_within(laid.border.turned, at), rail, pieces.begin, pieces.end)
    return _Lines(pieces.at[spans.rail], spans.begin, spans.end)


def _pieces(laid: _Laid, course: Whole, place: Whole) -> _Lines:
    """Whole pieces of upright grout lines, by their course and place."""
    shifted = course.astype(np.float64) * laid.tiles.course_shift
    begin = course.astype(np.float64) * laid.up - laid.half
    return _Lines((place + shifted) * laid.across - laid.half, begin, begin + laid.up)


def _rows(lines: _Lines) -> Iterator[tuple[float, float, float]]:
    return zip(lines.at.tolist(), lines.begin.tolist(), lines.end.tolist(), strict=True)
