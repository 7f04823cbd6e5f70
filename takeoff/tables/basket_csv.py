"""The basket as comma-separated values: products, the packs to buy of each, totals."""

from collections.abc import Iterator, Sequence

from shared.job import Job
from takeoff.basket.cheapest import price_with_tax
from takeoff.basket.groups import BasketLine, basket_groups
from takeoff.basket.words import has_prices, open_points
from takeoff.figures.to_buy import Basket
from takeoff.tables.takeoff_csv import DIGITS, Cell, csv_bytes

HEADINGS = (
    "row",
    "group",
    "id",
    "product",
    "unit",
    "needed",
    "from shelf",
    "left over",
    "pack",
    "pack size",
    "packs",
    "price with tax",
    "cost",
)


def basket_csv(basket: Basket, job: Job, left_out: Sequence[str] = ()) -> bytes:
    """The basket as the content of a CSV file, in the form of `takeoff.tables.takeoff_csv`.

    The first column says what a row is. There is a row for each product, followed by one for each pack to buy of it.
    The totals come next, if anything has a price; their unit is the currency. If they do not hold all, they are named
    "so far", and a row says what they lack. The sentences of `left_out`, which say what is in no total, come last, in
    the column of products. Amounts are in litres, metres and pieces.
    """
    missing = (("left out", "", "", words, *[""] * 9) for words in left_out)
    return csv_bytes(HEADINGS, (*_rows(basket, job), *_totals(basket, job, left_out), *missing))


def _rows(basket: Basket, job: Job) -> Iterator[tuple[Cell, ...]]:
    for group in basket_groups(basket, job):
        for line in group.lines:
            yield _product_cells(group.name, line)
            yield from _pack_cells(group.name, line, job)


def _totals(basket: Basket, job: Job, left_out: Sequence[str]) -> Iterator[tuple[Cell, ...]]:
    lacking = open_points(basket, left_out)
    so_far = " so far" if lacking else ""
    if has_prices(basket):
        costs = ((f"cost{so_far}", basket.cost), (f"tax{so_far}", basket.tax))
        for name, amount in (*costs, ("budget", basket.budget), (f"over{so_far}", basket.over)):
            yield ("total", "", "", name, job.money.currency, *[""] * 7, amount)
    if lacking:
        yield ("so far", "", "", lacking, *[""] * 9)


def _product_cells(group: str, line: BasketLine) -> tuple[Cell, ...]:
    row, product = line.row, line.product
    amounts = (round(amount, DIGITS) for amount in (row.need, row.from_shelf, row.left_over))
    words = ("product", group, product.id, product.called, product.measure.value)
    return (*words, *amounts, *[""] * 4, _cost(row.cost))


def _pack_cells(group: str, line: BasketLine, job: Job) -> Iterator[tuple[Cell, ...]]:
    product = line.product
    for pack, many in line.row.packs:
        price = None if pack.price is None else price_with_tax(pack.price, job.money)
        cost = None if price is None else round(many * price, 2)
        words = ("pack", group, product.id, product.called, product.measure.value, "", "", "")
        yield (*words, pack.name, round(pack.size, DIGITS), many, _cost(price), _cost(cost))


def _cost(amount: float | None) -> Cell:
    return "" if amount is None else amount
