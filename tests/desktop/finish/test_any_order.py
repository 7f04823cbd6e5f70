"""Finish, used without sense: whatever is chosen, typed and pressed, the job holds together and undo takes all back."""

from collections.abc import Sequence
from typing import TypeVar

import pytest
from PySide6.QtCore import QRandomGenerator, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QLineEdit, QTreeWidget, QWidget

from desktop.finish.page import FINISH, Heading
from shared.checks.job import check_job
from tests.window import Keys, Person

TYPED = (
    "0",
    "-1",
    "4:1",
    "0:1",
    "12",
    "1.5",
    "300 mL",
    "0 L",
    "4 m",
    "",
    "1e9",
    "tile",
    "#123456",
    "#xyz",
    "30 %",
    "½",
)
PRESSED = (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_End, Qt.Key.Key_Insert, Qt.Key.Key_Delete)
ACTS = 200

Thing = TypeVar("Thing")


@pytest.mark.parametrize("seed", [11, 12])
def test_no_order_of_acts_breaks_the_job_and_undo_takes_all_back(person: Person, seed: int) -> None:
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    person.press(Qt.Key.Key_2, Keys.ControlModifier)
    first, chance = person.shown.job, QRandomGenerator(seed)
    for _ in range(ACTS):
        _act(person, chance)
        check_job(person.shown.job)
    assert person.shown.page is FINISH
    while person.shown.history.can_undo:
        person.app.store.undo()
    assert person.shown.job is first


def _act(person: Person, chance: QRandomGenerator) -> None:
    """One act: something is picked, or a field, choice, list or button of what is in sight is used."""
    page = person.app.finish
    page.heading(_one(list(Heading), chance)).click()
    face = person.shown.shown_face
    if chance.generateDouble() < 0.1 and face is not None:
        person.app.store.pick(tuple(dict.fromkeys(_one(face.parts, chance).id for _ in range(chance.bounded(4)))))
    place = _one((page.open_section, page.open_section, page.picked), chance)
    kinds = (QLineEdit, QComboBox, QTreeWidget, QAbstractButton)
    things = [thing for thing in place.findChildren(QWidget) if isinstance(thing, kinds)]
    usable = [thing for thing in things if thing.isVisible() and thing.isEnabled()]
    if usable:
        _use(_one(usable, chance), chance)
    QApplication.processEvents()


def _use(thing: QWidget, chance: QRandomGenerator) -> None:
    thing.setFocus()
    if isinstance(thing, QLineEdit):
        thing.selectAll()
        QTest.keyClicks(thing, _one(TYPED, chance))
        QTest.keyClick(thing, _one((Qt.Key.Key_Return, Qt.Key.Key_Tab), chance))
    elif isinstance(thing, QAbstractButton):
        QTest.mouseClick(thing, Qt.MouseButton.LeftButton)
    else:
        QTest.keyClick(thing, _one(PRESSED, chance))


def _one(things: Sequence[Thing], chance: QRandomGenerator) -> Thing:
    return things[chance.bounded(len(things))]
