"""Equal spacing and equal size, noticed while a person drags and draws in the window."""

import pytest
from PySide6.QtCore import Qt

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Box
from tests.window import Keys, Person


@pytest.fixture
def outlets(person: Person) -> Person:
    """A wall with two outlets 300 apart and a third farther to the right."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("outl", *((x, "1100", "100", "70") for x in ("300", "700", "1700")))
    return person


def last_box(person: Person) -> Box:
    return outline_box(person.shown.job.faces[0].parts[-1].outline)


def test_a_dragged_part_comes_to_stand_evenly(outlets: Person) -> None:
    outlets.press(Qt.Key.Key_P, Keys.AltModifier)
    outlets.begin_drag((1750, 1135), (1700, 1135), (1162, 1135))
    outlets.drop(1162, 1135)
    assert last_box(outlets) == (1100, 1100, 1200, 1170)


def test_a_drawn_box_comes_to_be_as_large_as_its_like(outlets: Person) -> None:
    outlets.click_at(2400, 1800)
    outlets.click_at(2512, 1882)
    left, bottom, right, top = last_box(outlets)
    assert (right - left, top - bottom) == (100, 70)
