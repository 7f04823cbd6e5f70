"""Outlines and lines with arcs as painter paths, in millimetres of the face."""

import math
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QPainterPath

from desktop.look import Family
from geometry.sides import Side
from shared.job import Outline, Vertex


@lru_cache(maxsize=8192)
def rings_path(rings: tuple[Outline, ...]) -> QPainterPath:
    """Closed rings as one path; a ring inside another is a hole. Callers map it and never change it."""
    path = QPainterPath()
    for ring in rings:
        if ring:
            _add(path, (*ring, ring[0]))
            path.closeSubpath()
    return path


@lru_cache(maxsize=8192)
def line_path(vertices: tuple[Vertex, ...]) -> QPainterPath:
    """An open line as a path. Callers map it and never change it."""
    path = QPainterPath()
    if vertices:
        _add(path, vertices)
    return path


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


def pattern_lines(family: Family, over: QRectF, origin: QPointF) -> list[QLineF]:
    """The lines of a pattern that cross `over`; one goes through `origin`, so that a pattern stays on its face."""
    turn = math.radians(family.angle)
    along = QPointF(math.cos(turn), -math.sin(turn))
    aside = QPointF(math.sin(turn), math.cos(turn))
    corners = (over.topLeft(), over.topRight(), over.bottomLeft(), over.bottomRight())
    offsets = [QPointF.dotProduct(corner - origin, aside) for corner in corners]
    reaches = [QPointF.dotProduct(corner - origin, along) for corner in corners]
    first = math.ceil(min(offsets) / family.spacing)
    last = math.floor(max(offsets) / family.spacing)
    start, end = along * min(reaches), along * max(reaches)
    steps = (origin + aside * (family.spacing * step) for step in range(first, last + 1))
    return [QLineF(step + start, step + end) for step in steps]
