"""What a job needs and what is bought for it, as values.

Amounts are in the product's measure (litres, metres or pieces) and not rounded. Money is in the job's currency.
"""

from typing import NamedTuple

from shared.findings import Finding
from shared.trade.products import Pack
from takeoff.figures.measured import Figure


class Used(NamedTuple):
    """One use of a product, and the numbers that its amount is worked out from.

    `size` is how much is worked on: m2 of surface, m of joint or masking, or a number of pieces such as sleeves.
    `times` is how often it is worked on, and `per` is how much of the size one litre, metre or piece does. `loss` and
    `allowance` are shares, as in `shared.trade.products.Allowances`. `left_behind` is what stays in tray and sleeve, in
    litres, for all times together. `parts` are the ids of the parts that the size was measured from. `finish` is the id
    of the finish whose step uses the product, "" for a use without a finish.
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
        """The amount without loss, allowance and what is left behind, in the product's measure."""
        return self.size * self.times / self.per

    @property
    def amount(self) -> float:
        """The whole amount, in the product's measure: bare / (1 - loss) x (1 + allowance) + what is left behind."""
        return self.bare / (1 - self.loss) * (1 + self.allowance) + self.left_behind


class Need(NamedTuple):
    """How much of one product the work takes, in the product's measure (L, m, pieces).

    `used` holds the uses that make up the amount. `mixed` is the litres of base and of hardener in it; None for a
    product that is not a two-part one.
    """

    product: str
    amount: Figure
    used: tuple[Used, ...] = ()
    mixed: tuple[float, float] | None = None


class Wanted(NamedTuple):
    """One piece of work, and how much it would take of each product that can do it.

    `name` is the word that the products are interchangeable with, or else the name of the first product. `options`
    begin with the products that finishes name. One product is bought for the whole of the work, as two brands are not
    mixed on a surface.
    """

    name: str
    options: tuple[Need, ...]


class Hardware(NamedTuple):
    """The numbers of hinges and handles of the fronts, and of the holes that have to be filled for new handles."""

    hinges: Figure
    handles: Figure
    holes_to_fill: Figure


class Needs(NamedTuple):
    """All that a job needs, in the order of the job's products. `findings` say what was left out, and why."""

    wanted: tuple[Wanted, ...]
    hardware: Hardware
    findings: tuple[Finding, ...] = ()


class Bought(NamedTuple):
    """How many of one pack are bought."""

    pack: Pack
    many: int


class BasketRow(NamedTuple):
    """What is bought for one piece of work.

    The shelf (`from_shelf`) and the `packs` together cover the `need` of the `product`; `left_over` is what they hold
    beyond it. `cost` includes tax; None if packs have to be bought and none has a price. `one_more` is the price of the
    cheapest single pack, with tax; None if no pack has a price. `keeps_days` is the shelf life of an opened pack; None
    if nobody has said it.
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
    """The buy list.

    `cost` includes tax, and `tax` is the part of the cost that is tax. Rows without a price are in neither. A `budget`
    of 0 means that none is set. `proved` is True if no cheaper basket is possible; a basket in which something has no
    price is never proved. `findings` say what is left out, and why.
    """

    rows: tuple[BasketRow, ...]
    cost: float
    tax: float
    budget: float
    proved: bool
    findings: tuple[Finding, ...] = ()

    @property
    def unpriced(self) -> int:
        """How many rows have no cost, because no pack of their product has a price."""
        return sum(row.cost is None for row in self.rows)

    @property
    def over(self) -> float:
        """By how much the cost is over the budget; 0 for a cost within the budget, and without a budget."""
        return max(self.cost - self.budget, 0.0) if self.budget else 0.0
