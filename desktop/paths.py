"""Outlines and lines with arcs as painter paths, in millimetres of the face."""

import math
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QPainterPath

from desktop.look import Family
from geometry.sides import Side
from shared.job import Outline, Vertex

HAIR_MM = 1e-3
"""A level line's box has no height, and what has none meets nothing: boxes are wider than their paths by this."""


class Shape(NamedTuple):
    """A path in millimetres, and a box that holds it. Callers map the path and never change it: it is remembered."""

    path: QPainterPath
    box: QRectF


@lru_cache(maxsize=8192)
def rings_shape(rings: tuple[Outline, ...]) -> Shape:
    """Closed rings as one path; a ring inside another is a hole."""
    path = QPainterPath()
    for ring in rings:
        if ring:
            _add(path, (*ring, ring[0]))
            path.closeSubpath()
    return _shape(path)


@lru_cache(maxsize=8192)
def line_shape(vertices: tuple[Vertex, ...]) -> Shape:
    """An open line."""
    path = QPainterPath()
    if vertices:
        _add(path, vertices)
    return _shape(path)


def _shape(path: QPainterPath) -> Shape:
    return Shape(path, path.controlPointRect().adjusted(-HAIR_MM, -HAIR_MM, HAIR_MM, HAIR_MM))


def _add(path: QPainterPath, vertices: Sequence[Vertex]) -> None:
    path.moveTo(vertices[0].x, vertices[0].y)
    for start, end in pairwise(vertices):
        if start.bulge:
            _add_arc(path, start, end)
        else:
            path.lineTo(end.x, end.y)


def _add_arc(path: QPainterPath, start: Vertex, end: Vertex) -> None:
    """One arc. The path's own angles run the other way round, as its y goes down."""
    side = Side(0, start.x, start.y, end.x, end.y, start.bulge)
    (x, y), radius = side.centre, side.radius_mm
    from_degrees = math.degrees(math.atan2(start.y - y, start.x - x))
    through_degrees = math.degrees(4 * math.atan(start.bulge))
    path.arcTo(QRectF(x - radius, y - radius, 2 * radius, 2 * radius), -from_degrees, -through_degrees)
    path.lineTo(end.x, end.y)


def pattern_lines(family: Family, over: QRectF, between: QRectF, origin: QPointF) -> list[QLineF]:
    """The lines of a pattern that cross `over`, as long as `between` needs.

    One goes through `origin`, so that a pattern stays on its face. A line comes out a shade other where its ends are
    other: what is painted piece by piece wants the same `between` for every piece.
    """
    turn = math.radians(family.angle)
    along = QPointF(math.cos(turn), -math.sin(turn))
    aside = QPointF(math.sin(turn), math.cos(turn))
    offsets = [QPointF.dotProduct(corner - origin, aside) for corner in _corners(over)]
    reaches = [QPointF.dotProduct(corner - origin, along) for corner in _corners(between)]
    first = math.ceil(min(offsets) / family.spacing)
    last = math.floor(max(offsets) / family.spacing)
    start, end = along * min(reaches), along * max(reaches)
    steps = (origin + aside * (family.spacing * step) for step in range(first, last + 1))
    return [QLineF(step + start, step + end) for step in steps]


def _corners(box: QRectF) -> tuple[QPointF, ...]:
    return box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight()
