"""The sum of one use of a product, as numbers in the job's units, for worksheets and for rows."""

from enum import Enum, auto
from typing import NamedTuple

from shared.job import Unit
from shared.trade.products import Product, Use
from shared.written.packs import amount_in, amount_unit, is_small
from shared.written.units import MM2_IN_A_SQUARE_METRE, MM_IN_A_METRE, area_in, large_unit, length_in
from shared.written.writing import Writing
from takeoff.figures.to_buy import Used


class UseSum(NamedTuple):
    """The numbers of amount = size x times / per / (1 - loss) x (1 + allowance) + left_behind.

    `loss` and `allowance` are shares. `size` is in `size_unit`: "m2", "m", "ft2", "ft", or "" for a number of pieces.
    `per` is how much of the size one `amount_unit` of the product does. `left_behind` and `amount` are in
    `amount_unit`.
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
    """The numbers of a use of this product, in the units of a job that is in mm or in inches."""
    one, size_unit = _one(_size_of(used, product), unit)

    def shown(amount: float) -> float:
        return amount_in(amount, product.measure, unit, small=is_small(product))

    return UseSum(
        size=used.size * one,
        size_unit=size_unit,
        times=used.times,
        per=used.per * one / shown(1.0),
        loss=used.loss,
        allowance=used.allowance,
        left_behind=shown(used.left_behind),
        amount=shown(used.amount),
        amount_unit=amount_unit(product.measure, unit, small=is_small(product)),
    )


def written_size(used: Used, product: Product, writing: Writing) -> str:
    """How much a use works on, with the unit: "6.767 m2", "9.80 m", "2" for two sleeves."""
    match _size_of(used, product):
        case _Size.AREA:
            return writing.area_in_sum(used.size * MM2_IN_A_SQUARE_METRE)
        case _Size.LENGTH:
            return writing.total_length_in_sum(used.size * MM_IN_A_METRE)
        case _Size.NUMBER:
            return writing.number(used.size)


class _Size(Enum):
    """What the size of a use counts: m2 of surface, m of joint or masking, or pieces."""

    AREA = auto()
    LENGTH = auto()
    NUMBER = auto()


def _size_of(used: Used, product: Product) -> _Size:
    if product.use in (Use.SEALANT, Use.TAPE):
        return _Size.LENGTH
    return _Size.AREA if used.finish and product.use is not Use.SLEEVE else _Size.NUMBER


def _one(size: _Size, unit: Unit) -> tuple[float, str]:
    """How many of the size's unit in the job make one square metre, metre or piece; and that unit."""
    match size:
        case _Size.AREA:
            return area_in(MM2_IN_A_SQUARE_METRE, unit), f"{large_unit(unit)}2"
        case _Size.LENGTH:
            return length_in(MM_IN_A_METRE, unit), large_unit(unit)
        case _Size.NUMBER:
            return 1.0, ""
