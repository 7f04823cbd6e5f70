"""Buy: the basket with its why, the budget, and what would be if something were another."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QListWidget

from desktop.buy.page import BUY
from desktop.look.wording import TIMES
from desktop.sums.basket import buy_rows
from desktop.sums.row import SumRow
from shared.edits.finishes import find_product
from tests.window import Keys, Person


@pytest.fixture
def shop(person: Person) -> Person:
    """The example, its basket reckoned; the page is Buy."""
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    turn_to_buy(person)
    return person


def turn_to_buy(person: Person) -> None:
    person.turn_to(BUY)
    person.wait_until(lambda: is_reckoned(person))


def is_reckoned(person: Person) -> bool:
    bill = person.shown.bill
    return bill is not None and bill.job is person.shown.job


def cost(person: Person) -> float:
    person.wait_until(lambda: is_reckoned(person))
    assert person.shown.bill is not None
    return person.shown.bill.basket.cost


def row_of(person: Person, name: str) -> SumRow:
    assert person.shown.bill is not None
    rows = buy_rows(person.shown.bill, person.shown.takeoff)
    return next(row for group in rows for row in group.children if row.cells[0] == name)


def all_words(row: SumRow) -> Iterator[str]:
    for child in row.children:
        yield child.cells[0]
        yield from all_words(child)


def pick(person: Person, name: str) -> None:
    assert person.app.buy.tree.pick(row_of(person, name).key)


def ask(person: Person, what: str, value: str) -> None:
    """Choose what is changed, of what is picked, and type what it would be; wait for the outcome."""
    form = person.app.buy.what_if
    form.choose(what)
    row = person.app.buy.tree.row
    assert row is not None
    form.suggest(row.key.partition(" ")[2])
    form.field.setFocus()
    form.field.selectAll()
    person.read(value)
    person.wait_until(form.outcome.isVisible)


def test_the_keys_are_in_the_basket_and_it_says_whether_it_is_the_cheapest(shop: Person) -> None:
    assert shop.app.buy.tree.hasFocus()
    assert shop.app.buy.head.text() == "Cheapest that covers the job: 728.50 crowns (budget 750.00)"


def test_every_product_is_a_row_with_packs_and_cost(shop: Person) -> None:
    cells = row_of(shop, "Ebbstone tile colour, slate blue").cells

    assert cells[2:] == (f"2 {TIMES} 1 L kit", "146 mL", "180 d", "168.00")


def test_a_row_unfolds_into_the_sum_of_its_need_down_to_parts_and_into_its_packs(shop: Person) -> None:
    words = tuple(all_words(row_of(shop, "Ebbstone bonding primer")))

    assert any(line.endswith("3.774 m² \N{DIVISION SIGN} 10 = 0.377 L") for line in words)
    assert any(line.startswith("allowance, 5 % more") for line in words)
    assert any("A1" in line and "m²" in line for line in words)
    assert f"1 {TIMES} 0.5 L tin at 19.00 = 19.00" in words
    assert f"3 {TIMES} 0.5 L tin would cost 57.00, 6.00 more." in words
    assert "One pack more would cost 19.00." in words


def test_a_stand_in_that_costs_more_is_said(shop: Person) -> None:
    words = all_words(row_of(shop, "Ebbstone satin, sage"))

    assert f"Larkmoor satin, sage, 1 {TIMES} 0.5 L tin, 2 {TIMES} 1 L tin would cost 125.50, 1.50 more." in words


def test_a_picked_row_lights_up_what_it_is_for(shop: Person) -> None:
    pick(shop, "Ebbstone tile colour, slate blue")

    assert shop.shown.lit == row_of(shop, "Ebbstone tile colour, slate blue").parts


def test_a_price_is_tried_taken_and_taken_back(shop: Person) -> None:
    before = shop.shown.job
    pick(shop, "Ebbstone tile colour, slate blue")
    ask(shop, "a price", "90")
    form = shop.app.buy.what_if

    assert shop.shown.job is before
    assert form.cost.text() == "740.50; 12.00 more"
    form.take.setFocus()
    shop.press(Qt.Key.Key_Return)
    assert find_product(shop.shown.job, "tile-colour").packs[0].price == 90
    assert cost(shop) == pytest.approx(740.5)
    assert not form.outcome.isVisible()
    shop.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert shop.shown.job is before


def test_a_spread_rate_is_tried_and_dropped(shop: Person) -> None:
    before = shop.shown.history
    pick(shop, "Ebbstone tile colour, slate blue")
    ask(shop, "a spread rate", "6")
    form = shop.app.buy.what_if

    assert f"instead of 2 {TIMES} 1 L kit" in form.rows.text().replace("\N{NO-BREAK SPACE}", " ")
    form.drop.setFocus()
    shop.press(Qt.Key.Key_Return)
    assert not form.outcome.isVisible()
    assert shop.shown.history is before
    assert form.field.text() == "9 m²/L"


def test_questions_add_up(shop: Person) -> None:
    pick(shop, "Ebbstone tile colour, slate blue")
    ask(shop, "a price", "90")
    pick(shop, "Ebbstone bonding primer")
    ask(shop, "a price", "20")
    form = shop.app.buy.what_if

    shop.wait_until(lambda: form.cost.text() == "741.50; 13.00 more")
    assert form.said.text().count("instead of") == 2


def test_another_product_is_tried(shop: Person) -> None:
    form = shop.app.buy.what_if
    form.choose("a product", "satin, sage")
    form.option.setFocus()
    form.option.setCurrentText("Larkmoor satin, sage")
    form.option.activated.emit(form.option.currentIndex())
    shop.wait_until(form.outcome.isVisible)

    assert form.cost.text() == "730.00; 1.50 more"


def test_another_finish_of_a_kind_is_tried(shop: Person) -> None:
    form = shop.app.buy.what_if
    form.choose("a finish", "splashback")
    form.option.setCurrentText("Benchtop, sand")
    form.option.activated.emit(form.option.currentIndex())
    shop.wait_until(form.outcome.isVisible)

    assert "less" in form.cost.text()


def test_over_the_budget_it_says_what_would_bring_it_under_and_that_can_be_tried_and_taken(shop: Person) -> None:
    form = shop.app.buy.budget
    form.field.setFocus()
    form.field.selectAll()
    shop.read("700")
    assert cost(shop) > 700
    savings = shop.app.buy.savings
    shop.wait_until(savings.isVisible)
    assert "28.50 over the budget" in form.words.text()

    savings.buttons[0].setFocus()
    shop.press(Qt.Key.Key_Return)
    what_if = shop.app.buy.what_if
    shop.wait_until(what_if.outcome.isVisible)
    what_if.take.setFocus()
    shop.press(Qt.Key.Key_Return)
    assert cost(shop) <= 700
    shop.wait_until(lambda: not savings.isVisible())
    assert "left" in form.words.text()


def test_a_price_that_makes_no_sense_is_refused_in_words(shop: Person) -> None:
    before = shop.shown.job
    form = shop.app.buy.what_if
    form.choose("a price")
    form.field.setFocus()
    form.field.selectAll()
    shop.read("-3")

    assert form.trouble.isVisible()
    assert form.trouble.text()
    assert shop.shown.job is before


def test_prices_that_nobody_has_typed_are_one_thing_to_look_at_and_lead_to_buy(person: Person) -> None:
    kitchen(person)
    turn_to_buy(person)
    assert person.app.buy.head.text().endswith("no prices yet")
    person.press(Qt.Key.Key_1, Keys.ControlModifier)
    without = [finding for finding in person.shown.findings if finding.code == "no-price"]
    assert len(without) == 1

    person.press(Qt.Key.Key_F8)
    words = person.app.frame.findings.findChild(QListWidget)
    assert isinstance(words, QListWidget)
    words.setCurrentRow(person.shown.findings.index(without[0]))
    assert words.currentItem().text().startswith("Basket   ")
    person.press(Qt.Key.Key_Return)
    assert person.shown.page is BUY


def test_from_an_empty_job_a_price_is_typed_and_taken(person: Person) -> None:
    kitchen(person)
    before = person.shown.job
    turn_to_buy(person)
    name = person.app.buy.tree.rows.row_at(person.app.buy.tree.rows.index(0, 0))
    assert name is not None
    pick(person, name.children[0].cells[0])
    ask(person, "a price", "19.90")
    person.app.buy.what_if.take.setFocus()
    person.press(Qt.Key.Key_Return)

    assert cost(person) > 0
    person.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert person.shown.job is before


def kitchen(person: Person) -> None:
    """A wall with a row of cabinets, from an empty job."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.read("3000")
    person.press(Qt.Key.Key_U, Keys.AltModifier)
    person.read("600 door, 900 pair, splashback")
    person.wait_until(lambda: is_reckoned(person))


def test_the_keys_go_from_the_basket_to_what_if_and_back(shop: Person) -> None:
    shop.press(Qt.Key.Key_F6)
    assert shop.app.buy.what_if.what.hasFocus()
    shop.press(Qt.Key.Key_F6)
    assert shop.app.buy.tree.hasFocus()
