import math
from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.set_out.adjusting import Observed, adjust_distances, adjust_positions, critical_value
from shared.errors import JobError

places = st.lists(st.integers(1, 8000), min_size=2, max_size=7, unique=True).map(lambda found: [0, *sorted(found)])
"""Where marks stand, the first at 0; whole millimetres."""


def all_between(at: list[int], sd: float = 1.0) -> list[Observed]:
    """Every mark read from every mark before it."""
    return [Observed(a, b, at[b] - at[a], sd) for a, b in combinations(range(len(at)), 2)]


@given(places)
def test_consistent_readings_leave_no_residual_and_marks_stand_where_they_were_made(at: list[int]) -> None:
    found = adjust_positions(all_between(at), len(at))
    assert found.values == pytest.approx(at, abs=1e-6)
    assert found.residuals == pytest.approx([0.0] * len(found.residuals), abs=1e-6)
    assert found.doubts == ()


@given(places.filter(lambda at: len(at) > 3), st.data())
def test_one_gross_error_is_the_reading_named_with_its_size(at: list[int], data: st.DataObject) -> None:
    readings = all_between(at)
    slip = data.draw(st.integers(0, len(readings) - 1))
    off = data.draw(st.sampled_from((-90.0, -20.0, 20.0, 1000.0)))
    readings[slip] = readings[slip]._replace(length_mm=readings[slip].length_mm + off)
    (doubt,) = adjust_positions(readings, len(at)).doubts
    assert doubt.observed == (slip,)
    assert doubt.off_mm == pytest.approx((off,))


def test_two_gross_errors_are_both_named() -> None:
    readings = all_between([0, 600, 1200, 1800, 2400, 3000])
    readings[2] = readings[2]._replace(length_mm=1900.0)
    readings[9] = readings[9]._replace(length_mm=940.0)
    found = adjust_positions(readings, 6).doubts
    assert [doubt.observed for doubt in found] == [(9,), (2,)]
    assert [doubt.off_mm for doubt in found] == [pytest.approx((340.0,)), pytest.approx((100.0,))]


@given(places, st.data(), st.floats(0.01, 100))
def test_order_and_scale_change_nothing(at: list[int], data: st.DataObject, scale: float) -> None:
    readings = all_between(at)
    readings[0] = readings[0]._replace(length_mm=readings[0].length_mm + 30)
    order = data.draw(st.permutations(range(len(readings))))
    shuffled = [readings[place] for place in order]
    other = adjust_positions([Observed(s, e, mm * scale, sd * scale) for s, e, mm, sd in shuffled], len(at))
    found = adjust_positions(readings, len(at))
    assert other.values == pytest.approx([value * scale for value in found.values], rel=1e-9, abs=1e-6)
    assert other.normalised == pytest.approx([found.normalised[place] for place in order], rel=1e-6, abs=1e-6)
    assert [{order[place] for place in doubt.observed} for doubt in other.doubts] == [
        set(doubt.observed) for doubt in found.doubts
    ]


def chain_and_overall(*lengths: float, overall: float) -> list[Observed]:
    chain = [Observed(i, i + 1, length, 0.5) for i, length in enumerate(lengths)]
    return [*chain, Observed(0, len(lengths), overall, 0.5)]


def test_with_one_closure_no_reading_is_singled_out() -> None:
    found = adjust_positions(chain_and_overall(600, 450, 900, overall=1944), 4)
    (doubt,) = found.doubts
    assert doubt.observed == (0, 1, 2, 3)
    assert doubt.off_mm == pytest.approx((6, 6, 6, -6))
    assert found.redundancies == pytest.approx([0.25] * 4)


def test_a_closure_within_what_readings_may_miss_raises_no_doubt() -> None:
    assert adjust_positions(chain_and_overall(600, 450, 900, overall=1951), 4).doubts == ()


def test_a_reading_that_nothing_checks_has_no_redundancy_and_no_normalised_residual() -> None:
    found = adjust_positions([Observed(0, 1, 600, 1.0)], 2)
    assert (found.values, found.redundancies, found.normalised) == ((0, 600), (0,), (0,))
    assert (found.freedom, found.doubts) == (0, ())


def test_the_sharper_reading_counts_for_more() -> None:
    # Exact: weights 1/1 and 1/4, so (4 x 600 + 605) / 5, and its deviation sqrt(4/5).
    found = adjust_positions([Observed(0, 1, 600, 1.0), Observed(0, 1, 605, 2.0)], 2)
    assert found.values[1] == pytest.approx(601)
    assert found.sds[1] == pytest.approx(math.sqrt(0.8))


def test_marks_that_hang_on_nothing_are_named_and_their_readings_still_compared() -> None:
    found = adjust_positions(
        [Observed(0, 1, 600, 1.0), Observed(2, 3, 450, 1.0), Observed(2, 3, 480, 1.0), Observed(2, 3, 450, 1.0)], 5
    )
    assert found.hanging == (2, 3, 4)
    assert found.values[:2] == (0, 600)
    assert [doubt.observed for doubt in found.doubts] == [(2,)]


