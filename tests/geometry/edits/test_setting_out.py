import math
from contextlib import suppress
from functools import partial
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.edits.setting_out import (
    accepted,
    replaced,
    spread,
    with_chain,
    with_corners,
    with_overall,
    with_running,
    with_straight,
    without_readings,
)
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box, circle
from geometry.set_out.lines import set_out
from shared.checks.job import check_job
from shared.edits.drawn import find_face, find_part, with_parts
from shared.errors import JobError, OutlineError, ReadingError
from shared.job import CORNERS, END, START, Face, Job, Part, Reading, Room, Tie, Unit, Vertex, View, Way
from shared.trade.kinds import Kind


@pytest.fixture
def wall() -> Job:
    """A wall 3600 x 2400 without readings."""
    face = Face("a", "A", parts=(Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),))
    return Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (face,)),))


def readings(job: Job) -> tuple[Reading, ...]:
    return find_face(job, "a").readings


def lines(job: Job, way: Way = Way.ACROSS) -> dict[str, float]:
    return {line.name: line.at_mm for line in set_out(find_face(job, "a"), job.tape).lines if line.way is way}


def box_of(job: Job, part: str) -> tuple[float, ...]:
    return outline_box(find_part(job, part)[1].outline)


def test_running_readings_are_kept_from_the_left_end_and_hooked(wall: Job) -> None:
    job = with_running(wall, "a", Way.ACROSS, (600, 1050))
    assert readings(job) == (Reading(START, "1", 600, hooked=True), Reading(START, "2", 1050, hooked=True))
    check_job(job)


def test_a_chain_and_running_readings_are_readings_of_the_same_lines(wall: Job) -> None:
    job = with_chain(with_running(wall, "a", Way.ACROSS, (600, 1050)), "a", Way.ACROSS, (601, 449, 2550))
    assert [(reading.start, reading.end) for reading in readings(job)[2:]] == [(START, "1"), ("1", "2"), ("2", END)]
    assert lines(job) == pytest.approx({"1": 600.4, "2": 1050, END: 3600}, abs=0.5)


def test_a_reading_beyond_the_wall_is_refused_with_how_far_and_nothing_changes(wall: Job) -> None:
    with pytest.raises(ReadingError, match="reading 3: 1920 mm ends 120 mm beyond the right end; check it and"):
        with_chain(wall, "a", Way.ACROSS, (600, 1200, 1920, 10))
    with pytest.raises(ReadingError, match="reading 1: 6000 mm ends 2400 mm beyond the right end"):
        with_running(wall, "a", Way.ACROSS, (6000, 1200))
    with pytest.raises(ReadingError, match="beyond the top"):
        with_chain(wall, "a", Way.UP, (2500,))
    with pytest.raises(ReadingError, match='reading 1: 200" ends 58 9/32" beyond the right end'):
        with_chain(replace(wall, unit=Unit.INCH), "a", Way.ACROSS, (200 * 25.4,))
    assert readings(wall) == ()


def test_a_slip_that_explains_a_chain_that_is_too_long_is_asked_about(wall: Job) -> None:
    with pytest.raises(ReadingError, match=r"ends 90 mm beyond the right end \(was 450 read as 540\?\); check it"):
        with_chain(wall, "a", Way.ACROSS, (600, 540, 903, 1647))
    with pytest.raises(ReadingError, match=r"ends 32400 mm beyond the right end \(was 3600 read as 36000\?\)"):
        with_running(wall, "a", Way.ACROSS, (36000,))


def test_a_running_reading_typed_twice_is_refused(wall: Job) -> None:
    with pytest.raises(ReadingError, match="reading 3: 600 mm is there twice; type every running reading once"):
        with_running(wall, "a", Way.ACROSS, (600, 1050, 600))


@pytest.mark.parametrize("length", [0, -5, 100_001, math.nan])
def test_a_senseless_reading_is_refused(wall: Job, length: float) -> None:
    with pytest.raises(ReadingError, match="above 0 and at most 100 m"):
        with_overall(wall, "a", Way.ACROSS, length)


def test_an_overall_reading_runs_from_left_to_right_whichever_way_it_is_given(wall: Job) -> None:
    job = with_running(wall, "a", Way.ACROSS, (600, 1050))
    for marks in (("1", "2"), ("2", "1")):
        assert readings(with_overall(job, "a", Way.ACROSS, 450, *marks))[-1] == Reading("1", "2", 450)
    assert readings(with_overall(job, "a", Way.ACROSS, 3000, END, "1"))[-1] == Reading("1", END, 3000)
    assert readings(with_overall(job, "a", Way.ACROSS, 600, "1", START))[-1] == Reading(START, "1", 600)
    with pytest.raises(JobError, match='no reading tells where the line "7" is'):
        with_overall(job, "a", Way.ACROSS, 450, "1", "7")


