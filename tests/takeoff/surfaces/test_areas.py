from math import prod

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.outlines.shapes import box, circle, rounded_box
from shared.job import Job, Part
from shared.trade.kinds import Kind, Treatment, usual
from takeoff.figures.measured import Figure, Fronts, Takeoff
from takeoff.take_off import take_off
from tests.takeoff.rows import face_of, job_of, part_row

OUTLET_MM2 = 115 * 72


def test_gross_is_the_whole_outline_and_net_what_is_seen_of_it(counted: Takeoff) -> None:
    tiles = part_row(counted, "tiles")
    assert tiles.gross_mm2.amount == pytest.approx(3600 * 600)
    assert tiles.net_mm2.amount == pytest.approx(3600 * 600 - 2 * OUTLET_MM2)


def test_the_net_sum_names_each_opening_with_its_size(counted: Takeoff) -> None:
    terms = part_row(counted, "tiles").net_mm2.reason.terms
    assert [(term.what, term.amount, term.factors, term.parts) for term in terms] == [
        ("width x height", 2_160_000, (3600, 600), ("tiles",)),
        ("less outlet", -OUTLET_MM2, (115, 72), ("outlet1",)),
        ("less outlet", -OUTLET_MM2, (115, 72), ("outlet2",)),
    ]


def test_what_hides_a_part_only_partly_is_one_honest_term() -> None:
    face = face_of(
        Part("tiles", Kind.SPLASHBACK, box(0, 0, 1000, 600)),
        Part("cabinet", Kind.CABINET, box(900, 500, 400, 400), name="corner cabinet"),
    )
    terms = part_row(take_off(job_of(face)), "tiles").net_mm2.reason.terms
    assert [(term.what, term.parts) for term in terms[1:]] == [("less corner cabinet", ("cabinet",))]
    assert terms[1].amount == pytest.approx(-100 * 100)


def test_two_that_share_what_they_hide_are_not_counted_twice() -> None:
    face = face_of(
        Part("tiles", Kind.SPLASHBACK, box(0, 0, 1000, 600)),
        Part("one", Kind.CUT_OUT, box(100, 100, 200, 200)),
        Part("two", Kind.CUT_OUT, box(200, 100, 200, 200)),
    )
    net = part_row(take_off(job_of(face)), "tiles").net_mm2
    assert net.amount == pytest.approx(600_000 - 300 * 200)
    assert [term.parts for term in net.reason.terms[1:]] == [("two",), ("one",)]


def test_an_opening_has_a_gross_area_and_no_net_area(counted: Takeoff) -> None:
    outlet = part_row(counted, "outlet1")
    assert (outlet.gross_mm2.amount, outlet.net_mm2.amount, outlet.coated_mm2.amount) == (OUTLET_MM2, 0, 0)


def test_a_part_that_does_not_hide_leaves_what_is_behind_it() -> None:
    fridge = Part("fridge", Kind.FIXTURE, box(0, 0, 500, 500), hides=False)
    face = face_of(Part("tiles", Kind.SPLASHBACK, box(0, 0, 1000, 600)), fridge)
    assert part_row(take_off(job_of(face)), "tiles").net_mm2.amount == pytest.approx(600_000)


def test_a_front_is_seen_hung_and_what_is_behind_it_is_measured_off(counted: Takeoff) -> None:
    door, base = part_row(counted, "door1").net_mm2, part_row(counted, "base1").net_mm2
    assert (door.reason.fronts, base.reason.fronts) == (Fronts.HUNG, Fronts.OFF)
    assert (door.amount, base.amount) == pytest.approx((1196 * 718, 1200 * 722))


def test_in_place_the_net_area_is_coated_times_the_profile_factor() -> None:
    face = face_of(Part("panel", Kind.END_PANEL, box(0, 0, 600, 720), profile_factor=1.25))
    coated = part_row(take_off(job_of(face)), "panel").coated_mm2
    assert coated.amount == pytest.approx(600 * 720 * 1.25)
    assert (coated.reason.terms[0].factors, coated.reason.terms[0].times) == ((600, 720), 1.25)


def test_a_front_taken_off_is_coated_on_its_face_and_its_edges(counted: Takeoff) -> None:
    # 18 mm is the usual thickness of a front (kinds.toml)
    assert part_row(counted, "door1").coated_mm2.amount == pytest.approx(1196 * 718 + 2 * (1196 + 718) * 18)


def test_the_back_is_flat_whatever_the_profile_of_the_front(counted: Takeoff) -> None:
    face, edges = 1196 * 718, 2 * (1196 + 718) * 18
    assert part_row(counted, "door2").coated_mm2.amount == pytest.approx(face * 1.2 + edges + face)


