"""What there is of a product, on the shelf and in packs, against what is needed of it; and why it cannot be bought.

Amounts are reckoned in whole billionths of a litre, metre or piece, each rounded to the nearest: a gallon is exact in
them, and nothing that a float tells apart falls short.
"""

from collections.abc import Iterator
from typing import NamedTuple

from shared.findings import NOWHERE, Code, Finding
from shared.job import Unit
from shared.limits import MOST_OF_A_PRODUCT
from shared.trade.products import Pack, Product
from shared.written.writing import Writing

MOST_PACKS = 100_000
"""Of one product; beyond it something is wrong with what is needed or with the packs (own choice)."""

BILLION = 1_000_000_000


class Stock(NamedTuple):
    """A product that would do: what is needed of it, and the packs it can be bought in, those with a price if any."""

    product: Product
    need: float
    packs: tuple[Pack, ...]

    @property
    def missing(self) -> int:
        """What the shelf does not hold, in billionths; 0 or less where it holds enough."""
        return _billionths(self.need) - _billionths(self.product.on_shelf)

    @property
    def sizes(self) -> tuple[int, ...]:
        """What its packs hold, in billionths."""
        return tuple(_billionths(pack.size) for pack in self.packs)

    @property
    def priced(self) -> bool:
        """Whether it is known what it costs: nothing where the shelf holds enough."""
        return self.missing <= 0 or any(pack.price is not None for pack in self.packs)

    def left_over(self, counts: tuple[int, ...]) -> float:
        """What so many of each pack, and the shelf, hold beyond what is needed."""
        held = sum(many * size for many, size in zip(counts, self.sizes, strict=True))
        return (held - self.missing) / BILLION


def stock_of(product: Product, need: float) -> Stock:
    """What there is of a product."""
    return Stock(product, need, _buyable(product))


def why_not_enough(stock: Stock) -> Iterator[Finding]:
    """Why what is needed cannot be bought, if it cannot."""
    name = stock.product.called
    short = stock.need - stock.product.on_shelf
    largest = max((pack.size for pack in stock.packs), default=0.0)
    if not stock.need <= MOST_OF_A_PRODUCT or short > largest * MOST_PACKS > 0:
        message = (
            f"{name}: it would take more than {MOST_PACKS} packs, so it is left out; check its spread rate "
            "and its pack sizes."
        )
        yield Finding(Code.TOO_MANY_PACKS, message, NOWHERE)
    elif short > 0 and not largest:
        message = f"{name}: it has no pack with a size, so it is not bought; add one."
        yield Finding(Code.NO_PACKS, message, NOWHERE)


def look_at_packs(product: Product, unit: Unit) -> Iterator[Finding]:
    """Packs that are not reckoned with."""
    name = product.called
    for pack in product.packs:
        if pack not in filled_packs(product):
            message = (
                f"{name}: a pack holds {pack.size:g} {product.measure}, so it is not bought; type how much is in it."
            )
            yield Finding(Code.EMPTY_PACK, message, NOWHERE)
        elif pack not in _buyable(product):
            size = Writing(unit).pack_size(pack.size, product.measure)
            yield Finding(
                Code.NO_PRICE, f"{name}: the pack of {size} has no price, so it is not bought; type its price.", NOWHERE
            )


def look_at_price(stock: Stock) -> Iterator[Finding]:
    """A product that is bought at a price that nobody knows, or for nothing."""
    if not stock.priced:
        message = f"{stock.product.called}: no pack has a price, so its cost is in no total; type a price."
        yield Finding(Code.NO_PRICE, message, NOWHERE)
    elif any(pack.price == 0 for pack in stock.packs):
        message = f"{stock.product.called}: a pack costs 0; type its price, or what you have On the shelf."
        yield Finding(Code.FREE_PACK, message, NOWHERE)


def filled_packs(product: Product) -> tuple[Pack, ...]:
    """The packs of a product that hold something."""
    return tuple(pack for pack in product.packs if _billionths(pack.size) > 0)


def _buyable(product: Product) -> tuple[Pack, ...]:
    """The packs that hold something: those with a price, or all where none has one."""
    holding = filled_packs(product)
    return tuple(pack for pack in holding if pack.price is not None) or holding


def _billionths(amount: float) -> int:
    return round(amount * BILLION)
