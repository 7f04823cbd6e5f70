"""Why a product is bought in these packs: their prices, other ways to buy it, the price of one pack more, and notes."""

from collections.abc import Iterator

from shared.written.writing import Writing
from takeoff.basket.cheapest import price_with_tax
from takeoff.basket.groups import BasketLine
from takeoff.basket.words import line_notes
from takeoff.bill import Bill
from takeoff.figures.to_buy import BasketRow
from takeoff.why.row import WhyRow

MOST_OTHERS = 3
"""How many other ways to buy a product are shown. Dearer ones tell nothing more."""


class BoughtRows:
    """Writes the rows of any line of a bill's basket."""

    def __init__(self, bill: Bill, writing: Writing) -> None:
        self._bill, self._writing = bill, writing
        self._works = {need.product: work for work, each in enumerate(bill.needs.wanted) for need in each.options}
        self._products = {product.id: product for product in bill.job.products}

    def rows(self, line: BasketLine) -> Iterator[WhyRow]:
        """The rows of a line: its packs, other ways to buy the product, the price of one pack more, and notes."""
        row = line.row
        yield from self._packs(line)
        others = [other for other in self._bill.instead if self._works[other.product] == self._works[row.product]]
        yield from (WhyRow(self._other(other, row)) for other in others[:MOST_OTHERS])
        if row.one_more is not None:
            yield WhyRow(f"One pack more would cost {self._writing.money(row.one_more)}.")
        yield from map(WhyRow, line_notes(line, self._writing))

    def _packs(self, line: BasketLine) -> Iterator[WhyRow]:
        writing, money = self._writing, self._bill.job.money
        for bought in line.row.packs:
            words, price = writing.packs((bought,), line.product.measure), bought.pack.price
            if price is None:
                yield WhyRow(words, writing.cost(None))
            else:
                each = price_with_tax(price, money)
                yield WhyRow("", writing.money(bought.many * each), f"{words} at {writing.money(each)}")

    def _other(self, other: BasketRow, row: BasketRow) -> str:
        writing, product = self._writing, self._products[other.product]
        packs = writing.packs(other.packs, product.measure)
        name = f"{product.name}, " if other.product != row.product else ""
        cost = other.cost or 0.0
        more = "as much" if row.cost is None or cost == row.cost else f"{writing.money(cost - row.cost)} more"
        return f"{name}{packs} would cost {writing.money(cost)}, {more}."
