"""Marks on a photo, placed on the face by a known rectangle or by known distances."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.photos.marks import DISTANCES, distance_marks, known_lengths, rectangle_marks
from geometry.photos.squaring import FourPoints, check_lengths
from shared.errors import JobError
from shared.job import PhotoMark, PhotoPlace, View
from tests.geometry.four_points import four_points

ASLANT: FourPoints = ((400.0, 1900.0), (2700.0, 2100.0), (2500.0, 300.0), (600.0, 500.0))
"""Lower left, lower right, upper right, upper left, on a photo from a hand that is none too steady."""


def places(marks: tuple[PhotoMark, ...]) -> list[tuple[float, float]]:
    return [(mark.x, mark.y) for mark in marks]


def distances(points: FourPoints) -> list[float]:
    return [math.dist(points[start], points[end]) for start, end in DISTANCES]


def test_a_rectangle_stands_on_an_elevation_from_its_lower_left_corner() -> None:
    marks = rectangle_marks(ASLANT, 900.0, 700.0, (100.0, 50.0))
    assert places(marks) == [(100, 50), (1000, 50), (1000, 750), (100, 750)]


def test_a_rectangle_lies_on_a_plan_from_its_upper_left_corner() -> None:
    marks = rectangle_marks(ASLANT, 900.0, 700.0, (100.0, 50.0), View.PLAN)
    assert places(marks) == [(100, 750), (1000, 750), (1000, 50), (100, 50)]


def test_marks_that_go_round_the_other_way_are_refused() -> None:
    one, two, three, four = ASLANT
    with pytest.raises(JobError, match="the other way"):
        rectangle_marks((one, four, three, two), 3600.0, 2400.0, (0.0, 0.0))


@pytest.mark.parametrize("count", [5, 6])
@given(figure=four_points(3600))
def test_distances_put_the_marks_where_they_were_measured(figure: FourPoints, count: int) -> None:
    known = distances(figure)[:count]
    marks = distance_marks(ASLANT, known, (0.0, 0.0))
    one, two, three, four = places(marks)
    assert distances((one, two, three, four))[:count] == pytest.approx(known, abs=1e-4)
    assert one[1] == pytest.approx(two[1])
    assert min(x for x, _ in places(marks)) == pytest.approx(0.0, abs=1e-9)
    assert min(y for _, y in places(marks)) == pytest.approx(0.0, abs=1e-9)


def test_a_surplus_distance_is_adjusted_and_what_is_left_over_is_told() -> None:
    known = [2400.0, 1200.0, 2400.0, 1200.0, math.hypot(2400, 1200) + 3, math.hypot(2400, 1200) + 3]
    one, two, three, four = distance_marks(ASLANT, known, (0.0, 0.0))
    checks = check_lengths(PhotoPlace((one, two, three, four), known_lengths(ASLANT, known)))
    offs = [check.off_mm for check in checks]
    assert [check.measured_mm for check in checks] == known
    assert all(0 < off < 3 for off in offs[:4])
    assert all(-3 < off < 0 for off in offs[4:])


@given(st.floats(3700.0, 90_000.0))
def test_a_diagonal_longer_than_two_sides_is_refused(diagonal: float) -> None:
    with pytest.raises(JobError, match="make no triangle"):
        distance_marks(ASLANT, [2400.0, 1200.0, 2400.0, 1200.0, diagonal], (0.0, 0.0))


def test_sides_without_a_diagonal_are_not_enough() -> None:
    with pytest.raises(ValueError, match="2400"):
        distance_marks(ASLANT, [2400.0, 1200.0, 2400.0, 1200.0], (0.0, 0.0))
