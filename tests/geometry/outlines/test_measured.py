import math
from itertools import combinations

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.outlines.measured import (
    area_mm2,
    check_outline,
    contains,
    flattened,
    outline_box,
    perimeter_mm,
    side_lengths_mm,
    signed_area_mm2,
)
from geometry.outlines.shapes import box, circle, rounded_box
from geometry.outlines.sides import sides
from shared.errors import OutlineError
from shared.job import Outline, Vertex

V = Vertex
TINY = 1e-9

SHAPES = {
    "box": box(10, 20, 600, 720),
    "circle": circle(300, 200, 150),
    "rounded box": rounded_box(5, 5, 100, 60, 10),
    "pill": rounded_box(0, 0, 100, 60, 30),
    "notched": (V(0, 0), V(100, 0), V(100, 80), V(60, 80, -1.0), V(30, 80), V(0, 80)),
    "great arc": (V(0, 0, 5.0), V(10, 0)),
}

shape = pytest.mark.parametrize("outline", SHAPES.values(), ids=SHAPES.keys())


@shape
def test_sound_outlines_pass(outline: Outline) -> None:
    check_outline(outline, "face A")


@shape
def test_area_and_perimeter_do_not_depend_on_direction_or_first_vertex(outline: Outline) -> None:
    around = outline[1:] + outline[:1]
    backward = tuple(
        V(vertex.x, vertex.y, -before.bulge)
        for vertex, before in zip(outline[::-1], outline[-2::-1] + outline[-1:], strict=True)
    )
    for other in (around, backward):
        assert area_mm2(other) == pytest.approx(area_mm2(outline), abs=TINY)
        assert perimeter_mm(other) == pytest.approx(perimeter_mm(outline), abs=TINY)
    assert signed_area_mm2(backward) == pytest.approx(-signed_area_mm2(outline), abs=TINY)


def test_an_outline_far_from_the_corner_loses_no_digits() -> None:
    assert area_mm2(circle(1e5, 1e5, 30)) == pytest.approx(900 * math.pi, abs=1e-6)


def test_the_sides_of_a_box_are_measured_in_order() -> None:
    assert side_lengths_mm(box(0, 0, 600, 720)) == (600, 720, 600, 720)


def test_a_repeated_vertex_has_no_side() -> None:
    outline = (V(0, 0), V(600, 0), V(600, 0), V(600, 720), V(0, 720))
    assert side_lengths_mm(outline) == (600, 0, 720, 600, 720)
    assert [side.vertex for side in sides(outline)] == [0, 2, 3, 4]
    check_outline(outline, "face A")


def test_nothing_has_no_area_and_no_box() -> None:
    assert (area_mm2(()), perimeter_mm(())) == (0, 0)
    with pytest.raises(ValueError, match="no box"):
        outline_box(())


def test_a_box_round_arcs_reaches_beyond_their_ends() -> None:
    assert outline_box(circle(0, 0, 30)) == pytest.approx((-30, -30, 30, 30))
    assert outline_box((V(0, 0, 1.0), V(10, 0))) == pytest.approx((0, -5, 10, 0))


@shape
def test_flattening_stays_within_its_sagitta(outline: Outline) -> None:
    sagitta = 0.05
    lengths = perimeter_mm(outline)
    chords = tuple(V(x, y) for x, y in flattened(outline, sagitta))
    assert perimeter_mm(chords) <= lengths + TINY
    assert abs(area_mm2(chords) - area_mm2(outline)) <= sagitta * lengths


def test_flattening_keeps_straight_outlines_as_they_are() -> None:
    assert flattened(box(0, 0, 6, 7), 0.1) == ((0, 0), (6, 0), (6, 7), (0, 7))


@pytest.mark.parametrize(
    ("point", "inside"),
    [((0, 0), True), ((0, 30), True), ((30, 0), True), ((21, 21), True), ((21.3, 21.3), False), ((-31, 0), False)],
)
def test_a_circle_contains_its_centre_and_rim_and_nothing_beyond(point: tuple[float, float], inside: bool) -> None:
    assert contains(circle(0, 0, 30), *point) is inside


@shape
@given(across=st.floats(-0.2, 1.2), up=st.floats(-0.2, 1.2))
def test_contains_agrees_with_the_turning_of_a_fine_flattening(outline: Outline, across: float, up: float) -> None:
    left, bottom, right, top = outline_box(outline)
    x, y = left + across * (right - left), bottom + up * (top - bottom)
    fine = flattened(outline, 1e-4)
    near = min(math.dist((x, y), point) for point in fine)
    turns = [
        math.atan2((ax - x) * (by - y) - (ay - y) * (bx - x), (ax - x) * (bx - x) + (ay - y) * (by - y))
        for (ax, ay), (bx, by) in zip(fine, fine[1:] + fine[:1], strict=True)
    ]
    winding = abs(sum(turns)) / (2 * math.pi)
    on_chord = any(abs(abs(turn) - math.pi) < 1e-2 for turn in turns)
    if near > 1 and not on_chord:
        assert contains(outline, x, y) is (winding > 0.5)


