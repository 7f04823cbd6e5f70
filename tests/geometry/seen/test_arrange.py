import math
from contextlib import suppress

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

from geometry.outlines.measured import area_mm2, flattened
from geometry.outlines.shapes import QUARTER, box, circle, rounded_box
from geometry.parts.moves import moved
from geometry.parts.rank import rank_key
from geometry.seen import owners
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Arrangement, Edge
from geometry.seen.regions import region_polygon
from shared.errors import JobError, OutlineError
from shared.job import Outline, Part, Vertex
from shared.trade.kinds import Kind
from tests.geometry.faces import (
    area_by_edges,
    counts,
    has_surface,
    lengths,
    open_ends,
    random_face,
    reversed_outline,
    rotated,
)

SEEDS = st.integers(0, 10**9)

SLIVERS = 2e-4
"""What contacts a few micrometres wide may move an area by, mm2: the weld of 1e-6 mm times the length of the sides."""


def cabinet(name: str, outline: Outline, *, level: int = 0, hides: bool = True) -> Part:
    return Part(name, Kind.CABINET, outline, level=level, hides=hides)


def hole(name: str, outline: Outline) -> Part:
    return Part(name, Kind.CUT_OUT, outline)


def areas(arrangement: Arrangement) -> list[float]:
    return [region.area_mm2 for region in arrangement.regions]


def only_edge(arrangement: Arrangement, one: str, other: str) -> Edge:
    (edge,) = (edge for edge in arrangement.edges if {edge.left, edge.right} == {one, other})
    return edge


# Worked by hand (design, "The geometry"): closed forms, exact.


def test_box_with_a_round_hole() -> None:
    found = arrange([cabinet("box", box(0, 0, 100, 100)), hole("hole", circle(50, 50, 30))])
    assert areas(found) == pytest.approx([10000 - 900 * math.pi, 0], abs=1e-9)
    assert lengths(found) == {("", "box"): pytest.approx(400 + 60 * math.pi, abs=1e-9)}
    assert counts(found) == {("", "box"): 6}


def test_round_hole_stays_a_circle() -> None:
    found = arrange([cabinet("box", box(0, 0, 100, 100)), hole("hole", circle(50, 50, 30))])
    assert found.region("box").rings[1] == (Vertex(20, 50, -1.0), Vertex(80, 50, -1.0))


def test_rounded_box_over_an_equal_plain_box() -> None:
    found = arrange([cabinet("low", box(0, 0, 100, 60)), cabinet("up", rounded_box(0, 0, 100, 60, 10))])
    corners = 100 * (4 - math.pi)
    assert areas(found) == pytest.approx([corners, 6000 - corners], abs=1e-9)
    assert lengths(found) == pytest.approx({("", "up"): 240, ("low", "up"): 20 * math.pi, ("", "low"): 80}, abs=1e-9)
    assert counts(found) == {("", "up"): 4, ("low", "up"): 4, ("", "low"): 8}


def test_two_circles_through_each_others_centres() -> None:
    found = arrange([cabinet("low", circle(0, 0, 100)), cabinet("up", circle(100, 0, 100))])
    assert areas(found) == pytest.approx([19132.2295, 10000 * math.pi], abs=5e-5)
    around = 400 * math.pi / 3
    expected = {("low", "up"): 200 * math.pi / 3, ("", "low"): around, ("", "up"): around}
    assert lengths(found) == pytest.approx(expected, abs=1e-9)
    assert counts(found) == {("low", "up"): 2, ("", "low"): 2, ("", "up"): 2}


def test_of_three_equal_parts_only_the_last_is_seen() -> None:
    outline = box(0, 0, 600, 720)
    found = arrange([cabinet("a", outline), cabinet("b", reversed_outline(outline)), cabinet("c", outline)])
    assert areas(found) == [0, 0, 432000]
    assert lengths(found) == {("", "c"): 2640}
    assert counts(found) == {("", "c"): 4}


def test_copy_shifted_by_a_hundredth_leaves_a_sliver() -> None:
    # The upper one is seen whole, and 7.2 of the lower beside it: 432 007.2 is the union (the overlap is 431 992.8).
    found = arrange([cabinet("low", box(0, 0, 600, 720)), cabinet("up", box(0.01, 0, 600, 720))])
    assert areas(found) == pytest.approx([7.2, 432000], abs=1e-9)
    assert lengths(found) == pytest.approx({("low", "up"): 720, ("", "low"): 720.02, ("", "up"): 1920}, abs=1e-9)
    assert counts(found) == {("low", "up"): 1, ("", "low"): 3, ("", "up"): 3}


