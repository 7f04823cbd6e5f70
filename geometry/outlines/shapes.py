"""The outlines that readings make: boxes, circles, rounded boxes, arcs through a point. Millimetres, anticlockwise.

They are made without a check; `geometry.outlines.measured.check_outline` says whether the result can be measured.
"""

import math

from geometry.outlines.sides import WELD_MM
from shared.job import Outline, Vertex

QUARTER = math.sqrt(2) - 1
"""The bulge of a quarter of a circle: tan(90 deg / 4)."""


def box(x: float, y: float, width: float, height: float) -> Outline:
    """A box with its lower left corner at (x, y); side 0 is its bottom, then right, top, left."""
    return (Vertex(x, y), Vertex(x + width, y), Vertex(x + width, y + height), Vertex(x, y + height))


def circle(cx: float, cy: float, radius: float) -> Outline:
    """A circle as two half-circle arcs: bulge 1 (DXF reference)."""
    return (Vertex(cx - radius, cy, 1.0), Vertex(cx + radius, cy, 1.0))


def rounded_box(x: float, y: float, width: float, height: float, radius: float) -> Outline:
    """A box with its corners rounded to a radius, which is at most half the shorter side; a plain box for radius 0.

    When the radius is half of one side, the two corners at that side become one half circle. When it is half of both
    sides, the box becomes a circle.
    """
    if radius <= 0:
        return box(x, y, width, height)
    left, right, low, high = x + radius, x + width - radius, y + radius, y + height - radius
    round_ends, round_top = abs(high - low) <= WELD_MM, abs(right - left) <= WELD_MM
    if round_ends and round_top:
        return circle(left, low, radius)
    if round_ends:
        return (Vertex(left, y), Vertex(right, y, 1.0), Vertex(right, y + height), Vertex(left, y + height, 1.0))
    if round_top:
        return (Vertex(x, low, 1.0), Vertex(x + width, low), Vertex(x + width, high, 1.0), Vertex(x, high))
    return (
        Vertex(left, y),
        Vertex(right, y, QUARTER),
        Vertex(x + width, low),
        Vertex(x + width, high, QUARTER),
        Vertex(right, y + height),
        Vertex(left, y + height, QUARTER),
        Vertex(x, high),
        Vertex(x, low, QUARTER),
    )


def bulge_through(start: tuple[float, float], middle: tuple[float, float], end: tuple[float, float]) -> float:
    """The bulge of the arc from start to end through a third point; 0 when the three points lie in a line.

    The angle at the third point is half of a whole turn less the arc's own turn (inscribed angle, Euclid III.20). So
    the bulge is the cotangent of half that angle.
    """
    ax, ay, bx, by = start[0] - middle[0], start[1] - middle[1], end[0] - middle[0], end[1] - middle[1]
    turn = ax * by - ay * bx
    # On the line beyond one of the ends, `apart` is 0 or what rounding leaves of it.
    apart = math.hypot(ax, ay) * math.hypot(bx, by) - (ax * bx + ay * by)
    return -turn / apart if turn and apart else 0.0