def test_a_reading_that_begins_where_it_ends_is_refused(wall: Job) -> None:
    job = with_running(wall, "a", Way.ACROSS, (600,))
    for edit in (
        partial(with_overall, job, "a", Way.ACROSS, 5, "1", "1"),
        partial(with_overall, job, "a", Way.UP, 5, END),
    ):
        with pytest.raises(JobError, match="begins and ends at the same place"):
            edit()
    with pytest.raises(JobError, match="begins and ends at the same place"):
        with_straight(job, "a", CORNERS[0], CORNERS[0], 5)


def test_beyond_a_plan_is_beyond_its_front() -> None:
    plan = Face("a", "P", View.PLAN, parts=(Part("top", Kind.BENCHTOP, box(0, 0, 3000, 600)),))
    with pytest.raises(ReadingError, match="beyond the front"):
        with_running(Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (plan,)),)), "a", Way.UP, (700,))


def test_a_face_holds_only_so_many_readings(wall: Job) -> None:
    with pytest.raises(JobError, match="at most 500 readings"):
        with_running(wall, "a", Way.ACROSS, [float(length) for length in range(1, 502)])


def test_readings_are_taken_away_by_their_places(wall: Job) -> None:
    job = with_running(wall, "a", Way.ACROSS, (600, 1050, 1950))
    assert [reading.length_mm for reading in readings(without_readings(job, "a", (0, 2)))] == [1050]
    with pytest.raises(JobError, match="the face has no such reading"):
        without_readings(job, "a", (3,))


def test_accepted_readings_raise_no_doubt(wall: Job) -> None:
    job = with_chain(wall, "a", Way.ACROSS, (600, 1200, 1806))
    (doubt,) = set_out(find_face(job, "a"), job.tape).doubts
    stands = accepted(job, "a", [place for place in doubt.readings if place >= 0])
    assert set_out(find_face(stands, "a"), job.tape).doubts == ()


def with_cabinets(job: Job) -> Job:
    return with_parts(
        job,
        "a",
        (
            Part("first", Kind.CABINET, box(0, 150, 600, 720)),
            Part("second", Kind.CABINET, box(600, 150, 450, 720)),
            Part("door", Kind.DOOR, box(602, 152, 446, 716)),
            Part("round", Kind.OUTLET, circle(700, 1200, 40)),
            Part("kept", Kind.CABINET, box(600, 1500, 450, 700), locked=True),
        ),
    )


def test_a_reading_taken_again_moves_what_stands_on_its_lines(wall: Job) -> None:
    job = with_cabinets(with_chain(wall, "a", Way.ACROSS, (600, 450)))
    after = replaced(job, "a", 0, 612)
    assert lines(after) == pytest.approx({"1": 612, "2": 1062})
    assert box_of(after, "first") == pytest.approx((0, 150, 612, 870))
    assert box_of(after, "second") == pytest.approx((612, 150, 1062, 870))
    assert box_of(after, "door") == pytest.approx((614, 152, 1060, 868))
    assert box_of(after, "round") == pytest.approx((672, 1160, 752, 1240))
    assert box_of(after, "kept") == box_of(job, "kept")
    assert box_of(after, "wall") == (0, 0, 3600, 2400)
    check_job(after)


def test_a_wall_drawn_from_its_reading_goes_along_with_it(wall: Job) -> None:
    job = with_parts(
        with_overall(wall, "a", Way.ACROSS, 3600), "a", (Part("top", Kind.BENCHTOP, box(0, 870, 3600, 38)),)
    )
    after = replaced(job, "a", 0, 3612)
    assert box_of(after, "wall") == pytest.approx((0, 0, 3612, 2400))
    assert box_of(after, "top") == pytest.approx((0, 870, 3612, 908))
    assert set_out(find_face(after, "a"), after.tape).doubts == ()


def test_a_wall_that_counts_as_read_stays(wall: Job) -> None:
    job = with_chain(wall, "a", Way.ACROSS, (600, 1200, 1800))
    assert box_of(replaced(job, "a", 2, 1806), "wall") == (0, 0, 3600, 2400)


