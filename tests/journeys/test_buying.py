"""From an empty job to the shop: draw, price by a list, go over the budget and back, write the list, undo all."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from desktop.buy.page import BUY
from takeoff.bill import Bill
from tests.window import Keys, Person


@pytest.fixture
def kitchen(person: Person) -> Person:
    """A wall with doors and a splashback, from an empty job."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.read("3000")
    person.press(Qt.Key.Key_U, Keys.AltModifier)
    person.read("600 door, 900 pair, splashback")
    return person


def bill_of(person: Person) -> Bill:
    person.wait_until(lambda: person.shown.bill is not None and person.shown.bill.job is person.shown.job)
    assert person.shown.bill is not None
    return person.shown.bill


def price_list(person: Person) -> str:
    """What a shop hands out: every pack of the job at 20 crowns, as a CSV."""
    lines = [
        f'"{product.name}",{pack.size} {product.measure},20.00,crowns'
        for product in person.shown.job.products
        for pack in product.packs
    ]
    return "\n".join(("product,size,price,currency", *lines))


def test_from_an_empty_job_to_the_shop_and_back(kitchen: Person, tmp_path: Path) -> None:
    drawn = kitchen.shown.job
    kitchen.turn_to(BUY)
    assert bill_of(kitchen).basket.cost == 0
    assert kitchen.app.buy.head.text().endswith("no prices yet")

    prices = tmp_path / "shop.csv"
    prices.write_text(price_list(kitchen), "utf-8")
    kitchen.click(kitchen.app.buy.prices)
    kitchen.fill_file_dialog(prices)
    kitchen.wait_until(kitchen.app.prices.form.isVisible)
    kitchen.press(Qt.Key.Key_Return)
    cost = bill_of(kitchen).basket.cost
    assert cost > 0
    assert all(row.cost is not None for row in bill_of(kitchen).basket.rows)

    kitchen.app.buy.budget.field.setFocus()
    kitchen.read(f"{cost - 10:.0f}")
    assert bill_of(kitchen).basket.over
    savings = kitchen.app.buy.savings
    kitchen.wait_until(savings.isVisible)
    savings.buttons[0].setFocus()
    kitchen.press(Qt.Key.Key_Return)
    kitchen.wait_until(kitchen.app.buy.what_if.outcome.isVisible)
    kitchen.app.buy.what_if.take.setFocus()
    kitchen.press(Qt.Key.Key_Return)
    assert not bill_of(kitchen).basket.over

    written = tmp_path / "list.html"
    kitchen.click(kitchen.app.buy.shopping_list)
    kitchen.fill_file_dialog(written)
    kitchen.wait_until(written.exists)

    for _ in range(3):
        kitchen.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert kitchen.shown.job is drawn