def test_two_marks_may_be_fixed() -> None:
    assert adjust_positions([Observed(1, 2, 600, 1.0)], 3, fixed=(0, 1)).values == (0, 0, 600)


def test_nothing_read_is_nothing_known() -> None:
    found = adjust_positions([], 2)
    assert (found.values, found.hanging, found.doubts, found.freedom) == ((0, 0), (1,), (), 0)


@pytest.mark.parametrize(
    "wrong", [Observed(0, 2, 1, 1.0), Observed(0, 0, 1, 1.0), Observed(0, 1, 1, 0.0), Observed(-1, 1, 1, 1.0)]
)
def test_a_senseless_reading_is_refused(wrong: Observed) -> None:
    with pytest.raises(ValueError, match="Observed"):
        adjust_positions([wrong], 2)


ALCOVE = ((0.0, 0.0), (3000.0, 0.0), (3012.0, 2400.0), (-8.0, 2390.0))
"""Four corners, none of them square."""

BOX = ((0.0, 0.0), (2900.0, 0.0), (2900.0, 2500.0), (0.0, 2500.0))


def distances(points: tuple[tuple[float, float], ...]) -> list[Observed]:
    return [Observed(a, b, math.dist(points[a], points[b]), 0.5) for a, b in combinations(range(len(points)), 2)]


def flat(points: tuple[tuple[float, float], ...]) -> list[float]:
    return [size for point in points for size in point]


def test_corners_are_found_from_sides_and_diagonals() -> None:
    found = adjust_distances(BOX, distances(ALCOVE))
    assert flat(found.points) == pytest.approx(flat(ALCOVE), abs=1e-6)
    assert (found.freedom, found.doubts) == (1, ())


def test_five_distances_hold_four_corners_and_check_nothing() -> None:
    found = adjust_distances(BOX, distances(ALCOVE)[:-1])
    assert flat(found.points) == pytest.approx(flat(ALCOVE), abs=1e-6)
    assert found.redundancies == pytest.approx([0.0] * 5, abs=1e-9)


def test_six_distances_that_disagree_single_none_out() -> None:
    readings = distances(ALCOVE)
    readings[1] = readings[1]._replace(length_mm=readings[1].length_mm + 15)
    (doubt,) = adjust_distances(BOX, readings).doubts
    assert doubt.observed == (0, 1, 2, 3, 4, 5)
    assert doubt.off_mm[1] == pytest.approx(15, abs=0.2)


def test_a_fifth_point_tells_which_distance_is_wrong() -> None:
    points = (*ALCOVE, (800.0, 3400.0))
    readings = distances(points)
    readings[4] = readings[4]._replace(length_mm=readings[4].length_mm + 15)
    (doubt,) = adjust_distances((*BOX, (900.0, 3300.0)), readings).doubts
    assert doubt.observed == (4,)
    assert doubt.off_mm == pytest.approx((15,), abs=0.2)


def test_a_loose_corner_is_named() -> None:
    readings = [each for each in distances(ALCOVE) if 3 not in (each.start, each.end)]
    with pytest.raises(JobError, match="too few distances fix upper left; measure one more"):
        adjust_distances(BOX, readings, names=("lower left", "lower right", "upper right", "upper left"))


def test_four_sides_without_a_diagonal_are_too_few() -> None:
    sides = [Observed(a % 4, b % 4, math.dist(ALCOVE[a % 4], ALCOVE[b % 4]), 0.5) for a, b in pairwise(range(5))]
    with pytest.raises(JobError, match="too few distances fix point 3 and point 4"):
        adjust_distances(ALCOVE, sides)


def test_a_broken_triangle_is_refused_in_words() -> None:
    readings = distances(ALCOVE)
    readings[1] = readings[1]._replace(length_mm=6000.0)
    with pytest.raises(JobError, match=r"from point 1 to point 3 is 6000 mm straight, but only 5400\.03 mm by way of"):
        adjust_distances(BOX, readings)


corners = st.tuples(*(st.floats(-700, 700) for _ in range(5)))


@given(corners)
def test_any_alcove_is_found_from_a_plain_box(off: tuple[float, ...]) -> None:
    points = ((0.0, 0.0), (3000.0 + off[0], 0.0), (3000.0 + off[1], 2400.0 + off[2]), (off[3], 2400.0 + off[4]))
    found = adjust_distances(BOX, distances(points))
    assert flat(found.points) == pytest.approx(flat(points), abs=1e-5)


def test_critical_values_grow_with_the_number_of_readings() -> None:
    assert critical_value(0) == critical_value(1)
    assert critical_value(1) < critical_value(2) < critical_value(200)
