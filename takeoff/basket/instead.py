"""Other ways to buy for a piece of work: an interchangeable product, and packs of one size only."""

from collections.abc import Iterator
from itertools import chain

from msgspec.structs import replace

from shared.edits.finishes import find_product, with_changed_product
from shared.job import Job
from takeoff.basket.cheapest import basket
from takeoff.figures.to_buy import Basket, BasketRow, Need, Needs, Wanted


def other_packs(job: Job, needs: Needs, bought: Basket) -> tuple[BasketRow, ...]:
    """The rows that could be bought instead of those in the basket `bought`, work by work, the cheapest first.

    They show that nothing cheaper was passed over. Rows without a price are left out, and so is work that the shelf
    covers.
    """
    return tuple(
        row
        for wanted in needs.wanted
        if (taken := taken_for(wanted, bought)) is not None and taken.packs
        for row in sorted(_others(job, needs, wanted, taken), key=_cost)
    )


def taken_for(wanted: Wanted, bought: Basket) -> BasketRow | None:
    """The row of a basket that covers this work; None if nothing is bought for it."""
    options = {need.product for need in wanted.options}
    return next((row for row in bought.rows if row.wanted == wanted.name and row.product in options), None)


def _others(job: Job, needs: Needs, wanted: Wanted, taken: BasketRow) -> tuple[BasketRow, ...]:
    """The other rows that have a cost, each once, without the row that is taken."""
    rows = chain.from_iterable(_rows(job, needs, wanted, need) for need in wanted.options)
    others = (row for row in rows if row.cost is not None)
    return tuple(dict.fromkeys(row for row in others if (row.product, row.packs) != (taken.product, taken.packs)))


def _rows(job: Job, needs: Needs, wanted: Wanted, need: Need) -> Iterator[BasketRow]:
    """The row of the cheapest packs of one product, then a row for packs of each one size."""
    alone = needs._replace(wanted=(Wanted(wanted.name, (need,)),))
    product = find_product(job, need.product)
    yield from basket(job, alone).rows
    for pack in product.packs:
        yield from basket(with_changed_product(job, replace(product, packs=(pack,))), alone).rows


def _cost(row: BasketRow) -> float:
    return row.cost or 0.0
