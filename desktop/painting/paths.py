"""Outlines and lines with arcs as painter paths, in millimetres of the face."""

import math
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QPainterPath

from desktop.look.palette import Family
from geometry.outlines.sides import Side
from shared.job import Outline, Vertex

HAIR_MM = 1e-3
"""How much larger than its path a box is: a level line's own box has no height, and Qt says that it meets nothing."""


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
    """An open line, straight or with arcs."""
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
    """Add one arc. A painter path counts angles the other way round, as its y goes down."""
    side = Side(0, start.x, start.y, end.x, end.y, start.bulge)
    (x, y), radius = side.centre, side.radius_mm
    from_degrees = math.degrees(math.atan2(start.y - y, start.x - x))
    through_degrees = math.degrees(4 * math.atan(start.bulge))
    path.arcTo(QRectF(x - radius, y - radius, 2 * radius, 2 * radius), -from_degrees, -through_degrees)
    path.lineTo(end.x, end.y)


class Ruling(NamedTuple):
    """The lines of a pattern over a window, in order.

    `first` is the number of the first line, counted from `origin`; `aside` is the direction square to the lines.
    """

    lines: tuple[QLineF, ...]
    first: int
    spacing: float
    aside: QPointF
    origin: QPointF

    def across(self, box: QRectF) -> tuple[QLineF, ...]:
        """The lines that cross a box."""
        offsets = [QPointF.dotProduct(corner - self.origin, self.aside) / self.spacing for corner in _corners(box)]
        first = math.ceil(min(offsets)) - self.first
        return self.lines[max(first, 0) : max(math.floor(max(offsets)) - self.first + 1, 0)]


@lru_cache(maxsize=128)
def ruling(family: Family, window: tuple[float, float, float, float], origin: tuple[float, float]) -> Ruling:
    """The pattern over a window (left, top, width, height). One line goes through `origin`, so it moves with the face.

    A line with other ends is painted in a slightly other shade, so a pattern painted piece by piece uses one ruling.
    """
    turn = math.radians(family.angle)
    along = QPointF(math.cos(turn), -math.sin(turn))
    aside = QPointF(math.sin(turn), math.cos(turn))
    start = QPointF(*origin)
    corners = _corners(QRectF(*window))
    offsets = [QPointF.dotProduct(corner - start, aside) / family.spacing for corner in corners]
    reaches = [QPointF.dotProduct(corner - start, along) for corner in corners]
    first, last = math.ceil(min(offsets)), math.floor(max(offsets))
    starts = (start + aside * (family.spacing * number) for number in range(first, last + 1))
    one, other = along * min(reaches), along * max(reaches)
    return Ruling(tuple(QLineF(begin + one, begin + other) for begin in starts), first, family.spacing, aside, start)


def _corners(box: QRectF) -> tuple[QPointF, ...]:
    return box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight()
