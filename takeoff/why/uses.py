"""The sum of one use of a product, as numbers in the job's units: sheets reckon with them, rows write them out."""

from typing import NamedTuple

from shared.job import Unit
from shared.trade.products import Product, Use
from shared.written.packs import amount_in, amount_unit
from shared.written.units import area_in, large_unit, run_in
from takeoff.figures.to_buy import Used

MM_IN_A_METRE = 1000.0
MM2_IN_A_SQUARE_METRE = 1_000_000.0


class UseSum(NamedTuple):
    """amount = size x times / per / (1 - loss) x (1 + allowance) + left_behind, loss and allowance being shares.

    `size` is in `size_unit`, "m2", "m", "ft2", "ft", or "" for a number of pieces; `per` is how much of that one
    `amount_unit` of the product does; `left_behind` and `amount` are in `amount_unit`.
    """

    size: float
    size_unit: str
    times: float
    per: float
    loss: float
    allowance: float
    left_behind: float
    amount: float
    amount_unit: str


def use_sum(used: Used, product: Product, unit: Unit) -> UseSum:
    """The sum of a use of this product, in the units of a job in this unit."""
    one, size_unit = _one(used, product, unit)
    measure = product.measure
    return UseSum(
        size=used.size * one,
        size_unit=size_unit,
        times=used.times,
        per=used.per * one / amount_in(1.0, measure, unit),
        loss=used.loss,
        allowance=used.allowance,
        left_behind=amount_in(used.left_behind, measure, unit),
        amount=amount_in(used.amount, measure, unit),
        amount_unit=amount_unit(measure, unit),
    )


def _one(used: Used, product: Product, unit: Unit) -> tuple[float, str]:
    """How many of the unit of its size a square metre, a metre or a piece is, and that unit."""
    if product.use in (Use.SEALANT, Use.TAPE):
        return run_in(MM_IN_A_METRE, unit), large_unit(unit)
    if used.finish and product.use is not Use.SLEEVE:
        return area_in(MM2_IN_A_SQUARE_METRE, unit), f"{large_unit(unit)}2"
    return 1.0, ""
