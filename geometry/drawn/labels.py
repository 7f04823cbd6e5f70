"""Finds the place where the name of a region is written."""

from functools import lru_cache
from typing import NamedTuple

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.outlines.measured import flattened
from geometry.outlines.sides import Box, Point
from shared.job import Outline

SAGITTA_MM = 0.5
"""How far a chord may leave its arc here: a name's place need not be exact."""

FEW_HOLES = 8
"""How many holes are tried at most: a name's place is not worth a long search."""


class Spot(NamedTuple):
    """The middle of a clear place, and how wide and high the place is, measured through that middle, mm."""

    x: float
    y: float
    width_mm: float
    height_mm: float


def label_spot(rings: tuple[Outline, ...]) -> Spot | None:
    """The place in a region for its name; None for an empty region.

    It is round the middle of the box round the region, if that lies inside the region. Otherwise it is the best of a
    few places in the region's largest piece: one that shapely picks, and one over and one under each hole. The rule is
    simple and does not find the best place there is.
    """
    if not rings:
        return None
    return _spot_of_box(rings[0]) if len(rings) == 1 and _is_upright_box(rings[0]) else _spot_inside(rings)


def _is_upright_box(ring: Outline) -> bool:
    """Whether a ring is a plain box: most regions are, and a drag must not wait for shapely to say so."""
    if len(ring) != 4 or any(vertex.bulge for vertex in ring):
        return False
    a, b, c, d = ring
    return (a.x == b.x and b.y == c.y and c.x == d.x and d.y == a.y) or (
        a.y == b.y and b.x == c.x and c.y == d.y and d.x == a.x
    )


def _spot_of_box(ring: Outline) -> Spot:
    a, c = ring[0], ring[2]
    return Spot((a.x + c.x) / 2, (a.y + c.y) / 2, abs(c.x - a.x), abs(c.y - a.y))


@lru_cache(maxsize=4096)  # regions that a drag leaves alone come again in every frame
def _spot_inside(rings: tuple[Outline, ...]) -> Spot | None:
    surface = _surface(rings)
    if surface.is_empty:
        return None
    spots = [_spot_at(surface, point) for point in _places(surface)]
    return max(spots, key=lambda spot: spot.width_mm * min(spot.width_mm, spot.height_mm))


def _places(surface: BaseGeometry) -> list[Point]:
    """Points inside a region that may hold its name: the middle of its box, or else some in its largest piece."""
    left, bottom, right, top = surface.bounds
    x, y = (left + right) / 2, (bottom + top) / 2
    if surface.contains(shapely.Point(x, y)):
        return [(x, y)]
    largest = max(shapely.get_parts(surface).tolist(), key=lambda piece: piece.area)
    holes = [hole.bounds for hole in largest.interiors[:FEW_HOLES]]
    beside = [((a + c) / 2, (edge + near) / 2) for a, b, c, d in holes for edge, near in ((top, d), (bottom, b))]
    inside = largest.representative_point()
    return [(inside.x, inside.y), *(place for place in beside if surface.contains(shapely.Point(place)))]


def _spot_at(surface: BaseGeometry, place: Point) -> Spot:
    """The clear place round a point inside: as wide as the level line through the point is long inside the region.

    It is as high as the upright line through the middle of that one.
    """
    x, y = place
    start, end = _level_stretch(surface, x, y, surface.bounds)
    middle = (start + end) / 2
    low, high = _upright_stretch(surface, middle, y, surface.bounds)
    return Spot(middle, (low + high) / 2, end - start, high - low)


def _surface(rings: tuple[Outline, ...]) -> BaseGeometry:
    """The region as shapely has it: the anticlockwise rings without the clockwise ones."""
    loops = [shapely.LinearRing(points) for ring in rings if len(points := flattened(ring, SAGITTA_MM)) > 2]
    outer = [loop for loop in loops if loop.is_ccw]
    holes = [loop for loop in loops if not loop.is_ccw]
    if len(outer) == 1:
        return _mended(shapely.Polygon(outer[0], holes))
    return shapely.difference(_united(outer), _united(holes))


def _united(loops: list[shapely.LinearRing]) -> BaseGeometry:
    return shapely.union_all([_mended(shapely.Polygon(loop)) for loop in loops])


def _mended(polygon: shapely.Polygon) -> BaseGeometry:
    """The polygon made valid for shapely: chords may cross where arcs only touch."""
    return polygon if polygon.is_valid else polygon.buffer(0)


def _level_stretch(surface: BaseGeometry, x: float, y: float, bounds: Box) -> tuple[float, float]:
    """The stretch of the level line through a point that lies inside, unbroken: its left and its right end."""
    left, _, right, _ = bounds
    crossed = shapely.LineString([(left - 1, y), (right + 1, y)]).intersection(surface)
    stretches = [(piece.bounds[0], piece.bounds[2]) for piece in shapely.get_parts(crossed).tolist()]
    return _stretch_at(stretches, x)


def _upright_stretch(surface: BaseGeometry, x: float, y: float, bounds: Box) -> tuple[float, float]:
    """The stretch of the upright line through a point that lies inside, unbroken: its lower and its upper end."""
    _, bottom, _, top = bounds
    crossed = shapely.LineString([(x, bottom - 1), (x, top + 1)]).intersection(surface)
    stretches = [(piece.bounds[1], piece.bounds[3]) for piece in shapely.get_parts(crossed).tolist()]
    return _stretch_at(stretches, y)


def _stretch_at(stretches: list[tuple[float, float]], position: float) -> tuple[float, float]:
    """The stretch that holds a position, or else the stretch nearest to it."""
    return min(stretches, key=lambda each: max(each[0] - position, position - each[1], 0.0))
