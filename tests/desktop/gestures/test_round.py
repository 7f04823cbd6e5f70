import math

import pytest

from desktop.gestures.round import Circle, CircleAcross, RoundedBox
from geometry.outlines.measured import area_mm2
from shared.errors import OutlineError, ReadingError
from tests.desktop.gestures.scenes import SCENE, new_box, new_outline


def test_a_circle_grows_from_its_centre_to_a_typed_radius() -> None:
    circle = Circle(SCENE)
    circle.press((2500, 1500))
    done = circle.read(200)
    assert new_box(done) == pytest.approx((2300, 1300, 2700, 1700))
    assert area_mm2(new_outline(done)) == pytest.approx(math.pi * 200**2)  # exact


def test_a_circle_is_dragged_from_its_centre_to_its_edge() -> None:
    circle = Circle(SCENE)
    circle.press((2500, 1500))
    assert new_box(circle.release((2500, 1600))) == pytest.approx((2400, 1400, 2600, 1600))


def test_a_circle_from_edge_to_edge_takes_its_diameter() -> None:
    circle = CircleAcross(SCENE)
    for length_mm in (2000, 1500):
        circle.read(length_mm)
    assert circle.wants == "diameter"
    assert new_box(circle.read(300)) == pytest.approx((2000, 1350, 2300, 1650))


def test_a_rounded_box_asks_for_the_radius_of_its_corners_last() -> None:
    rounded = RoundedBox(SCENE)
    for length_mm in (2000, 1000, 500, 300):
        assert rounded.read(length_mm) is None
    assert rounded.wants == "radius of its corners"
    assert area_mm2(new_outline(rounded.read(50))) == pytest.approx(500 * 300 - (4 - math.pi) * 50**2)  # exact


def test_a_radius_larger_than_half_the_box_is_refused_in_words() -> None:
    rounded = RoundedBox(SCENE)
    for length_mm in (2000, 1000, 500, 300):
        rounded.read(length_mm)
    with pytest.raises(ReadingError, match="more than half the shorter side of the box"):
        rounded.read(151)
    assert rounded.wants == "radius of its corners"


def test_taking_back_the_box_asks_for_its_height_again() -> None:
    rounded = RoundedBox(SCENE)
    for length_mm in (2000, 1000, 500, 300):
        rounded.read(length_mm)
    rounded.back()
    assert rounded.wants == "height"


def test_turning_goes_round_the_three_ways() -> None:
    first = Circle(SCENE)
    ways = [first.other_way, first.turned().other_way, first.turned().turned().other_way]
    assert ways == ["circle from edge to edge", "rounded box", "circle"]
    assert isinstance(first.turned().turned().turned(), Circle)


def test_a_circle_without_a_radius_is_refused() -> None:
    circle = Circle(SCENE)
    circle.press((2500, 1500))
    with pytest.raises(OutlineError):
        circle.press((2500, 1500))
