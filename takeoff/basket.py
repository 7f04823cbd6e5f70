"""The basket of a job: of all sets of packs that are enough the cheapest, then the least left over, then the fewest.

Amounts are reckoned in whole billionths of a litre, metre or piece, each rounded to the nearest: a gallon is exact in
them, and nothing that a float tells apart falls short. Money is reckoned in whole cents, with tax.
"""

from collections.abc import Iterator, Mapping
from decimal import ROUND_HALF_UP, Decimal
from itertools import chain
from typing import NamedTuple

from shared.findings import Finding
from shared.job import Job, Unit
from shared.limits import MOST_OF_A_PRODUCT
from shared.pack_sizes import show_size
from shared.products import Money, Pack, Product
from takeoff.asked import called_product
from takeoff.basket_packs import Offer, cheapest
from takeoff.needed import Basket, BasketRow, Bought, Need, Needs, Wanted

MOST_PACKS = 100_000
"""Of one product; beyond it something is wrong with what is needed or with the packs (own choice)."""

BILLION = 1_000_000_000


class _Stock(NamedTuple):
    """A product that would do: what is needed of it, and the packs it can be bought in, those with a price if any."""

    product: Product
    need: float
    packs: tuple[Pack, ...]

    @property
    def missing(self) -> int:
        """What the shelf does not hold, in billionths; 0 or less where it holds enough."""
        return _billionths(self.need) - _billionths(self.product.on_shelf)

    @property
    def priced(self) -> bool:
        """Whether it is known what it costs: nothing where the shelf holds enough."""
        return self.missing <= 0 or any(pack.price is not None for pack in self.packs)


class _Met(NamedTuple):
    """How one piece of work is met; no row where it cannot be."""

    row: BasketRow | None
    proved: bool
    findings: tuple[Finding, ...]


def basket(job: Job, needs: Needs) -> Basket:
    """What to buy for what is needed, in the order of the needs; nothing for nothing.

    A piece of work is met by one product, its shelf first. Products that have a price are preferred to those that have
    none, and packs that have one to those that have none; where no price is known the fewest packs are bought, and the
    row has no cost. What cannot be reckoned with is left out, and a finding says so; those of the needs themselves are
    not said again.
    """
    products = {product.id: product for product in job.products}
    met = tuple(_met(wanted, products, job) for wanted in needs.wanted)
    rows = tuple(each.row for each in met if each.row)
    cents = sum(_cents_of(row.cost) for row in rows if row.cost is not None)
    return Basket(
        rows=rows,
        cost=cents / 100,
        tax=_cents(Decimal(cents) / 100 * _tax_share(job.money)) / 100,
        budget=job.money.budget,
        proved=all(each.proved for each in met),
        findings=tuple(dict.fromkeys(chain.from_iterable(each.findings for each in met))),
    )


def price_with_tax(price: float, money: Money) -> float:
    """What a pack costs at the counter, tax included, to the cent; half a cent is rounded up (common practice)."""
    return _pack_cents(price, money) / 100


def _met(wanted: Wanted, products: Mapping[str, Product], job: Job) -> _Met:
    found: list[Finding] = []
    stocks: list[_Stock] = []
    for need in wanted.options:
        if product := products.get(need.product):
            trouble = tuple(_trouble(product, need))
            found += [*_odd_packs(product, job.unit), *trouble]
            stocks += [] if trouble else [_Stock(product, need.amount.amount, _buyable(product))]
    if not stocks:
        return _Met(None, proved=True, findings=tuple(found))
    stocks = [stock for stock in stocks if stock.priced] or stocks
    choice = cheapest(tuple(_offer(stock, job.money) for stock in stocks))
    stock = stocks[choice.offer]
    found += [] if stock.priced else [_without_price(stock.product)]
    return _Met(_row(wanted.name, stock, choice.counts, job.money), choice.proved, tuple(found))


