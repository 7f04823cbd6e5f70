"""A whole kitchen typed from its list of readings, in either unit: few keystrokes, and the takeoff is that by hand.

It is typed as people type, with the spaces that the list's characters are counted without.
"""

import re
import sys
from collections import Counter
from pathlib import Path
from typing import NamedTuple

import pytest
from PySide6.QtCore import Qt

from tests.journeys.by_hand import Page, assert_as_by_hand
from tests.window import Keys, Person

HERE = Path(__file__).parent
MOST_STROKES = 1.5
"""Keystrokes and clicks for each character of the list (issue 3)."""


class Kitchen(NamedTuple):
    """A kitchen as jotted, as counted by hand, and as typed: the walls, the ceiling, and lines by mode and face."""

    readings: Path
    page: Page
    walls: str
    ceiling: str
    faces: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]
    cut_outs: tuple[str, ...]

    @property
    def typed(self) -> str:
        """All that is typed."""
        lines = (line for rows, boxes in self.faces for line in (*rows, *boxes))
        return "\n".join((self.walls, self.ceiling, *lines, *self.cut_outs))


IN_MM = Kitchen(
    HERE / "kitchen-readings.txt",
    Page(HERE / "kitchen-by-hand.md"),
    "2100, 1800 end, 1800",
    "2450",
    (
        (
            ("600 drawers 3, 900 pair, 600 gap, splashback", "above 600 door, 900 pair"),
            ("outlet 115 x 72 at 250, 1150", "115 x 72 at 1700, 1150"),
        ),
        (("600 gap, 600 oven, 600 door, splashback",), ("outlet 115 x 72 at 1400, 1150",)),
        (("600 tall",), ()),
    ),
    ("cut 780 x 430 at 660, 80", "510 x 580 at 1540, 610"),
)

IN_INCHES = Kitchen(
    HERE / "kitchen-in-inches-readings.txt",
    Page(HERE / "kitchen-in-inches-by-hand.md", 25.4, 304.8**2, 304.8),
    "7' 1/8\", 5' 9 1/4\" end, 6'",
    "97 1/2",
    (
        (
            ("23 5/8 drawers 3, 35 1/2 pair, 25 gap, splashback", "above 23 5/8 door, 35 1/2 pair"),
            ("outlet 4 1/2 x 2 3/4 at 10, 45", "4 1/2 x 2 3/4 at 66, 45"),
        ),
        (("25 gap, 24 oven, 20 1/4 door, splashback",), ("outlet 4 1/2 x 2 3/4 at 55, 45",)),
        (("18 3/4 tall",), ()),
    ),
    ("cut 30 3/4 x 17 at 26, 3", "20 x 22 3/4 at 62 1/8, 25 5/8"),
)


def begin(person: Person) -> None:
    """Through the first door, which has the keys."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)


def draw(person: Person, kitchen: Kitchen) -> None:
    """Type the walls, then each face from left to right, then the benchtop."""
    person.type(kitchen.walls)
    person.press(Qt.Key.Key_Tab)
    person.read(kitchen.ceiling)
    for number, (rows, boxes) in enumerate(kitchen.faces):
        if number:
            person.press(Qt.Key.Key_Right, Keys.AltModifier)
        person.press(Qt.Key.Key_U, Keys.AltModifier)
        person.read(*rows)
        if boxes:
            person.press(Qt.Key.Key_B, Keys.AltModifier)
            person.read(*boxes)
    person.press(Qt.Key.Key_B, Keys.ControlModifier)
    person.press(Qt.Key.Key_B, Keys.AltModifier)
    person.read(*kitchen.cut_outs)


@pytest.fixture
def in_mm(person: Person) -> Person:
    """The kitchen in millimetres, all typed."""
    begin(person)
    draw(person, IN_MM)
    return person


@pytest.fixture
def in_inches(person: Person) -> Person:
    """The kitchen in inches, all typed; the field of the unit stands before the walls."""
    begin(person)
    person.press(Qt.Key.Key_Tab, Keys.ShiftModifier)
    person.press(Qt.Key.Key_Down)
    person.press(Qt.Key.Key_Tab)
    draw(person, IN_INCHES)
    return person


def test_the_kitchen_in_millimetres(in_mm: Person, subtests: pytest.Subtests) -> None:
    with subtests.test("is counted as by hand"):
        assert_as_by_hand(in_mm.shown.job, in_mm.shown.takeoff, IN_MM.page)
    with subtests.test("takes few keystrokes"):
        assert _ratio(in_mm, IN_MM) <= MOST_STROKES
    with subtests.test("is as large as it should be"):
        assert sum(len(face.parts) for face in in_mm.shown.job.faces) >= 30
    with subtests.test("has nothing to be looked at"):
        assert in_mm.shown.takeoff.findings == ()


def test_the_kitchen_in_inches(in_inches: Person, subtests: pytest.Subtests) -> None:
    with subtests.test("is counted as by hand"):
        assert_as_by_hand(in_inches.shown.job, in_inches.shown.takeoff, IN_INCHES.page)
    with subtests.test("takes few keystrokes"):
        assert _ratio(in_inches, IN_INCHES) <= MOST_STROKES


@pytest.mark.parametrize("kitchen", [IN_MM, IN_INCHES], ids=["mm", "inches"])
def test_every_reading_of_the_list_is_typed(kitchen: Kitchen) -> None:
    missing = _numbers(kitchen.readings.read_text("utf-8")) - _numbers(kitchen.typed)
    assert not missing


def _numbers(text: str) -> Counter[str]:
    """Every number, a fraction with its whole."""
    return Counter(re.findall(r"\d+ \d+/\d+|\d+/\d+|\d+", text))


def _ratio(person: Person, kitchen: Kitchen) -> float:
    """Keystrokes and clicks for each character of the list, spaces and line ends not counted."""
    jotted = sum(not sign.isspace() for sign in kitchen.readings.read_text("utf-8"))
    ratio = person.strokes / jotted
    sys.stdout.write(f"\nkeystrokes ratio {ratio:.2f} ({person.strokes} for {jotted}, {kitchen.readings.name})\n")
    return ratio
