"""Buy, used without sense: whatever is asked, typed and taken, the job holds together and undo takes all back."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QLineEdit, QTreeView, QWidget

from desktop.buy.page import BUY
from desktop.count.page import COUNT
from desktop.finish.page import FINISH
from desktop.measure.page import MEASURE
from desktop.state.shown import Page
from shared.checks.job import check_job
from tests.any_order import Chance, take_all_back, usable, use
from tests.window import Keys, Person

TYPED = ("0", "-1", "12", "1.5", "1,5", "1e9", "", "lots", "30 %", "½", "nan", "inf", "1 234,50", "9 m²/L", "=1+1")
PRESSED = (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_End, Qt.Key.Key_Right, Qt.Key.Key_Left)
PAGES = (BUY, BUY, BUY, BUY, FINISH, COUNT, MEASURE)
KINDS = (QLineEdit, QComboBox, QTreeView, QAbstractButton)
ACTS = 150


@pytest.mark.parametrize("seed", [21, 22])
def test_no_order_of_acts_breaks_the_job_and_undo_takes_all_back(person: Person, seed: int) -> None:
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    first, chance = person.shown.job, Chance(seed)
    for _ in range(ACTS):
        _turn(person, chance.one(PAGES) if chance.happens(0.1) else BUY)
        _act(person, chance)
        check_job(person.shown.job)
    person.wait_until(lambda: person.shown.bill is not None and person.shown.bill.job is person.shown.job)
    assert take_all_back(person) is first


def _turn(person: Person, page: Page) -> None:
    person.turn_to(page)
    assert person.shown.page is page


def _act(person: Person, chance: Chance) -> None:
    """One act: something is used, undone, or done again, often before the basket of the act before is reckoned."""
    if chance.happens(0.1):
        person.press(chance.one((Qt.Key.Key_Z, Qt.Key.Key_Y)), Keys.ControlModifier)
        return
    inside = usable(person.app.buy, QWidget)
    things = [thing for thing in inside if isinstance(thing, KINDS) and not _opens_files(thing)]
    if things:
        use(chance.one(things), chance, TYPED, PRESSED, ends=0.8)
    if chance.happens(0.5):
        QTest.qWait(5)
    QApplication.processEvents()


def _opens_files(thing: QWidget) -> bool:
    return isinstance(thing, QAbstractButton) and thing.text().endswith("...")