def test_abutting_holes_are_one_opening_with_an_island() -> None:
    plate, island = cabinet("plate", box(0, 0, 400, 400)), cabinet("island", box(150, 150, 100, 100), level=1)
    found = arrange([plate, hole("left", box(100, 100, 100, 200)), hole("right", box(200, 100, 100, 200)), island])
    assert areas(found) == [120000, 0, 0, 10000]
    assert lengths(found) == {("", "plate"): 2400, ("", "island"): 400}
    assert counts(found) == {("", "plate"): 10, ("", "island"): 4}


# What lies in front, and what an edge knows.


def test_face_without_parts_shows_nothing() -> None:
    assert arrange([]) == Arrangement((), ())


def test_regions_come_in_the_order_of_the_parts() -> None:
    parts = [cabinet("front", box(0, 0, 10, 10), level=1), cabinet("back", box(5, 0, 10, 10))]
    assert [region.part for region in arrange(parts).regions] == ["front", "back"]


def test_higher_kind_hides_a_later_lower_one() -> None:
    found = arrange([Part("door", Kind.DOOR, box(0, 0, 10, 10)), Part("wall", Kind.WALL, box(0, 0, 20, 10))])
    assert areas(found) == [100, 100]


def test_level_beats_kind() -> None:
    found = arrange([Part("door", Kind.DOOR, box(0, 0, 10, 10)), Part("wall", Kind.WALL, box(0, 0, 20, 10), level=1)])
    assert areas(found) == [0, 200]


def test_part_that_does_not_hide_leaves_what_is_behind_in_sight() -> None:
    found = arrange(
        [cabinet("wall", box(0, 0, 100, 100)), cabinet("fridge", box(50, 0, 100, 80), level=9, hides=False)]
    )
    assert areas(found) == [10000, 4000]


def test_hole_owns_nothing_but_keeps_its_place() -> None:
    found = arrange([cabinet("box", box(0, 0, 10, 10)), hole("hole", box(2, 2, 4, 4))])
    assert found.region("hole") == ("hole", (), 0.0)
    assert {edge.left for edge in found.edges} | {edge.right for edge in found.edges} == {"box", None}


def test_edge_names_the_sides_of_both_outlines_it_lies_on() -> None:
    found = arrange([cabinet("low", box(0, 0, 100, 50)), cabinet("high", box(20, 50, 50, 50))])
    edge = only_edge(found, "low", "high")
    sides = {edge.left: edge.left_side, edge.right: edge.right_side}
    assert sides == {"low": 2, "high": 0}
    assert edge.length_mm == 50


def test_edge_has_no_side_of_the_part_that_runs_on_behind() -> None:
    found = arrange([cabinet("behind", box(0, 0, 100, 100)), cabinet("front", box(20, 20, 10, 10))])
    shared = [edge for edge in found.edges if {edge.left, edge.right} == {"behind", "front"}]
    own = [
        (edge.left_side, edge.right_side) if edge.left == "front" else (edge.right_side, edge.left_side)
        for edge in shared
    ]
    assert sorted(own) == [(0, None), (1, None), (2, None), (3, None)]


def test_corners_of_neighbours_do_not_split_a_region() -> None:
    found = arrange(
        [cabinet("top", box(0, 50, 100, 50)), cabinet("a", box(0, 0, 30, 50)), cabinet("b", box(30, 0, 70, 50))]
    )
    assert len(found.region("top").rings[0]) == 4


def test_region_cut_in_two_by_a_touching_circle_has_two_rings() -> None:
    found = arrange([cabinet("box", box(0, 0, 100, 50)), hole("hole", circle(50, 25, 25))])
    assert areas(found)[0] == pytest.approx(5000 - 625 * math.pi, abs=1e-9)
    assert [len(ring) for ring in found.region("box").rings] == [5, 5]
    assert region_polygon(found.region("box")).is_valid


def test_repeated_vertex_is_passed_over_and_sides_keep_their_numbers() -> None:
    twice = (Vertex(0, 0), Vertex(0, 0), Vertex(10, 0), Vertex(10, 10), Vertex(10, 10), Vertex(0, 10))
    found = arrange([cabinet("box", twice), cabinet("right", box(10, 0, 10, 10))])
    edge = only_edge(found, "box", "right")
    assert areas(found) == [100, 100]
    assert 2 in (edge.left_side, edge.right_side)