def test_what_ends_with_the_wall_stays_with_it(wall: Job) -> None:
    job = with_chain(wall, "a", Way.ACROSS, (600, 450))
    last = Part("last", Kind.CABINET, box(1050, 150, 2550, 720))
    after = replaced(with_parts(job, "a", (last,)), "a", 0, 612)
    assert box_of(after, "last") == pytest.approx((1062, 150, 3600, 870))


def test_a_front_grows_with_the_cabinet_that_it_hangs_on(wall: Job) -> None:
    job = with_cabinets(with_running(wall, "a", Way.ACROSS, (600, 1050)))
    after = replaced(job, "a", 1, 1062)
    assert box_of(after, "second") == pytest.approx((600, 150, 1062, 870))
    assert box_of(after, "door") == pytest.approx((602, 152, 1060, 868))
    assert box_of(after, "round") == box_of(job, "round")


def test_further_readings_move_what_stands_on_their_lines(wall: Job) -> None:
    job = with_cabinets(with_running(wall, "a", Way.ACROSS, (600, 1050)))
    after = with_chain(job, "a", Way.ACROSS, (600.4, 450))
    at = lines(after)["1"]
    assert 600 < at < 600.4
    assert box_of(after, "first")[2] == pytest.approx(at)
    assert box_of(after, "second")[0] == pytest.approx(at)
    back = without_readings(after, "a", (2, 3))
    assert box_of(back, "first") == pytest.approx(box_of(job, "first"))


def test_readings_in_doubt_move_nothing_until_the_person_decides(wall: Job) -> None:
    job = with_cabinets(with_running(wall, "a", Way.ACROSS, (600, 1050)))
    doubted = with_chain(job, "a", Way.ACROSS, (620, 450))
    assert lines(doubted) == lines(job)
    assert box_of(doubted, "first") == box_of(job, "first")
    stands = accepted(doubted, "a", (0, 1, 2, 3))
    assert 600 < lines(stands)["1"] < 620


def test_a_line_that_an_earlier_misread_number_placed_stays_until_that_is_typed_again(wall: Job) -> None:
    job = with_cabinets(with_running(wall, "a", Way.ACROSS, (600, 1070)))
    doubted = with_chain(with_chain(job, "a", Way.ACROSS, (600, 450)), "a", Way.ACROSS, (600, 450))
    assert lines(doubted) == lines(job)
    assert box_of(replaced(doubted, "a", 1, 1050), "second") == pytest.approx((600, 150, 1050, 870))


def test_a_chain_does_not_change_the_wall_that_it_closes_on(wall: Job) -> None:
    for job in (wall, with_overall(wall, "a", Way.ACROSS, 3600)):
        assert box_of(with_chain(job, "a", Way.ACROSS, (600, 1200, 1806)), "wall") == (0, 0, 3600, 2400)


def test_a_reading_taken_again_is_accepted_no_more(wall: Job) -> None:
    job = accepted(with_chain(wall, "a", Way.ACROSS, (600,)), "a", (0,))
    assert readings(job)[0].accepted
    assert not readings(replaced(job, "a", 0, 601))[0].accepted


def test_lines_that_change_places_are_refused(wall: Job) -> None:
    job = with_cabinets(with_running(wall, "a", Way.ACROSS, (600, 1050)))
    with pytest.raises(OutlineError, match="the lines that it stands on would change places"):
        replaced(job, "a", 0, 1200)


def test_spread_readings_agree_with_each_other_and_with_the_drawn_wall(wall: Job) -> None:
    job = spread(with_chain(wall, "a", Way.ACROSS, (600, 1200, 1806)), "a")
    assert sum(reading.length_mm for reading in readings(job)) == pytest.approx(3600, abs=1e-3)
    assert set_out(find_face(job, "a"), job.tape).doubts == ()
    # The longer a reading, the more of it: tolerances 0.5, 0.7, 0.7 squared.
    shares = [old - reading.length_mm for old, reading in zip((600, 1200, 1806), readings(job), strict=True)]
    assert shares == pytest.approx([6 * 0.25 / 1.23, 6 * 0.49 / 1.23, 6 * 0.49 / 1.23], abs=1e-3)


def test_spreading_moves_parts_along(wall: Job) -> None:
    job = with_running(with_chain(wall, "a", Way.ACROSS, (600, 450)), "a", Way.ACROSS, (606, 1056))
    at = lines(job)["1"]
    job = with_parts(job, "a", (Part("first", Kind.CABINET, box(0, 150, at, 720)),))
    after = spread(job, "a")
    assert box_of(after, "first")[2] == pytest.approx(lines(after)["1"])
    assert set_out(find_face(after, "a"), job.tape).residuals_mm == pytest.approx([0] * 4, abs=1e-6)


