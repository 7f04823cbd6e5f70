import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.outlines.measured import area_mm2, outline_box, perimeter_mm
from geometry.outlines.shapes import box, bulge_through, circle, rounded_box
from geometry.outlines.sides import Side
from shared.job import Vertex


def test_a_box_begins_at_its_lower_left_corner_and_runs_anticlockwise() -> None:
    assert box(1, 2, 30, 40) == (Vertex(1, 2), Vertex(31, 2), Vertex(31, 42), Vertex(1, 42))


def test_a_circle_has_the_area_and_girth_of_a_circle() -> None:
    assert area_mm2(circle(5, 6, 30)) == pytest.approx(900 * math.pi)
    assert perimeter_mm(circle(5, 6, 30)) == pytest.approx(60 * math.pi)


@pytest.mark.parametrize(
    ("width", "height", "corners"), [(100, 60, 4), (60, 100, 4), (60, 60, 2), (100, 70, 8)], ids=str
)
def test_corners_that_meet_become_one_half_circle(width: float, height: float, corners: int) -> None:
    outline = rounded_box(3, 4, width, height, 30)
    assert len(outline) == corners
    assert area_mm2(outline) == pytest.approx(width * height - (4 - math.pi) * 900)
    assert outline_box(outline) == pytest.approx((3, 4, 3 + width, 4 + height))


def test_no_radius_is_a_plain_box() -> None:
    assert rounded_box(0, 0, 10, 20, 0) == box(0, 0, 10, 20)


@pytest.mark.parametrize(("middle", "bulge"), [((5, -5), 1.0), ((5, 5), -1.0), ((5, 0), 0.0), ((5, -2.5), 0.5)])
def test_the_arc_through_a_point(middle: tuple[float, float], bulge: float) -> None:
    assert bulge_through((0, 0), middle, (10, 0)) == pytest.approx(bulge)


@given(bulge=st.floats(-20, 20).filter(lambda b: abs(b) > 1e-3))
def test_the_arc_through_the_middle_of_an_arc_is_that_arc(bulge: float) -> None:
    side = Side(0, 3, -4, 50, 60, bulge)
    assert bulge_through(side.start, side.middle, side.end) == pytest.approx(bulge, rel=1e-9)


@given(angle=st.floats(0, 6.28), beyond=st.floats(1, 1e4))
def test_a_point_beyond_the_end_of_a_side_gives_a_bulge_whatever_was_rounded(angle: float, beyond: float) -> None:
    start, way = (355.6, 1422.4), (math.cos(angle), math.sin(angle))
    end, through = ((start[0] + far * way[0], start[1] + far * way[1]) for far in (200.0, 200.0 + beyond))
    assert not math.isnan(bulge_through(start, through, end))
