import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.outlines.sides import Side

bulges = st.floats(-5, 5).filter(lambda bulge: abs(bulge) > 1e-3)


@given(bulge=bulges)
def test_ends_and_middle_lie_on_the_circle(bulge: float) -> None:
    side = Side(0, 10, 20, 110, 50, bulge)
    for point in (side.start, side.middle, side.end):
        assert math.dist(point, side.centre) == pytest.approx(side.radius_mm)
        assert side.distance_mm(*point) == pytest.approx(0, abs=1e-9)


@given(bulge=bulges, share=st.floats(0.01, 0.99), away=st.floats(-0.5, 5))
def test_the_nearest_point_of_an_arc_is_straight_in_or_out(bulge: float, share: float, away: float) -> None:
    side = Side(0, 10, 20, 110, 50, bulge)
    (cx, cy), r = side.centre, side.radius_mm
    turn = math.atan2(20 - cy, 10 - cx) + share * 4 * math.atan(bulge)
    x, y = cx + (1 + away) * r * math.cos(turn), cy + (1 + away) * r * math.sin(turn)
    assert side.distance_mm(x, y) == pytest.approx(abs(away) * r, abs=1e-9)


def test_the_nearest_point_of_a_straight_side_is_its_foot_or_an_end() -> None:
    side = Side(0, 0, 0, 100, 0, 0.0)
    assert side.nearest(30, 40) == (30, 0)
    assert side.nearest(-30, 40) == (0, 0)


@pytest.mark.parametrize("bulge", [1e-3, 0.02, 0.025, 0.0251])
def test_a_flat_segment_keeps_its_digits_on_both_sides_of_the_series(bulge: float) -> None:
    chord, rise = 1000.0, 500 * bulge
    # 2/3 c h + h3 / (2 c), with further terms of the same closed form; the segment of a shallow arc.
    angle = 4 * math.atan(bulge)
    terms = (angle**3 / 6, -(angle**5) / 120, angle**7 / 5040, -(angle**9) / 362880)
    radius = (chord * chord / 4 + rise * rise) / (2 * rise)
    assert Side(0, 0, 0, chord, 0, bulge).segment_mm2 == pytest.approx(
        radius * radius * math.fsum(terms) / 2, rel=1e-11
    )


def test_a_straight_side_has_its_chord_and_no_segment() -> None:
    side = Side(0, 0, 0, 30, 40, 0.0)
    assert (side.length_mm, side.segment_mm2, side.radius_mm) == (50, 0, math.inf)
