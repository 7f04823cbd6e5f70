"""Money in whole cents, so that no float decides between two baskets.

Half a cent is rounded up (common practice, no source).
"""

from decimal import ROUND_HALF_UP, Decimal

from shared.trade.products import Money


def pack_cents(price: float, money: Money) -> int:
    """What a pack of this price costs at the counter, in cents with tax."""
    tax = Decimal(0) if money.tax_included else _exact(money.tax)
    return _whole_cents(_exact(price) * (1 + tax) * 100)


def tax_cents(cents: int, money: Money) -> int:
    """How much of a cost with tax is tax, in cents: cost x tax / (1 + tax) (exact)."""
    tax = _exact(money.tax)
    return _whole_cents(cents * tax / (1 + tax))


def _exact(number: float) -> Decimal:
    """The decimal number that was written, without the error of its float."""
    return Decimal(str(number))


def _whole_cents(cents: Decimal) -> int:
    return int(cents.quantize(Decimal(1), ROUND_HALF_UP))
