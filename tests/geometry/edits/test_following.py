"""Shift what follows, on an invented wall of 3600 with its benchtop's plan; areas worked by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.edits.following import Shifted, resized_to, shift
from geometry.edits.hand import locked
from geometry.outlines.measured import area_mm2, outline_box
from geometry.outlines.shapes import box, circle, rounded_box
from shared.checks.job import check_job
from shared.edits.drawn import find_face, find_part, with_changed_face
from shared.errors import JobError
from shared.job import END, START, Corner, Face, Job, Part, Reading, Room, Tie, View, Way
from shared.trade.kinds import Kind


@pytest.fixture
def job() -> Job:
    """Wall A: cabinets of 600, 900 and 1500, doors with 1.5 round them; wall B on its right; their benchtop."""
    wall_a = Face(
        "a",
        "A",
        corner=Corner.INSIDE,
        parts=(
            Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),
            Part("tiles", Kind.SPLASHBACK, box(0, 908, 3600, 600)),
            Part("c1", Kind.CABINET, box(0, 150, 600, 720), "narrow base"),
            Part("d1", Kind.DOOR, box(1.5, 151.5, 597, 717)),
            Part("c2", Kind.CABINET, box(600, 150, 900, 720), "wide base"),
            Part("d2", Kind.DOOR, box(601.5, 151.5, 897, 717)),
            Part("c3", Kind.CABINET, box(1500, 150, 1500, 720)),
            Part("window", Kind.WINDOW, box(400, 1100, 900, 900)),
            Part("outlet", Kind.OUTLET, box(100, 1000, 115, 72)),
        ),
        readings=(
            Reading(START, "1", 600),
            Reading(START, "2", 1500),
            Reading("2", END, 2100),
            Reading(START, END, 2400, Way.UP),
        ),
    )
    wall_b = Face("b", "B", parts=(Part("wall-b", Kind.WALL, box(0, 0, 2400, 2400)),))
    plan = Face(
        "p",
        "P",
        View.PLAN,
        parts=(
            Part("top-a", Kind.BENCHTOP, box(0, 0, 3600, 600)),
            Part("top-b", Kind.BENCHTOP, box(3000, 600, 600, 1800)),
            Part("sink", Kind.FIXTURE, rounded_box(700, 80, 700, 400, 50)),
            Part("hole", Kind.CUT_OUT, circle(3300, 1500, 200)),
        ),
        ties=(Tie("top-a", 0, "a", 0, 3600), Tie("top-a", 1, "b", 0, 600), Tie("top-b", 1, "b", 600, 2400)),
    )
    return Job("J", (Room("r", "Kitchen", (wall_a, wall_b, plan)),))


def boxes(job: Job, *ids: str) -> list[tuple[float, ...]]:
    return [outline_box(find_part(job, part_id)[1].outline) for part_id in ids]


def area(job: Job, part_id: str) -> float:
    return area_mm2(find_part(job, part_id)[1].outline)


def across(job: Job, *ids: str) -> list[tuple[float, float]]:
    return [(left, right) for left, _, right, _ in boxes(job, *ids)]


def test_a_cabinet_that_is_5_wider_takes_all_beyond_it_along(job: Job) -> None:
    shifted = resized_to(job, "a", ("c1",), Way.ACROSS, 605)
    check_job(shifted.job)
    ids = ("wall", "tiles", "c1", "d1", "c2", "d2", "c3", "window", "outlet")
    assert across(shifted.job, *ids) == [
        (0, 3605),
        (0, 3605),
        (0, 605),
        (1.5, 603.5),
        (605, 1505),
        (606.5, 1503.5),
        (1505, 3005),
        (405, 1305),
        (100, 215),
    ]
    assert area(shifted.job, "wall") == 3605 * 2400
    assert area(shifted.job, "tiles") == 3605 * 600
    assert area(shifted.job, "d1") == 602 * 717
    assert shifted.stretched == ("wall", "tiles", "c1", "d1", "top-a")
    assert shifted.moved == ("c2", "d2", "c3", "window", "top-b", "sink", "hole")
    assert shifted.stayed == ()


def test_the_plan_goes_along_as_its_walls_do(job: Job) -> None:
    shifted = shift(job, "a", Way.ACROSS, 600, 5)
    assert shifted.faces == ("p",)
    assert shifted.ties == (Tie("top-a", 0, "a", 0, 3605),)
    assert boxes(shifted.job, "top-a", "top-b") == [(0, 0, 3605, 600), (3005, 600, 3605, 2400)]
    assert across(shifted.job, "sink", "hole") == [(705, 1405), (3105, 3505)]
    assert area(shifted.job, "top-a") == 3605 * 600
    assert area(shifted.job, "sink") == pytest.approx(area(job, "sink"))


def test_a_shift_along_the_second_wall_turns_on_the_plan(job: Job) -> None:
    shifted = shift(job, "b", Way.ACROSS, 1000, -30)
    assert boxes(shifted.job, "top-a", "top-b") == [(0, 0, 3600, 600), (3000, 600, 3600, 2370)]
    assert boxes(shifted.job, "hole") == [(3100, 1270, 3500, 1670)]
    assert shifted.ties == (Tie("top-b", 1, "b", 600, 2370),)
    assert shifted.stretched == ("wall-b", "top-b")


def test_a_leg_tied_only_to_a_wall_further_round_goes_as_a_whole(job: Job) -> None:
    """Wall C runs back over the whole length of A: its benchtop is as long as before, wherever A grows."""
    plan = find_face(job, "p")
    wall_c = Face("c", "C", parts=(Part("wall-c", Kind.WALL, box(0, 0, 3400, 2400)),))
    top = Part("top-c", Kind.BENCHTOP, box(200, 2400, 3400, 600))
    sink = Part("sink-c", Kind.FIXTURE, box(300, 2450, 500, 400))
    longer = replace(plan, parts=(*plan.parts, top, sink), ties=(*plan.ties, Tie("top-c", 2, "c", 0, 3400)))
    room = job.rooms[0]
    job = replace(job, rooms=(replace(room, faces=(*room.faces[:2], wall_c, longer)),))
    shifted = shift(job, "a", Way.ACROSS, 2000, 7)
    assert across(shifted.job, "top-c", "sink-c") == [(207, 3607), (307, 807)]
    back = shift(job, "c", Way.ACROSS, 3000, 7)
    assert boxes(back.job, "top-a", "top-b", "top-c", "sink-c") == [
        (0, 0, 3600, 600),
        (3000, 600, 3600, 2400),
        (193, 2400, 3600, 3000),
        (293, 2450, 793, 2850),
    ]
    assert back.ties == (Tie("top-c", 2, "c", 0, 3407),)


def test_upwards_no_plan_changes(job: Job) -> None:
    shifted = shift(job, "a", Way.UP, 870, 10)
    assert boxes(shifted.job, "wall", "tiles", "c1", "d1", "window") == [
        (0, 0, 3600, 2410),
        (0, 918, 3600, 1518),
        (0, 150, 600, 880),
        (1.5, 151.5, 598.5, 878.5),
        (400, 1110, 1300, 2010),
    ]
    assert (shifted.faces, shifted.ties) == ((), ())
    assert shifted.readings == (3,)


def test_on_a_plan_ties_stay_as_long_as_their_sides(job: Job) -> None:
    shifted = shift(job, "p", Way.ACROSS, 2000, 25)
    assert shifted.ties == (Tie("top-a", 0, "a", 0, 3625),)
    assert find_face(shifted.job, "a") is find_face(job, "a")


def test_a_gap_is_widened_between_two_parts(job: Job) -> None:
    shifted = resized_to(job, "a", ("c2", "c1"), Way.ACROSS, 40)
    assert across(shifted.job, "c1", "d1", "c2", "wall") == [(0, 600), (1.5, 598.5), (640, 1540), (0, 3640)]
    closed = resized_to(shifted.job, "a", ("c1", "c2"), Way.ACROSS, 0)
    assert closed.job == job


def test_a_locked_part_stays_and_is_named(job: Job) -> None:
    shifted = shift(locked(job, ("wall",), True), "a", Way.ACROSS, 600, 5)
    assert shifted.stayed == ("wall",)
    assert across(shifted.job, "wall", "c2") == [(0, 3600), (605, 1505)]
    assert shifted.readings == (0, 1)


def test_a_tie_of_a_locked_benchtop_stays_with_it(job: Job) -> None:
    shifted = shift(locked(job, ("top-a",), True), "a", Way.ACROSS, 600, 5)
    assert shifted.stayed == ("top-a",)
    assert shifted.ties == ()


def test_a_plan_that_runs_aslant_stays(job: Job) -> None:
    slanted = Part("top", Kind.BENCHTOP, tuple(replace(v, y=v.y + v.x / 10) for v in box(0, 0, 3600, 600)))
    plan = Face("p", "P", View.PLAN, (slanted,), ties=(Tie("top", 0, "a", 0, 3600),))
    shifted = shift(with_changed_face(job, plan), "a", Way.ACROSS, 600, 5)
    assert (shifted.faces, shifted.ties) == ((), ())


def test_what_would_vanish_is_named_and_nothing_changes(job: Job) -> None:
    with pytest.raises(JobError, match="wide base: nothing would be left of it; shift by less"):
        shift(job, "a", Way.ACROSS, 1500, -900)


@pytest.mark.parametrize(
    ("at", "by", "words"),
    [
        (9000, 5, "nothing beyond it can move"),
        (600, 99_000, "beyond 100 m"),
        (600, float("nan"), "nothing would be left"),
    ],
)
def test_a_shift_that_makes_no_sense_is_refused(job: Job, at: float, by: float, words: str) -> None:
    with pytest.raises(JobError, match=words):
        shift(job, "a", Way.ACROSS, at, by)


@pytest.mark.parametrize(
    ("ids", "size", "words"),
    [
        (("c1",), 0, "the new size is 0"),
        (("c1",), float("nan"), "the new size is 0"),
        (("c1", "c2", "c3"), 10, "pick one part, or two that stand apart"),
        (("c1", "d1"), 10, "no gap between"),
        (("c1", "c3"), -1, "a gap cannot be negative"),
        ((), 10, "pick"),
        (("top-a",), 10, "not all on this face"),
    ],
)
def test_a_size_that_makes_no_sense_is_refused(job: Job, ids: tuple[str, ...], size: float, words: str) -> None:
    with pytest.raises(JobError, match=words):
        resized_to(job, "a", ids, Way.ACROSS, size)


def test_the_size_that_it_has_changes_nothing(job: Job) -> None:
    assert resized_to(job, "a", ("c1",), Way.ACROSS, 600).job is job
    assert shift(job, "a", Way.ACROSS, 600, 0) == Shifted(job, (), (), (), (), ())


def test_a_locked_part_is_not_resized(job: Job) -> None:
    with pytest.raises(JobError, match="narrow base: it is locked"):
        resized_to(locked(job, ("c1",), True), "a", ("c1",), Way.ACROSS, 605)


def test_a_rounded_part_is_resized_with_its_radius_and_a_circle_is_not_made_oblong(job: Job) -> None:
    wider = resized_to(job, "p", ("sink",), Way.ACROSS, 730)
    assert area(wider.job, "sink") == pytest.approx(area_mm2(rounded_box(700, 80, 730, 400, 50)))
    with pytest.raises(JobError, match="its arcs cannot be stretched"):
        resized_to(job, "p", ("hole",), Way.ACROSS, 410)


BOXES = st.lists(st.tuples(st.integers(-2000, 2000), st.integers(1, 3000), st.booleans()), min_size=1, max_size=12)


@given(BOXES, st.integers(-1500, 3000), st.floats(1, 500), st.booleans())
def test_a_shift_back_gives_the_start_again(spans: list[tuple[int, int, bool]], at: int, by: float, up: bool) -> None:
    kinds = (Kind.CABINET, Kind.SPLASHBACK)
    outlines = [box(0, low, 10, size) if up else box(low, 0, size, 10) for low, size, _ in spans]
    parts = tuple(Part(f"p{n}", kinds[spans[n][2]], outline) for n, outline in enumerate(outlines))
    start = Job("J", (Room("r", "R", (Face("f", "A", parts=parts),)),))
    way = Way.UP if up else Way.ACROSS
    try:
        there: Shifted = shift(start, "f", way, at + 0.25, by)
    except JobError:
        return
    back = shift(there.job, "f", way, at + 0.25 + by, -by).job
    for old, new in zip(start.faces[0].parts, back.faces[0].parts, strict=True):
        assert outline_box(new.outline) == pytest.approx(outline_box(old.outline), abs=1e-9)
