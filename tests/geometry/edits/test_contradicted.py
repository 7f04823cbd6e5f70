"""Readings that a corrected size contradicts, on an invented wall of 3600 with cabinets of 600 and 900."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.edits.following import corrected_to, resized_to, shift
from geometry.edits.hand import locked
from geometry.outlines.shapes import box
from geometry.set_out.lines import set_out
from shared.edits.drawn import find_face, with_changed_face
from shared.errors import JobError
from shared.job import END, START, Face, Job, Part, Reading, Room, Way
from shared.trade.kinds import Kind

READINGS = (
    Reading(START, "1", 600, hooked=True),
    Reading("1", "2", 900),
    Reading(START, "2", 1500),
    Reading("2", END, 2100),
    Reading(START, END, 2400, Way.UP),
)
PARTS = (
    Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),
    Part("c1", Kind.CABINET, box(0, 150, 600, 720)),
    Part("c2", Kind.CABINET, box(600, 150, 900, 720)),
)
WALL = Face("a", "A", parts=PARTS, readings=READINGS)
JOB = Job("J", (Room("r", "Kitchen", (WALL,)),))


def with_read(*readings: Reading) -> Job:
    return with_changed_face(JOB, replace(WALL, readings=readings))


def lengths(job: Job) -> list[float]:
    return [reading.length_mm for reading in find_face(job, "a").readings]


@given(at=st.sampled_from([600.0, 1000.0, 1500.0, 2000.0]), by=st.floats(-300, 300).filter(bool), up=st.booleans())
def test_no_correction_rewrites_what_was_read(at: float, by: float, up: bool) -> None:
    shifted = corrected_to(JOB, "a", Way.UP if up else Way.ACROSS, (0.0, at), at + by).job
    assert find_face(shifted, "a").readings[: len(READINGS)] == READINGS


@pytest.mark.parametrize(
    ("at", "by", "places"), [(600, 5, (0, 2)), (1500, 5, (1, 2)), (1000, -5, (1, 2)), (2000, -5, (3,))]
)
def test_a_correction_names_the_readings_that_it_contradicts(at: float, by: float, places: tuple[int, ...]) -> None:
    assert shift(JOB, "a", Way.ACROSS, at, by).readings == places


def test_a_correction_between_lines_is_one_more_reading_and_the_face_disagrees() -> None:
    shifted = resized_to(JOB, "a", ("c1",), Way.ACROSS, 605)
    face = find_face(shifted.job, "a")
    assert face.readings == (*READINGS, Reading(START, "1", 605))
    assert any(5 in doubt.readings for doubt in set_out(face, JOB.tape).doubts)
    assert set_out(face, JOB.tape).at_mm(Way.ACROSS, "1") == pytest.approx(600, abs=0.5)


def test_a_correction_that_no_line_begins_or_ends_is_no_reading() -> None:
    assert lengths(corrected_to(JOB, "a", Way.ACROSS, (40, 600), 565).job) == [600, 900, 1500, 2100, 2400]
    assert lengths(shift(JOB, "a", Way.ACROSS, 600, 5).job) == [600, 900, 1500, 2100, 2400]


def test_who_takes_them_again_by_the_correction_gets_them_longer_and_no_more() -> None:
    again = resized_to(JOB, "a", ("c1",), Way.ACROSS, 605, again=True)
    assert lengths(again.job) == [605, 900, 1505, 2100, 2400]
    assert lengths(shift(JOB, "a", Way.ACROSS, 1600, -5, again=True).job) == [600, 900, 1500, 2095, 2400]


def test_a_reading_that_the_correction_confirms_is_not_contradicted() -> None:
    """The tape said 605 all along; only the cabinet was drawn 600 wide."""
    job = with_read(Reading(START, "1", 605), Reading(START, "2", 1500))
    shifted = resized_to(job, "a", ("c1",), Way.ACROSS, 605, again=True)
    assert shifted.readings == (1,)
    assert lengths(shifted.job) == [605, 1505]


def test_a_line_on_which_something_still_stands_is_not_contradicted() -> None:
    assert resized_to(JOB, "a", ("c1", "c2"), Way.ACROSS, 40).readings == (2,)
    assert shift(locked(JOB, ("wall", "c1"), True), "a", Way.ACROSS, 700, 5).readings == (1, 2)


def test_a_reading_of_which_nothing_would_be_left_is_named() -> None:
    job = with_read(Reading("1", "2", 900), Reading(START, "1", 600))
    gone = replace(find_face(job, "a"), parts=(PARTS[0], Part("c3", Kind.CABINET, box(1500, 150, 600, 720))))
    with pytest.raises(JobError, match="A: nothing would be left of the reading 900 mm"):
        shift(with_changed_face(job, gone), "a", Way.ACROSS, 1500, -900, again=True)
