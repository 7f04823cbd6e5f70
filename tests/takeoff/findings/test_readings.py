import math
from contextlib import suppress
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.edits.setting_out import (
    accepted,
    spread,
    with_chain,
    with_corners,
    with_overall,
    with_running,
    with_straight,
)
from geometry.outlines.shapes import box
from shared.checks.job import check_job
from shared.edits.drawn import find_face
from shared.errors import JobError
from shared.job import CORNERS, END, START, Face, Job, Part, Reading, Room, Unit, View, Way
from shared.trade.kinds import Kind
from shared.trade.tape import TapeClass
from takeoff.findings.readings import look_at_readings
from takeoff.take_off import take_off


@pytest.fixture
def wall() -> Job:
    """A wall 3600 x 2400 without readings."""
    face = Face("a", "A", parts=(Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),))
    return Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (face,)),))


def messages(job: Job) -> list[str]:
    return [finding.message for finding in look_at_readings(find_face(job, "a"), job.unit, job.tape)]


def codes(job: Job) -> list[str]:
    return [finding.code for finding in look_at_readings(find_face(job, "a"), job.unit, job.tape)]


def test_readings_that_agree_are_nothing_to_look_at(wall: Job) -> None:
    assert messages(wall) == []
    assert messages(with_chain(wall, "a", Way.ACROSS, (600, 1200, 1800))) == []


def test_with_one_closure_it_is_said_that_none_can_be_told_apart(wall: Job) -> None:
    assert messages(with_chain(wall, "a", Way.ACROSS, (600, 1200, 1806))) == [
        (
            "Readings of face A disagree by 6 mm: 600 + 1200 + 1806 sum to 3606, the wall is drawn 3600. "
            "Any of these four may be wrong. One more reading would tell which."
        )
    ]


def test_one_more_reading_tells_which_to_measure_again(wall: Job) -> None:
    job = with_running(with_chain(wall, "a", Way.ACROSS, (606, 1200, 1800)), "a", Way.ACROSS, (600, 1800))
    assert messages(job) == [
        (
            "Readings of face A disagree by 6 mm: one reading says 606, by the other readings it is 600. "
            "Measure the 606 from the left end to 606 again first."
        )
    ]


def test_readings_of_which_two_remain_are_both_named(wall: Job) -> None:
    job = with_running(with_chain(wall, "a", Way.UP, (600, 150)), "a", Way.UP, (600, 780))
    assert messages(job) == [
        (
            "Readings of face A disagree by 30 mm. The 150 from 600 to 750 or the 780 from the floor to 750 may be "
            "wrong. One more reading would tell which."
        )
    ]


def test_a_tenfold_slip_is_asked_about(wall: Job) -> None:
    chained = with_chain(wall, "a", Way.ACROSS, (600, 195, 1050))
    job = with_overall(chained, "a", Way.ACROSS, 3600, "3", START)
    assert messages(job) == [
        (
            "Readings of face A disagree by 1755 mm: one reading says 3600, 600 + 195 + 1050 sum to 1845. "
            "Was 1950 read as 195? Measure the 195 from 600 to 795 again first."
        )
    ]


def test_a_wall_drawn_otherwise_than_all_readings_say_is_named(wall: Job) -> None:
    job = with_overall(with_chain(wall, "a", Way.ACROSS, (600, 1200, 1812)), "a", Way.ACROSS, 3612)
    assert messages(job) == [
        (
            "Readings of face A disagree by 12 mm: the wall is drawn 3600, by the other readings it is 3612. "
            "Measure the wall again first."
        )
    ]


def test_accepted_readings_are_not_told_again(wall: Job) -> None:
    job = with_chain(wall, "a", Way.ACROSS, (600, 1200, 1806))
    assert messages(accepted(job, "a", (0, 1, 2))) == []


def test_readings_that_hang_on_nothing_are_told(wall: Job) -> None:
    face = replace(find_face(wall, "a"), readings=(Reading(START, "1", 600), Reading("2", "3", 450)))
    job = replace(wall, rooms=(Room("r", "Kitchen", (face,)),))
    assert messages(job) == ["On face A nothing joins 450 to an end; read from an end to one of its lines."]


def test_lengths_are_said_in_the_jobs_unit() -> None:
    face = Face("a", "A", View.PLAN, parts=(Part("top", Kind.BENCHTOP, box(0, 0, 105 * 25.4, 600)),))
    job = Job("Quince Lane 2", unit=Unit.INCH, rooms=(Room("r", "Kitchen", (face,)),))
    sizes = [count * 25.4 for count in (24, 46, 36)]
    assert messages(with_chain(job, "a", Way.ACROSS, sizes)) == [
        (
            'Readings of face A disagree by 1": 24" + 46" + 36" sum to 106", the benchtop is drawn 105". '
            "Any of these four may be wrong. One more reading would tell which."
        )
    ]


ALCOVE = ((0.0, 0.0), (3600.0, 0.0), (3612.0, 2400.0), (-8.0, 2390.0))


def with_alcove(job: Job, *, off_mm: float = 0.0, count: int = 6) -> Job:
    """Sides and diagonals of the alcove, the first diagonal longer by `off_mm`."""
    for one, other in list(combinations(range(4), 2))[:count]:
        length = math.dist(ALCOVE[one], ALCOVE[other]) + off_mm * ((one, other) == (0, 2))
        job = with_straight(job, "a", CORNERS[one], CORNERS[other], length)
    return job