def _row(name: str, stock: _Stock, counts: tuple[int, ...], money: Money) -> BasketRow:
    prices = [None if pack.price is None else _pack_cents(pack.price, money) for pack in stock.packs]
    known = [price for price in prices if price is not None]
    bought = sum(many * _billionths(pack.size) for pack, many in zip(stock.packs, counts, strict=True))
    cents = sum(many * (price or 0) for price, many in zip(prices, counts, strict=True))
    return BasketRow(
        wanted=name,
        product=stock.product.id,
        need=stock.need,
        from_shelf=min(stock.need, stock.product.on_shelf),
        packs=tuple(Bought(pack, many) for pack, many in zip(stock.packs, counts, strict=True) if many),
        cost=cents / 100 if stock.priced else None,
        left_over=(bought - stock.missing) / BILLION,
        one_more=min(known) / 100 if known else None,
        keeps_days=stock.product.keeps_days,
    )


def _offer(stock: _Stock, money: Money) -> Offer:
    """Where no pack has a price each counts alike: the fewest are bought."""
    return Offer(
        stock.missing,
        tuple(_billionths(pack.size) for pack in stock.packs),
        tuple(1 if pack.price is None else _pack_cents(pack.price, money) for pack in stock.packs),
    )


def _holding(product: Product) -> tuple[Pack, ...]:
    return tuple(pack for pack in product.packs if _billionths(pack.size) > 0)


def _buyable(product: Product) -> tuple[Pack, ...]:
    """The packs that hold something: those with a price, or all where none has one."""
    holding = _holding(product)
    return tuple(pack for pack in holding if pack.price is not None) or holding


def _trouble(product: Product, need: Need) -> Iterator[Finding]:
    """Why a product cannot be bought for a need, if it cannot."""
    amount = need.amount.amount
    largest = max((pack.size for pack in _buyable(product)), default=0.0)
    if not amount <= MOST_OF_A_PRODUCT or amount - product.on_shelf > largest * MOST_PACKS > 0:
        yield Finding(
            "too-many-packs",
            f"{called_product(product)}: it would take more than {MOST_PACKS} packs, so it is left out; "
            "look at its spread rate and at what its packs hold.",
            "",
        )
    elif amount > product.on_shelf and not largest:
        yield Finding(
            "no-packs",
            f"{called_product(product)}: no pack that holds anything is known, so none is bought; say which there are.",
            "",
        )


def _odd_packs(product: Product, unit: Unit) -> Iterator[Finding]:
    """Packs that are not reckoned with."""
    for pack in product.packs:
        if pack not in _holding(product):
            said = f"a pack holds {pack.size:g} {product.measure}, so it is not bought; say how much is in it"
            yield Finding("empty-pack", f"{called_product(product)}: {said}.", "")
        elif pack not in _buyable(product):
            size = show_size(pack.size, product.measure, unit)
            said = f"the pack of {size} has no price, so it is not bought; type one"
            yield Finding("no-price", f"{called_product(product)}: {said}.", "")


def _without_price(product: Product) -> Finding:
    said = "no pack has a price, so what it costs is in no total; type one"
    return Finding("no-price", f"{called_product(product)}: {said}.", "")


def _billionths(amount: float) -> int:
    return round(amount * BILLION)


def _pack_cents(price: float, money: Money) -> int:
    """A price as it is written, with tax; floats would decide half cents by chance."""
    tax = Decimal(0) if money.tax_included else Decimal(str(money.tax))
    return _cents(Decimal(str(price)) * (1 + tax))


def _tax_share(money: Money) -> Decimal:
    """What share of a cost with tax is tax."""
    tax = Decimal(str(money.tax))
    return tax / (1 + tax)


def _cents(money: Decimal) -> int:
    return int((money * 100).quantize(Decimal(1), ROUND_HALF_UP))


def _cents_of(cost: float) -> int:
    return round(cost * 100)
