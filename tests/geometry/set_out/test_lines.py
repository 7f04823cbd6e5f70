import math
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.outlines.shapes import box
from geometry.parts.drawn_size import drawn_box
from geometry.set_out.lines import DRAWN, SetOut, reading_sd_mm, set_out
from shared.job import CORNERS, END, START, Face, Part, Reading, Unit, View, Way
from shared.trade.kinds import Kind
from shared.trade.tape import TapeClass

SECOND = TapeClass.SECOND


def wall(width: float, height: float = 2400) -> Part:
    return Part("wall", Kind.WALL, box(0, 0, width, height))


def face(*readings: Reading, parts: tuple[Part, ...] = ()) -> Face:
    return Face("a", "A", parts=parts, readings=readings)


def chain(*lengths: float, way: Way = Way.ACROSS, to_end: bool = False) -> tuple[Reading, ...]:
    marks = [START, *(str(count) for count in range(1, len(lengths) + 1))]
    if to_end:
        marks[-1] = END
    return tuple(
        Reading(start, end, length, way) for start, end, length in zip(marks[:-1], marks[1:], lengths, strict=True)
    )


def running(*lengths: float) -> tuple[Reading, ...]:
    return tuple(Reading(START, str(count), length, hooked=True) for count, length in enumerate(lengths, 1))


def at(found: SetOut) -> list[float]:
    return [line.at_mm for line in found.lines]


def test_a_face_without_readings_has_nothing_set_out() -> None:
    assert set_out(face(), SECOND) == SetOut((), (), ())


def test_a_chain_and_running_readings_make_lines_where_they_were_read() -> None:
    found = set_out(face(*chain(600, 450, 900)), SECOND)
    assert at(found) == pytest.approx([600, 1050, 1950])
    first = found.lines[0]
    assert first.sd_mm == pytest.approx(reading_sd_mm(600, SECOND, hooked=False))
    assert at(set_out(face(*running(600, 1050, 1950)), SECOND)) == pytest.approx([600, 1050, 1950])


def test_each_way_is_set_out_by_itself() -> None:
    found = set_out(face(*chain(600, 450), *chain(150, 720, 38, way=Way.UP)), SECOND)
    assert [(line.way, line.name) for line in found.lines] == [
        (Way.ACROSS, "1"),
        (Way.ACROSS, "2"),
        (Way.UP, "1"),
        (Way.UP, "2"),
        (Way.UP, "3"),
    ]
    assert found.at_mm(Way.UP, "2") == pytest.approx(870)
    assert (found.at_mm(Way.UP, START), found.at_mm(Way.UP, "9")) == (0, None)


@given(st.lists(st.integers(20, 1200), min_size=2, max_size=8))
def test_readings_that_agree_leave_no_residual_and_no_doubt(lengths: list[int]) -> None:
    sums = [float(sum(lengths[: count + 1])) for count in range(len(lengths))]
    found = set_out(face(*chain(*map(float, lengths)), *running(*sums)), SECOND)
    assert at(found) == pytest.approx(sums)
    assert found.residuals_mm == pytest.approx([0.0] * len(found.residuals_mm), abs=1e-6)
    assert found.doubts == ()


@given(st.lists(st.integers(100, 900), min_size=3, max_size=8), st.data())
def test_one_misread_running_reading_within_a_chain_is_the_one_named(lengths: list[int], data: st.DataObject) -> None:
    sums = [float(sum(lengths[: count + 1])) for count in range(len(lengths))]
    wrong = data.draw(st.integers(0, len(lengths) - 2))
    misread = [size + 30 * (count == wrong) for count, size in enumerate(sums)]
    (doubt,) = set_out(face(*chain(*map(float, lengths)), *running(*misread)), SECOND).doubts
    assert doubt.readings == (len(lengths) + wrong,)
    assert doubt.off_mm == pytest.approx((30,))


def test_a_chain_against_the_drawn_wall_is_doubted_as_a_whole() -> None:
    (doubt,) = set_out(face(*chain(600, 1200, 1806, to_end=True), parts=(wall(3600),)), SECOND).doubts
    assert doubt.readings == (0, 1, 2, DRAWN)
    assert doubt.off_mm == pytest.approx((6, 6, 6, -6))