def test_what_is_out_of_square_and_plumb_is_told_until_it_is_drawn_so(wall: Job) -> None:
    job = with_alcove(wall)
    assert codes(job) == ["out-of-square", "out-of-plumb"]
    square, plumb = messages(job)
    assert square.startswith(
        "On face A the lower left corner is 8 mm out of square over 2390, the lower right corner is"
    )
    assert plumb == (
        "On face A the left side leans 8 mm to the left over 2390 and the right side leans 12 mm to the right over "
        "2400, if its lower side is level."
    )
    assert messages(with_corners(job, "a")) == []


def test_a_diagonal_more_that_agrees_does_not_tell_it_again(wall: Job) -> None:
    drawn = with_corners(with_alcove(wall, count=5), "a")
    assert messages(drawn) == []
    falling = math.dist(ALCOVE[1], ALCOVE[3]) + 0.4
    assert messages(with_straight(drawn, "a", CORNERS[1], CORNERS[3], falling)) == []


def test_a_benchtop_lies_and_cannot_lean(wall: Job) -> None:
    plan = replace(find_face(wall, "a"), view=View.PLAN, parts=(Part("top", Kind.BENCHTOP, box(0, 0, 3600, 2400)),))
    assert codes(with_alcove(replace(wall, rooms=(Room("r", "Kitchen", (plan,)),)))) == ["out-of-square"]


def test_a_square_wall_is_nothing_to_look_at(wall: Job) -> None:
    job = wall
    for (one, other), length in zip(
        combinations(range(4), 2), (3600, math.hypot(3600, 2400), 2400, 2400, math.hypot(3600, 2400), 3600), strict=True
    ):
        job = with_straight(job, "a", CORNERS[one], CORNERS[other], round(length))
    assert messages(job) == []


def test_a_sloping_ceiling_is_not_called_out_of_square(wall: Job) -> None:
    job = wall
    corners = ((0.0, 0.0), (3600.0, 0.0), (3600.0, 1200.0), (0.0, 2400.0))
    for one, other in combinations(range(4), 2):
        job = with_straight(job, "a", CORNERS[one], CORNERS[other], math.dist(corners[one], corners[other]))
    assert messages(job) == []


def test_diagonals_that_do_not_fit_are_told(wall: Job) -> None:
    assert messages(with_alcove(wall, off_mm=15)) == [
        (
            "The sides and diagonals of face A do not fit together by 15 mm. "
            "Any of these six may be wrong. One more reading would tell which."
        )
    ]


def test_a_diagonal_that_places_no_corner_is_asked_about(wall: Job) -> None:
    job = with_alcove(wall)
    face = find_face(job, "a")
    short = replace(face.readings[1], length_mm=433.8)
    job = replace(
        job, rooms=(Room("r", "Kitchen", (replace(face, readings=(face.readings[0], short, *face.readings[2:])),)),)
    )
    (message,) = messages(job)
    assert message.endswith("Was 4338 read as 433.8? Measure the 433.8 from lower left to upper right again first.")


def test_corners_that_cannot_be_placed_say_what_is_missing(wall: Job) -> None:
    (message,) = messages(with_alcove(wall, count=4))
    assert message.startswith("The corners of face A cannot be placed: too few distances fix upper left; measure one")


def test_an_end_is_said_by_its_name(wall: Job) -> None:
    job = with_overall(with_chain(wall, "a", Way.UP, (870, 1530)), "a", Way.UP, 1536, "1", END)
    assert messages(job) == [
        (
            "Readings of face A disagree by 6 mm: one reading says 1536, by the other readings it is 1530. "
            "Measure the 1536 from 870 to the top again first."
        )
    ]


def test_the_takeoff_of_a_job_tells_them_with_its_own_tape(wall: Job) -> None:
    job = with_overall(with_chain(wall, "a", Way.ACROSS, (600, 1200, 1803)), "a", Way.ACROSS, 3600)
    assert [finding.code for finding in take_off(replace(job, tape=TapeClass.FIRST)).findings] == ["readings"]
    assert take_off(replace(job, tape=TapeClass.THIRD)).findings == ()


marks = st.sampled_from((START, "1", "2", "3", END))
sizes = st.one_of(st.sampled_from((1.0, 600.0, 601.0, 3600.0, 36_000.0)), st.floats(0.01, 100_000))
along = st.builds(Reading, marks, marks, sizes, st.sampled_from((Way.ACROSS, Way.UP)), st.booleans(), st.booleans())
straight = st.builds(Reading, st.sampled_from(CORNERS), st.sampled_from(CORNERS), sizes, st.just(Way.STRAIGHT))


@given(st.lists(st.one_of(along, straight), max_size=12), st.sampled_from(Unit), st.sampled_from(TapeClass))
def test_any_readings_are_looked_at_in_words(readings: list[Reading], unit: Unit, tape: TapeClass) -> None:
    sound = tuple(each for each in readings if each.start not in (each.end, END) and each.end != START)
    face = Face("a", "A", parts=(Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),), readings=sound)
    job = Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (face,)),))
    check_job(job)
    for finding in look_at_readings(face, unit, tape):
        assert finding.message.endswith(".")
        assert "nan" not in finding.message
    with suppress(JobError):
        job = spread(job, "a")
    check_job(job)
