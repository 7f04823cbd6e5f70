"""Finish, used without sense: whatever is chosen, typed and pressed, the job holds together and undo takes all back."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QLineEdit, QTreeWidget, QWidget

from desktop.finish.page import FINISH, Heading
from shared.checks.job import check_job
from tests.any_order import Chance, take_all_back, usable, use
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
KINDS = (QLineEdit, QComboBox, QTreeWidget, QAbstractButton)
ACTS = 200


@pytest.mark.parametrize("seed", [11, 12])
def test_no_order_of_acts_breaks_the_job_and_undo_takes_all_back(person: Person, seed: int) -> None:
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    person.press(Qt.Key.Key_2, Keys.ControlModifier)
    first, chance = person.shown.job, Chance(seed)
    for _ in range(ACTS):
        _act(person, chance)
        check_job(person.shown.job)
    assert person.shown.page is FINISH
    assert take_all_back(person) is first


def _act(person: Person, chance: Chance) -> None:
    """One act: something is picked, or a field, choice, list or button of what is in sight is used."""
    page = person.app.finish
    page.heading(chance.one(list(Heading))).click()
    face = person.shown.shown_face
    if chance.happens(0.1) and face is not None:
        person.app.store.pick(tuple(dict.fromkeys(chance.one(face.parts).id for _ in range(chance.below(4)))))
    place = chance.one((page.open_section, page.open_section, page.picked))
    things = [thing for thing in usable(place, QWidget) if isinstance(thing, KINDS)]
    if things:
        use(chance.one(things), chance, TYPED, PRESSED)
    QApplication.processEvents()
