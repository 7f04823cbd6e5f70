"""Money in whole cents, so that no float decides between two baskets; half a cent is rounded up (common practice)."""

from decimal import ROUND_HALF_UP, Decimal

from shared.trade.products import Money


def pack_cents(price: float, money: Money) -> int:
    """What a pack of this price costs at the counter, tax included."""
    tax = Decimal(0) if money.tax_included else _exact(money.tax)
    return _whole_cents(_exact(price) * (1 + tax) * 100)


def tax_cents(cents: int, money: Money) -> int:
    """How much of a cost with tax is tax: tax / (1 + tax) of it."""
    tax = _exact(money.tax)
    return _whole_cents(cents * tax / (1 + tax))


def _exact(number: float) -> Decimal:
    """A number as it was written."""
    return Decimal(str(number))


def _whole_cents(cents: Decimal) -> int:
    return int(cents.quantize(Decimal(1), ROUND_HALF_UP))
