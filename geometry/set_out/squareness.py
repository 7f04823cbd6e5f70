"""The four corners of a face from its straight readings, how far they are out of square and its sides out of plumb."""

from collections.abc import Callable, Sequence
from math import atan2, degrees, dist, pi, sin, sqrt
from typing import NamedTuple

from geometry.outlines.sides import Point
from geometry.set_out.adjusting import Adjustment, Observed, adjust_distances
from geometry.set_out.trilateration import placed
from shared.job import CORNERS

LOWER_LEFT, LOWER_RIGHT, UPPER_RIGHT, UPPER_LEFT = range(4)


class Square(NamedTuple):
    """How far a corner is from square: `degrees` more than 90 inside it.

    `off_mm` is what that makes over `over_mm`, the length of its upright side; `sd_mm` how well it is known.
    """

    corner: str
    off_mm: float
    over_mm: float
    degrees: float
    sd_mm: float


class Plumb(NamedTuple):
    """How far a side, "left" or "right", leans to the right from its foot to its top, over its height.

    The lower side is taken as level.
    """

    side: str
    off_mm: float
    over_mm: float
    sd_mm: float


class FaceCorners(NamedTuple):
    """Lower left at (0, 0), the lower side level; `points`, `squares` in the order of `CORNERS`. Millimetres."""

    points: tuple[Point, ...]
    squares: tuple[Square, ...]
    plumbs: tuple[Plumb, Plumb]


def adjust_corners(observed: Sequence[Observed]) -> Adjustment:
    """The corners, by their places in `CORNERS`, from distances between them.

    JobError where too few hold a corner or some contradict each other too much to place one.
    """
    distances = {(min(each.start, each.end), max(each.start, each.end)): each.length_mm for each in observed}
    return adjust_distances(placed(distances, len(CORNERS), CORNERS), observed, names=CORNERS)


def face_corners(observed: Sequence[Observed], found: Adjustment) -> FaceCorners:
    """What is told of adjusted corners; how well it is known follows from each reading's deviation, linearly."""
    shifted = [_points_with(observed, place) for place in range(len(observed))]

    def known(size: Callable[[Sequence[Point]], float]) -> float:
        here = size(found.points)
        return sqrt(sum((size(points) - here) ** 2 for points in shifted))

    squares = tuple(_square(found.points, corner, known) for corner in range(len(CORNERS)))
    left, right = (_plumb(found.points, *side, known) for side in _UPRIGHTS)
    return FaceCorners(found.points, squares, (left, right))


Known = Callable[[Callable[[Sequence[Point]], float]], float]
"""How well a size of the corners is known, as a standard deviation."""

_UPRIGHTS = (("left", LOWER_LEFT, UPPER_LEFT), ("right", LOWER_RIGHT, UPPER_RIGHT))
_ALONG = {LOWER_LEFT: UPPER_LEFT, UPPER_LEFT: LOWER_LEFT, LOWER_RIGHT: UPPER_RIGHT, UPPER_RIGHT: LOWER_RIGHT}
"""The other end of each corner's upright side."""


def _points_with(observed: Sequence[Observed], place: int) -> tuple[Point, ...]:
    """The corners with one reading longer by its deviation."""
    changed = list(observed)
    changed[place] = changed[place]._replace(length_mm=changed[place].length_mm + changed[place].sd_mm)
    return adjust_corners(changed).points


def _square(points: Sequence[Point], corner: int, known: Known) -> Square:
    def off(at: Sequence[Point]) -> float:
        return sin(_beyond_square(at, corner)) * dist(at[corner], at[_ALONG[corner]])

    return Square(
        CORNERS[corner],
        off(points),
        dist(points[corner], points[_ALONG[corner]]),
        degrees(_beyond_square(points, corner)),
        known(off),
    )


def _beyond_square(points: Sequence[Point], corner: int) -> float:
    """The angle inside a corner less a right angle, radians."""
    x, y = points[corner]
    (ax, ay), (bx, by) = points[corner - 1], points[(corner + 1) % len(points)]
    turn = atan2(ay - y, ax - x) - atan2(by - y, bx - x)
    return turn % (2 * pi) - pi / 2


def _plumb(points: Sequence[Point], side: str, foot: int, top: int, known: Known) -> Plumb:
    def off(at: Sequence[Point]) -> float:
        return at[top][0] - at[foot][0]

    return Plumb(side, off(points), points[top][1] - points[foot][1], known(off))
