import math

import pytest

from geometry.outlines.shapes import box, circle
from geometry.seen.openings import uncovered_area_mm2
from shared.job import Part
from shared.trade.kinds import Kind

DOOR = Part("d", Kind.DOOR, box(100, 100, 450, 720), level=-3)


def opening(outline_id: str, x: float, y: float, radius: float) -> Part:
    return Part(outline_id, Kind.CUT_OUT, circle(x, y, radius))


def test_without_openings_a_part_keeps_its_outline() -> None:
    assert uncovered_area_mm2(DOOR, ()) == 450 * 720


def test_a_round_opening_takes_its_exact_area() -> None:
    assert uncovered_area_mm2(DOOR, (opening("o", 300, 400, 40),)) == pytest.approx(450 * 720 - 1600 * math.pi)


def test_an_opening_at_the_border_takes_only_what_it_covers() -> None:
    assert uncovered_area_mm2(DOOR, (opening("o", 100, 400, 40),)) == pytest.approx(450 * 720 - 800 * math.pi)


def test_openings_that_overlap_take_their_union() -> None:
    twice = (opening("o", 300, 400, 40), opening("p", 300, 400, 40))
    assert uncovered_area_mm2(DOOR, twice) == pytest.approx(450 * 720 - 1600 * math.pi)


def test_an_opening_elsewhere_takes_nothing() -> None:
    assert uncovered_area_mm2(DOOR, (opening("o", 3000, 400, 40),)) == pytest.approx(450 * 720)


def test_an_opening_over_the_whole_part_leaves_nothing() -> None:
    cover = Part("o", Kind.WINDOW, box(0, 0, 1000, 1000), hides=False)
    assert uncovered_area_mm2(DOOR, (cover,)) == 0