def test_outline_of_very_many_sides_meets_others_all_round() -> None:
    turns = [math.tau * step / 1000 for step in range(1000)]
    disc = tuple(Vertex(100 * math.cos(turn), 100 * math.sin(turn)) for turn in turns)
    found = arrange(
        [cabinet("box", box(-100, -200, 200, 400)), cabinet("disc", disc), cabinet("bar", box(-200, -5, 400, 10))]
    )
    polygons = [
        shapely.Polygon([(vertex.x, vertex.y) for vertex in outline]) for outline in (disc, box(-200, -5, 400, 10))
    ]
    assert areas(found)[1] == pytest.approx(polygons[0].difference(polygons[1]).area, abs=1e-6)
    assert lengths(found)["box", "disc"] == pytest.approx(polygons[0].length - 20, abs=0.1)


def test_looks_taken_a_few_at_a_time_see_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    parts = random_face(7)
    seen = arrange(parts)
    monkeypatch.setattr(owners, "LOOKS_AT_ONCE", 3)
    assert arrange(parts) == seen


def test_circles_on_one_spot_are_refused_before_they_are_looked_through() -> None:
    heap = [cabinet(f"c{number}", circle(number, number * 7 % 400, 1000)) for number in range(200)]
    arrange(heap[:60])
    with pytest.raises(JobError, match="too many parts with many sides lie on or across each other"):
        arrange(heap)


def test_middle_of_an_arc_decides_where_its_chord_lies_on_a_side() -> None:
    found = arrange([cabinet("box", box(0, 0, 100, 100)), cabinet("round", circle(100, 50, 20))])
    assert areas(found) == pytest.approx([10000 - 200 * math.pi, 400 * math.pi], abs=1e-9)


def test_crescent_thinner_than_its_chords_has_its_area() -> None:
    found = arrange([cabinet("low", circle(0, 0, 100)), cabinet("up", circle(0.01, 0, 100))])
    half = math.acos(0.005 / 100)
    lens = 2 * (10000 * half - 0.005 * math.sqrt(10000 - 0.005**2))
    assert areas(found)[0] == pytest.approx(10000 * math.pi - lens, abs=1e-6)


@pytest.mark.parametrize("gap", [0, 1e-9, -1e-9, 3e-7])
def test_gaps_below_a_micrometre_are_contacts(gap: float) -> None:
    found = arrange([cabinet("a", box(0, 0, 100, 50)), cabinet("b", box(100 + gap, 10, 100, 50))])
    assert lengths(found)["a", "b"] == pytest.approx(40, abs=1e-6)


# Refused in words.


@pytest.mark.parametrize(
    "outline",
    [
        (),
        (Vertex(0, 0),),
        (Vertex(0, 0), Vertex(10, 0)),
        (Vertex(0, 0), Vertex(10, 0), Vertex(20, 0)),
        (Vertex(0, 0), Vertex(math.nan, 0), Vertex(0, 10)),
        (Vertex(0, 0), Vertex(math.inf, 0), Vertex(0, 10)),
        (Vertex(0, 0), Vertex(10, 0, math.nan), Vertex(0, 10)),
        (Vertex(0, 0, 1.0), Vertex(0, 0), Vertex(10, 10), Vertex(0, 10)),
        (Vertex(0, 0), Vertex(1e300, 0), Vertex(0, 10)),
        (Vertex(0, 0, 1e300), Vertex(10, 0), Vertex(0, 10)),
    ],
)
def test_outline_that_cannot_be_measured_is_named(outline: Outline) -> None:
    parts = [cabinet("good", box(0, 0, 10, 10)), Part("bad", Kind.DOOR, outline, name="left door")]
    with pytest.raises(OutlineError, match=r"^left door: "):
        arrange(parts)


corners = st.tuples(st.integers(0, 4), st.integers(0, 4), st.sampled_from([0.0, 0.0, 1.0, -QUARTER, 3.0]))


@given(st.lists(st.lists(corners, min_size=2, max_size=7), min_size=1, max_size=5))
def test_scribbled_outlines_are_arranged_or_refused_in_words(scribbles: list[list[tuple[int, int, float]]]) -> None:
    parts = [cabinet(str(number), tuple(Vertex(*corner) for corner in found)) for number, found in enumerate(scribbles)]
    with suppress(JobError):
        assert len(arrange(parts).regions) == len(parts)


# What holds on any face.


@given(SEEDS)
def test_boundaries_close_and_agree_with_areas(seed: int) -> None:
    parts = random_face(seed)
    found = arrange(parts)
    assert open_ends(found) == 0
    for part, region in zip(parts, found.regions, strict=True):
        assert area_by_edges(found, part.id) == pytest.approx(region.area_mm2, abs=SLIVERS)
        assert -SLIVERS <= region.area_mm2 <= area_mm2(part.outline) + SLIVERS
        assert region_polygon(region).is_valid


