import pytest

from shared.job import Unit
from shared.trade.products import Product, Use
from takeoff.figures.to_buy import Used
from takeoff.why.uses import use_sum

PAINT = Product("paint", "Paint", Use.COLOUR)
SEALANT = Product("sealant", "Sealant", Use.SEALANT)
SLEEVE = Product("sleeve", "Sleeve", Use.SLEEVE)


@pytest.mark.parametrize("unit", list(Unit))
@pytest.mark.parametrize(
    ("product", "used", "size_unit"),
    [
        (PAINT, Used("coat", 6.0, 2, 10.0, loss=0.1, allowance=0.05, left_behind=0.1, finish="f"), ("m2", "ft2")),
        (SEALANT, Used("bead", 6.0, 1, 40.0, allowance=0.1), ("m", "ft")),
        (SLEEVE, Used("sleeves", 6.0, 2, 1.0, finish="f"), ("", "")),
    ],
    ids=["paint", "sealant", "sleeves"],
)
def test_the_numbers_of_a_use_come_to_its_amount(
    product: Product, used: Used, size_unit: tuple[str, str], unit: Unit
) -> None:
    each = use_sum(used, product, unit)
    amount = each.size * each.times / each.per / (1 - each.loss) * (1 + each.allowance) + each.left_behind
    assert amount == pytest.approx(each.amount)
    assert each.size_unit == size_unit[unit is Unit.INCH]


def test_a_square_metre_is_reckoned_in_square_feet_a_gallon() -> None:
    each = use_sum(Used("coat", 1.0, 1, 10.0, finish="f"), PAINT, Unit.INCH)
    assert each.size == pytest.approx(10.76391)
    assert each.per == pytest.approx(407.458, rel=1e-5)
    assert each.amount_unit == "US gal"
