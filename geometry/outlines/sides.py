"""One side of an outline, straight or an arc of a circle, measured exactly.

A bulge is the tangent of a quarter of the angle that a side turns through, positive anticlockwise (DXF reference,
LWPOLYLINE group 42). With c the chord, t = 4 atan(b) the angle and r the radius, c = 2 r sin(t/2) gives the closed
forms used here.
"""

import math
from typing import NamedTuple

from shared.job import Outline

WELD_MM = 1e-6
"""Points nearer to each other than this are one point: far below a tape's reading, far above the rounding of floats."""

SMALL_ANGLE = 0.1
"""Below this angle (radians) t - sin(t) is summed as a series: the difference itself would lose its last digits."""

Point = tuple[float, float]
Box = tuple[float, float, float, float]
"""Left, bottom, right, top."""


class Side(NamedTuple):
    """The side that leaves vertex number `vertex` of an outline, from (x0, y0) to (x1, y1)."""

    vertex: int
    x0: float
    y0: float
    x1: float
    y1: float
    bulge: float

    @property
    def start(self) -> Point:
        """The vertex it leaves."""
        return (self.x0, self.y0)

    @property
    def end(self) -> Point:
        """The vertex it reaches."""
        return (self.x1, self.y1)

    @property
    def chord_mm(self) -> float:
        """The straight distance between its ends."""
        return math.hypot(self.x1 - self.x0, self.y1 - self.y0)

    @property
    def length_mm(self) -> float:
        """The length of the side, along its arc if it has one: c (1 + b2) atan(b) / b."""
        b = self.bulge
        return self.chord_mm * ((1 + b * b) * math.atan(b) / b if b else 1.0)

    @property
    def radius_mm(self) -> float:
        """The radius of the arc, c (1 + b2) / (4 |b|); infinite for a straight side."""
        b = abs(self.bulge)
        return self.chord_mm * (1 + b * b) / (4 * b) if b else math.inf

    @property
    def centre(self) -> Point:
        """The centre of the arc. ZeroDivisionError for a straight side."""
        b = self.bulge
        away = (1 - b * b) / (4 * b)
        dx, dy = self.x1 - self.x0, self.y1 - self.y0
        return ((self.x0 + self.x1) / 2 - dy * away, (self.y0 + self.y1) / 2 + dx * away)

    @property
    def middle(self) -> Point:
        """The point half way along the side."""
        half = self.bulge / 2
        dx, dy = self.x1 - self.x0, self.y1 - self.y0
        return ((self.x0 + self.x1) / 2 + dy * half, (self.y0 + self.y1) / 2 - dx * half)

    @property
    def segment_mm2(self) -> float:
        """The area between chord and arc, r2 (t - sin t) / 2; negative for a clockwise arc, 0 for a straight side."""
        if not self.bulge:
            return 0.0
        radius = self.radius_mm
        angle = 4 * math.atan(self.bulge)
        return radius * radius * _angle_less_sine(angle) / 2

    @property
    def box(self) -> Box:
        """The smallest upright box round the side."""
        points = [self.start, self.end]
        if self.bulge:
            (cx, cy), r = self.centre, self.radius_mm
            ways = ((cx - r, cy), (cx + r, cy), (cx, cy - r), (cx, cy + r))
            points += [way for way in ways if self.is_beside(*way)]
        xs, ys = [x for x, _ in points], [y for _, y in points]
        return (min(xs), min(ys), max(xs), max(ys))

    def is_beside(self, x: float, y: float) -> bool:
        """Whether a point lies on the same side of the chord as the arc. A point of the circle then lies on the arc.

        A point on the chord counts as moved a hair to the right (up, if the chord is level), as in `contains` of
        `geometry.outlines.measured`.
        """
        dx, dy = self.x1 - self.x0, self.y1 - self.y0
        turn = dx * (y - self.y0) - dy * (x - self.x0) or -dy or dx
        return turn * self.bulge < 0

    def nearest(self, x: float, y: float) -> Point:
        """The point of this side that is nearest to (x, y)."""
        return self._nearest_of_arc(x, y) if self.bulge else self._nearest_of_line(x, y)

    def distance_mm(self, x: float, y: float) -> float:
        """How far (x, y) is from this side."""
        near_x, near_y = self.nearest(x, y)
        return math.hypot(x - near_x, y - near_y)

    def points(self, sagitta_mm: float) -> tuple[Point, ...]:
        """Points along the side, with its start but not its end. No chord leaves the arc by more than `sagitta_mm`."""
        if not self.bulge:
            return (self.start,)
        (cx, cy), r = self.centre, self.radius_mm
        angle = 4 * math.atan(self.bulge)
        step = 2 * math.acos(max(0.0, 1 - sagitta_mm / r))
        count = max(1, math.ceil(abs(angle) / step - 1e-9))
        first = math.atan2(self.y0 - cy, self.x0 - cx)
        turns = (first + angle * k / count for k in range(1, count))
        return (self.start, *((cx + r * math.cos(turn), cy + r * math.sin(turn)) for turn in turns))

    def _nearest_of_line(self, x: float, y: float) -> Point:
        dx, dy = self.x1 - self.x0, self.y1 - self.y0
        square = dx * dx + dy * dy
        share = ((x - self.x0) * dx + (y - self.y0) * dy) / square if square else 0.0
        share = min(1.0, max(0.0, share))
        return (self.x0 + share * dx, self.y0 + share * dy)

    def _nearest_of_arc(self, x: float, y: float) -> Point:
        (cx, cy), r = self.centre, self.radius_mm
        away = math.hypot(x - cx, y - cy)
        if not away:
            return self.middle
        on_circle = (cx + (x - cx) * r / away, cy + (y - cy) * r / away)
        if self.is_beside(*on_circle):
            return on_circle
        return min(self.start, self.end, key=lambda end: math.hypot(x - end[0], y - end[1]))


def sides(outline: Outline) -> tuple[Side, ...]:
    """The sides of an outline in order. A straight side between two equal vertices is left out.

    Each side keeps the index of the vertex it leaves, so that it is found in the outline whatever was left out.
    """
    around = (
        _straightened(Side(index, start.x, start.y, end.x, end.y, start.bulge))
        for index, (start, end) in enumerate(zip(outline, outline[1:] + outline[:1], strict=True))
    )
    return tuple(side for side in around if side.bulge or side.chord_mm > WELD_MM)


def _straightened(side: Side) -> Side:
    """The side, straight if its arc bows less than the weld: no float could hold the centre of so wide a circle."""
    if side.bulge and abs(side.bulge) * side.chord_mm / 2 <= WELD_MM < side.chord_mm:
        return side._replace(bulge=0.0)
    return side


def _angle_less_sine(angle: float) -> float:
    if abs(angle) > SMALL_ANGLE:
        return angle - math.sin(angle)
    square = angle * angle
    return angle * square / 6 * (1 - square / 20 * (1 - square / 42 * (1 - square / 72)))