@given(SEEDS)
def test_areas_of_readings_are_exact(seed: int) -> None:
    parts = random_face(seed, slivers=False, turned=False)
    found = arrange(parts)
    for region in found.regions:
        assert area_by_edges(found, region.part) == pytest.approx(region.area_mm2, abs=1e-6)


@given(SEEDS)
def test_every_edge_is_there_once_and_divides_two(seed: int) -> None:
    found = arrange(random_face(seed))
    assert all(edge.left != edge.right for edge in found.edges)
    ways = [(edge.x0, edge.y0, edge.x1, edge.y1, edge.bulge) for edge in found.edges]
    back = [(edge.x1, edge.y1, edge.x0, edge.y0, -edge.bulge) for edge in found.edges]
    assert len({*ways, *back}) == 2 * len(found.edges)


@given(SEEDS)
def test_straight_regions_are_outlines_less_their_hiders(seed: int) -> None:
    parts = random_face(seed, arcs=False)
    found = arrange(parts)
    above: BaseGeometry = shapely.Polygon()
    for index in sorted(range(len(parts)), key=lambda index: rank_key(parts[index], index), reverse=True):
        outline = shapely.Polygon(flattened(parts[index].outline, 1.0))
        expected = outline.difference(above).area if has_surface(parts[index]) else 0.0
        assert found.regions[index].area_mm2 == pytest.approx(expected, abs=2e-3)
        above = above.union(outline)


@given(SEEDS)
def test_regions_do_not_overlap(seed: int) -> None:
    polygons = [region_polygon(region) for region in arrange(random_face(seed, arcs=False)).regions]
    for index, polygon in enumerate(polygons):
        assert sum(polygon.intersection(other).area for other in polygons[:index]) < 2e-3


def same_figures(found: Arrangement, other: Arrangement, abs_: float = SLIVERS) -> None:
    assert areas(found) == pytest.approx(areas(other), abs=abs_)
    assert lengths(found) == pytest.approx(lengths(other), abs=abs_)
    assert counts(found) == counts(other)


@given(SEEDS, st.integers(-(10**6), 10**6), st.integers(-(10**6), 10**6))
def test_nothing_changes_under_translation(seed: int, across: int, up: int) -> None:
    parts = random_face(seed)
    same_figures(arrange(parts), arrange([moved(part, across / 100, up / 100) for part in parts]))


@given(SEEDS, st.floats(0.01, 6.2))
def test_nothing_changes_under_rotation(seed: int, angle: float) -> None:
    parts = random_face(seed, turned=False)
    same_figures(arrange(parts), arrange([rotated(part, angle) for part in parts]))


@given(SEEDS, st.integers(0, 7))
def test_nothing_changes_with_the_first_vertex(seed: int, turns: int) -> None:
    parts = random_face(seed)
    turned = []
    for part in parts:
        first = turns % len(part.outline)
        turned.append(Part(part.id, part.kind, part.outline[first:] + part.outline[:first], hides=part.hides))
    same_figures(arrange(parts), arrange(turned))


@given(SEEDS)
def test_nothing_changes_with_the_direction(seed: int) -> None:
    parts = random_face(seed)
    backwards = [Part(part.id, part.kind, reversed_outline(part.outline), hides=part.hides) for part in parts]
    same_figures(arrange(parts), arrange(backwards))


@given(st.floats(10, 200), st.floats(10, 200), st.floats(0.05, 0.95))
def test_lens_of_two_circles_in_closed_form(r: float, s: float, share: float) -> None:
    # Circular segments from the half angles at which the common chord is seen (exact).
    distance = abs(r - s) + share * (r + s - abs(r - s))
    one = math.acos((distance**2 + r * r - s * s) / (2 * distance * r))
    other = math.acos((distance**2 + s * s - r * r) / (2 * distance * s))
    lens = r * r * (one - math.sin(2 * one) / 2) + s * s * (other - math.sin(2 * other) / 2)
    found = arrange([cabinet("low", circle(0, 0, r)), cabinet("up", circle(distance, 0, s))])
    assert areas(found) == pytest.approx([math.pi * r * r - lens, math.pi * s * s], rel=1e-9, abs=1e-5)
    assert lengths(found)["low", "up"] == pytest.approx(2 * other * s, rel=1e-7)


def test_every_region_closes_on_many_faces() -> None:
    for seed in range(1500):
        assert open_ends(arrange(random_face(seed))) == 0, seed