def test_the_drawn_wall_counts_only_where_a_reading_names_the_end() -> None:
    assert set_out(face(*chain(600, 1200, 1806), parts=(wall(3600),)), SECOND).doubts == ()


def test_the_drawn_wall_is_not_a_second_reading_of_the_one_that_it_was_drawn_from() -> None:
    readings = (*chain(600, 1200, 1806, to_end=True), Reading(START, END, 3600))
    (doubt,) = set_out(face(*readings, parts=(wall(3600),)), SECOND).doubts
    assert doubt.readings == (0, 1, 2, 3)


def test_a_wall_drawn_otherwise_than_read_is_doubted() -> None:
    (doubt,) = set_out(face(Reading(START, END, 3600), parts=(wall(3612),)), SECOND).doubts
    assert doubt.readings == (0, DRAWN)
    assert doubt.off_mm == pytest.approx((-12, 12))


def test_a_tenfold_slip_and_swapped_digits_are_recognised() -> None:
    (doubt,) = set_out(face(*chain(600, 195, 450, to_end=True), parts=(wall(3000),)), SECOND).doubts
    assert doubt.readings == (0, 1, 2, DRAWN)
    assert dict(zip(doubt.readings, doubt.meant_mm, strict=True))[1] == 1950
    (swapped,) = set_out(face(*chain(600, 540, 900, to_end=True), parts=(wall(1950),)), SECOND).doubts
    assert dict(zip(swapped.readings, swapped.meant_mm, strict=True)) == {0: None, 1: 450, 2: None, DRAWN: None}


def test_a_reading_that_is_accepted_is_not_doubted_and_takes_part() -> None:
    readings = chain(600, 1200, 1806, to_end=True)
    stands = replace(readings[2], accepted=True)
    (doubt,) = set_out(face(*readings[:2], stands, parts=(wall(3600),)), SECOND).doubts
    assert doubt.readings == (0, 1, DRAWN)
    accepted = tuple(replace(reading, accepted=True) for reading in readings)
    found = set_out(face(*accepted, parts=(wall(3600),)), SECOND)
    assert found.doubts == ()
    assert max(map(abs, found.residuals_mm)) > 1


def test_readings_on_lines_that_hang_on_nothing_are_told() -> None:
    found = set_out(face(Reading(START, "1", 600), Reading("2", "3", 450)), SECOND)
    assert found.hanging == (1,)
    assert [line.name for line in found.lines] == ["1"]


def test_a_coarser_tape_doubts_less() -> None:
    readings = (*chain(600, 1200, 1803.4, to_end=True), Reading(START, END, 3600))
    assert set_out(face(*readings), TapeClass.FIRST).doubts
    assert not set_out(face(*readings), TapeClass.THIRD).doubts


def test_the_deviation_of_a_reading_is_the_greatest_error_over_the_root_of_three() -> None:
    # Class II, 2.4 m with the hook: 1.1 mm (checks page); rectangular distribution, from memory.
    assert reading_sd_mm(2400, SECOND, hooked=True) == pytest.approx(1.1 / math.sqrt(3))


@pytest.mark.parametrize(
    "parts",
    [
        (),
        (wall(3000), replace(wall(3000), id="other")),
        (Part("wall", Kind.WALL, box(40, 0, 3000, 2400)),),
        (Part("wall", Kind.WALL, box(0, 0, 3000, 2400)[:3]),),
        (Part("wall", Kind.WALL, (*box(0, 0, 3000, 2400)[:2], *box(0, 0, 2990, 2400)[2:])),),
    ],
)
def test_only_a_single_wall_that_is_a_box_counts_as_drawn(parts: tuple[Part, ...]) -> None:
    assert drawn_box(face(parts=parts)) is None


def test_a_plan_is_measured_by_its_benchtop() -> None:
    top = Part("top", Kind.BENCHTOP, box(0, 0, 3600, 600))
    assert drawn_box(Face("p", "P", View.PLAN, parts=(top,))) is top


ALCOVE = ((0.0, 0.0), (3000.0, 0.0), (3012.0, 2400.0), (-8.0, 2390.0))


