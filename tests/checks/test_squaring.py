"""Squaring a photo against a published vector and against a vision library that shares no code with ours (OpenCV)."""

import cv2
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.photos.squaring import FourPoints, Homography, homography
from shared.job import PhotoMark
from tests.geometry.four_points import four_points


def marks(dots: FourPoints, places: FourPoints) -> list[PhotoMark]:
    return [PhotoMark(u, v, x, y) for (u, v), (x, y) in zip(dots, places, strict=True)]


@pytest.fixture(scope="module")
def published() -> Homography:
    """The tutorial of a general vision library, seen (design of this project, "Squaring a photo")."""
    dots: FourPoints = ((56, 65), (368, 52), (389, 390), (28, 387))
    return homography(marks(dots, ((0, 0), (300, 0), (300, 300), (0, 300))))


def test_the_published_matrix_is_found(published: Homography) -> None:
    scaled = [number / published.i for number in published]
    expected = [
        *(1.05587376, 0.0918151097, -65.0969128),
        *(0.0469010049, 1.12562412, -75.792024),
        *(1.83251448e-4, 5.13337001e-4, 1.0),
    ]
    assert scaled == pytest.approx(expected, rel=1e-8)


def test_the_published_middle_is_found_there_and_back(published: Homography) -> None:
    assert published.to_face(206.112810, 211.506496) == pytest.approx((150.0, 150.0), abs=1e-5)
    assert published.to_photo(150.0, 150.0) == pytest.approx((206.112810, 211.506496), abs=1e-5)


@given(four_points(4000), four_points(3600), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_any_four_marks_square_as_the_vision_library_does(
    dots: FourPoints, places: FourPoints, along: float, up: float
) -> None:
    squared = homography(marks(dots, places))
    theirs = cv2.getPerspectiveTransform(np.array(dots, np.float32), np.array(places, np.float32))
    # Between the lower and the upper side: a point within the marks.
    low = [dots[0][n] + along * (dots[1][n] - dots[0][n]) for n in range(2)]
    high = [dots[3][n] + along * (dots[2][n] - dots[3][n]) for n in range(2)]
    u, v = (low[n] + up * (high[n] - low[n]) for n in range(2))
    expected = cv2.perspectiveTransform(np.array([[[u, v]]], np.float64), theirs)[0][0]
    assert squared.to_face(u, v) == pytest.approx(tuple(expected), abs=1e-6)
