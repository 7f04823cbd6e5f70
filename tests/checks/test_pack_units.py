"""The units of packs against their exact definitions, and against a units library that knows them too."""

from fractions import Fraction

import pint
import pytest

from shared.job import Unit
from shared.trade.products import Measure
from shared.typed.packs import parsed_size, read_size


def test_a_us_gallon_is_231_cubic_inches() -> None:
    """NIST Handbook 44 app. C; the inch is 25.4 mm (16 CFR 500.19)."""
    cubic_inch_l = Fraction("0.254") ** 3
    assert read_size("1 US gal", Measure.LITRES, Unit.MM) == float(231 * cubic_inch_l) == 3.785411784


def test_an_imperial_gallon_is_4_54609_litres() -> None:
    """NIST Handbook 44 app. C."""
    assert read_size("1 imp gal", Measure.LITRES, Unit.INCH) == 4.54609


def test_a_us_fluid_ounce_is_29_5735295625_millilitres() -> None:
    """The 128th part of a US gallon (exact)."""
    assert read_size("1 US fl oz", Measure.LITRES, Unit.MM) == pytest.approx(0.0295735295625, rel=1e-15)


def test_a_us_cartridge_of_10_1_fluid_ounces_holds_298_69_millilitres() -> None:
    """Exact from the fluid ounce."""
    assert read_size("10.1 fl oz", Measure.LITRES, Unit.INCH) == pytest.approx(0.29869, abs=5e-6)


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [
        ("US gal", "gallon"),
        ("US qt", "quart"),
        ("US pt", "pint"),
        ("US fl oz", "fluid_ounce"),
        ("imp gal", "imperial_gallon"),
        ("imp qt", "imperial_quart"),
        ("imp pt", "imperial_pint"),
        ("imp fl oz", "imperial_fluid_ounce"),
        ("mL", "milliliter"),
        ("cL", "centiliter"),
        ("yd", "yard"),
        ("ft", "foot"),
        ("cm", "centimeter"),
    ],
)
def test_a_units_library_agrees(ours: str, theirs: str) -> None:
    size = parsed_size(f"1 {ours}", Unit.MM)
    target = "liter" if size.measure is Measure.LITRES else "meter"
    registry: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    expected = float(registry.Quantity(Fraction(1), theirs).to(target).magnitude)
    assert size.amount == pytest.approx(expected, rel=1e-15)
