"""The proved basket of two rooms, of 200 times as much, and with one price changed."""

from collections.abc import Iterator
from functools import partial
from itertools import count
from time import process_time

from msgspec.structs import replace

from benchmarks.measuring import Measured, medians
from shared.job import Job
from shared.trade.products import Pack, Product, Use
from takeoff.basket.cheapest import basket
from takeoff.basket.packs import cheapest
from takeoff.figures.measured import Figure, Fronts, Reason
from takeoff.figures.to_buy import Hardware, Need, Needs, Wanted

GOALS_MS = {1: 100.0, 200: 100.0}
"""The longest that the basket of so many times two rooms may take, in milliseconds."""

TYPING_GOAL_MS = 50.0

SIZES = (0.25, 0.5, 0.946352946, 1.0, 2.0, 2.5, 3.785411784, 4.0, 10.0)
WANTED = 20
STAND_INS = 6


def measured() -> Iterator[Measured]:
    """The times with nothing remembered, then with all but one product remembered, as while a price is typed."""
    products = tuple(_product(number) for number in range(WANTED + STAND_INS))
    job = Job("", products=products)
    for times, goal in GOALS_MS.items():
        (taken,) = medians(partial(_anew, job, _needs(times)), clock=process_time)
        yield Measured(f"{WANTED} products, {times} times two rooms", taken, "{:.1f} ms", goal)
    cents = count(1)
    (taken,) = medians(lambda: basket(_typed(job, next(cents)), _needs(1)), clock=process_time)
    yield Measured("a price typed", taken, "{:.1f} ms", TYPING_GOAL_MS)
    unproved = sum(not basket(job, _needs(times)).proved for times in range(1, 51))
    yield Measured("of 50 baskets, not proved", unproved, "{:.0f}", 0)


def _anew(job: Job, needs: Needs) -> None:
    cheapest.cache_clear()
    basket(job, needs)


def _product(number: int) -> Product:
    """A product in four packs. Larger packs are a little cheaper by the litre, and no price is round."""
    sizes = (SIZES * 2)[number % len(SIZES) :][:4]
    prices = (round(19 * size**0.8 + (number * 7 + place * 13) % 31 / 9, 2) for place, size in enumerate(sizes))
    packs = tuple(map(Pack, sizes, prices))
    return Product(f"p{number}", f"Product {number}", Use.COLOUR, packs)


def _typed(job: Job, cents: int) -> Job:
    """The job with another price for the first pack of its first product."""
    first, *others = job.products
    pack, *packs = first.packs
    changed = replace(first, packs=(replace(pack, price=12 + cents / 100), *packs))
    return replace(job, products=(changed, *others))


def _needs(times: int) -> Needs:
    """The needs, one for each product. The first few could be met by an interchangeable product too."""
    amounts = [times * (0.3 + number * 0.617) for number in range(WANTED)]
    return Needs(tuple(map(_wanted, range(WANTED), amounts)), Hardware(_figure(0.0), _figure(0.0), _figure(0.0)))


def _wanted(number: int, amount: float) -> Wanted:
    would_do = (number, WANTED + number)[: 2 if number < STAND_INS else 1]
    return Wanted(f"p{number}", tuple(Need(f"p{each}", _figure(amount)) for each in would_do))


def _figure(amount: float) -> Figure:
    return Figure(amount, Reason("", "", Fronts.OFF, ()))
