"""The basket of a job: the cheapest packs that cover it, of those the least left over, and of those the fewest."""

from collections.abc import Mapping
from itertools import chain
from typing import NamedTuple

from shared.findings import Finding
from shared.job import Job
from shared.trade.products import Money, Product
from takeoff.basket.cents import pack_cents, tax_cents
from takeoff.basket.offers import PackOffer
from takeoff.basket.packs import cheapest
from takeoff.basket.stock import Stock, look_at_packs, look_at_price, stock_of, why_not_enough
from takeoff.basket.unusual import look_at_unusual_packs
from takeoff.figures.to_buy import Basket, BasketRow, Bought, Needs, Wanted


class _Met(NamedTuple):
    """How one piece of work is covered. `row` is None for work that nothing can be bought for.

    `proved` says that it cannot be covered for less; nobody knows that of work without a row or without a price.
    """

    row: BasketRow | None
    proved: bool
    findings: tuple[Finding, ...]


def basket(job: Job, needs: Needs) -> Basket:
    """What to buy for the needs of a job, in their order. The basket of a job without needs has no rows.

    One product covers a piece of work. What is on the shelf of it is used first. A product with a price is preferred to
    one without, and so is a pack. If no price is known, the fewest packs are bought and the row has no cost. Work that
    cannot be covered is left out, and a finding says so. The findings of the needs are not repeated.
    """
    products = {product.id: product for product in job.products}
    met = tuple(_met(wanted, products, job) for wanted in needs.wanted)
    rows = tuple(each.row for each in met if each.row)
    cents = sum(round(row.cost * 100) for row in rows if row.cost is not None)
    return Basket(
        rows=rows,
        cost=cents / 100,
        tax=tax_cents(cents, job.money) / 100,
        budget=job.money.budget,
        proved=all(each.proved for each in met),
        findings=tuple(dict.fromkeys(chain.from_iterable(each.findings for each in met))),
    )


def price_with_tax(price: float, money: Money) -> float:
    """What a pack of this price costs at the counter, with tax, to the cent. Half a cent is rounded up."""
    return pack_cents(price, money) / 100


def _met(wanted: Wanted, products: Mapping[str, Product], job: Job) -> _Met:
    found: list[Finding] = []
    stocks: list[Stock] = []
    for need in wanted.options:
        if product := products.get(need.product):
            stock = stock_of(product, need.amount.amount)
            trouble = tuple(why_not_enough(stock))
            found += [*look_at_packs(product, job.unit), *look_at_unusual_packs(product, job.unit), *trouble]
            stocks += [] if trouble else [stock]
    if not stocks:
        return _Met(None, proved=False, findings=tuple(found))
    stocks = [stock for stock in stocks if stock.priced] or stocks
    choice = cheapest(tuple(_offer(stock, job.money) for stock in stocks))
    stock = stocks[choice.offer]
    row = _row(wanted.name, stock, choice.counts, job.money)
    return _Met(row, choice.proved and row.cost is not None, (*found, *look_at_price(stock)))


def _offer(stock: Stock, money: Money) -> PackOffer:
    """The offer of a product. If no pack has a price, each counts as 1 cent, so that the fewest are bought."""
    return PackOffer(stock.missing, stock.sizes, _prices(stock, money) or (1,) * len(stock.packs))


def _row(name: str, stock: Stock, counts: tuple[int, ...], money: Money) -> BasketRow:
    prices = _prices(stock, money)
    return BasketRow(
        wanted=name,
        product=stock.product.id,
        need=stock.need,
        from_shelf=min(stock.need, stock.product.on_shelf),
        packs=_bought(stock, counts),
        cost=_cents(stock, counts, money) / 100 if stock.priced else None,
        left_over=stock.left_over(counts),
        one_more=min(prices) / 100 if prices else None,
        keeps_days=stock.product.keeps_days,
    )


def _bought(stock: Stock, counts: tuple[int, ...]) -> tuple[Bought, ...]:
    return tuple(Bought(pack, many) for pack, many in zip(stock.packs, counts, strict=True) if many)


def _prices(stock: Stock, money: Money) -> tuple[int, ...]:
    """What each pack costs, in cents with tax; empty if no pack has a price."""
    return tuple(pack_cents(pack.price, money) for pack in stock.packs if pack.price is not None)


def _cents(stock: Stock, counts: tuple[int, ...], money: Money) -> int:
    return sum(many * price for many, price in zip(counts, _prices(stock, money), strict=False))
