"""Squares a photo: takes dots of the picture to millimetres of the face, and back, by a homography.

A photo of something flat is a projection of it, and four marks fix the projection by eight linear equations. It knows
nothing of what a lens bends, so lengths read off a photo are a guide, and the tape decides.
"""

import math
from collections.abc import Sequence
from itertools import combinations
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from geometry.outlines.sides import Point
from shared.errors import JobError
from shared.job import PhotoMark, PhotoPlace

FourPoints = tuple[Point, Point, Point, Point]
Matrix = NDArray[np.float64]

FLATTEST = 1 / 200
"""Three marks are in a line if their triangle is no higher than this share of its longest side (own choice): a mark on
a photo is good to a few dots in a thousand, so the face could not be told from such marks."""

FARTHEST = 4.0
"""A photo is shown up to where it is this many times coarser than in the midst of its marks (own choice): beyond that a
dot covers a hand's breadth, and at the horizon it never ends."""

PHOTO, FACE = "the photo", "the face"
_MEND = {
    PHOTO: "mark the lower left, lower right, upper right and upper left corner of something rectangular",
    FACE: "check the lengths between the marks",
}
MARK_NAMES = ("first", "second", "third", "fourth")


class Homography(NamedTuple):
    """The projection from a photo to a face: x = (a u + b v + c) / w, y = (d u + e v + f) / w, w = g u + h v + i.

    `u` to the right and `v` down are dots of the photo; `x` and `y` are millimetres of the face. `w` is above 0 round
    the marks.
    """

    a: float
    b: float
    c: float
    d: float
    e: float
    f: float
    g: float
    h: float
    i: float

    def to_face(self, u: float, v: float) -> Point:
        """The point of the face that this dot shows. JobError for a dot at or beyond the horizon."""
        w = self.depth(u, v)
        if w <= 0:
            raise _beyond()
        return (self.a * u + self.b * v + self.c) / w, (self.d * u + self.e * v + self.f) / w

    def to_photo(self, x: float, y: float) -> Point:
        """The dot that shows this point of the face. JobError for a point that no photo from there could show."""
        a, b, c, d, e, f, g, h, i = self
        # The adjugate is the inverse times a factor, which the division takes out.
        u = (e * i - f * h) * x + (c * h - b * i) * y + (b * f - c * e)
        v = (f * g - d * i) * x + (a * i - c * g) * y + (c * d - a * f)
        w = (d * h - e * g) * x + (b * g - a * h) * y + (a * e - b * d)
        if not w or self.depth(u / w, v / w) <= 0:
            raise _beyond()
        return u / w, v / w

    def depth(self, u: float, v: float) -> float:
        """The number w at a dot: above 0 on the marks' side of the horizon, and the smaller, the farther away."""
        return self.g * u + self.h * v + self.i

    def mm_per_dot(self, u: float, v: float) -> float:
        """How many millimetres of the face one dot covers there: the square root of the area that the dot covers."""
        a, b, c, d, e, f, g, h, i = self
        determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
        return math.sqrt(abs(determinant / self.depth(u, v) ** 3))


class LengthCheck(NamedTuple):
    """A length as it was measured, and as the squared photo has it."""

    measured_mm: float
    read_mm: float

    @property
    def off_mm(self) -> float:
        """How much longer the length is on the photo than by the tape; negative for shorter."""
        return self.read_mm - self.measured_mm


def homography(marks: Sequence[PhotoMark]) -> Homography:
    """The projection that takes the four marks to their places on the face.

    JobError where two marks are at one place, three are in a line, or the four do not go round one after the other.
    """
    dots, places = [(mark.u, mark.v) for mark in marks], [(mark.x, mark.y) for mark in marks]
    check_four(dots, PHOTO)
    check_four(places, FACE)
    photo_scale, face_scale = _scaling(dots), _scaling(places)
    scaled = _solved(_scaled(dots, photo_scale), _scaled(places, face_scale))
    matrix = np.linalg.inv(face_scale) @ scaled @ photo_scale
    middle = np.array([*np.mean(dots, axis=0), 1.0])
    return Homography(*(float(number) for number in (matrix / (matrix[2] @ middle)).ravel()))


