"""What a job needs, and the basket for it, together: what those who write it down are handed."""

from typing import NamedTuple

from shared.job import Job
from takeoff.basket import basket
from takeoff.figures import Takeoff
from takeoff.needed import Basket, Need, Needs
from takeoff.quantities import needs


class Bill(NamedTuple):
    """What a job needs of its products, and what is bought for it."""

    needs: Needs
    basket: Basket

    @property
    def bought(self) -> tuple[Need, ...]:
        """Of every row of the basket the need that it meets, in order."""
        by_product = {need.product: need for wanted in self.needs.wanted for need in wanted.options}
        return tuple(by_product[row.product] for row in self.basket.rows)


def make_bill(job: Job, takeoff: Takeoff) -> Bill:
    """The bill of a job; `takeoff` is this job's. Nothing where the job has no products."""
    needed = needs(job, takeoff)
    return Bill(needed, basket(job, needed))
