"""What a job needs and what is bought for it, as values: amounts in a product's measure, money in the job's currency.

A reader turns them into what a person sees; nothing here is rounded.
"""

from typing import NamedTuple

from shared.findings import Finding
from shared.trade.products import Pack
from takeoff.figures.measured import Figure


class Used(NamedTuple):
    """One use of a product, with all that its sum is made of.

    `size` is how much is worked on (m2 of surface, m of joint or masking, a number of sleeves), `times` how often, and
    `per` how much of that size one litre, metre or piece does. `loss` divides and `allowance` adds, as in
    `shared.trade.products.Allowances`; `left_behind` stays in tray and sleeve, in litres, for all times together.
    `parts` are whom the size comes from, and `finish` the id of the finish that asks for it, "" where none does.
    """

    what: str
    size: float
    times: float
    per: float
    loss: float = 0.0
    allowance: float = 0.0
    left_behind: float = 0.0
    parts: tuple[str, ...] = ()
    finish: str = ""

    @property
    def bare(self) -> float:
        """What it takes without loss, allowance and what is left behind."""
        return self.size * self.times / self.per

    @property
    def amount(self) -> float:
        """What it takes in all."""
        return self.bare / (1 - self.loss) * (1 + self.allowance) + self.left_behind


class Need(NamedTuple):
    """So much of one product, in its measure (L, m, pieces); the terms of the figure's reason sum to it.

    `used` are the uses that the amount is the sum of. `mixed` are the litres of base and of hardener in it, where the
    product is a two-part one.
    """

    product: str
    amount: Figure
    used: tuple[Used, ...] = ()
    mixed: tuple[float, float] | None = None


class Wanted(NamedTuple):
    """Work that one of several products does: how much of each it would take.

    `name` is the word that they stand for, or the product's own name; `options` begin with the product that is named in
    the finish. One of them is chosen for all of it: two brands are not mixed on a surface.
    """

    name: str
    options: tuple[Need, ...]


class Hardware(NamedTuple):
    """What is counted of fronts: hinges and handles, and the holes that new handles leave to be filled."""

    hinges: Figure
    handles: Figure
    holes_to_fill: Figure


class Needs(NamedTuple):
    """All that a job needs, in the order of its products; `findings` say what was left out of it, and why."""

    wanted: tuple[Wanted, ...]
    hardware: Hardware
    findings: tuple[Finding, ...] = ()


class Bought(NamedTuple):
    """So many of one pack."""

    pack: Pack
    many: int


class BasketRow(NamedTuple):
    """What is bought for one piece of work.

    `need` of `product` is met by `from_shelf` and `packs`; what is bought or on the shelf beyond it is `left_over`.
    `cost` is with tax, None where no pack has a price. `one_more` is what the cheapest further pack costs, None where
    none has a price. `keeps_days` is how long an opened pack keeps, None where nobody has said.
    """

    wanted: str
    product: str
    need: float
    from_shelf: float
    packs: tuple[Bought, ...]
    cost: float | None
    left_over: float
    one_more: float | None = None
    keeps_days: float | None = None


class Basket(NamedTuple):
    """The buy list. `cost` and `tax` (the part of it that is tax) are of what has a price.

    `proved` where no cheaper one is possible. `findings` say what is left out, and why.
    """

    rows: tuple[BasketRow, ...]
    cost: float
    tax: float
    budget: float
    proved: bool
    findings: tuple[Finding, ...] = ()

    @property
    def over(self) -> float:
        """By how much it is over the budget; 0 where it is not, or where none is set."""
        return max(self.cost - self.budget, 0.0) if self.budget else 0.0
