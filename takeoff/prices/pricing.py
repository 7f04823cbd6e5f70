"""Gives the prices of a price list to the packs of a job."""

from collections import defaultdict
from itertools import count
from typing import NamedTuple

from msgspec.structs import replace

from shared.errors import JobError, ReadingError
from shared.job import Job
from shared.limits import MOST_PRODUCTS
from shared.trade.products import Measure, Pack, Product, Use
from shared.typed.length_words import quoted
from shared.written.writing import Writing
from takeoff.prices.listed import PriceList, PriceRow, Said

SAME_SIZE = 0.005
"""The share by which two sizes may differ and be the same: labels round 3.785 L to 3.79 L (common practice, no source).
"""

USE_OF = {Measure.LITRES: Use.COLOUR, Measure.METRES: Use.TAPE, Measure.PIECES: Use.OTHER, None: Use.OTHER}
"""The use that a product added from a list gets, by its measure; the report tells the person."""


class Priced(NamedTuple):
    """The job with the prices, how many packs got one, and what to tell a person about lines of the list.

    `left_out` is how many lines of the list gave no price, whether they were not understood or the job lacks the pack.
    """

    job: Job
    packs: int
    said: tuple[Said, ...]
    left_out: int


def with_prices(job: Job, prices: PriceList, *, add: bool = False) -> Priced:
    """The job whose packs cost what the list says. Packs are matched by the product's id or name, and by their size.

    A product or a pack that the job lacks is told; with `add` it is added. JobError where the list and the job are in
    two currencies.
    """
    ours, theirs = job.money.currency, prices.currency
    if ours and theirs and ours.casefold() != theirs.casefold():
        do = "set the job's currency, or use another list"
        raise JobError(f"its prices are in {theirs}, and the job's in {ours}", where=prices.name, do=do)
    pricing = _Pricing(job, add=add)
    said = tuple(words for row in prices.rows if (words := pricing.take(row)))
    money = replace(job.money, currency=ours or theirs)
    priced = replace(job, products=pricing.products, money=money) if pricing.taken else job
    left_out = len(prices.left_out) + sum(each.left_out for each in said)
    return Priced(priced, len(pricing.taken), said, left_out)


class _Pricing:
    """Takes the rows of a price list, one after the other, into the products of a job."""

    def __init__(self, job: Job, *, add: bool) -> None:
        self._unit = job.unit
        self._add = add
        self._products = {product.id: product for product in job.products}
        self._named: defaultdict[str, list[str]] = defaultdict(list)
        for product in job.products:
            self._named[_folded(product.name)].append(product.id)
        self._free_ids = (f"listed-{number}" for number in count(1))
        self._room = MOST_PRODUCTS - max(len(job.products), sum(len(product.packs) for product in job.products))
        self.taken: dict[tuple[str, float], int] = {}

    @property
    def products(self) -> tuple[Product, ...]:
        """The products with the prices taken so far."""
        return tuple(self._products.values())

    def take(self, row: PriceRow) -> Said | None:
        """Take the price of a row. Gives what to tell a person about it; None for nothing."""
        try:
            words = self._taken(row)
        except ReadingError as trouble:
            return Said(row.line, str(trouble).rstrip("."), left_out=True)
        return Said(row.line, words) if words else None

    def _taken(self, row: PriceRow) -> str:
        by_id = [name for name in (row.code, row.product) if name in self._products]
        ids = by_id[:1] or self._named[_folded(row.product)]
        if len(ids) > 1:
            raise ReadingError(
                "two products have this name", where=quoted(row.product), do="write the product's id instead"
            )
        if ids:
            return self._priced(self._products[ids[0]], row)
        if not self._add:
            raise ReadingError("the job has no such product", where=quoted(row.product), do="add it, or leave it out")
        return self._with_new(row)

    def _priced(self, product: Product, row: PriceRow) -> str:
        if row.size.measure not in (None, product.measure):
            what = f"it is counted in {product.measure}, and the list gives {row.size.measure}"
            raise ReadingError(what, where=quoted(row.product), do="write its size so")
        size = row.size.amount
        found = next((pack for pack in product.packs if abs(pack.size - size) <= SAME_SIZE * size), None)
        shown = Writing(self._unit).pack_size(size, product.measure)
        if found is None:
            return self._with_pack(product, row, shown)
        before = self.taken.setdefault((product.id, found.size), row.line)
        if before != row.line:
            what = f"{shown} has its price from line {before} already"
            raise ReadingError(what, where=quoted(row.product), do="that price stays")
        packs = tuple(replace(pack, price=row.price) if pack is found else pack for pack in product.packs)
        self._products[product.id] = replace(product, packs=packs)
        return ""

    def _with_pack(self, product: Product, row: PriceRow, shown: str) -> str:
        if not self._add:
            raise ReadingError(f"it has no pack of {shown}", where=quoted(row.product), do="add one, or leave it out")
        self._products[product.id] = replace(product, packs=(*product.packs, self._new_pack(product.id, row)))
        return f"{quoted(row.product)}: a pack of {shown} was added"

    def _with_new(self, row: PriceRow) -> str:
        use = USE_OF[row.size.measure]
        product_id = next(name for name in self._free_ids if name not in self._products)
        self._products[product_id] = Product(product_id, row.product, use, (self._new_pack(product_id, row),))
        self._named[_folded(row.product)].append(product_id)
        return f"{quoted(row.product)} was added as {use}; choose what it is used as"

    def _new_pack(self, product_id: str, row: PriceRow) -> Pack:
        """A new pack for a row. ReadingError where the job can hold no more packs."""
        if self._room <= 0:
            raise ReadingError(f"a job holds at most {MOST_PRODUCTS} packs", do="keep those that you buy in the list")
        self._room -= 1
        self.taken[product_id, row.size.amount] = row.line
        return Pack(row.size.amount, row.price, row.pack_name)


def _folded(name: str) -> str:
    return " ".join(name.casefold().split())
