"""Visible regions as polygons of the geometry library: their areas, and polygons for picking and near misses."""

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.arrangement import Region
from geometry.columns import Floats, ramp
from geometry.rings import Rings

CHORDS_A_CIRCLE = 32
"""How finely arcs are flattened in polygons; areas do not depend on it, as what the arcs enclose is added exactly."""


def region_polygon(region: Region) -> BaseGeometry:
    """The region as a polygon or several, its arcs flattened between exact vertices; empty where nothing is seen.

    For picking and neighbour searches: measure with `region.area_mm2`, which is exact.
    """
    if not region.rings:
        return shapely.Polygon()
    count = np.array([len(ring) for ring in region.rings], dtype=np.intp)
    vertices = [vertex for ring in region.rings for vertex in ring]
    x, y, bulge = (
        np.array([getattr(vertex, name) for vertex in vertices], dtype=np.float64) for name in ("x", "y", "bulge")
    )
    rings = Rings(np.zeros(len(count), dtype=np.intp), np.cumsum(count) - count, x, y, bulge)
    return shapely.build_area(shapely.multilinestrings(_flat_rings(rings)[0]))


def ring_areas(rings: Rings) -> Floats:
    """The area within each ring, positive for outer ones and negative for holes, arcs exact.

    The library measures the flattened polygon; each chord of an arc leaves a segment r2 (t - sin t) / 2 beside it.
    """
    if not len(rings.first):
        return np.zeros(0)
    flat, segments = _flat_rings(rings)
    area = shapely.area(shapely.polygons(flat))
    signed: Floats = np.where(shapely.is_ccw(flat), area, -area) + np.add.reduceat(segments, rings.first)
    return signed


def _flat_rings(rings: Rings) -> tuple[np.ndarray, Floats]:
    """The rings with arcs flattened, and for each vertex the area between its arc and the chords."""
    x, y, bulge = rings.x, rings.y, rings.bulge
    count = np.diff(np.append(rings.first, len(x)))
    ring = np.repeat(np.arange(len(count), dtype=np.intp), count)
    segments = np.zeros(len(x))
    bent = np.flatnonzero(bulge)
    if not len(bent):
        return shapely.linearrings(x, y, indices=ring), segments
    following = np.arange(1, len(x) + 1, dtype=np.intp)
    following[rings.first + count - 1] = rings.first
    sweep = 4 * np.arctan(bulge[bent])
    chords = np.ones(len(x), dtype=np.intp)
    chords[bent] = np.maximum(2, np.ceil(np.abs(sweep) / (2 * np.pi / CHORDS_A_CIRCLE) - 1e-9))
    row = np.repeat(np.arange(len(x), dtype=np.intp), chords)
    turn = np.zeros(len(x))
    cx, cy = x.copy(), y.copy()
    b = bulge[bent]
    turn[bent] = sweep / chords[bent]
    dx, dy = x[following[bent]] - x[bent], y[following[bent]] - y[bent]
    away = (1 - b * b) / (4 * b)
    cx[bent] += dx / 2 - dy * away
    cy[bent] += dy / 2 + dx * away
    square = (x - cx) ** 2 + (y - cy) ** 2
    segments = chords * square * (turn - np.sin(turn)) / 2
    angle = ramp(np.zeros(len(x), dtype=np.intp), chords) * turn[row]
    cos, sin = np.cos(angle), np.sin(angle)
    rx, ry = (x - cx)[row], (y - cy)[row]
    # Straight sides have their own start for a centre and stay where they are.
    flat_x, flat_y = cx[row] + cos * rx - sin * ry, cy[row] + sin * rx + cos * ry
    return shapely.linearrings(flat_x, flat_y, indices=ring[row]), segments
