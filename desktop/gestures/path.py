"""The sides of the outline that `trace` draws: their directions, arcs, and right angles to one another."""

import math

from geometry.outlines.shapes import bulge_through
from geometry.outlines.sides import Point
from geometry.snapping.snap import Snap
from shared.job import Vertex

STILL_MM = 1e-6
"""A point that moves by no more than this counts as still."""


def slant(path: tuple[Vertex, ...]) -> str:
    """The angle of the straight side being drawn, in degrees from level; "" for a level or upright side or an arc."""
    if len(path) < len(("start", "end")) or path[-2].bulge:
        return ""
    degrees = math.degrees(math.atan2(path[-1].y - path[-2].y, path[-1].x - path[-2].x)) % 360
    words = f"{degrees:.1f}".removesuffix(".0")
    return "" if words in ("0", "90", "180", "270", "360") else f"{words}°"


def bent(corners: tuple[Vertex, ...], end: Point, through: Point) -> tuple[Vertex, ...]:
    """The corners with one more, at the end of an arc through a point."""
    last = corners[-1]
    bulge = bulge_through((last.x, last.y), through, end)
    return (*corners[:-1], Vertex(last.x, last.y, bulge), Vertex(*end))


def straight_again(corners: tuple[Vertex, ...]) -> tuple[Vertex, ...]:
    """The corners after the side that left the last one was taken back: that corner carries no bulge any more."""
    return (*corners[:-1], Vertex(corners[-1].x, corners[-1].y)) if corners else ()


def last_way(corners: tuple[Vertex, ...]) -> Point:
    """The direction of the last side, as a vector of length 1; to the right if it is an arc or there is no side yet."""
    if len(corners) < 2 or corners[-2].bulge:
        return 1.0, 0.0
    return unit_way(corners[-1].x - corners[-2].x, corners[-1].y - corners[-2].y)


def unit_way(x: float, y: float) -> Point:
    """The direction as a vector of length 1; to the right if x and y are 0."""
    length = math.hypot(x, y)
    return (x / length, y / length) if length else (1.0, 0.0)


def squared(corners: tuple[Vertex, ...], here: Snap) -> Snap:
    """The pointed place brought onto the line of the last side or square to it, whichever is nearer."""
    last = corners[-1]
    along_x, along_y = last_way(corners)
    dx, dy = here.x - last.x, here.y - last.y
    along, aside = dx * along_x + dy * along_y, along_x * dy - along_y * dx
    if abs(along) >= abs(aside):
        x, y = last.x + along * along_x, last.y + along * along_y
    else:
        x, y = last.x - aside * along_y, last.y + aside * along_x
    if math.dist((x, y), (here.x, here.y)) <= STILL_MM:
        return here
    guides = tuple((seen, (x, y)) for seen, _ in here.guides if _is_straight(seen, (x, y)))
    return Snap(x, y, here.words if guides else "", guides)


def _is_straight(start: Point, end: Point) -> bool:
    return min(abs(start[0] - end[0]), abs(start[1] - end[1])) <= STILL_MM