def straight(*corners: tuple[float, float]) -> tuple[Reading, ...]:
    return tuple(
        Reading(CORNERS[one], CORNERS[other], math.dist(corners[one], corners[other]), Way.STRAIGHT)
        for one, other in combinations(range(4), 2)
    )


def test_straight_readings_place_the_corners() -> None:
    corners = set_out(face(*straight(*ALCOVE)), SECOND).corners
    assert corners is not None
    for found, corner in zip(corners.points, ALCOVE, strict=True):
        assert found == pytest.approx(corner, abs=1e-6)


def test_corners_out_of_square_and_sides_out_of_plumb_are_measured() -> None:
    # By hand: the left side leans 8 to the left over 2390, the right one 12 to the right over 2400.
    corners = set_out(face(*straight(*ALCOVE)), SECOND).corners
    assert corners is not None
    left, right = corners.plumbs
    assert (left.side, right.side) == ("left", "right")
    assert (left.off_mm, left.over_mm) == pytest.approx((-8, 2390))
    assert (right.off_mm, right.over_mm) == pytest.approx((12, 2400))
    lower_left, lower_right, _, _ = corners.squares
    assert lower_left.corner == "lower left"
    assert lower_left.off_mm == pytest.approx(8)
    assert lower_left.degrees == pytest.approx(math.degrees(math.atan(8 / 2390)))
    assert lower_right.off_mm == pytest.approx(12)
    assert sum(square.degrees for square in corners.squares) == pytest.approx(0, abs=1e-9)


def test_how_well_a_plumb_is_known_follows_from_the_readings() -> None:
    # Exact for a square box and equal deviations s: the top of the left side moves with its diagonal by sqrt(2) s.
    square = ((0.0, 0.0), (900.0, 0.0), (900.0, 900.0), (0.0, 900.0))
    readings = [reading for reading in straight(*square) if (reading.start, reading.end) != (CORNERS[0], CORNERS[2])]
    corners = set_out(face(*readings), SECOND).corners
    assert corners is not None
    side, diagonal = (reading_sd_mm(size, SECOND, hooked=False) for size in (900, 900 * math.sqrt(2)))
    # x of the upper left corner = (left2 + lower2 - diagonal2) / (2 lower): slopes 1, 1 and -sqrt(2) there.
    assert corners.plumbs[0].sd_mm == pytest.approx(math.sqrt(2 * side**2 + 2 * diagonal**2), rel=1e-3)


def test_diagonals_that_disagree_are_doubted() -> None:
    readings = list(straight(*ALCOVE))
    readings[1] = replace(readings[1], length_mm=readings[1].length_mm + 15)
    (doubt,) = set_out(face(*readings), SECOND).doubts
    assert doubt.readings == (0, 1, 2, 3, 4, 5)


@pytest.mark.parametrize("factor", [0.1, 10])
def test_a_tenfold_slip_of_a_diagonal_is_recognised(factor: float) -> None:
    readings = list(straight(*ALCOVE))
    readings[1] = replace(readings[1], length_mm=readings[1].length_mm * factor)
    found = set_out(face(*readings), SECOND)
    assert found.corners is None
    assert "measure these three again" in found.trouble
    (doubt,) = found.doubts
    assert (doubt.readings, doubt.off_mm) == ((1,), ())
    assert doubt.meant_mm[0] == pytest.approx(straight(*ALCOVE)[1].length_mm)


def test_too_few_straight_readings_say_what_is_missing() -> None:
    found = set_out(face(*straight(*ALCOVE)[:4]), SECOND)
    assert found.corners is None
    assert found.trouble == "too few distances fix upper left; measure one more, a diagonal for instance."
    assert found.doubts == ()


def test_inches_are_read_as_inches() -> None:
    readings = chain(24 * 25.4, 54 * 25.4, 36 * 25.4, to_end=True)
    (doubt,) = set_out(face(*readings, parts=(wall(105 * 25.4),)), SECOND, Unit.INCH).doubts
    assert [meant for meant in doubt.meant_mm if meant] == pytest.approx([45 * 25.4])
