"""Tiles over a visible region: whole ones, cut ones, and the grout lines between them, arcs followed closely.

Only the border of the region is looked at, so a mosaic costs no more than large tiles. Millimetres from the lower left
corner of the tile that all others follow; course `n` is shifted by n times `course_shift` of a tile and its grout line.
"""

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.arrangement import Region
from geometry.columns import Floats, Whole
from geometry.grid import Border, Cells, Grid, cells_over
from geometry.outline import flattened
from geometry.sides import WELD_MM, Point
from shared.job import Tiles, Vertex

SAGITTA_MM = 0.01
"""How far a chord of the border may leave its arc: far below a tape's reading."""

KEPT = 256
"""So many surfaces are remembered as they were last tiled: a drag changes one of them, or none."""

Shapes = NDArray[np.object_]


class Tiling(NamedTuple):
    """How many tiles lie whole within a region, how many are cut by its border, and how long its grout lines are."""

    whole: int
    cut: int
    level_mm: float
    upright_mm: float

    @property
    def grout_mm(self) -> float:
        """The length of all grout lines."""
        return self.level_mm + self.upright_mm


class _Laid(NamedTuple):
    """Tiles laid over a region; `inner` is the region less a hair along its border, which is no grout line."""

    tiles: Tiles
    border: Border
    inner: BaseGeometry

    @property
    def across(self) -> float:
        """From one tile to the next in its course."""
        return self.tiles.width_mm + self.tiles.grout_mm

    @property
    def up(self) -> float:
        """From one course to the next."""
        return self.tiles.height_mm + self.tiles.grout_mm

    @property
    def is_straight(self) -> bool:
        """Whether the tiles of all courses stand one over another."""
        return self.tiles.course_shift in (0.0, 1.0)

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of the region."""
        b = self.border
        return float(b.x0.min()), float(b.y0.min()), float(b.x0.max()), float(b.y0.max())


@lru_cache(maxsize=KEPT)
def tiling(region: Region, tiles: Tiles, corner: Point) -> Tiling:
    """The tiles of a part over its visible region; all 0 where nothing is seen.

    `corner` is the lower left corner of the part's box. A tile counts as cut where more than a micrometre of it is
    missing. A grout line is measured along its middle, as far as the region reaches; where two cross, both go through:
    for whole tiles that gives 1000 / (width + grout) + 1000 / (height + grout) metres a square metre (exact). A
    region's border is no grout line.
    """
    laid = _laid(region, tiles, corner)
    if laid is None:
        return Tiling(0, 0, 0.0, 0.0)
    cells = cells_over(laid.border, _tile_grid(laid))
    return Tiling(cells.whole, cells.met, _length(_levels(laid)), _uprights_mm(laid))


@lru_cache(maxsize=KEPT)
def grout_lines(region: Region, tiles: Tiles, corner: Point, most: int) -> tuple[tuple[Vertex, Vertex], ...]:
    """The grout lines as straight paths; none where there are more than `most`.

    Their lengths sum to `tiling().grout_mm`. `corner` is the lower left corner of the part's box.
    """
    laid = _laid(region, tiles, corner)
    if laid is None or _many(laid) > most:
        return ()
    x, y = corner[0] + tiles.start_x_mm, corner[1] + tiles.start_y_mm
    return tuple(
        (Vertex(x0 + x, y0 + y), Vertex(x1 + x, y1 + y))
        for x0, y0, x1, y1 in _straight((*_levels(laid), *_uprights(laid)))
    )


def _laid(region: Region, tiles: Tiles, corner: Point) -> _Laid | None:
    if not region.rings:
        return None
    x, y = corner[0] + tiles.start_x_mm, corner[1] + tiles.start_y_mm
    rings = [np.array(flattened(ring, SAGITTA_MM)) - (x, y) for ring in region.rings]
    after = np.concatenate([np.roll(ring, -1, axis=0) for ring in rings])
    before = np.concatenate(rings)
    border = Border(before[:, 0], before[:, 1], after[:, 0], after[:, 1])
    whole = shapely.build_area(shapely.MultiLineString([(*ring, ring[0]) for ring in rings]))
    return _Laid(tiles, border, shapely.make_valid(whole).buffer(-WELD_MM))


def _tile_grid(laid: _Laid) -> Grid:
    width, height = laid.tiles.width_mm, laid.tiles.height_mm
    body = (WELD_MM, width - WELD_MM, WELD_MM, height - WELD_MM)
    return Grid(laid.across, laid.up, laid.tiles.course_shift, *body)


def _upright_grid(laid: _Laid) -> Grid:
    """The pieces of upright grout line, each from the middle of one level line to that of the next."""
    half = laid.tiles.grout_mm / 2
    body = (-half - WELD_MM, -half + WELD_MM, -half, laid.up - half)
    return Grid(laid.across, laid.up, laid.tiles.course_shift, *body)


def _many(laid: _Laid) -> float:
    """About how many lines there are, before any is made."""
    left, low, right, high = laid.box
    columns, courses = (right - left) / laid.across, (high - low) / laid.up
    return courses + (columns if laid.is_straight else columns * courses)


def _levels(laid: _Laid) -> Shapes:
    """All level grout lines within the region."""
    left, low, right, high = laid.box
    y = _steps(low, high, laid.up) * laid.up - laid.tiles.grout_mm / 2
    return _within(laid, np.full_like(y, left), y, np.full_like(y, right), y)


def _uprights(laid: _Laid) -> Shapes:
    """All upright grout lines within the region, piece by piece where courses are shifted."""
    if laid.is_straight:
        return _columns(laid)
    cells = cells_over(laid.border, _upright_grid(laid))
    return np.concatenate((_pieces(laid, *cells.whole_places()), _cut_pieces(laid, cells)))


def _uprights_mm(laid: _Laid) -> float:
    if laid.is_straight:
        return _length(_columns(laid))
    cells = cells_over(laid.border, _upright_grid(laid))
    return cells.whole * laid.up + _length(_cut_pieces(laid, cells))


def _columns(laid: _Laid) -> Shapes:
    left, low, right, high = laid.box
    x = _steps(left, right, laid.across) * laid.across - laid.tiles.grout_mm / 2
    return _within(laid, x, np.full_like(x, low), x, np.full_like(x, high))


def _cut_pieces(laid: _Laid, cells: Cells) -> Shapes:
    return np.asarray(shapely.intersection(laid.inner, _pieces(laid, cells.met_course, cells.met_place)))


def _pieces(laid: _Laid, course: Whole, place: Whole) -> Shapes:
    half = laid.tiles.grout_mm / 2
    x = (place + course.astype(np.float64) * laid.tiles.course_shift) * laid.across - half
    y = course.astype(np.float64) * laid.up - half
    return _lines(x, y, x, y + laid.up)


def _steps(low: float, high: float, step: float) -> Floats:
    """The numbers of all lines that may lie between two places."""
    return np.arange(np.floor(low / step), np.ceil(high / step) + 2, dtype=np.float64)


def _within(laid: _Laid, x0: Floats, y0: Floats, x1: Floats, y1: Floats) -> Shapes:
    return np.asarray(shapely.intersection(laid.inner, _lines(x0, y0, x1, y1)))


def _lines(x0: Floats, y0: Floats, x1: Floats, y1: Floats) -> Shapes:
    ends = np.stack((x0, y0, x1, y1), axis=1).reshape(-1, 2, 2)
    return np.asarray(shapely.linestrings(ends), dtype=np.object_)


def _length(shapes: Shapes) -> float:
    return float(shapely.length(shapes).sum())


def _straight(shapes: tuple[BaseGeometry, ...]) -> Iterator[tuple[float, float, float, float]]:
    """The ends of all straight lines of which shapes are made."""
    for line in shapely.get_parts(shapes):
        if line.length:
            (x0, y0), (x1, y1) = line.coords[0], line.coords[-1]
            yield x0, y0, x1, y1
