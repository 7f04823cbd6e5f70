"""The words beside the figures of a basket: notes on a product, names of totals, and whether the cost is the least."""

from collections.abc import Iterator, Sized

from shared.job import Job
from shared.written.writing import Writing
from takeoff.basket.groups import BasketLine
from takeoff.figures.to_buy import Basket

HOURS_A_DAY = 24


def line_notes(line: BasketLine, writing: Writing) -> Iterator[str]:
    """The notes on a line: what it is for, what comes from the shelf, its pot life, its shelf life once opened."""
    row, product = line.row, line.product
    if product.stands_for and row.wanted != product.name:
        yield f"for {row.wanted}"
    if row.from_shelf:
        yield f"{writing.amount(row.from_shelf, product.measure)} comes from the shelf"
    if product.ratio is not None and product.usable_h is not None:
        yield f"pot life {_hours(product.usable_h, writing)}"
    if row.left_over and row.keeps_days is not None:
        yield f"shelf life once opened {writing.number(row.keeps_days)} days"


def total_lines(basket: Basket, job: Job, writing: Writing) -> Iterator[tuple[str, float]]:
    """The totals and their names: the cost, the tax in it, the budget, and how far the cost is under or over it.

    A basket without prices has no totals, as nobody knows its cost.
    """
    money = job.money
    if not has_prices(basket):
        return
    yield f"Total {money.currency}".strip(), basket.cost
    if money.tax:
        yield f"including tax, {writing.percent(money.tax)}", basket.tax
    if basket.budget:
        yield "Budget", basket.budget
        yield ("Over the budget", basket.over) if basket.over else ("Left of the budget", basket.budget - basket.cost)


def has_prices(basket: Basket) -> bool:
    """Whether any row of a basket has a cost."""
    return any(row.cost is not None for row in basket.rows)


def left_out_head(left_out: Sized) -> str:
    """The heading over the sentences that say what is left out of a basket."""
    return f"Left out, and in no total: {len(left_out)} thing{'' if len(left_out) == 1 else 's'} to look at."


def without_price(basket: Basket) -> str:
    """How many products of a basket have no price: "4 products without a price"; "" if all have one."""
    missing = sum(row.cost is None for row in basket.rows)
    return f"{missing} product{'' if missing == 1 else 's'} without a price" if missing else ""


def verdict(basket: Basket) -> str:
    """A sentence that says whether a cheaper basket is possible, or that prices are missing so that nobody knows."""
    missing = without_price(basket)
    if not has_prices(basket):
        return "Nothing has a price yet, so these packs are the ones that leave least over."
    if missing:
        return f"This is the cost so far: {missing}."
    return PROVED if basket.proved else NOT_PROVED


PROVED = "Proved: no cheaper set of packs covers the job."
NOT_PROVED = "These packs cover the job. There was no time to prove that no cheaper set does."


def _hours(hours: float, writing: Writing) -> str:
    long = hours >= 2 * HOURS_A_DAY
    return f"{writing.number(hours / HOURS_A_DAY)} days" if long else f"{writing.number(hours)} h"
