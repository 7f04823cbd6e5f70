"""The page Finish for tests: jobs that are open on it, and what a person does there."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QWidget

from desktop.finish.page import Heading
from takeoff.figures.to_buy import Basket, Needs
from tests.window import Keys, Person


@pytest.fixture
def example_on_finish(person: Person) -> Person:
    """The example, on the page Finish, its basket reckoned."""
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    person.press(Qt.Key.Key_2, Keys.ControlModifier)
    bill_of(person)
    return person


@pytest.fixture
def wall_on_finish(person: Person) -> Person:
    """A job begun from nothing, with a row of doors and a splashback, on the page Finish."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.read("3000")
    person.press(Qt.Key.Key_U, Keys.AltModifier)
    person.read("600 door, 900 pair, splashback")
    person.press(Qt.Key.Key_2, Keys.ControlModifier)
    bill_of(person)
    return person


def open_section(person: Person, heading: Heading) -> None:
    person.app.finish.heading(heading).setFocus()
    person.press(Qt.Key.Key_Space)
    assert person.app.finish.heading(heading).isChecked()


def choose(person: Person, box: QComboBox, place: int) -> None:
    box.setFocus()
    person.press(Qt.Key.Key_Home)
    for _ in range(place):
        person.press(Qt.Key.Key_Down)
    assert box.currentIndex() == place


def choose_step(person: Person, place: int) -> None:
    go_to(person, person.app.finish.build_up.steps.tree, place)
    assert person.app.finish.build_up.steps.place == place


def choose_product(person: Person, place: int) -> None:
    go_to(person, person.app.finish.products.products.tree, place)
    assert person.app.finish.products.products.place == place


def go_to(person: Person, tree: QWidget, place: int) -> None:
    tree.setFocus()
    person.press(Qt.Key.Key_Home)
    for _ in range(place):
        person.press(Qt.Key.Key_Down)


def type_into(person: Person, row: QWidget, text: str) -> None:
    row.setFocus()
    person.press(Qt.Key.Key_A, Keys.ControlModifier)
    person.read(text)


def bill_of(person: Person) -> tuple[Needs, Basket]:
    """What the job as it is needs, and its basket, once they were reckoned."""

    def known() -> bool:
        bill = person.shown.bill
        return bill is not None and bill.job is person.shown.job

    person.wait_until(known)
    bill = person.shown.bill
    assert bill is not None
    return bill.needs, bill.basket


def needed(person: Person, product: str) -> float:
    options = [need for wanted in bill_of(person)[0].wanted for need in wanted.options]
    return next(need.amount.amount for need in options if need.product == product)
