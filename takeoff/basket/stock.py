"""What there is of a product, on the shelf and in packs, against what is needed of it; and why it cannot be bought.

Amounts are whole billionths of a litre, metre or piece, rounded to the nearest one. A gallon is exact in them, and they
are fine enough that no pack falls short by the error of a float.
"""

from collections.abc import Iterator
from typing import NamedTuple

from shared.findings import NOWHERE, Code, Finding
from shared.job import Unit
from shared.limits import MOST_OF_A_PRODUCT
from shared.trade.products import Pack, Product
from shared.written.writing import Writing

MOST_PACKS = 100_000
"""The most packs of one product. If it takes more, something is wrong with the need or with the packs (own choice)."""

BILLION = 1_000_000_000


class Stock(NamedTuple):
    """A product that would do, the amount needed, and the packs that it can be bought in.

    The packs are those with a price, or all of them if none has one.
    """

    product: Product
    need: float
    packs: tuple[Pack, ...]

    @property
    def missing(self) -> int:
        """What the shelf does not hold, in billionths; 0 or less if it holds enough."""
        return _billionths(self.need) - _billionths(self.product.on_shelf)

    @property
    def sizes(self) -> tuple[int, ...]:
        """What each pack holds, in billionths."""
        return tuple(_billionths(pack.size) for pack in self.packs)

    @property
    def priced(self) -> bool:
        """Whether the cost is known: a pack has a price, or the shelf holds enough and nothing is bought."""
        return self.missing <= 0 or any(pack.price is not None for pack in self.packs)

    def left_over(self, counts: tuple[int, ...]) -> float:
        """What these numbers of packs, and the shelf, hold beyond the need, in the product's measure."""
        held = sum(many * size for many, size in zip(counts, self.sizes, strict=True))
        return (held - self.missing) / BILLION


def stock_of(product: Product, need: float) -> Stock:
    """What there is of a product, against the amount needed of it."""
    return Stock(product, need, _buyable(product))


def why_not_enough(stock: Stock) -> Iterator[Finding]:
    """Why the amount needed cannot be bought; nothing if it can."""
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
    """The packs of a product that are never bought: they are empty, or have no price though others have one."""
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
    """A product that is bought without a known price, or of which a pack costs 0."""
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
