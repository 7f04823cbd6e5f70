"""Visible regions as polygons of the geometry library: for their areas, and for picking and near misses."""

from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.seen.arrangement import Region
from geometry.seen.columns import TURN, Floats, Whole, begins, ramp, rows_where
from geometry.seen.rings import Rings

CHORDS_A_CIRCLE = 32
"""How finely arcs are flattened in polygons. Areas do not depend on it: what the arcs enclose is added exactly."""


def region_polygon(region: Region) -> BaseGeometry:
    """The region as one polygon or several, its arcs flattened between exact vertices; empty when nothing is seen.

    It is for picking and for finding neighbours. Measure with `region.area_mm2`, which is exact.
    """
    if not region.rings:
        return shapely.Polygon()
    count = np.array([len(ring) for ring in region.rings], dtype=np.intp)
    vertices = [vertex for ring in region.rings for vertex in ring]
    x = np.array([vertex.x for vertex in vertices], dtype=np.float64)
    y = np.array([vertex.y for vertex in vertices], dtype=np.float64)
    bulge = np.array([vertex.bulge for vertex in vertices], dtype=np.float64)
    flat = _flattened(Rings(np.zeros(len(count), dtype=np.intp), np.cumsum(count) - count, x, y, bulge))
    polygon = shapely.build_area(shapely.MultiLineString(list(_linear_rings(flat))))
    # A sliver beside an arc can be thinner than the arc's sagittas.
    return polygon if polygon.is_valid else shapely.make_valid(polygon)


def ring_areas(rings: Rings) -> Floats:
    """The area within each ring, positive for an outer ring and negative for a hole; arcs are exact.

    The library measures the flattened polygon. Beside each chord of an arc, a segment r2 (t - sin t) / 2 is added.
    """
    if not len(rings.first):
        return np.zeros(0)
    flat = _flattened(rings)
    area = shapely.area(shapely.polygons(_linear_rings(flat)))
    # The flattened ring may run the other way round than the ring itself, for a crescent thinner than its sagittas.
    starts = rows_where(begins(flat.ring))
    x, y = flat.x - flat.x[starts][flat.ring], flat.y - flat.y[starts][flat.ring]
    turned = np.add.reduceat(x[:-1] * y[1:] - x[1:] * y[:-1], starts)
    signed: Floats = np.copysign(area, turned) + np.add.reduceat(flat.segment, rings.first)
    return signed


class _Flat(NamedTuple):
    """Points round rings with the number of their ring; and for each vertex the area between its arc and the chords."""

    x: Floats
    y: Floats
    ring: Whole
    segment: Floats


def _linear_rings(flat: _Flat) -> NDArray[np.object_]:
    return np.asarray(shapely.linearrings(flat.x, flat.y, indices=flat.ring), dtype=np.object_)


def _flattened(rings: Rings) -> _Flat:
    x, y, bulge = rings.x, rings.y, rings.bulge
    count = np.diff(rings.first, append=len(x))
    ring = np.repeat(np.arange(len(count), dtype=np.intp), count)
    segment = np.zeros(len(x))
    bent = rows_where(bulge != 0)
    if not len(bent):
        return _Flat(x, y, ring, segment)
    following = np.arange(1, len(x) + 1, dtype=np.intp)
    following[rings.first + count - 1] = rings.first
    b, x0, y0 = bulge[bent], x[bent], y[bent]
    dx, dy = x[following[bent]] - x0, y[following[bent]] - y0
    away = (1 - b * b) / (4 * b)
    rx, ry = dy * away - dx / 2, -dx * away - dy / 2
    sweep = 4 * np.arctan(b)
    chords = np.maximum(2, np.ceil(np.abs(sweep) * CHORDS_A_CIRCLE / TURN - 1e-9)).astype(np.intp)
    turn = sweep / chords
    segment[bent] = chords * (rx * rx + ry * ry) * (turn - np.sin(turn)) / 2
    copies = np.ones(len(x), dtype=np.intp)
    copies[bent] = chords
    row = np.repeat(np.arange(len(x), dtype=np.intp), copies)
    arc = np.repeat(np.arange(len(bent), dtype=np.intp), chords)
    angle = ramp(np.zeros(len(bent), dtype=np.intp), chords) * turn[arc]
    cos, sin = np.cos(angle) - 1, np.sin(angle)
    flat_x, flat_y = x[row], y[row]
    on_arc = bulge[row] != 0
    # Points are turned about the centre, written as an offset from the start, so that the start itself stays exact.
    flat_x[on_arc] += cos * rx[arc] - sin * ry[arc]
    flat_y[on_arc] += sin * rx[arc] + cos * ry[arc]
    return _Flat(flat_x, flat_y, ring[row], segment)
