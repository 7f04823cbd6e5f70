"""The words beside the figures of a basket: notes on a product, names of totals, and how final the cost is."""

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


def total_lines(basket: Basket, job: Job, writing: Writing, left_out: Sized = ()) -> Iterator[tuple[str, float]]:
    """The totals and their names: the cost, the tax in it, the budget, and how far the cost is under or over it.

    A cost that does not hold all is named "Total so far". A basket without prices has no totals, as nobody knows its
    cost.
    """
    money, so_far = job.money, " so far" if open_points(basket, left_out) else ""
    if not has_prices(basket):
        return
    yield f"Total{so_far} {money.currency}".strip(), basket.cost
    if money.tax:
        yield f"including tax, {writing.percent(money.tax)}", basket.tax
    if basket.budget:
        left = (f"Left of the budget{so_far}", basket.budget - basket.cost)
        yield "Budget", basket.budget
        yield ("Over the budget", basket.over) if basket.over else left


def has_prices(basket: Basket) -> bool:
    """Whether any row of a basket has a cost."""
    return any(row.cost is not None for row in basket.rows)


def left_out_head(left_out: Sized) -> str:
    """The heading over the sentences that say what is left out of a basket."""
    return f"Left out, and in no total: {len(left_out)} thing{'' if len(left_out) == 1 else 's'} to look at."


def without_price(basket: Basket) -> str:
    """How many products of a basket have no price: "4 products without a price"; "" if all have one."""
    return _counted(basket.unpriced, "product", "without a price")


def open_points(basket: Basket, left_out: Sized = ()) -> str:
    """What the cost of a basket does not hold: "4 products without a price, 2 things left out"; "" if it holds all."""
    return ", ".join(filter(None, (without_price(basket), _counted(len(left_out), "thing", "left out"))))


def cost_words(cost: str, basket: Basket, left_out: Sized = ()) -> str:
    """A written cost, and what it does not hold: "528.00 so far, 4 products without a price"; else the cost alone."""
    points = open_points(basket, left_out)
    return f"{cost} so far, {points}" if points else cost


def verdict(basket: Basket, job: Job, writing: Writing, left_out: Sized = ()) -> str:
    """Words that say whether a cheaper basket is possible, or what the cost does not hold, so that nobody knows."""
    if not has_prices(basket):
        return "Nothing has a price yet, so these are the fewest packs that cover the job."
    if open_points(basket, left_out):
        return f"{cost_words(writing.money(basket.cost, job.money.currency), basket, left_out)}."
    return PROVED if basket.proved else NOT_PROVED


PROVED = "Proved: no cheaper set of packs covers the job."
NOT_PROVED = "These packs cover the job. There was no time to prove that no cheaper set does."


def _counted(many: int, one: str, how: str) -> str:
    return f"{many} {one}{'' if many == 1 else 's'} {how}" if many else ""


def _hours(hours: float, writing: Writing) -> str:
    long = hours >= 2 * HOURS_A_DAY
    return f"{writing.number(hours / HOURS_A_DAY)} days" if long else f"{writing.number(hours)} h"
