"""The parts that reach the ends of a face, where the face may meet its neighbour at a corner of the room."""

import math
from collections.abc import Iterator, Sequence
from enum import StrEnum
from typing import NamedTuple

from geometry.outlines.sides import WELD_MM, Point, Side, sides
from geometry.parts.extent import extent, walls
from geometry.seen.arrangement import Edge
from shared.job import Face

MOST_LEAN = math.tan(math.radians(10.0))
"""A wall's side that leans more than this was built so, as under a sloping ceiling (common practice, no source)."""


class End(StrEnum):
    """An end of a face, seen square on."""

    LEFT = "left"
    RIGHT = "right"


class EndLine(NamedTuple):
    """The line up an end of a face: `x_mm` is where it meets the floor, `lean` how far it goes right for each mm up."""

    x_mm: float
    lean: float = 0.0

    def at(self, height_mm: float) -> Point:
        """The point of the line at this height."""
        return self.x_mm + self.lean * height_mm, height_mm

    def is_on(self, point: Point, within_mm: float) -> bool:
        """Whether a point is within this distance of the line, measured level."""
        return abs(point[0] - self.at(point[1])[0]) <= within_mm


class Stretch(NamedTuple):
    """The heights, from `low_mm` up to `high_mm`, over which a part's visible region ends at an end of its face."""

    part: str
    low_mm: float
    high_mm: float


def end_line(face: Face, which: End) -> EndLine:
    """The line up an end of a face: the wall's side there, which may be out of plumb; without one, an upright line."""
    left, _, right, _ = extent(face)
    x = left if which is End.LEFT else right
    side = max(_wall_sides_at(face, x), key=_rise_mm, default=None)
    if side is None:
        return EndLine(x)
    lean = (side.x1 - side.x0) / (side.y1 - side.y0)
    return EndLine(side.x0 - lean * side.y0, lean)


def end_profile(edges: Sequence[Edge], line: EndLine, which: End) -> tuple[Stretch, ...]:
    """The parts seen at an end of a face, from the bottom up in unbroken stretches; empty when no part reaches the end.

    `edges` are those of the face's arrangement and `line` is the line up that end. A part that goes on past the end is
    left out, as it does not end there.
    """
    found = sorted(
        (Stretch(part, min(edge.y0, edge.y1), max(edge.y0, edge.y1)) for edge, part in _on_line(edges, line, which)),
        key=lambda stretch: stretch.low_mm,
    )
    profile: list[Stretch] = []
    for stretch in found:
        below = profile[-1] if profile else None
        if below and below.part == stretch.part and stretch.low_mm - below.high_mm <= WELD_MM:
            profile[-1] = Stretch(below.part, below.low_mm, stretch.high_mm)
        else:
            profile.append(stretch)
    return tuple(profile)


def _wall_sides_at(face: Face, x_mm: float) -> Iterator[Side]:
    """The straight sides of walls that start or end at the end of the face and do not lean more than `MOST_LEAN`."""
    for part in walls(face):
        for side in sides(part.outline):
            reaches = min(abs(side.x0 - x_mm), abs(side.x1 - x_mm)) <= WELD_MM
            if reaches and not side.bulge and abs(side.x1 - side.x0) < MOST_LEAN * _rise_mm(side):
                yield side


def _rise_mm(side: Side) -> float:
    return abs(side.y1 - side.y0)


def _on_line(edges: Sequence[Edge], line: EndLine, which: End) -> list[tuple[Edge, str]]:
    """The straight edges on the line, each with the part on its inner side."""
    found = []
    for edge in edges:
        if edge.bulge or not all(line.is_on(end, WELD_MM) for end in ((edge.x0, edge.y0), (edge.x1, edge.y1))):
            continue
        goes_up = edge.y1 > edge.y0
        inner = edge.left if goes_up == (which is End.RIGHT) else edge.right
        if inner is not None:
            found.append((edge, inner))
    return found
