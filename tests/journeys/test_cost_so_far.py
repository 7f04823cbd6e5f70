"""A basket in which something has no price is told as the cost so far, never as the cheapest, wherever it is told."""

import csv
import io
import json
from functools import cache
from importlib.resources import files

import openpyxl
import pytest
from msgspec.structs import replace

from desktop.buy.page import BUY
from desktop.look.wording import own_writing
from shared.files.job import job_from_json
from shared.job import Job
from shared.trade.products import Product, Use
from takeoff.bill import Bill, make_bill
from takeoff.tables.basket_csv import basket_csv
from takeoff.tables.basket_text import basket_text
from takeoff.tables.basket_why import why_of_bill
from takeoff.tables.shopping_list import basket_html
from takeoff.tables.takeoff_json import takeoff_json
from takeoff.tables.takeoff_xlsx import xlsx_bytes
from takeoff.take_off import take_off
from tests.window import Person

UNPRICED = (Use.CLEAR, Use.CLEANER, Use.ABRASIVE, Use.SLEEVE)

# By hand, from examples/harbour-row-basket.md: 728.50 less the clear 224.00, the degreaser 16.30, the abrasive 15.00
# and the sleeves 27.60. The words are those that the issue asks for.
COST, LEFT = 445.60, 304.40
SO_FAR = "445.60 crowns so far, 4 products without a price"


@cache
def example() -> Job:
    return job_from_json((files("desktop") / "data" / "example.json").read_bytes(), "the example")


@cache
def unpriced() -> Job:
    """The example without prices for the products of four uses."""
    return replace(example(), products=tuple(without(p) if p.use in UNPRICED else p for p in example().products))


def without(product: Product) -> Product:
    return replace(product, packs=tuple(replace(pack, price=None) for pack in product.packs))


@cache
def bill() -> Bill:
    return make_bill(unpriced(), take_off(unpriced()))


def test_no_basket_that_lacks_a_price_is_proved_to_be_the_cheapest() -> None:
    assert make_bill(example(), take_off(example())).basket.proved
    assert not bill().basket.proved
    assert (bill().basket.cost, bill().basket.unpriced) == (COST, 4)


def test_the_terminal_tells_the_cost_so_far() -> None:
    text = basket_text(bill().basket, unpriced(), bill().left_out)
    lines = [" ".join(line.split()) for line in text.splitlines()]
    assert {f"{SO_FAR}.", "Total so far crowns 445.60", "Left of the budget so far 304.40"} <= set(lines)
    assert "Proved" not in text
    why = "\n".join(why_of_bill(take_off(unpriced()), unpriced(), bill())[2])
    assert SO_FAR in why
    assert "Proved" not in why


def test_the_phone_tells_the_cost_so_far() -> None:
    page = basket_html(bill().basket, unpriced(), bill().left_out).decode()
    assert f"<p>{SO_FAR}.</p>" in page
    assert "<th>Total so far crowns</th><td>445.60</td>" in page


def test_the_csv_tells_the_cost_so_far() -> None:
    content = basket_csv(bill().basket, unpriced(), bill().left_out).decode()
    rows = list(csv.DictReader(io.StringIO(content, newline="")))
    totals = {row["product"]: row["cost"] for row in rows if row["row"] == "total"}
    assert totals["cost so far"] == "445.6"
    assert "cost" not in totals
    assert [row["product"] for row in rows if row["row"] == "so far"] == ["4 products without a price"]


def test_the_json_tells_how_many_have_no_price() -> None:
    basket = json.loads(takeoff_json(take_off(unpriced()), unpriced(), bill()))["basket"]
    assert (basket["cost"], basket["proved"], basket["without_price"]) == (COST, False, 4)


def test_the_spreadsheet_tells_the_cost_so_far() -> None:
    content = xlsx_bytes(take_off(unpriced()), unpriced(), bill())
    rows = openpyxl.load_workbook(io.BytesIO(content), data_only=True)["Basket"].iter_rows(values_only=True)
    (total,) = [row for row in rows if str(row[0]).startswith("Total")]
    assert float(str(total[7])) == pytest.approx(COST)
    assert total[8] == "so far, 4 products without a price"


def test_the_window_tells_the_cost_so_far(person: Person) -> None:
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    person.turn_to(BUY)
    person.app.store.edit("No prices", replace(person.shown.job, products=unpriced().products))
    person.wait_until(lambda: person.shown.bill is not None and person.shown.bill.job is person.shown.job)
    page = person.app.buy
    cost = own_writing().money(COST)
    assert page.head.text() == f"{cost} crowns so far, 4 products without a price (budget 750.00)"
    assert person.totals[-1] == f"Basket {cost} so far, 4 products without a price (budget 750.00)"
    assert page.budget.words.text().endswith("; 304.40 left for 4 products without a price.")


def test_what_is_left_out_makes_any_cost_a_cost_so_far() -> None:
    whole = make_bill(example(), take_off(example()))
    text = basket_text(whole.basket, example(), ("The fridge side has no finish; choose one.",))
    assert "728.50 crowns so far, 1 thing left out." in text
    assert "Proved" not in text
