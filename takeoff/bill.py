"""The bill of a job: its needs and its basket together, for everything that shows or writes them."""

from typing import NamedTuple

from shared.findings import NOWHERE, Code, Finding
from shared.job import Job
from takeoff.basket.cheapest import basket
from takeoff.figures.measured import Takeoff
from takeoff.figures.to_buy import Basket, BasketRow, Need, Needs, Wanted
from takeoff.needs.quantities import needs


class Bill(NamedTuple):
    """What a job needs of its products, and what is bought for it.

    `instead` are other ways to buy it (`takeoff.basket.instead`); empty if nobody asked for them. `unfinished` are the
    findings of the takeoff that leave something out: parts that are coated but have no finish.
    """

    job: Job
    needs: Needs
    basket: Basket
    instead: tuple[BasketRow, ...] = ()
    unfinished: tuple[Finding, ...] = ()

    @property
    def bought(self) -> tuple[Need, ...]:
        """The need that each row of the basket covers, in the order of the rows."""
        by_product = {need.product: need for wanted in self.needs.wanted for need in wanted.options}
        return tuple(by_product[row.product] for row in self.basket.rows)

    def chosen(self, wanted: Wanted) -> Need:
        """The need whose product is bought for this work. If none is bought: that of the first product."""
        bought = {row.product for row in self.basket.rows}
        return next((need for need in wanted.options if need.product in bought), wanted.options[0])

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All things to look at in needs and basket. Missing prices are one thing, not one for each pack."""
        without = [finding for finding in self.basket.findings if finding.code is Code.NO_PRICE]
        others = tuple(finding for finding in self.basket.findings if finding.code is not Code.NO_PRICE)
        return (*self.needs.findings, *others, *((_no_prices(len(without)),) if len(without) > 1 else without))

    @property
    def left_out(self) -> tuple[str, ...]:
        """What is in no row and no total because its amount or cost cannot be worked out: a sentence each."""
        found = (*self.unfinished, *self.needs.findings, *self.basket.findings)
        return tuple(dict.fromkeys(finding.message for finding in found if finding.code.leaves_out))


def make_bill(job: Job, takeoff: Takeoff) -> Bill:
    """The bill of a job. `takeoff` is this job's. A job without products has an empty basket."""
    wanted = needs(job, takeoff)
    unfinished = tuple(finding for finding in takeoff.findings if finding.code.leaves_out)
    return Bill(job, wanted, basket(job, wanted), unfinished=unfinished)


def _no_prices(number: int) -> Finding:
    message = f"{number} products or packs have no price yet; type what they cost, or use a price list."
    return Finding(Code.NO_PRICE, message, NOWHERE)
