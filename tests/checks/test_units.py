"""Units against their exact definitions."""

from fractions import Fraction

from shared.job import Unit
from shared.typed.lengths import read_length
from shared.written.units import area_in, length_in, size_mm


def test_an_inch_is_25_4_mm_and_a_foot_304_8() -> None:
    """16 CFR 500.19 (seen)."""
    assert size_mm("in") == Fraction(254, 10)
    assert size_mm("ft") == Fraction(3048, 10)


def test_the_metric_units_are_powers_of_ten() -> None:
    """Exact by the meaning of the prefixes."""
    assert [size_mm(unit) for unit in ("mm", "cm", "m")] == [1, 10, 1000]


def test_twenty_three_and_five_eighths_inches() -> None:
    """Exact from the inch."""
    assert read_length('23 5/8"', Unit.MM) == 600.075
    assert read_length('1/16"', Unit.MM) == 1.5875


def test_a_square_foot_is_929_03_square_centimetres() -> None:
    """Exact from the foot: 0.3048 m squared is 0.09290304 m2."""
    assert area_in(92_903.04, Unit.INCH) == 1
    assert area_in(1_000_000, Unit.MM) == 1
    assert length_in(3048, Unit.INCH) == 10
