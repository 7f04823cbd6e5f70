"""Least squares and the test of residuals against published figures (checks page, "Adjusting readings" and "Areas")."""

import math
from itertools import combinations

import pytest

from geometry.edits.setting_out import with_corners, with_straight
from geometry.outlines.measured import area_mm2
from geometry.outlines.shapes import box
from geometry.set_out.adjusting import Adjustment, Observed, adjust_distances, adjust_positions, critical_value
from shared.edits.drawn import find_part
from shared.job import CORNERS, Face, Job, Part, Room, Vertex
from shared.trade.kinds import Kind

POINTS = {"a": 0, "4": 1, "3": 2, "2": 3}
LEVELLING = (
    ("a", "4", -1.225),
    ("4", "3", -0.848),
    ("3", "2", 1.342),
    ("2", "a", 0.720),
    ("a", "2", -0.724),
    ("2", "3", -1.335),
    ("3", "4", 0.842),
    ("4", "a", 1.231),
)
"""Height differences in metres, each with a deviation of 5 mm; a public network-adjustment library's example (seen)."""


def unit_weight_mm(found: Adjustment) -> float:
    """The standard deviation of a reading after adjustment, where all are read alike."""
    return math.sqrt(sum(off**2 for off in found.residuals) / found.freedom)


def test_a_published_levelling_network() -> None:
    # The same example's results (seen, recomputed); heights from a = 1000 m, unit weight at 5 mm.
    readings = [Observed(POINTS[start], POINTS[end], rise * 1000, 5.0) for start, end, rise in LEVELLING]
    found = adjust_positions(readings, 4)
    heights = [1000 + value / 1000 for value in found.values]
    assert heights == pytest.approx([1000, 998.77513, 997.93325, 999.27487], abs=5.1e-6)
    assert found.sds[1:] == pytest.approx([3.1, 3.5, 3.1], abs=0.05)
    assert sum(off**2 for off in found.residuals) == pytest.approx(146.625, abs=1e-6)
    assert unit_weight_mm(found) == pytest.approx(5.42, abs=0.005)
    assert max(found.normalised) == pytest.approx(1.68, abs=0.005)
    assert found.normalised.index(max(found.normalised)) == 5
    assert max(found.normalised) < critical_value(1)
    assert found.doubts == ()


def test_two_lengths_and_their_sum() -> None:
    # x + y = 393.65, x = 211.52, y = 182.14 (data from memory, result exact).
    found = adjust_positions([Observed(0, 2, 393.65, 1.0), Observed(0, 1, 211.52, 1.0), Observed(1, 2, 182.14, 1.0)], 3)
    assert found.values[1] == pytest.approx(211.52 - 0.01 / 3, abs=1e-9)
    assert found.values[2] - found.values[1] == pytest.approx(182.14 - 0.01 / 3, abs=1e-9)
    assert unit_weight_mm(found) == pytest.approx(0.00577, abs=5e-6)


@pytest.mark.parametrize(
    ("count", "alpha", "value"),
    [(1, 0.05, 1.960), (3, 0.05, 2.394), (5, 0.05, 2.576), (8, 0.05, 2.734), (10, 0.05, 2.807), (1, 0.001, 3.2905)],
)
def test_critical_values(count: int, alpha: float, value: float) -> None:
    # Exact, from the normal distribution; to the digits that the checks page prints.
    assert critical_value(count, alpha) == pytest.approx(value, abs=5e-4)


def test_one_closure_flags_every_reading_alike() -> None:
    # One redundancy: every reading is flagged alike, none can be singled out (seen).
    found = adjust_positions([Observed(0, 1, 600, 0.4), Observed(1, 2, 450, 0.3), Observed(0, 2, 1060, 0.5)], 3)
    assert found.normalised == pytest.approx([found.normalised[0]] * 3)
    assert [doubt.observed for doubt in found.doubts] == [(0, 1, 2)]


TRAVERSES = {
    # A surveying course's text (seen).
    "five corners": (
        ((406.31, 1259.97), (235.12, 1489.47), (65.81, 1126.40), (317.89, 942.04), (675.32, 1282.54)),
        140_493.11,
    ),
    "four corners": (((600, 1000), (254.542, 1209.288), (97.543, 566.876), (470.303, 397.969)), 250_552.09),
}


@pytest.mark.parametrize(("corners", "area"), TRAVERSES.values(), ids=TRAVERSES.keys())
def test_published_traverses_from_their_sides_and_diagonals(
    corners: tuple[tuple[float, float], ...], area: float
) -> None:
    # The lengths between the published corners, all of them; the figure lies level from its first corner to its second.
    pairs = combinations(range(len(corners)), 2)
    readings = [Observed(one, other, math.dist(corners[one], corners[other]), 1.0) for one, other in pairs]
    first = readings[0].length_mm
    turn = math.atan2(corners[1][1] - corners[0][1], corners[1][0] - corners[0][0])
    rough = [_turned(corner, corners[0], -turn) for corner in corners]
    start = [(round(x / 30) * 30.0, round(y / 30) * 30.0) for x, y in rough]
    start[:2] = [(0.0, 0.0), (first, 0.0)]
    found = adjust_distances(start, readings)
    assert area_mm2(tuple(Vertex(x, y) for x, y in found.points)) == pytest.approx(area, abs=0.005)
    assert found.doubts == ()


def _turned(point: tuple[float, float], about: tuple[float, float], angle: float) -> tuple[float, float]:
    x, y = point[0] - about[0], point[1] - about[1]
    return x * math.cos(angle) - y * math.sin(angle), x * math.sin(angle) + y * math.cos(angle)


def test_a_published_traverse_entered_as_readings() -> None:
    # The four corners of the same course (seen), read as sides and diagonals of a wall, which is then drawn so.
    corners, area = TRAVERSES["four corners"]
    face = Face("a", "A", parts=(Part("wall", Kind.WALL, box(0, 0, 400, 600)),))
    job = Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (face,)),))
    for one, other in combinations(range(4), 2):
        job = with_straight(job, "a", CORNERS[one], CORNERS[other], math.dist(corners[one], corners[other]))
    assert area_mm2(find_part(with_corners(job, "a"), "wall")[1].outline) == pytest.approx(area, abs=0.005)