def check_four(points: Sequence[Point], where: str) -> None:
    """Refuse four points that do not go round an area: JobError, which says why. `where` is `PHOTO` or `FACE`."""
    for (one, first), (other, second) in combinations(zip(MARK_NAMES, points, strict=True), 2):
        if math.dist(first, second) <= FLATTEST * _reach(points):
            raise _unfit(f"the {one} mark and the {other} mark are at the same place", where)
    for three in combinations(range(4), 3):
        if _flatness([points[number] for number in three]) <= FLATTEST:
            names = "{}, {} and {}".format(*(MARK_NAMES[number] for number in three))
            raise _unfit(f"the {names} marks are in a line", where)
    turns = [_turn(points[number - 2], points[number - 1], points[number]) > 0 for number in range(4)]
    if turns.count(True) in (1, 3):
        raise _unfit("one mark lies between the other three", where)
    if turns.count(True) == 2:
        raise _unfit("the lines from mark to mark cross each other", where)


def check_way_round(dots: Sequence[Point]) -> None:
    """Refuse four dots that go round the other way than along the bottom to the right and then up: JobError."""
    if _turn(*dots[:3]) > 0:  # v runs down, so a positive turn is clockwise to the eye
        raise _unfit("the marks go round the other way", PHOTO)


def check_lengths(place: PhotoPlace) -> tuple[LengthCheck, ...]:
    """The known lengths of a photo, each beside what the photo says. JobError where the marks do not square it."""
    squared = homography(place.marks)
    return tuple(
        LengthCheck(
            known.length_mm, math.dist(squared.to_face(known.u0, known.v0), squared.to_face(known.u1, known.v1))
        )
        for known in place.lengths
    )


def mm_per_dot(marks: Sequence[PhotoMark]) -> float:
    """How fine a squared photo is: how many mm one dot in the midst of its marks covers. JobError as `homography`."""
    return homography(marks).mm_per_dot(*_midst(marks))


def shown_corners(squared: Homography, marks: Sequence[PhotoMark], width: float, height: float) -> tuple[Point, ...]:
    """The corners, in dots, of the part of a photo that is shown.

    It is shown where it is at most `FARTHEST` times as coarse as in the midst of its marks. `width` and `height` are
    the size of the photo in dots. Empty when nothing of it is shown.
    """
    middle = squared.depth(*_midst(marks))
    # A dot's area grows with the third power of the distance, so its side with the power 3/2.
    least = middle / FARTHEST ** (2 / 3)
    corners: list[Point] = []
    whole = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    for start, end in zip(whole, (*whole[1:], whole[0]), strict=True):
        here, there = squared.depth(*start) - least, squared.depth(*end) - least
        if here >= 0:
            corners.append(start)
        if here * there < 0:
            share = here / (here - there)
            corners.append((start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))
    return tuple(corners)


def _midst(marks: Sequence[PhotoMark]) -> Point:
    """The dot in the midst of the marks."""
    return sum(mark.u for mark in marks) / len(marks), sum(mark.v for mark in marks) / len(marks)


def _solved(dots: Sequence[Point], places: Sequence[Point]) -> Matrix:
    """The homography of four scaled points as a 3 x 3 matrix whose last number is 1: eight linear equations."""
    rows, right = [], []
    for (u, v), (x, y) in zip(dots, places, strict=True):
        rows += [[u, v, 1, 0, 0, 0, -x * u, -x * v], [0, 0, 0, u, v, 1, -y * u, -y * v]]
        right += [x, y]
    return np.append(np.linalg.solve(np.array(rows), np.array(right)), 1.0).reshape(3, 3)


def _scaling(points: Sequence[Point]) -> Matrix:
    """The matrix that brings points round the origin, at a distance of about 1.

    Dots times millimetres reach ten millions, and they would stand beside ones. Scaled, the equations keep all their
    digits (the normalisation of Hartley 1997, from memory).
    """
    middle = np.mean(points, axis=0)
    size = float(np.mean(np.linalg.norm(np.array(points) - middle, axis=1)))
    return np.array([[1 / size, 0, -middle[0] / size], [0, 1 / size, -middle[1] / size], [0, 0, 1]])


def _scaled(points: Sequence[Point], scaling: Matrix) -> list[Point]:
    return [(float(x), float(y)) for x, y, _ in (scaling @ (x, y, 1.0) for x, y in points)]


def _turn(before: Point, at: Point, after: Point) -> float:
    return (at[0] - before[0]) * (after[1] - at[1]) - (at[1] - before[1]) * (after[0] - at[0])


def _reach(points: Sequence[Point]) -> float:
    return max(math.dist(one, other) for one, other in combinations(points, 2))


def _flatness(three: Sequence[Point]) -> float:
    """The height of a triangle, divided by its longest side."""
    return abs(_turn(*three)) / _reach(three) ** 2


def _beyond() -> JobError:
    return JobError("the photo does not show that part of the face", where="photo", do="stay nearer to the marks")


def _unfit(what: str, where: str) -> JobError:
    return JobError(what, where=f"marks on {where}", do=_MEND[where])
