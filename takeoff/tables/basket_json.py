"""What a job needs and its basket, as entries of the takeoff's JSON."""

import msgspec

from shared.job import Job
from shared.trade.products import Measure
from takeoff.basket.cheapest import price_with_tax
from takeoff.basket.words import has_prices
from takeoff.bill import Bill
from takeoff.figures.to_buy import BasketRow, Need, Used


class BillPart(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The common form of all entries of needs and basket: frozen, and written field by field."""


class UseEntry(BillPart, frozen=True):
    """One use of a product: amount = size x times / per / (1 - loss) x (1 + allowance) + left_behind.

    `size` is in m2 of surface or m of joint or masking, or is a number of pieces such as sleeves. `per` is how much of
    the size one litre, metre or piece of the product does. `finish` is an id, null for a use without a finish. `parts`
    are ids.
    """

    what: str
    finish: str | None
    parts: tuple[str, ...]
    size: float
    times: float
    per: float
    loss: float
    allowance: float
    left_behind: float
    amount: float


class NeedEntry(BillPart, frozen=True):
    """How much of one product would do a piece of work, in the product's measure, and the rule of that amount."""

    product: str
    name: str
    measure: Measure
    amount: float
    uses: tuple[UseEntry, ...]
    rule: str
    source: str


class WantedEntry(BillPart, frozen=True):
    """A piece of work, and the products that can do it. One of them is bought."""

    name: str
    options: tuple[NeedEntry, ...]


class NeedsEntry(BillPart, frozen=True):
    """All that the job needs of its products, and the numbers of hinges, handles and holes of its fronts."""

    wanted: tuple[WantedEntry, ...]
    hinges: float
    handles: float
    holes_to_fill: float


class BoughtEntry(BillPart, frozen=True):
    """How many packs of one size are bought. `size` is in the product's measure.

    `price` is that of one pack, with tax; null if it is not known.
    """

    size: float
    name: str
    many: int
    price: float | None


class BasketRowEntry(BillPart, frozen=True):
    """What is bought for a piece of work. Amounts are in the product's measure.

    Costs include tax; null if no price is known.
    """

    wanted: str
    product: str
    name: str
    measure: Measure
    needed: float
    from_shelf: float
    packs: tuple[BoughtEntry, ...]
    left_over: float
    cost: float | None
    one_more: float | None
    keeps_days: float | None


class BasketEntry(BillPart, frozen=True):
    """The basket. Costs include tax and are in `currency`; `tax` is the part of the cost that is tax.

    Rows without a price are in neither `cost` nor `tax`; both are null if nothing has a price. A `budget` of 0 means
    that none is set. `without_price` is how many rows have no price, and `left_out` says what is in no row: where there
    is any of either, the cost is the cost so far. `proved` is true if no cheaper basket is possible; it is never true
    of a cost so far.
    """

    currency: str
    cost: float | None
    tax: float | None
    budget: float
    over_budget: float
    proved: bool
    without_price: int
    left_out: tuple[str, ...]
    rows: tuple[BasketRowEntry, ...]


def needs_entry(bill: Bill, job: Job) -> NeedsEntry:
    """The entry of what a job needs."""
    counted = bill.needs.hardware
    return NeedsEntry(
        wanted=tuple(
            WantedEntry(wanted.name, tuple(_need_entry(need, job) for need in wanted.options))
            for wanted in bill.needs.wanted
        ),
        hinges=counted.hinges.amount,
        handles=counted.handles.amount,
        holes_to_fill=counted.holes_to_fill.amount,
    )


def basket_entry(bill: Bill, job: Job) -> BasketEntry:
    """The entry of a job's basket."""
    basket, known = bill.basket, has_prices(bill.basket)
    return BasketEntry(
        currency=job.money.currency,
        cost=basket.cost if known else None,
        tax=basket.tax if known else None,
        budget=basket.budget,
        over_budget=basket.over,
        proved=basket.proved and not bill.left_out,
        without_price=basket.unpriced,
        left_out=bill.left_out,
        rows=tuple(_row_entry(row, job) for row in basket.rows),
    )


def _need_entry(need: Need, job: Job) -> NeedEntry:
    product = next(each for each in job.products if each.id == need.product)
    reason = need.amount.reason
    uses = tuple(map(_use_entry, need.used))
    words = (reason.rule, reason.source)
    return NeedEntry(product.id, product.name, product.measure, need.amount.amount, uses, *words)


def _use_entry(used: Used) -> UseEntry:
    return UseEntry(
        what=used.what,
        finish=used.finish or None,
        parts=used.parts,
        size=used.size,
        times=used.times,
        per=used.per,
        loss=used.loss,
        allowance=used.allowance,
        left_behind=used.left_behind,
        amount=used.amount,
    )


def _row_entry(row: BasketRow, job: Job) -> BasketRowEntry:
    product = next(each for each in job.products if each.id == row.product)
    packs = (
        BoughtEntry(pack.size, pack.name, many, None if pack.price is None else price_with_tax(pack.price, job.money))
        for pack, many in row.packs
    )
    return BasketRowEntry(
        wanted=row.wanted,
        product=product.id,
        name=product.name,
        measure=product.measure,
        needed=row.need,
        from_shelf=row.from_shelf,
        packs=tuple(packs),
        left_over=row.left_over,
        cost=row.cost,
        one_more=row.one_more,
        keeps_days=row.keeps_days,
    )
