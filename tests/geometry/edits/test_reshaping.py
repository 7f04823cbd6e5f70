"""Corners and sides of outlines changed one by one, checked by the shoelace and by hand."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.edits.reshaping import (
    corner_cut,
    corner_moved,
    corner_put_in,
    corner_rounded,
    corner_taken_out,
    far_end,
    side_at,
    side_bent,
    side_lengthened,
    side_moved,
    side_of_radius,
    side_through,
    side_turned,
)
from geometry.outlines.measured import area_mm2, check_outline, outline_box
from geometry.outlines.shapes import QUARTER, box, circle, rounded_box
from shared.errors import OutlineError
from shared.job import Outline, Vertex

L_SHAPE: Outline = tuple(Vertex(x, y) for x, y in ((0, 0), (2400, 0), (2400, 600), (600, 600), (600, 1800), (0, 1800)))
SLOPING: Outline = (Vertex(0, 0), Vertex(3000, 0), Vertex(3000, 2400), Vertex(0, 2100))


def corners(outline: Outline) -> list[tuple[float, float]]:
    return [(round(vertex.x, 6), round(vertex.y, 6)) for vertex in outline]


def backwards(outline: Outline) -> Outline:
    """The same outline the other way round."""
    turned = outline[::-1]
    return tuple(
        Vertex(vertex.x, vertex.y, -after.bulge) for vertex, after in zip(turned, (*turned[1:], turned[0]), strict=True)
    )


def shoelace_mm2(outline: Outline) -> float:
    """The area within straight sides (the shoelace formula: exact)."""
    pairs = zip(outline, (*outline[1:], outline[0]), strict=True)
    return abs(sum(a.x * b.y - b.x * a.y for a, b in pairs)) / 2


def test_a_moved_corner_takes_its_arc_along() -> None:
    after = corner_moved(circle(0, 0, 100), 1, (300, 0)).outline
    assert [vertex.bulge for vertex in after] == [1, 1]
    assert area_mm2(after) == pytest.approx(math.pi * 200**2)


@pytest.mark.parametrize("outline", [box(0, 0, 600, 720), backwards(box(0, 0, 600, 720))])
@pytest.mark.parametrize("number", range(4))
def test_a_side_of_a_box_moved_out_makes_it_larger(outline: Outline, number: int) -> None:
    grown = side_moved(outline, number, 50).outline
    length = side_at(outline, number).length_mm
    assert area_mm2(grown) == pytest.approx(600 * 720 + 50 * length)
    assert side_at(grown, number).length_mm == pytest.approx(length)


def test_a_moved_side_slides_along_sloping_neighbours() -> None:
    after = side_moved(SLOPING, 1, -1000).outline
    assert corners(after) == [(0, 0), (2000, 0), (2000, 2300), (0, 2100)]


def test_a_moved_side_takes_its_rounded_corners_along() -> None:
    after = side_moved(rounded_box(0, 0, 600, 400, 50), 2, 100).outline
    assert corners(after) == corners(rounded_box(0, 0, 700, 400, 50))
    assert area_mm2(after) == pytest.approx(area_mm2(rounded_box(0, 0, 700, 400, 50)))


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("number", range(4))
def test_a_box_stays_square_when_a_side_gets_its_length(number: int, turned: bool) -> None:
    outline = backwards(box(100, 200, 600, 720)) if turned else box(100, 200, 600, 720)
    is_level = side_at(outline, number).y0 == side_at(outline, number).y1
    after = side_lengthened(outline, number, 900).outline
    assert outline_box(after) == pytest.approx((100, 200, 1000, 920) if is_level else (100, 200, 700, 1100))
    assert area_mm2(after) == pytest.approx(900 * 720 if is_level else 600 * 900)


def test_an_l_shape_stays_square_too() -> None:
    after = corners(side_lengthened(L_SHAPE, 2, 1500).outline)
    assert after == [(0, 0), (2100, 0), (2100, 600), (600, 600), (600, 1800), (0, 1800)]


def test_a_rounded_box_keeps_its_rounding_when_a_side_gets_its_length() -> None:
    after = side_lengthened(rounded_box(0, 0, 600, 400, 50), 0, 700).outline
    assert corners(after) == corners(rounded_box(0, 0, 800, 400, 50))
    assert area_mm2(after) == pytest.approx(area_mm2(rounded_box(0, 0, 800, 400, 50)))


def test_a_wall_under_a_sloping_ceiling_keeps_its_heights_when_it_gets_longer() -> None:
    assert corners(side_lengthened(SLOPING, 0, 3600).outline) == [(0, 0), (3600, 0), (3600, 2400), (0, 2100)]


def test_only_the_corner_moves_where_the_next_side_is_not_square() -> None:
    triangle = (Vertex(0, 0), Vertex(300, 0), Vertex(100, 200))
    assert corners(side_lengthened(triangle, 0, 400).outline) == [(0, 0), (400, 0), (100, 200)]


def test_an_arc_gets_its_length_along_itself() -> None:
    after = side_lengthened((Vertex(0, 0, 1.0), Vertex(200, 0)), 0, math.pi * 150).outline
    assert corners(after) == [(0, 0), (300, 0)]


def test_a_side_is_turned_about_its_left_end() -> None:
    after = side_turned(box(0, 0, 600, 400), 2, 500, (0, 1)).outline
    assert far_end(box(0, 0, 600, 400), 2) == 2
    assert corners(after) == [(0, 0), (600, 0), (0, 900), (0, 400)]


@pytest.mark.parametrize("outline", [box(0, 0, 210, 100), backwards(box(0, 0, 210, 100))])
def test_a_side_bends_outwards_by_its_rise(outline: Outline) -> None:
    # Chord 21, rise 6: segment 89.254148, radius 12.1875 (design page "Areas": seen, a bulge test), ten times as large.
    number = next(side for side in range(4) if side_at(outline, side).length_mm == 210)
    for bent in (side_bent(outline, number, 60), side_of_radius(outline, number, 121.875)):
        assert area_mm2(bent.outline) == pytest.approx(210 * 100 + 8925.4148, abs=1e-3)
    assert area_mm2(side_bent(outline, number, -60).outline) == pytest.approx(210 * 100 - 8925.4148, abs=1e-3)
    assert side_bent(side_bent(outline, number, 60).outline, number, 0).outline == outline


def test_a_side_rises_to_where_the_hand_is() -> None:
    bent = side_through(box(0, 0, 210, 100), 0, (105, -60)).outline
    assert side_at(bent, 0).middle == pytest.approx((105, -60))


@pytest.mark.parametrize("radius_mm", [0, 99, -99])
def test_an_arc_of_less_than_half_its_chord_is_refused(radius_mm: float) -> None:
    with pytest.raises(OutlineError, match="so small a radius"):
        side_of_radius(box(0, 0, 200, 100), 0, radius_mm)


def test_half_a_circle_is_the_most_that_a_radius_gives() -> None:
    assert side_of_radius(box(0, 0, 200, 100), 0, 100).outline[0].bulge == pytest.approx(1)


def test_a_corner_parts_a_side_and_can_be_taken_out_again() -> None:
    parted = corner_put_in(box(0, 0, 600, 400), 3, (-20, 100))
    assert corners(parted.outline) == [(0, 0), (600, 0), (600, 400), (0, 400), (0, 100)]
    assert parted.origins == ((0,), (1,), (2,), (3,), (3,))
    assert corner_taken_out(parted.outline, 4).outline == box(0, 0, 600, 400)
    assert corner_taken_out(parted.outline, 4).origins == ((0,), (1,), (2,), (3, 4))


def test_taking_out_the_first_corner_joins_the_last_side_to_the_first() -> None:
    after = corner_taken_out(L_SHAPE, 0)
    assert corners(after.outline) == corners(L_SHAPE[1:])
    assert after.origins == ((1,), (2,), (3,), (4,), (5, 0))


@pytest.mark.parametrize("outline", [circle(0, 0, 100), backwards(circle(0, 0, 100))])
@given(degrees=st.integers(1, 179), number=st.integers(0, 1))
def test_an_arc_is_parted_into_arcs_of_the_same_circle(outline: Outline, degrees: int, number: int) -> None:
    middle = side_at(outline, number).middle
    way = math.copysign(1.0, middle[1])
    at = (90 * math.cos(math.radians(degrees)), way * 90 * math.sin(math.radians(degrees)))
    parted = corner_put_in(outline, number, at)
    assert area_mm2(parted.outline) == pytest.approx(math.pi * 100**2)
    assert [side_at(parted.outline, side).radius_mm for side in range(3)] == pytest.approx([100] * 3)
    back = corner_taken_out(parted.outline, number + 1).outline
    assert [vertex.bulge for vertex in back] == pytest.approx([vertex.bulge for vertex in outline])


def test_rounding_all_corners_of_a_box_makes_a_rounded_box() -> None:
    outline = box(0, 0, 600, 100)
    for corner in (3, 2, 1, 0):
        outline = corner_rounded(outline, corner, 40).outline
    assert area_mm2(outline) == pytest.approx(600 * 100 - (4 - math.pi) * 40**2)  # exact


def test_rounding_may_use_a_side_up() -> None:
    outline = corner_rounded(box(0, 0, 600, 100), 0, 50).outline
    rounded = corner_rounded(outline, 4, 50)
    assert len(rounded.outline) == 5
    assert area_mm2(rounded.outline) == pytest.approx(600 * 100 - (4 - math.pi) * 50**2 / 2)
    assert sorted(vertex.bulge for vertex in rounded.outline)[3:] == pytest.approx([QUARTER, QUARTER])


def test_a_reflex_corner_is_rounded_inwards() -> None:
    after = corner_rounded(L_SHAPE, 3, 100).outline
    assert area_mm2(after) == pytest.approx(shoelace_mm2(L_SHAPE) + (1 - math.pi / 4) * 100**2)


def test_a_corner_is_cut_off() -> None:
    after = corner_cut(box(0, 0, 600, 400), 2, 100)
    assert area_mm2(after.outline) == pytest.approx(600 * 400 - 100 * 100 / 2)
    assert after.origins == ((0,), (1,), (), (2,), (3,))


def test_more_than_a_side_has_is_refused() -> None:
    with pytest.raises(OutlineError, match="the sides at corner 1 are too short"):
        corner_rounded(box(0, 0, 600, 400), 0, 401)
    with pytest.raises(OutlineError, match="the sides at corner 1 are too short"):
        corner_cut(box(0, 0, 600, 400), 0, 401)


@pytest.mark.parametrize("change", [corner_rounded, corner_cut])
def test_the_end_of_an_arc_is_neither_rounded_nor_cut(change: Callable[[Outline, int, float], object]) -> None:
    with pytest.raises(OutlineError, match="end of an arc"):
        change(rounded_box(0, 0, 600, 400, 50), 0, 10)


amounts = st.integers(-90, 90).map(float)


@given(st.sampled_from([box(0, 0, 600, 400), L_SHAPE, SLOPING]), st.integers(0, 5), amounts, amounts)
def test_areas_follow_the_shoelace_and_going_back_gives_the_start(
    outline: Outline, number: int, dx: float, dy: float
) -> None:
    corner = number % len(outline)
    start = (outline[corner].x, outline[corner].y)
    there = corner_moved(outline, corner, (start[0] + dx, start[1] + dy)).outline
    check_outline(there, "")
    assert area_mm2(there) == pytest.approx(shoelace_mm2(there))
    assert corner_moved(there, corner, start).outline == outline
    moved = side_moved(outline, corner, dx).outline
    assert area_mm2(moved) == pytest.approx(shoelace_mm2(moved))
    assert corners(side_moved(moved, corner, -dx).outline) == corners(outline)
