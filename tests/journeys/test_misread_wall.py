"""A wall with one misread number: the program names it; typed again, what was drawn on it follows."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from geometry.outlines.measured import outline_box
from shared.trade.kinds import Kind
from tests.journeys.by_hand import Page, assert_as_by_hand
from tests.window import Keys, Person

PAGE = Page(Path(__file__).parent / "misread-wall-by-hand.md")


@pytest.fixture
def misread(person: Person) -> Person:
    """The wall, set out with a misread number and drawn, then checked by a chain."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.read("3000")
    person.press(Qt.Key.Key_O, Keys.AltModifier)
    person.read("600, 1050, 1950, 2410")
    person.press(Qt.Key.Key_U, Keys.AltModifier)
    person.read("600 door, 450 drawers 3, 900 pair, 460 open, 590 door, splashback")
    person.press(Qt.Key.Key_O, Keys.AltModifier)
    person.read("chain 600, 450, 900, 450, 600")
    return person


def test_the_misread_number_is_named_and_nothing_moves_before_the_person_decides(misread: Person) -> None:
    (finding,) = [each for each in misread.shown.takeoff.findings if each.code == "readings"]
    assert "Measure the 2410 from the left end to 2410 again first" in finding.message
    assert _cabinets(misread)[-2:] == [(1950, 2410), (2410, 3000)]


def test_typed_again_all_that_stands_on_it_follows_and_the_takeoff_is_as_by_hand(misread: Person) -> None:
    form = misread.app.measure.details.readings
    row = form.table.topLevelItem(3)
    assert row is not None
    assert row.text(1) == "2410"
    form.table.setCurrentItem(row)
    form.again.setFocus()
    form.again.selectAll()
    misread.type("2400")
    misread.press(Qt.Key.Key_Return)

    assert _cabinets(misread)[-2:] == [(1950, 2400), (2400, 3000)]
    assert misread.shown.takeoff.findings == ()
    assert_as_by_hand(misread.shown.job, misread.shown.takeoff, PAGE)


def _cabinets(person: Person) -> list[tuple[float, float]]:
    """Left and right of each cabinet, from left to right."""
    face = person.shown.shown_face
    assert face is not None
    boxes = [outline_box(part.outline) for part in face.parts if part.kind is Kind.CABINET]
    return sorted((box[0], box[2]) for box in boxes)