BAD = {
    "nothing": ((), "too few corners"),
    "a point": ((V(1, 1),), "too few corners"),
    "a line there and back": ((V(0, 0), V(9, 9)), "too few corners"),
    "a repeated corner": ((V(0, 0), V(9, 9), V(0, 0)), "too few corners"),
    "three in a line": ((V(0, 0), V(10, 0), V(5, 0)), "run back"),
    "a bow tie": ((V(0, 0), V(10, 10), V(10, 0), V(0, 10)), "side 1 and side 3"),
    "a spike": ((V(0, 0), V(10, 0), V(10, 10), V(20, 10), V(10, 10), V(0, 10)), "run back"),
    "a corner on a side": ((V(0, 0), V(10, 0), V(10, 10), V(5, 0), V(0, 10)), "side 1 and side"),
    "two loops at a corner": (
        (V(0, 0), V(5, 5), V(9, 0), V(9, 10), V(5, 5), V(0, 10)),
        "side",
    ),
    "an arc there and back": ((V(0, 0, 1.0), V(10, 0, -1.0)), "encloses no area"),
    "an arc that goes nowhere": ((V(0, 0), V(10, 0), V(10, 10, 1.0), V(10, 10), V(0, 10)), "side 3 is an arc"),
    "an arc through the far side": ((V(0, 0), V(10, 0), V(10, 5, -1.0), V(0, 5)), "side 1 and side 3"),
    "an arc that touches the far side": ((V(0, 0), V(10, 0), V(10, 5, -1.0), V(0, 5)), "side 1 and side 3"),
    "an arc past its neighbour": ((V(0, 0), V(10, 0), V(10, 10, -1.5), V(0, 10)), "side 3 and side 4"),
    "two arcs that cross": (
        (V(0, 0), V(10, 0), V(10, 10, -0.8), V(0, 10), V(0, 20, -3.0), V(-10, 20), V(-10, 0)),
        "side",
    ),
    "no number": ((V(0, 0), V(math.nan, 0), V(3, 3)), "corner 2 has a value that is not a number"),
    "an endless number": ((V(0, 0), V(9, 0), V(3, math.inf)), "corner 3 has a value that is not a number"),
    "an endless bulge": ((V(0, 0, math.inf), V(9, 0)), "corner 1 has a value that is not a number"),
    "out of reach": ((V(0, 0), V(1e300, 0), V(3, 3)), "1000 km"),
    "an absurd bulge": ((V(0, 0, 1e9), V(9, 0)), "whole turn"),
}


@pytest.mark.parametrize(("outline", "words"), BAD.values(), ids=BAD.keys())
def test_bad_outlines_are_refused_in_one_sentence(outline: Outline, words: str) -> None:
    with pytest.raises(OutlineError, match=words) as caught:
        check_outline(outline, "face A, sink")
    assert str(caught.value).startswith("face A, sink: ")
    assert str(caught.value).count(".") == 1


@given(
    x=st.integers(-100, 100),
    y=st.integers(-100, 100),
    width=st.integers(1, 4000),
    height=st.integers(1, 4000),
    share=st.floats(0.01, 1),
)
def test_every_rounded_box_can_be_measured(x: int, y: int, width: int, height: int, share: float) -> None:
    radius = share * min(width, height) / 2
    outline = rounded_box(x, y, width, height, radius)
    check_outline(outline, "face A")
    assert area_mm2(outline) == pytest.approx(width * height - (4 - math.pi) * radius * radius, rel=1e-12)
    assert outline_box(outline) == pytest.approx((x, y, x + width, y + height))


def test_a_sliver_of_a_hundredth_of_a_millimetre_can_be_measured() -> None:
    check_outline(box(0, 0, 3000, 0.01), "face A")


lattice = st.integers(0, 5)


@settings(max_examples=400)
@given(corners=st.lists(st.tuples(lattice, lattice), min_size=3, max_size=8))
def test_straight_outlines_are_refused_just_where_another_engine_finds_them_unsound(
    corners: list[tuple[int, int]],
) -> None:
    # shapely (GEOS): a ring that does not touch itself; the smallest lattice keeps touching and running back frequent.
    following = (*corners[1:], corners[0])
    outline = tuple(V(*corner) for corner, then in zip(corners, following, strict=True) if corner != then)
    ring = [(vertex.x, vertex.y) for vertex in outline]
    sound = len(ring) >= 3 and shapely.LinearRing(ring).is_simple and shapely.Polygon(ring).area > 0
    assert is_measurable(outline) is sound


@st.composite
def outlines_with_arcs(draw: st.DrawFn) -> Outline:
    corners = draw(st.lists(st.tuples(lattice, lattice), min_size=2, max_size=6, unique=True))
    bulge = st.sampled_from([0.0, 0.3, -0.7, 1.0, -1.0, 2.0])
    return tuple(V(100.0 * x, 100.0 * y, draw(bulge)) for x, y in corners)


@settings(max_examples=400)
@given(outline=outlines_with_arcs())
def test_an_outline_that_passes_has_no_two_sides_that_meet_when_finely_flattened(outline: Outline) -> None:
    if not is_measurable(outline):
        return
    lines = [shapely.LineString([*side.points(1e-3), side.end]) for side in sides(outline)]
    for first, second in combinations(range(len(lines)), 2):
        follows = second == first + 1 or (first, second) == (0, len(lines) - 1)
        assert follows or not lines[first].intersects(lines[second])


@settings(max_examples=400)
@given(outline=outlines_with_arcs())
def test_an_outline_that_is_refused_comes_near_itself_when_finely_flattened(outline: Outline) -> None:
    if is_measurable(outline):
        return
    fine = flattened(outline, 1e-3)
    sound = len(fine) > 2 and shapely.LinearRing(fine).is_simple
    assert not sound or shapely.minimum_clearance(shapely.Polygon(fine)) < 0.1


def is_measurable(outline: Outline) -> bool:
    try:
        check_outline(outline, "face A")
    except OutlineError:
        return False
    return True
