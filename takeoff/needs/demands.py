"""What work asks of products, before it is known which product does it."""

from typing import NamedTuple

from shared.job import Job
from shared.trade.products import Measure, Product, Use
from takeoff.figures.to_buy import Used
from takeoff.needs.spread import covers_m2
from takeoff.surfaces.coated import PRACTICE


class Demand(NamedTuple):
    """One piece of work, and the products that can do it: the one that was `named` first, where one was.

    `use` is all of its sum; its `per` is 0 where that is what the product covers, and then `covers_m2` is what the step
    says of the named product instead (None: nothing). `thinning` is added to a litre of it. `rule` and `source`
    are those of its sum, and `where` says in words what asks for it.
    """

    options: tuple[Product, ...]
    use: Used
    rule: str
    where: str
    source: str = PRACTICE
    named: Product | None = None
    covers_m2: float | None = None
    thinning: float = 0.0


class Products:
    """The products of a job, found by id and by what they stand for."""

    def __init__(self, job: Job) -> None:
        self.all = job.products
        self._by_id = {product.id: product for product in job.products}
        self._by_word: dict[tuple[str, Measure], list[Product]] = {}
        for product in job.products:
            if product.stands_for:
                self._by_word.setdefault((product.stands_for, product.measure), []).append(product)

    def find(self, product_id: str) -> Product | None:
        """The product with this id; None where there is none."""
        return self._by_id.get(product_id)

    def options(self, product: Product) -> tuple[Product, ...]:
        """This product, then all that may stand in for it: those of the same word and measure."""
        alike = self._by_word.get((product.stands_for, product.measure), ())
        return (product, *(each for each in alike if each is not product))

    def for_work(self, use: Use, word: str) -> tuple[Product, ...]:
        """The products of this use that stand for the word; where none does, the only one of that use, else none."""
        every = tuple(product for product in self.all if product.use is use)
        standing = tuple(product for product in every if product.stands_for == word)
        return standing or (every if len(every) == 1 else ())


def per_of(product: Product, demand: Demand) -> float | None:
    """How much of what is asked one litre, metre or piece of this product does; None where that is not known.

    A step's own spread rate counts for the product that it names; whatever stands in has its own.
    """
    if demand.use.per:
        return demand.use.per
    if product is demand.named and demand.covers_m2 is not None:
        return demand.covers_m2 if demand.covers_m2 > 0 else None
    return covers_m2(product)


def has_ratio(product: Product) -> bool:
    """Whether it can be mixed as it says; so can what is not mixed at all."""
    return product.ratio is None or min(product.ratio) > 0