ALCOVE = ((0.0, 0.0), (3000.0, 0.0), (3012.0, 2400.0), (-8.0, 2390.0))


def with_alcove(job: Job, without: int = 6) -> Job:
    for one, other in list(combinations(range(4), 2))[:without]:
        job = with_straight(job, "a", CORNERS[one], CORNERS[other], math.dist(ALCOVE[one], ALCOVE[other]))
    return job


def test_a_wall_takes_the_corners_that_were_read(wall: Job) -> None:
    outline = find_part(with_corners(with_alcove(wall), "a"), "wall")[1].outline
    for vertex, corner in zip(outline, ALCOVE, strict=True):
        assert (vertex.x, vertex.y) == pytest.approx(corner, abs=1e-6)
        assert vertex.bulge == 0


def test_corners_that_are_not_placed_are_refused_in_words(wall: Job) -> None:
    with pytest.raises(JobError, match="no corner was read; measure the sides and a diagonal"):
        with_corners(wall, "a")
    with pytest.raises(JobError, match="too few distances fix upper left"):
        with_corners(with_alcove(wall, without=4), "a")
    with pytest.raises(JobError, match="too few distances fix upper left"):
        spread(with_alcove(wall, without=4), "a")
    with pytest.raises(JobError, match='"middle" is not a corner; choose one of lower left'):
        with_straight(wall, "a", "middle", "lower left", 600)


def test_corners_need_one_part_that_is_not_locked(wall: Job) -> None:
    job = with_alcove(wall)
    face = find_face(job, "a")
    for parts, words in (
        ((), "A: the face must have exactly one wall or benchtop for this"),
        ((replace(face.parts[0], locked=True),), "wall: it is locked; unlock it"),
    ):
        changed = replace(job, rooms=(Room("r", "Kitchen", (replace(face, parts=parts),)),))
        with pytest.raises(JobError, match=words):
            with_corners(changed, "a")


def test_a_plans_benchtop_takes_its_corners() -> None:
    plan = Face("a", "P", View.PLAN, parts=(Part("top", Kind.BENCHTOP, box(0, 0, 3000, 600)),))
    job = with_corners(with_alcove(Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (plan,)),))), "a")
    assert len(find_part(job, "top")[1].outline) == 4


lengths = st.lists(st.integers(1, 4000).map(float), max_size=5)


@given(st.lists(st.tuples(st.sampled_from(("running", "chain", "replaced", "spread", "without")), lengths), max_size=6))
def test_any_edits_give_a_job_that_holds_together_or_are_refused_in_words(
    steps: list[tuple[str, list[float]]],
) -> None:
    face = Face("a", "A", parts=(Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),))
    job = with_cabinets(Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (face,)),)))
    for name, sizes in steps:
        with suppress(JobError, ReadingError):
            job = edited(job, name, sizes)
        check_job(job)


def edited(job: Job, name: str, sizes: list[float]) -> Job:
    match name:
        case "running":
            return with_running(job, "a", Way.ACROSS, sizes)
        case "chain":
            return with_chain(job, "a", Way.ACROSS, sizes)
        case "replaced":
            return replaced(job, "a", 0, sizes[0] if sizes else 1)
        case "spread":
            return spread(job, "a")
        case _:
            return without_readings(job, "a", (len(sizes),))


def test_what_runs_along_a_wall_does_so_with_the_corners_that_were_read() -> None:
    parted = (Vertex(0, 0), Vertex(600, 0), Vertex(3000, 0), Vertex(3000, 600), Vertex(0, 600))
    top = Part("top", Kind.BENCHTOP, parted, coated_sides=(3,))
    ties = (Tie("top", 0, "w", 0, 600), Tie("top", 1, "w", 600, 3000), Tie("top", 2, "c", 0, 600))
    wall, side = (Face(face, face, parts=(Part(f"{face} wall", Kind.WALL, box(0, 0, 3000, 2400)),)) for face in "wc")
    plan = Face("a", "P", View.PLAN, parts=(top,), ties=ties)
    job = with_corners(with_alcove(Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (wall, side, plan)),))), "a")
    assert find_face(job, "a").ties == (Tie("top", 0, "w", 0, 3000), Tie("top", 1, "c", 0, 600))
    assert find_part(job, "top")[1].coated_sides == (2,)
