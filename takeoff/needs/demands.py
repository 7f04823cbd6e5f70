"""A demand: one piece of work, before it is known which product does it; and the products that could do it."""

from typing import NamedTuple

from shared.job import Job
from shared.trade.products import Measure, Product, Use
from takeoff.figures.to_buy import Used
from takeoff.needs.spread import covers_m2
from takeoff.surfaces.coated import PRACTICE


class Demand(NamedTuple):
    """One piece of work, and the products that can do it.

    `options` are those products. `named` is the one that a finish names, which is the first of them; None if no finish
    names one. `use` holds the numbers of the sum. Its `per` is 0 if the spread rate of the product decides; a step may
    then give the named product another spread rate, `covers_m2`. `thinning` is the share of thinner that is added to
    the product. `rule` and `source` are those of the sum. `where` says in words where the demand comes from.
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
    """Finds the products of a job by their ids, and by the word that they are interchangeable with."""

    def __init__(self, job: Job) -> None:
        self.all = job.products
        self._by_id = {product.id: product for product in job.products}
        self._by_word: dict[tuple[str, Measure], list[Product]] = {}
        for product in job.products:
            if product.stands_for:
                self._by_word.setdefault((product.stands_for, product.measure), []).append(product)

    def find(self, product_id: str) -> Product | None:
        """The product with this id; None for an id that the job does not have."""
        return self._by_id.get(product_id)

    def options(self, product: Product) -> tuple[Product, ...]:
        """This product, then all that are interchangeable with it: those of the same word and measure."""
        alike = self._by_word.get((product.stands_for, product.measure), ())
        return (product, *(each for each in alike if each is not product))

    def for_work(self, use: Use, word: str) -> tuple[Product, ...]:
        """The products of this use that are marked with the word. If none is: the only one of this use, if just one."""
        every = tuple(product for product in self.all if product.use is use)
        standing = tuple(product for product in every if product.stands_for == word)
        return standing or (every if len(every) == 1 else ())


def per_of(product: Product, demand: Demand) -> float | None:
    """How much of the work one litre, metre or piece of this product does, in the unit of the use's size.

    None if the product has no spread rate above 0. A step's own spread rate counts for the product that the step names;
    a product used in its place has its own.
    """
    if demand.use.per:
        return demand.use.per
    if product is demand.named and demand.covers_m2 is not None:
        return demand.covers_m2 if demand.covers_m2 > 0 else None
    return covers_m2(product)


def has_ratio(product: Product) -> bool:
    """Whether a product can be mixed: both parts of its ratio are above 0, or it is not mixed at all."""
    return product.ratio is None or min(product.ratio) > 0
