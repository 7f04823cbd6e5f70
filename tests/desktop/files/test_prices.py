"""Prices from a file: its report is read before they are taken; the basket goes to the shop as a list."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from desktop.buy.page import BUY
from shared.edits.finishes import find_product
from tests.window import Keys, Person

LIST = """product;size;price;currency
Ebbstone tile colour, slate blue;1 L;90,00;crowns
Ebbstone bonding primer;1 L;dear;crowns
Quayside wax;0,5 L;12,00;crowns
"""


@pytest.fixture
def shop(person: Person) -> Person:
    """The example, its basket reckoned; the page is Buy."""
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    person.app.store.turn_to(BUY)
    person.wait_until(lambda: person.shown.bill is not None)
    return person


def open_list(person: Person, path: Path, content: str) -> None:
    path.write_text(content, "utf-8")
    person.click(person.app.buy.prices)
    person.fill_file_dialog(path)


def test_the_report_of_a_list_is_shown_before_its_prices_are_taken(shop: Person, tmp_path: Path) -> None:
    before = shop.shown.job
    open_list(shop, tmp_path / "shop.csv", LIST)
    form = shop.app.prices.form
    shop.wait_until(form.isVisible)

    assert shop.shown.job is before
    assert form.head.text() == "1 pack gets a price, 2 lines left out."
    report = form.report.toPlainText()
    assert "decimal comma" in report
    assert "line 3" in report
    assert "Quayside wax" in report

    shop.press(Qt.Key.Key_Return)
    assert not form.isVisible()
    assert find_product(shop.shown.job, "tile-colour").packs[0].price == 90
    assert shop.app.buy.tree.hasFocus()
    shop.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert shop.shown.job is before


def test_what_the_job_does_not_have_is_added_on_demand(shop: Person, tmp_path: Path) -> None:
    open_list(shop, tmp_path / "shop.csv", LIST)
    form = shop.app.prices.form
    shop.wait_until(form.isVisible)
    form.adds.setFocus()
    shop.press(Qt.Key.Key_Space)
    assert form.head.text() == "2 packs get a price, 1 line left out."

    form.do.setFocus()
    shop.press(Qt.Key.Key_Return)
    assert any(product.name == "Quayside wax" for product in shop.shown.job.products)


def test_escape_takes_nothing(shop: Person, tmp_path: Path) -> None:
    before = shop.shown.job
    open_list(shop, tmp_path / "shop.csv", LIST)
    shop.wait_until(shop.app.prices.form.isVisible)
    shop.press(Qt.Key.Key_Escape)

    assert not shop.app.prices.form.isVisible()
    assert shop.shown.job is before


def wait_for_notice(person: Person, words: str) -> None:
    person.wait_until(lambda: words in person.app.window.notice.text())


USELESS = {
    "product;size;price;currency\nA;1 L;2;crowns\nB;1 L;2;thalers\n": "two currencies",
    "product;size;price;currency\nEbbstone bonding primer;1 L;2;thalers\n": "thalers",
    "nothing of use\n": "no column",
}


def test_a_list_that_cannot_be_taken_is_refused_in_words(
    shop: Person, tmp_path: Path, subtests: pytest.Subtests
) -> None:
    before = shop.shown.job
    for content, words in USELESS.items():
        with subtests.test(words):
            shop.app.tell("")
            open_list(shop, tmp_path / "shop.csv", content)
            wait_for_notice(shop, words)

            assert not shop.app.prices.form.isVisible()
            assert shop.shown.job is before


@pytest.mark.parametrize("name", ["list.html", "basket.csv"])
def test_the_shopping_list_is_written(shop: Person, tmp_path: Path, name: str) -> None:
    path = tmp_path / name
    shop.press(Qt.Key.Key_L, Keys.ControlModifier)
    shop.fill_file_dialog(path)
    shop.wait_until(path.exists)

    assert "Ebbstone tile colour, slate blue" in path.read_text("utf-8")
