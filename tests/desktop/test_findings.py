"""Things to look at."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QListWidget

from tests.window import Keys, Person


@pytest.fixture
def gap(person: Person) -> Person:
    """Two cabinets that miss each other by 3 mm; the page is Count."""
    person.click(person.app.start.new)
    person.type("3600")
    person.press(Qt.Key.Key_Tab)
    person.read("2400")
    person.draw_boxes("cab", ("0", "150", "600", "720"), ("603", "150", "600", "720"))
    person.app.store.pick(())
    person.press(Qt.Key.Key_2, Keys.ControlModifier)
    return person


def test_the_bar_says_how_many_things_there_are(gap: Person) -> None:
    number = len(gap.shown.takeoff.findings)

    assert number > 0
    assert gap.app.bar.findings.text().startswith(str(number))


def test_a_thing_to_look_at_leads_to_its_parts(gap: Person) -> None:
    gap.press(Qt.Key.Key_F8)
    gap.press(Qt.Key.Key_Return)

    finding = gap.shown.takeoff.findings[0]
    assert gap.shown.page.value == "Measure"
    assert set(gap.shown.picked) == set(finding.parts)
    assert gap.app.frame.findings.isVisible()


def test_escape_puts_the_list_away(gap: Person) -> None:
    gap.press(Qt.Key.Key_F8)
    gap.press(Qt.Key.Key_Escape)

    assert not gap.app.frame.findings.isVisible()


def test_a_finding_that_is_mended_leaves_the_list(gap: Person) -> None:
    words = gap.app.frame.findings.findChild(QListWidget)
    assert isinstance(words, QListWidget)
    before = words.count()
    gap.press(Qt.Key.Key_Z, Keys.ControlModifier)

    assert words.count() < before
