"""Finds the four corners of a face from its straight readings: how far out of square, and its sides out of plumb."""

from collections.abc import Callable, Sequence
from math import atan2, degrees, dist, pi, sin, sqrt
from typing import NamedTuple

from geometry.outlines.sides import Point
from geometry.set_out.adjusting import Adjustment, Observed, adjust_distances
from geometry.set_out.trilateration import placed
from shared.job import CORNERS

LOWER_LEFT, LOWER_RIGHT, UPPER_RIGHT, UPPER_LEFT = range(4)


class Square(NamedTuple):
    """How far a corner is out of square: its angle is `degrees` more than 90.

    `off_mm` is how far that leads off over `over_mm`, the length of the corner's upright side. `sd_mm` is the standard
    deviation of `off_mm`.
    """

    corner: str
    off_mm: float
    over_mm: float
    degrees: float
    sd_mm: float


class Plumb(NamedTuple):
    """How far a side, "left" or "right", is out of plumb: its top is `off_mm` to the right of its foot.

    `over_mm` is the height between them. The lower side is taken as level. `sd_mm` is the standard deviation of
    `off_mm`.
    """

    side: str
    off_mm: float
    over_mm: float
    sd_mm: float


class FaceCorners(NamedTuple):
    """The four corners of a face, mm: the lower left one at (0, 0), the lower side level.

    `points` and `squares` are in the order of `CORNERS`. `plumbs` are the left and the right side.
    """

    points: tuple[Point, ...]
    squares: tuple[Square, ...]
    plumbs: tuple[Plumb, Plumb]


def adjust_corners(observed: Sequence[Observed]) -> Adjustment:
    """The corners from the distances between them. Readings name corners by their places in `CORNERS`.

    JobError where too few distances hold a corner, or some contradict each other too much to place one.
    """
    distances = {(min(each.start, each.end), max(each.start, each.end)): each.length_mm for each in observed}
    return adjust_distances(placed(distances, len(CORNERS), CORNERS), observed, names=CORNERS)


def face_corners(observed: Sequence[Observed], found: Adjustment) -> FaceCorners:
    """How square and plumb adjusted corners are. Standard deviations follow linearly from those of the readings."""
    shifted = [_points_with(observed, place) for place in range(len(observed))]

    def known(size: Callable[[Sequence[Point]], float]) -> float:
        here = size(found.points)
        return sqrt(sum((size(points) - here) ** 2 for points in shifted))

    squares = tuple(_square(found.points, corner, known) for corner in range(len(CORNERS)))
    left, right = (_plumb(found.points, *side, known) for side in _UPRIGHTS)
    return FaceCorners(found.points, squares, (left, right))


Known = Callable[[Callable[[Sequence[Point]], float]], float]
"""A function that gives the standard deviation of a size of the corners."""

_UPRIGHTS = (("left", LOWER_LEFT, UPPER_LEFT), ("right", LOWER_RIGHT, UPPER_RIGHT))
_ALONG = {LOWER_LEFT: UPPER_LEFT, UPPER_LEFT: LOWER_LEFT, LOWER_RIGHT: UPPER_RIGHT, UPPER_RIGHT: LOWER_RIGHT}
"""The other end of each corner's upright side."""


def _points_with(observed: Sequence[Observed], place: int) -> tuple[Point, ...]:
    """The corners as they would be if one reading were longer by its deviation."""
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
