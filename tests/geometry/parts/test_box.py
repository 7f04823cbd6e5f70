"""The readings that place a part."""

import pytest

from geometry.edits.tying import tie_along
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box, circle
from geometry.parts.box import BOTTOM, HIGH, LEFT, WIDE, agreed_mm, measured_mm, with_measure
from shared.errors import OutlineError
from shared.job import Part, Tie
from shared.trade.kinds import Kind


@pytest.fixture
def cabinet() -> Part:
    return Part("p1", Kind.CABINET, box(1050, 150, 900, 720))


def test_readings_of_a_box(cabinet: Part) -> None:
    assert [measured_mm(cabinet, measure) for measure in (LEFT, BOTTOM, WIDE, HIGH)] == [1050, 150, 900, 720]


def test_a_place_moves_and_a_size_stretches_to_the_right_and_up(cabinet: Part) -> None:
    assert outline_box(with_measure(cabinet, LEFT, 600).outline) == (600, 150, 1500, 870)
    assert outline_box(with_measure(cabinet, BOTTOM, 0).outline) == (1050, 0, 1950, 720)
    assert outline_box(with_measure(cabinet, WIDE, 600).outline) == (1050, 150, 1650, 870)
    assert outline_box(with_measure(cabinet, HIGH, 700).outline) == (1050, 150, 1950, 850)


def test_no_width_and_an_oblong_circle_are_refused(cabinet: Part) -> None:
    with pytest.raises(OutlineError):
        with_measure(cabinet, WIDE, 0)
    with pytest.raises(OutlineError):
        with_measure(Part("p2", Kind.CUT_OUT, circle(0, 0, 100)), WIDE, 300)


def test_parts_agree_on_a_reading_or_not(cabinet: Part) -> None:
    beside = with_measure(cabinet, LEFT, 0)

    assert agreed_mm([cabinet, beside], HIGH) == 720
    assert agreed_mm([cabinet, beside], LEFT) is None
    assert agreed_mm([], LEFT) is None


def test_a_side_is_tied_over_its_whole_length(cabinet: Part) -> None:
    assert tie_along(cabinet, 0, "wall", 300.0) == Tie("p1", 0, "wall", 300.0, 1200.0)
