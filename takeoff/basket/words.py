"""What a basket says in words: packs, what is left over, what it costs, whether that is the least."""

from collections.abc import Iterable, Iterator, Sized

from shared.job import Job
from shared.trade.products import Measure, Product
from shared.typed.packs import show_amount, show_size
from shared.written.money import show_money
from takeoff.basket.groups import BasketGroup, BasketLine
from takeoff.figures.to_buy import Basket, Bought

HOURS_A_DAY = 24

NO_PRICE = "no price"


def packs_words(packs: Iterable[Bought], product: Product, job: Job) -> str:
    """The packs to buy: "2 x 1 L kit, 1 x 0.5 L tin"; "none" where the shelf has enough."""
    return ", ".join(f"{each.many} x {pack_words(each, product, job)}" for each in packs) or "none"


def pack_words(bought: Bought, product: Product, job: Job) -> str:
    """One pack: "1 L kit", "box of 25"."""
    size, name = show_size(bought.pack.size, product.measure, job.unit), bought.pack.name
    return f"{name or 'pack'} of {size}" if product.measure is Measure.PIECES else f"{size} {name}".strip()


def amount_words(amount: float, line: BasketLine, job: Job) -> str:
    """So much of a line's product."""
    return show_amount(amount, line.product.measure, job.unit)


def cost_words(cost: float | None) -> str:
    """A cost without its currency; that there is none."""
    return NO_PRICE if cost is None else show_money(cost)


def group_words(group: BasketGroup) -> str:
    """What a group costs, where anything in it has a price."""
    return cost_words(group.cost if any(line.row.cost is not None for line in group.lines) else None)


def line_notes(line: BasketLine, job: Job) -> Iterator[str]:
    """What is to be known of a line beside its figures."""
    row, product = line.row, line.product
    if product.stands_for and row.wanted != product.name:
        yield f"for {row.wanted}"
    if row.from_shelf:
        yield f"{amount_words(row.from_shelf, line, job)} of it from the shelf"
    if row.left_over and product.ratio is not None and product.usable_h is not None:
        yield f"mixed, it can be used for {_hours(product.usable_h)}"
    if row.left_over and row.keeps_days is not None:
        yield f"opened, it keeps {row.keeps_days:g} days"


def total_lines(basket: Basket, job: Job) -> Iterator[tuple[str, float]]:
    """The totals by their names: the cost, the tax in it, the budget, and what is left of it or beyond it.

    None where nothing has a price: then it is not known what it costs.
    """
    money = job.money
    if not has_prices(basket):
        return
    yield f"Total {money.currency}".strip(), basket.cost
    if money.tax:
        yield f"of it tax, {100 * money.tax:g} %", basket.tax
    if basket.budget:
        yield "Budget", basket.budget
        yield ("Over the budget", basket.over) if basket.over else ("Left of the budget", basket.budget - basket.cost)


def has_prices(basket: Basket) -> bool:
    """Whether it is known of anything what it costs."""
    return any(row.cost is not None for row in basket.rows)


def left_out_head(left_out: Sized) -> str:
    """What stands over the sentences that say what is left out of a basket."""
    return f"Left out, and in no total: {len(left_out)} thing{'' if len(left_out) == 1 else 's'} to look at."


def verdict(basket: Basket) -> Iterator[str]:
    """Whether a cheaper basket is possible, and how much of it has no price: a sentence each."""
    if not has_prices(basket):
        yield "Nothing has a price yet, so these are the sets that leave least over."
        return
    yield "No set of packs that is enough costs less; this is proved." if basket.proved else _NOT_PROVED
    missing = sum(row.cost is None for row in basket.rows)
    if missing:
        yield f"Without a price, and in no total: {missing} of {len(basket.rows)} products."


_NOT_PROVED = "It is enough; whether a cheaper set is possible was not proved in the time there was."


def _hours(hours: float) -> str:
    return f"{hours / HOURS_A_DAY:g} days" if hours >= 2 * HOURS_A_DAY else f"{hours:g} h"
