"""Tells numbers that are far from their neighbours, as a slip of the decimal sign makes them; and such spread rates."""

from collections.abc import Collection, Iterator, Sequence
from functools import cache
from statistics import median

from shared.edits.build_ups import ready_made
from shared.findings import NOWHERE, Code, Finding
from shared.job import Unit
from shared.trade.products import Product, Use
from shared.written.writing import Writing
from takeoff.needs.demands import Demand, per_of
from takeoff.needs.spread import covers_m2

FAR_TIMES = 6.0
"""A number this many times its neighbours, or this part of them, is far from them (own choice).

A slip of the decimal sign makes it ten times what it should be. What should be there may itself be up to half as much
again, or a little more than half, of its neighbours: a large pack costs less for what is in it than a small one.
"""


def times(number: float, neighbours: Collection[float]) -> float:
    """How many times the middle one of its neighbours a number is; 1 without any, or if either is not above 0."""
    middle = median(neighbours) if neighbours else 0.0
    return number / middle if middle > 0 and number > 0 else 1.0


def is_far(many: float, far: float = FAR_TIMES) -> bool:
    """Whether a number that is so many times its neighbours is far from them."""
    return many >= far or many <= 1 / far


def times_words(many: float) -> str:
    """How a number stands to its neighbours: "10 times", "a tenth of"."""
    if many >= 1:
        return f"{many:.0f} times"
    return "a tenth of" if round(1 / many) == 10 else f"1/{1 / many:.0f} of"


def look_at_spread_rates(asked: Sequence[Demand], unit: Unit) -> Iterator[Finding]:
    """Spread rates that are far from what is usual for the use of the product, each once."""
    found = [finding for each in asked for product in each.options for finding in _far_rate(product, each, unit)]
    yield from dict.fromkeys(found)


def _far_rate(product: Product, asked: Demand, unit: Unit) -> Iterator[Finding]:
    rate, known = per_of(product, asked), usual_rates(product.use)
    if asked.use.per or rate is None or not is_far(times(rate, known)):
        return
    writing = Writing(unit)
    says, usual = (writing.spread_rate(each, product.measure) for each in (rate, median(known)))
    is_of_step = product is asked.named and asked.covers_m2 is not None
    where = f"{asked.where[:1].upper()}{asked.where[1:]}: the" if is_of_step else "The"
    many = times_words(times(rate, known))
    message = (
        f"{where} spread rate of {product.called} is {says}, {many} the {usual} that is usual for {product.use}; "
        "check it."
    )
    yield Finding(Code.UNUSUAL_SPREAD_RATE, message, NOWHERE)


@cache
def usual_rates(use: Use) -> tuple[float, ...]:
    """The spread rates that are usual for a use, m2 a litre or piece; none where the ready-made products have none.

    They are those of the ready-made products (common practice, no source).
    """
    rates = [covers_m2(product) for product in ready_made().products if product.use is use]
    return tuple(rate for rate in rates if rate is not None)
