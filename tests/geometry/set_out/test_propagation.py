import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.outlines.measured import perimeter_mm, signed_area_mm2
from geometry.outlines.shapes import box, circle, rounded_box
from geometry.set_out.propagation import Sum, as_one, joined, outline_area, outline_lengths, slopes_of, spreads
from shared.job import Outline, Vertex
from tests.geometry.faces import random_face, reversed_outline


def tenth(distance_mm: float) -> float:
    """A tolerance of 0.1 mm for every reading but 0."""
    return 0.1 if distance_mm else 0.0


def area_spread(outline: Outline) -> float:
    return spreads(slopes_of([Sum((outline_area(1.0, outline),))]), 1, tenth)[0]


def length_spread(outline: Outline, *which: int) -> float:
    return spreads(slopes_of([Sum(lengths=outline_lengths(1.0, outline, which))]), 1, tenth)[0]


def test_an_area_from_the_corner_is_off_by_its_width_and_height() -> None:
    assert area_spread(box(0, 0, 3000, 600)) == pytest.approx(0.1 * math.hypot(3000, 600))


def test_an_area_away_from_the_corner_has_four_readings() -> None:
    assert area_spread(box(500, 900, 3000, 600)) == pytest.approx(0.1 * math.sqrt(2) * math.hypot(3000, 600))


def test_the_direction_of_an_outline_changes_nothing() -> None:
    assert area_spread(reversed_outline(box(500, 900, 300, 60))) == pytest.approx(area_spread(box(500, 900, 300, 60)))


def test_a_length_from_the_corner_is_off_as_its_reading() -> None:
    assert length_spread(box(0, 0, 3000, 600), 0) == pytest.approx(0.1)
    assert length_spread(box(500, 0, 3000, 600), 0) == pytest.approx(0.1 * math.sqrt(2))


def test_a_circle_is_off_by_its_diameter() -> None:
    # exact: area pi d2 / 4 and length pi d, d the difference of two readings
    assert area_spread(circle(500, 300, 100)) == pytest.approx(0.1 * math.sqrt(2) * math.pi * 200 / 2)
    assert length_spread(circle(500, 300, 100), 0, 1) == pytest.approx(0.1 * math.sqrt(2) * math.pi)


def test_two_that_share_a_reading_do_not_add_what_cancels() -> None:
    halves = [Sum((outline_area(1.0, box(0, 0, 1000, 600)),)), Sum((outline_area(1.0, box(1000, 0, 500, 600)),))]
    both = as_one(slopes_of(halves), 0)
    assert spreads(both, 1, tenth)[0] == pytest.approx(area_spread(box(0, 0, 1500, 600)))


def test_slopes_reckoned_apart_add_up() -> None:
    one, other = Sum((outline_area(2.0, box(0, 0, 70, 60)),)), Sum(lengths=outline_lengths(3.0, box(0, 0, 70, 60), [1]))
    apart = joined([slopes_of([one]), slopes_of([other])])
    together = slopes_of([Sum(one.areas, other.lengths)])
    assert spreads(apart, 1, tenth) == pytest.approx(spreads(together, 1, tenth))


def test_nothing_is_off_by_nothing() -> None:
    assert spreads(joined([]), 2, tenth) == (0.0, 0.0)
    assert spreads(slopes_of([Sum()]), 1, tenth) == (0.0,)


def moved_by(outline: Outline, axis: int, at: float, step: float) -> Outline:
    """The outline with all corners at one reading moved; bulges stay."""
    return tuple(
        Vertex(v.x + step * (axis == 0 and v.x == at), v.y + step * (axis == 1 and v.y == at), v.bulge) for v in outline
    )


@given(st.integers(0, 500))
def test_slopes_are_what_a_small_change_of_each_reading_gives(seed: int) -> None:
    outline = random_face(seed, slivers=False)[0].outline
    squares = [0.0, 0.0]
    for axis, values in ((0, {v.x for v in outline}), (1, {v.y for v in outline})):
        for at in values:
            up, down = (moved_by(outline, axis, at, step) for step in (1e-3, -1e-3))
            squares[0] += ((signed_area_mm2(up) - signed_area_mm2(down)) / 2e-3) ** 2
            squares[1] += ((perimeter_mm(up) - perimeter_mm(down)) / 2e-3) ** 2
    expected = [math.sqrt(square) for square in squares]
    around = Sum(lengths=outline_lengths(1.0, outline, range(len(outline))))
    slopes = slopes_of([Sum((outline_area(1.0, outline),)), around])
    assert spreads(slopes, 2, lambda _: 1.0) == pytest.approx(expected, rel=1e-5, abs=1e-5)


def test_a_rounded_corner_moves_with_its_readings() -> None:
    assert 0 < area_spread(rounded_box(100, 100, 400, 300, 40)) < area_spread(box(100, 100, 400, 300)) * 1.1
