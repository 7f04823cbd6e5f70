"""Squaring a photo: there and back, what is refused, what is shown of it, and how far it is off."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.photos.marks import rectangle_marks
from geometry.photos.squaring import (
    FARTHEST,
    FourPoints,
    check_four,
    check_lengths,
    homography,
    shown_corners,
)
from shared.errors import JobError
from shared.job import PhotoLength, PhotoMark, PhotoPlace
from tests.geometry.four_points import four_points

ASLANT: FourPoints = ((400.0, 1900.0), (2700.0, 2100.0), (2500.0, 300.0), (600.0, 500.0))
"""A rectangle as a hand that is none too steady takes it: lower left, lower right, upper right, upper left."""


@pytest.fixture
def wall() -> tuple[PhotoMark, ...]:
    return rectangle_marks(ASLANT, 3600.0, 2400.0, (0.0, 0.0))


@given(four_points(4000), four_points(3600), st.lists(st.floats(0.05, 1.0), min_size=4, max_size=4))
def test_what_is_within_the_marks_goes_to_the_face_and_back(
    dots: FourPoints, places: FourPoints, weights: list[float]
) -> None:
    squared = homography([PhotoMark(u, v, x, y) for (u, v), (x, y) in zip(dots, places, strict=True)])
    within = tuple(sum(w * dot[n] for w, dot in zip(weights, dots, strict=True)) / sum(weights) for n in (0, 1))
    assert squared.to_photo(*squared.to_face(*within)) == pytest.approx(within, abs=1e-4)


def test_the_marks_go_where_they_were_said_to(wall: tuple[PhotoMark, ...]) -> None:
    squared = homography(wall)
    for mark in wall:
        assert squared.to_face(mark.u, mark.v) == pytest.approx((mark.x, mark.y), abs=1e-6)


@pytest.mark.parametrize(
    ("dots", "words"),
    [
        (((0, 0), (10, 0), (10, 10), (10, 10)), "the third mark and the fourth mark are at the same place"),
        (((0, 0), (50, 0), (100, 0), (50, 100)), "the first, second and third marks are in a line"),
        (((0, 100), (100, 0), (100, 100), (0, 0)), "the lines from mark to mark cross each other"),
        (((0, 0), (100, 0), (30, 30), (0, 100)), "one mark lies between the other three"),
        (((7, 7), (7, 7), (7, 7), (7, 7)), "at the same place"),
    ],
)
def test_marks_that_square_nothing_are_refused_in_words(dots: FourPoints, words: str) -> None:
    with pytest.raises(JobError, match=words):
        check_four(dots, "the photo")


def test_a_dot_beyond_the_horizon_shows_nothing_of_the_face() -> None:
    steep: FourPoints = ((0.0, 1000.0), (1000.0, 1000.0), (600.0, 500.0), (400.0, 500.0))
    squared = homography(rectangle_marks(steep, 1000.0, 1000.0, (0.0, 0.0)))
    with pytest.raises(JobError, match="does not show that part of the face"):
        squared.to_face(500.0, 0.0)


def test_a_point_behind_the_camera_is_on_no_photo() -> None:
    steep: FourPoints = ((0.0, 1000.0), (1000.0, 1000.0), (600.0, 500.0), (400.0, 500.0))
    squared = homography(rectangle_marks(steep, 1000.0, 1000.0, (0.0, 0.0)))
    with pytest.raises(JobError, match="does not show that part of the face"):
        squared.to_photo(500.0, -9000.0)


def test_a_known_length_is_set_beside_what_the_photo_says(wall: tuple[PhotoMark, ...]) -> None:
    one, two, three, four = wall
    known = PhotoLength(one.u, one.v, three.u, three.v, 4320.0)
    (check,) = check_lengths(PhotoPlace((one, two, three, four), (known,)))
    assert check.read_mm == pytest.approx(math.hypot(3600, 2400))
    assert check.off_mm == pytest.approx(math.hypot(3600, 2400) - 4320.0)


def test_a_dot_covers_what_the_photo_was_taken_at() -> None:
    straight: FourPoints = ((0.0, 1500.0), (1800.0, 1500.0), (1800.0, 300.0), (0.0, 300.0))
    squared = homography(rectangle_marks(straight, 3600.0, 2400.0, (0.0, 0.0)))
    assert squared.mm_per_dot(900.0, 900.0) == pytest.approx(2.0)


def test_a_photo_taken_square_on_is_shown_whole() -> None:
    straight: FourPoints = ((100.0, 1500.0), (1900.0, 1500.0), (1900.0, 300.0), (100.0, 300.0))
    marks = rectangle_marks(straight, 3600.0, 2400.0, (0.0, 0.0))
    assert shown_corners(homography(marks), marks, 2000, 1600) == ((0, 0), (2000, 0), (2000, 1600), (0, 1600))


def test_of_a_photo_taken_aslant_nothing_is_shown_that_is_too_coarse() -> None:
    steep: FourPoints = ((0.0, 1000.0), (1000.0, 1000.0), (600.0, 500.0), (400.0, 500.0))
    marks = rectangle_marks(steep, 1000.0, 1000.0, (0.0, 0.0))
    squared = homography(marks)
    corners = shown_corners(squared, marks, 1000, 1200)
    midst = squared.mm_per_dot(500, 750)
    coarsest = max(squared.mm_per_dot(*corner) for corner in corners)
    assert coarsest == pytest.approx(FARTHEST * midst)
    assert {(1000.0, 1200.0), (0.0, 1200.0)} <= set(corners)
