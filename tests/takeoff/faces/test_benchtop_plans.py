"""Benchtops 600 deep with 20 mm of overhang, laid out along invented walls; areas and lengths worked by hand."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.outlines.measured import area_mm2, check_outline, outline_box
from geometry.outlines.shapes import box
from geometry.seen.arrange import arrange
from shared.checks.job import check_job
from shared.edits.drawn import find_face
from shared.errors import JobError
from shared.job import Corner, Face, Heights, Job, Outline, Part, Room, Tie, View
from shared.trade.kinds import Kind, Treatment
from takeoff.faces.benchtop_plans import with_benchtop_plans
from takeoff.take_off import take_off
from tests.takeoff.rows import codes

HEIGHTS = Heights(2400, 150, 720, 38, 600, 720, 600, 20, 3)

Stretch = tuple[float, float]


def base(key: str, start: float, end: float) -> Part:
    return Part(key, Kind.CABINET, box(start, 150, end - start, 720))


def edge(key: str, start: float, end: float, treatment: Treatment = Treatment.AS_KIND) -> Part:
    return Part(key, Kind.BENCHTOP, box(start, 870, end - start, 38), treatment=treatment)


def elevation(name: str, length: float, corner: Corner, *parts: Part) -> Face:
    """A wall; without a length, a side of an island."""
    wall = (Part(f"{name}-wall", Kind.WALL, box(0, 0, length, 2400)),) if length else ()
    return Face(name, name, corner=corner, parts=(*wall, *parts))


def room_of(*faces: Face) -> Job:
    return Job("J", (Room("r", "Kitchen", faces, HEIGHTS),))


def plans(job: Job, *, mitred: bool = False) -> tuple[Job, tuple[Face, ...]]:
    after, ids = with_benchtop_plans(job, "r", mitred=mitred)
    check_job(after)
    return after, tuple(find_face(after, face_id) for face_id in ids)


def corners(outline: Outline) -> list[tuple[float, float]]:
    return [(vertex.x, vertex.y) for vertex in outline]


def area_m2(plan: Face) -> float:
    for part in plan.parts:
        check_outline(part.outline, part.name)
    together = sum(area_mm2(part.outline) for part in plan.parts)
    seen = sum(region.area_mm2 for region in arrange(plan.parts).regions)
    assert seen == pytest.approx(together), "no leg lies on another"
    return together / 1e6


def coated_edge_mm(job: Job, plan: Face) -> float:
    """The length of the coated edges on a plan, from the takeoff."""
    takeoff = take_off(job)
    rows = [row for row in takeoff.parts if row.face == plan.id]
    terms = [term for row in rows for term in row.coated_mm2.reason.terms if term.what.startswith("edges")]
    return sum(term.factors[0] for term in terms)


def test_a_straight_benchtop_reaches_over_its_free_ends() -> None:
    job, (plan,) = plans(room_of(elevation("A", 3600, Corner.NONE, base("a1", 500, 1400), base("a2", 1400, 2000))))
    (top,) = plan.parts
    assert corners(top.outline) == [(480, 0), (2020, 0), (2020, 600), (480, 600)]
    assert plan.ties == (Tie(top.id, 0, "A", 480, 2020),)
    assert top.coated_sides == (1, 2, 3)
    assert (top.name, top.thickness_mm, plan.name, plan.view) == ("benchtop", 38, "B", View.PLAN)
    assert coated_edge_mm(job, plan) == pytest.approx(600 + 1540 + 600)
    assert codes(take_off(job)) == []


def test_it_reaches_the_wall_beside_it_without_overhang_and_is_tied_there() -> None:
    """Wall A meets Z on its left and B on its right, both at inside corners; 10 mm were left free at B."""
    faces = (
        elevation("Z", 1800, Corner.INSIDE),
        elevation("A", 2000, Corner.INSIDE, base("a1", 0, 1990)),
        elevation("B", 1500, Corner.NONE),
    )
    job, (plan,) = plans(room_of(*faces))
    (top,) = plan.parts
    assert corners(top.outline) == [(0, 0), (2000, 0), (2000, 600), (0, 600)]
    assert plan.ties == (Tie(top.id, 0, "A", 0, 2000), Tie(top.id, 1, "B", 0, 600), Tie(top.id, 3, "Z", 1200, 1800))
    assert top.coated_sides == (2,)
    assert codes(take_off(job)) == []


def ell(*, first: Stretch = (0, 3600), second: Stretch = (600, 2400)) -> Job:
    return room_of(
        elevation("A", 3600, Corner.INSIDE, base("a1", *first)),
        elevation("B", 3300, Corner.NONE, base("b1", *second)),
    )


def test_round_an_inside_corner_the_first_leg_runs_through_and_the_second_butts() -> None:
    job, (plan,) = plans(ell())
    first, second = plan.parts
    assert corners(first.outline) == [(0, 0), (3600, 0), (3600, 600), (3000, 600), (0, 600)]
    assert corners(second.outline) == [(3600, 600), (3600, 2420), (3000, 2420), (3000, 600)]
    assert plan.ties == (
        Tie(first.id, 0, "A", 0, 3600),
        Tie(first.id, 1, "B", 0, 600),
        Tie(second.id, 0, "B", 600, 2420),
    )
    assert area_m2(plan) == pytest.approx(3.6 * 0.6 + 1.82 * 0.6)
    assert coated_edge_mm(job, plan) == pytest.approx(600 + 3000 + 1820 + 600)
    assert [part.name for part in plan.parts] == ["benchtop along A", "benchtop along B"]
    assert codes(take_off(job)) == []


def test_mitred_the_legs_meet_from_the_wall_to_the_inner_corner() -> None:
    job, (plan,) = plans(ell(), mitred=True)
    first, second = plan.parts
    assert corners(first.outline) == [(0, 0), (3600, 0), (3000, 600), (0, 600)]
    assert corners(second.outline) == [(3600, 0), (3600, 2420), (3000, 2420), (3000, 600)]
    seam = [each for each in arrange(plan.parts).edges if each.left is not None and each.right is not None]
    assert sum(each.length_mm for each in seam) == pytest.approx(600 * math.sqrt(2))
    assert area_m2(plan) == pytest.approx(3.6 * 0.6 + 1.82 * 0.6)
    assert coated_edge_mm(job, plan) == pytest.approx(600 + 3000 + 1820 + 600)
    assert codes(take_off(job)) == []


def test_the_second_leg_runs_through_where_only_it_reaches_the_corner() -> None:
    job, (plan,) = plans(ell(first=(0, 3000), second=(0, 2400)))
    assert [area_mm2(part.outline) for part in plan.parts] == [3000 * 600, 2420 * 600]
    first, second = plan.parts
    assert plan.ties == (
        Tie(first.id, 0, "A", 0, 3000),
        Tie(second.id, 0, "B", 0, 2420),
        Tie(second.id, 4, "A", 3000, 3600),
    )
    assert codes(take_off(job)) == []


@pytest.mark.parametrize("mitred", [False, True])
def test_edges_drawn_into_the_corner_count_every_free_edge_on_the_elevations(mitred: bool) -> None:
    """A shows 3000 of front and the end of the leg along B; B shows 1800 of front and the end of the leg along A."""
    job, (plan,) = plans(
        room_of(
            elevation("A", 3600, Corner.INSIDE, base("a1", 0, 3600), edge("ae", 0, 3600)),
            elevation("B", 3300, Corner.NONE, base("b1", 0, 2400), edge("be", 0, 2400)),
        ),
        mitred=mitred,
    )
    assert coated_edge_mm(job, plan) == pytest.approx(0)
    assert codes(take_off(job)) == []


@pytest.mark.parametrize("mitred", [False, True])
def test_an_edge_drawn_only_to_the_corner_leaves_the_other_end_to_the_plan(mitred: bool) -> None:
    """A's edge runs into the corner and shows the end of B's leg; B's begins beyond it, so A's own end is left."""
    job, (plan,) = plans(
        room_of(
            elevation("A", 3600, Corner.INSIDE, base("a1", 0, 3600), edge("ae", 0, 3600)),
            elevation("B", 3300, Corner.NONE, base("b1", 600, 2400), edge("be", 600, 2400)),
        ),
        mitred=mitred,
    )
    assert coated_edge_mm(job, plan) == pytest.approx(600)
    assert codes(take_off(job)) == []


@pytest.mark.parametrize("mitred", [False, True])
def test_a_horseshoe_goes_round_two_corners(mitred: bool) -> None:
    """Walls of 2400, 3000 and 1800: legs of 2400, 3000 and 1820 less two corners, 600 x 600, counted twice."""
    faces = (
        elevation("A", 2400, Corner.INSIDE, base("a1", 0, 2400)),
        elevation("B", 3000, Corner.INSIDE, base("b1", 600, 2400)),
        elevation("C", 2000, Corner.NONE, base("c1", 0, 1800)),
    )
    job, (plan,) = plans(room_of(*faces), mitred=mitred)
    assert area_m2(plan) == pytest.approx((2.4 + 3.0 + 1.82) * 0.6 - 2 * 0.36)
    assert coated_edge_mm(job, plan) == pytest.approx(600 + 1800 + 1800 + 1220 + 600)
    assert corners(plan.parts[2].outline)[1] == (2400 - 1820, 3000)
    assert codes(take_off(job)) == []


@pytest.mark.parametrize("mitred", [False, True])
def test_round_an_outside_corner_the_benchtop_goes_round_the_outside(mitred: bool) -> None:
    """A nib: 1200 along A, then 800 along B to its end; the square before the corner belongs to it too."""
    faces = (
        elevation("A", 1200, Corner.OUTSIDE, base("a1", 0, 1200)),
        elevation("B", 1000, Corner.NONE, base("b1", 0, 800)),
    )
    job, (plan,) = plans(room_of(*faces), mitred=mitred)
    assert area_m2(plan) == pytest.approx((1.2 + 0.82 + 0.6) * 0.6)
    assert coated_edge_mm(job, plan) == pytest.approx(600 + 1800 + 1420 + 600)
    last = plan.parts[1]
    assert corners(last.outline)[:2] == [(1200, 0), (1200, -820)]
    assert plan.ties == (Tie(plan.parts[0].id, 0, "A", 0, 1200), Tie(last.id, 0, "B", 0, 820))
    assert codes(take_off(job)) == []


def test_the_top_of_an_island_reaches_over_both_its_ends() -> None:
    """A side of an island has no wall: what is beyond its ends is free, at the back too."""
    job, (plan,) = plans(room_of(elevation("A", 0, Corner.NONE, base("a1", 0, 900), base("a2", 900, 1500))))
    (top,) = plan.parts
    assert corners(top.outline) == [(-20, 0), (0, 0), (1500, 0), (1520, 0), (1520, 600), (-20, 600)]
    assert plan.ties == (Tie(top.id, 1, "A", 0, 1500),)
    assert coated_edge_mm(job, plan) == pytest.approx(20 + 20 + 600 + 1540 + 600)
    assert codes(take_off(job)) == []


def test_a_front_edge_drawn_on_the_elevation_is_counted_there_only() -> None:
    wall = elevation("A", 3600, Corner.NONE, base("a1", 500, 2000), edge("e", 500, 2000))
    job, (plan,) = plans(room_of(wall))
    (top,) = plan.parts
    assert corners(top.outline) == [(480, 0), (500, 0), (2000, 0), (2020, 0), (2020, 600), (480, 600)]
    assert [(tie.start_mm, tie.end_mm) for tie in plan.ties] == [(480, 500), (500, 2000), (2000, 2020)]
    assert coated_edge_mm(job, plan) == pytest.approx(1200)
    assert codes(take_off(job)) == []


def test_a_front_edge_that_the_elevation_leaves_uncoated_is_counted_on_the_plan() -> None:
    wall = elevation("A", 3600, Corner.NONE, base("a1", 500, 2000), edge("e", 500, 2000, Treatment.LEFT))
    job, (plan,) = plans(room_of(wall))
    assert coated_edge_mm(job, plan) == pytest.approx(600 + 1540 + 600)
    assert codes(take_off(job)) == []


def test_an_edge_drawn_longer_than_its_cabinets_has_its_overhang() -> None:
    wall = elevation("A", 3600, Corner.NONE, base("a1", 500, 2000), edge("e", 500, 2300))
    _, (plan,) = plans(room_of(wall))
    assert corners(plan.parts[0].outline)[-1] == (480, 600)
    assert corners(plan.parts[0].outline)[2] == (2300, 0)


def test_what_stands_higher_leaves_no_room_for_an_overhang() -> None:
    tall = Part("tall", Kind.CABINET, box(2000, 150, 600, 2000))
    _, (plan,) = plans(room_of(elevation("A", 3600, Corner.NONE, base("a1", 500, 2000), tall)))
    assert corners(plan.parts[0].outline)[1] == (2000, 0)


def test_a_leg_shorter_than_it_is_deep_is_not_taken_for_shallow() -> None:
    job, (plan,) = plans(ell(second=(600, 1050)))
    assert area_mm2(plan.parts[1].outline) == 470 * 600
    assert codes(take_off(job)) == []


def test_a_pantry_in_the_corner_parts_the_benchtop() -> None:
    pantry = Part("tall", Kind.CABINET, box(3000, 150, 600, 2000))
    faces = (
        elevation("A", 3600, Corner.INSIDE, base("a1", 0, 3000), pantry),
        elevation("B", 3300, Corner.NONE, base("b1", 600, 2400)),
    )
    _, both = plans(room_of(*faces))
    assert [len(plan.parts) for plan in both] == [1, 1]
    assert corners(both[0].parts[0].outline)[1] == (3000, 0)
    assert both[1].ties[0].start_mm == 600, "the pantry leaves no room for an overhang on this side either"


def test_a_gap_makes_two_benchtops_and_each_gets_a_plan() -> None:
    stove = Part("stove", Kind.FIXTURE, box(1000, 0, 600, 910))
    wall = elevation("A", 3000, Corner.NONE, base("a1", 0, 1000), stove, base("a2", 1600, 3000))
    _, both = plans(room_of(wall))
    assert [area_m2(plan) for plan in both] == pytest.approx([0.6, 0.84])


def test_what_is_not_at_the_usual_height_carries_no_benchtop() -> None:
    upper = Part("u", Kind.CABINET, box(0, 1508, 900, 720))
    with pytest.raises(JobError, match="Kitchen: no benchtop and no base cabinets 870 mm high"):
        plans(room_of(elevation("A", 3600, Corner.NONE, upper)))


def test_plans_that_are_there_are_left_alone_and_only_missing_ones_made() -> None:
    island = elevation("I", 0, Corner.NONE, base("i1", 0, 900))
    wall = elevation("A", 3600, Corner.NONE, base("a1", 0, 900))
    first, _ = plans(room_of(wall, elevation("I", 0, Corner.NONE)))
    faces = tuple(island if face.id == "I" else face for face in first.faces)
    job = replace(first, rooms=(replace(first.rooms[0], faces=faces),))
    both, made = plans(job)
    assert [tie.face for plan in made for tie in plan.ties] == ["I"]
    with pytest.raises(JobError, match="every benchtop of the room has its plan"):
        plans(both)


def test_a_wall_too_short_for_its_corners_is_named() -> None:
    faces = (
        elevation("A", 2400, Corner.INSIDE, base("a1", 0, 2400)),
        elevation("B", 1000, Corner.INSIDE, base("b1", 0, 1000)),
        elevation("C", 2400, Corner.NONE, base("c1", 0, 2400)),
    )
    for mitred in (False, True):
        with pytest.raises(JobError, match="B: the benchtop along it is too short for its corners"):
            plans(room_of(*faces), mitred=mitred)


def test_a_benchtop_all_round_the_room_is_refused() -> None:
    faces = tuple(elevation(name, 3000, Corner.INSIDE, base(f"{name}1", 0, 3000)) for name in "ABCD")
    with pytest.raises(JobError, match="Kitchen: its benchtop goes all the way round"):
        plans(room_of(*faces))


STRETCHES = st.tuples(st.integers(0, 8), st.integers(1, 40)).map(lambda pair: (pair[0] * 100.0, pair[1] * 100.0))


@given(
    st.lists(st.tuples(st.integers(15, 50), STRETCHES, st.sampled_from(Corner)), min_size=1, max_size=4),
    st.booleans(),
    st.booleans(),
)
def test_ties_agree_with_their_walls_and_legs_never_overlap(
    walls: list[tuple[int, Stretch, Corner]], mitred: bool, drawn: bool
) -> None:
    faces = []
    for number, (metres, (start, length), corner) in enumerate(walls):
        wide = metres * 100.0
        parts = [base(f"{number}b", start, min(start + length, wide))]
        if drawn:
            parts.append(edge(f"{number}e", start, min(start + length, wide)))
        faces.append(elevation(f"W{number}", wide, corner, *parts))
    try:
        job, made = plans(room_of(*faces), mitred=mitred)
    except JobError:
        return
    for plan in made:
        for part in plan.parts:
            check_outline(part.outline, part.name)
        assert all(here.start_mm < here.end_mm for here in plan.ties)
    assert not {"tie-length", "tie-outside", "tie-benchtop", "edge-twice", "loose-side"} & set(codes(take_off(job)))


def test_ties_of_one_leg_follow_on_each_other() -> None:
    wall = elevation("A", 3600, Corner.NONE, base("a1", 500, 2000), edge("e", 500, 2000))
    _, (plan,) = plans(room_of(wall))
    assert all(here.end_mm == there.start_mm for here, there in pairwise(plan.ties))


def test_an_end_against_a_wall_on_which_nothing_is_drawn_is_sealed_to_it() -> None:
    """Walls 2100, 1800 and 1800; the row on B ends at wall C: the 600 of its end meet the bare wall there."""
    job = room_of(
        elevation("A", 2100, Corner.INSIDE, base("a1", 0, 1500), edge("a2", 0, 1500)),
        elevation("B", 1800, Corner.INSIDE, base("b1", 600, 1800), edge("b2", 600, 1800)),
        elevation("C", 1800, Corner.NONE),
    )
    after, _ = plans(job)
    rows = [row for row in take_off(after).joints if row.next_face == "C"]
    assert {row.name: row.length_mm.amount for row in rows} == pytest.approx({"benchtop to wall": 600})


def test_the_edge_on_the_elevation_reaches_over_a_free_end_as_the_plan_does() -> None:
    """A row 1200 long on a wall of 3000: benchtop and edge are 1220; 20 above and 38 beside it meet the bare wall."""
    tiles = Part("t", Kind.SPLASHBACK, box(0, 908, 1200, 600))
    job = room_of(elevation("A", 3000, Corner.NONE, base("a1", 0, 1200), edge("a2", 0, 1200), tiles))
    after, (plan,) = plans(job)
    strip = next(part for part in find_face(after, "A").parts if part.id == "a2")
    assert outline_box(strip.outline) == (0, 870, 1220, 908)
    assert outline_box(plan.parts[0].outline)[2] == 1220
    lengths = {row.name: row.length_mm.amount for row in take_off(after).joints}
    assert lengths == pytest.approx({"benchtop to splashback": 1200, "benchtop to wall": 20 + 38})
