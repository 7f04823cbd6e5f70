"""Buy, used without sense: whatever is asked, typed and taken, the job holds together and undo takes all back."""

from collections.abc import Sequence
from typing import TypeVar

import pytest
from PySide6.QtCore import QRandomGenerator, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QLineEdit, QTreeView, QWidget

from desktop.buy.page import BUY
from desktop.count.page import COUNT
from desktop.finish.page import FINISH
from desktop.measure.page import MEASURE
from desktop.state.shown import Page
from shared.checks.job import check_job
from tests.window import Keys, Person

TYPED = ("0", "-1", "12", "1.5", "1,5", "1e9", "", "lots", "30 %", "½", "nan", "inf", "1 234,50", "9 m²/L", "=1+1")
PRESSED = (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_End, Qt.Key.Key_Right, Qt.Key.Key_Left)
PAGES = (BUY, BUY, BUY, BUY, FINISH, COUNT, MEASURE)
ACTS = 150

Thing = TypeVar("Thing")


@pytest.mark.parametrize("seed", [21, 22])
def test_no_order_of_acts_breaks_the_job_and_undo_takes_all_back(person: Person, seed: int) -> None:
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    first, chance = person.shown.job, QRandomGenerator(seed)
    for _ in range(ACTS):
        _turn(person, _one(PAGES, chance) if chance.generateDouble() < 0.1 else BUY)
        _act(person, chance)
        check_job(person.shown.job)
    person.wait_until(lambda: person.shown.bill is not None and person.shown.bill.job is person.shown.job)
    while person.shown.history.can_undo:
        person.app.store.undo()
    assert person.shown.job is first


def _turn(person: Person, page: Page) -> None:
    person.turn_to(page)
    assert person.shown.page is page


def _act(person: Person, chance: QRandomGenerator) -> None:
    """One act: something is used, undone, or done again, often before the basket of the act before is reckoned."""
    if chance.generateDouble() < 0.1:
        person.press(_one((Qt.Key.Key_Z, Qt.Key.Key_Y), chance), Keys.ControlModifier)
        return
    kinds = (QLineEdit, QComboBox, QTreeView, QAbstractButton)
    things = [thing for thing in person.app.buy.findChildren(QWidget) if isinstance(thing, kinds)]
    usable = [thing for thing in things if thing.isVisible() and thing.isEnabled() and not _opens_files(thing)]
    if usable:
        _use(_one(usable, chance), chance)
    if chance.generateDouble() < 0.5:
        QTest.qWait(5)
    QApplication.processEvents()


def _opens_files(thing: QWidget) -> bool:
    return isinstance(thing, QAbstractButton) and thing.text().endswith("...")


def _use(thing: QWidget, chance: QRandomGenerator) -> None:
    thing.setFocus()
    if isinstance(thing, QLineEdit):
        thing.selectAll()
        QTest.keyClicks(thing, _one(TYPED, chance))
        if chance.generateDouble() < 0.8:  # else the hand goes elsewhere in the midst of typing
            QTest.keyClick(thing, _one((Qt.Key.Key_Return, Qt.Key.Key_Tab), chance))
    elif isinstance(thing, QAbstractButton):
        QTest.mouseClick(thing, Qt.MouseButton.LeftButton)
    else:
        QTest.keyClick(thing, _one(PRESSED, chance))


def _one(things: Sequence[Thing], chance: QRandomGenerator) -> Thing:
    return things[chance.bounded(len(things))]
