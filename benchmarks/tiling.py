"""Tiles on a splashback with openings, counted and drawn, compared with asking the geometry library tile by tile."""

from collections.abc import Iterator
from functools import partial

import numpy as np
import shapely

from benchmarks.measuring import Measured, medians
from geometry.outlines.shapes import box, rounded_box
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Region
from geometry.seen.regions import region_polygon
from geometry.tiles.tiling import grout_lines, tiling
from shared.job import Part, Tiles
from shared.trade.kinds import Kind

MOSAIC = Tiles(5, 5, 1, course_shift=0.5)
"""Tiles so small that the splashback has about 60 000; no splashback has more."""

GOAL_MS = 16.0
"""One frame of a usual screen, 60 a second."""


def measured() -> Iterator[Measured]:
    """The times for the finest mosaic and for usual tiles, with nothing remembered."""
    region = _splashback()
    usual = Tiles(150, 75, 3, course_shift=0.5)
    counted, drawn, mosaic, one_by_one = medians(
        partial(tiling.__wrapped__, region, usual, (0.0, 0.0)),
        partial(grout_lines.__wrapped__, region, usual, (0.0, 0.0), 1500),
        partial(tiling.__wrapped__, region, MOSAIC, (0.0, 0.0)),
        partial(_one_by_one, region, MOSAIC),
    )
    yield Measured("counting tiles of 150 x 75", counted, "{:.2f} ms")
    yield Measured("drawing them", drawn, "{:.2f} ms")
    yield Measured("counting 60 000 tiles of a mosaic", mosaic, "{:.2f} ms", GOAL_MS)
    yield Measured("counting them, of asking tile by tile which are whole", mosaic / one_by_one, "{:.3f}")


def _splashback() -> Region:
    parts = (
        Part("tiles", Kind.SPLASHBACK, box(0, 0, 3600, 600)),
        Part("outlet", Kind.OUTLET, box(500, 200, 115, 72)),
        Part("window", Kind.WINDOW, rounded_box(1500, 200, 800, 300, 100)),
    )
    return arrange(parts).region("tiles")


def _one_by_one(region: Region, tiles: Tiles) -> int:
    polygon = region_polygon(region)
    shapely.prepare(polygon)
    x, y = np.meshgrid(np.arange(0, 3600, 6.0), np.arange(0, 600, 6.0))
    boxes = shapely.box(x.ravel(), y.ravel(), x.ravel() + tiles.width_mm, y.ravel() + tiles.height_mm)
    return int(shapely.contains(polygon, boxes).sum())