def test_each_edge_of_a_front_can_be_left_out() -> None:
    door = Part("door", Kind.DOOR, box(0, 0, 400, 700), coated_sides=(0, 2), thickness_mm=20)
    assert part_row(take_off(job_of(face_of(door))), "door").coated_mm2.amount == pytest.approx(
        400 * 700 + 2 * 400 * 20
    )


def test_the_glass_of_a_door_is_not_coated_and_goes_with_it() -> None:
    face = face_of(
        Part("cabinet", Kind.CABINET, box(0, 0, 400, 700)),
        Part("door", Kind.DOOR, box(0, 0, 400, 700), back_coated=True),
        Part("glass", Kind.WINDOW, box(50, 50, 300, 600)),
    )
    takeoff = take_off(job_of(face))
    assert part_row(takeoff, "door").coated_mm2.amount == pytest.approx(2 * (280_000 - 180_000) + 2200 * 18)
    assert part_row(takeoff, "cabinet").net_mm2.amount == pytest.approx(280_000)
    assert not any(edge.opening for edge in takeoff.edges)


def test_of_a_cabinet_only_what_is_seen_of_its_front_edges_is_coated() -> None:
    # 16 mm is the usual thickness of a carcass (kinds.toml); the benchtop covers its top edge
    face = face_of(
        Part("cabinet", Kind.CABINET, box(0, 0, 600, 720)), Part("bench", Kind.BENCHTOP, box(0, 700, 600, 38))
    )
    coated = part_row(take_off(job_of(face)), "cabinet").coated_mm2
    assert coated.amount == pytest.approx((600 + 700 + 700) * 16)


def test_a_coated_edge_of_a_plan_is_its_seen_length_times_its_thickness(counted: Takeoff) -> None:
    top = part_row(counted, "top")
    assert top.net_mm2.amount == pytest.approx(3600 * 600 - 40_000 * 3.14159265358979)
    assert top.coated_mm2.amount == pytest.approx(top.net_mm2.amount + 2 * 600 * 38)


def test_what_is_left_gets_no_coat_and_no_finish(counted: Takeoff) -> None:
    wall = part_row(counted, "wall")
    assert (wall.treatment, wall.finish, wall.coated_mm2.amount) == (Treatment.LEFT, "", 0)


def test_a_parts_own_treatment_goes_before_the_jobs_and_the_jobs_before_the_usual(kitchen: Job) -> None:
    kinds = tuple(
        replace(row, treatment=Treatment.IN_PLACE, finish="ceiling") if row.kind is Kind.WALL else row
        for row in kitchen.kinds
    )
    wall = part_row(take_off(replace(kitchen, kinds=kinds)), "wall")
    assert (wall.treatment, wall.finish) == (Treatment.IN_PLACE, "ceiling")
    bare = part_row(take_off(replace(kitchen, kinds=())), "tiles")
    assert (bare.treatment, bare.finish) == (Treatment.IN_PLACE, "tiles")


SIZES = st.integers(1, 60).map(lambda steps: steps * 10.0)
OUTLINES = st.one_of(
    st.builds(box, SIZES, SIZES, SIZES, SIZES),
    st.builds(circle, SIZES, SIZES, SIZES),
    st.builds(lambda x, y, w, h: rounded_box(x, y, w, h, min(w, h) / 3), SIZES, SIZES, SIZES, SIZES),
)
PARTS = st.builds(
    lambda kind, outline, factor, treatment, back, hides: Part(
        "", kind, outline, profile_factor=factor, treatment=treatment, back_coated=back, hides=hides
    ),
    st.sampled_from(Kind),
    OUTLINES,
    st.sampled_from((1.0, 1.2)),
    st.sampled_from(Treatment),
    st.booleans(),
    st.booleans(),
)


def assert_terms_sum(figure: Figure) -> None:
    terms = figure.reason.terms
    assert sum(term.amount for term in terms) == pytest.approx(figure.amount, rel=1e-9, abs=1e-5)
    for term in terms:
        assert not term.factors or prod(term.factors) * term.times == pytest.approx(abs(term.amount), rel=1e-9)


@given(st.lists(PARTS, max_size=8))
def test_the_terms_of_every_figure_sum_to_it(parts: list[Part]) -> None:
    numbered = tuple(replace(part, id=f"p{number}") for number, part in enumerate(parts))
    takeoff = take_off(job_of(face_of(*numbered)))
    for row in takeoff.parts:
        assert 0 <= row.net_mm2.amount <= row.gross_mm2.amount + 1e-6
        assert not usual()[row.kind].hole or row.coated_mm2.amount == 0
        for figure in (row.gross_mm2, row.net_mm2, row.coated_mm2):
            assert_terms_sum(figure)
    lines = [(row.length_mm, row.path) for row in takeoff.joints]
    lines += [(row.length_mm, row.path) for row in takeoff.masking]
    for length, path in lines:
        assert_terms_sum(length)
        assert sum(piece.length_mm for piece in path) == pytest.approx(length.amount)
