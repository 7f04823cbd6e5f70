"""Numbers as the window words them: in the person's own decimal sign, with real superscripts."""

import re

from PySide6.QtCore import QLocale

from shared.job import Unit
from shared.written.units import large_unit, show_area, show_length, show_run

_SQUARES = re.compile(r"\b(m|mm|ft|leg)2\b")
_DECIMAL_POINT = re.compile(r"(?<=\d)\.(?=\d)")

TIMES = "\N{MULTIPLICATION SIGN}"
MINUS = "\N{MINUS SIGN}"


def decimal_sign() -> str:
    """The decimal sign of the person's system: a comma, or else a point."""
    return "," if QLocale().decimalPoint() == "," else "."


def length_words(length_mm: float, unit: Unit) -> str:
    """A length as it is read off a tape."""
    return show_length(length_mm, unit, decimal=decimal_sign())


def run_words(length_mm: float, unit: Unit) -> str:
    """A length that was added up, such as metres of masking, with its unit."""
    return show_run(length_mm, unit, decimal=decimal_sign())


def area_words(area_mm2: float, unit: Unit) -> str:
    """An area with its unit."""
    return show_area(area_mm2, unit, decimal=decimal_sign()).removesuffix("2") + "²"


def step_words(area_mm2: float, unit: Unit) -> str:
    """An area within a sum, with one digit more, so that the areas add up as they are read."""
    words = show_area(area_mm2, unit, decimal=decimal_sign(), fine=True).removesuffix("2") + "²"
    return words.replace("-", MINUS)


def area_number(area_mm2: float, unit: Unit) -> str:
    """An area without its unit, for a column whose head names the unit."""
    return area_words(area_mm2, unit).split(" ")[0]


def off_words(length_mm: float, unit: Unit) -> str:
    """How far a length could be off, with its unit."""
    return f"± {length_words(length_mm, unit)}{' mm' if unit is Unit.MM else ''}"


def off_area_words(area_mm2: float, unit: Unit) -> str:
    """How far an area could be off, with its unit."""
    return f"± {step_words(area_mm2, unit)}"


def square_unit(unit: Unit) -> str:
    """The unit in which areas are shown: "m²" or "ft²"."""
    return large_unit(unit) + "²"


def raised(words: str) -> str:
    """Words of the takeoff with their squares as they are shown: "m2" becomes "m²"."""
    return _SQUARES.sub(r"\1²", words)


def money_words(amount: float, currency: str = "") -> str:
    """Money to the cent, as the person's system writes it, with the currency's word after it."""
    return f"{QLocale().toString(amount, 'f', 2)} {currency}".rstrip()


def with_own_decimals(words: str) -> str:
    """A sentence whose numbers have a decimal point, with the person's own decimal sign in them."""
    return words if decimal_sign() == "." else _DECIMAL_POINT.sub(decimal_sign(), words)


def counted(number: int, one: str, many: str) -> str:
    """A number of things in words: "1 part", "2 parts"."""
    return f"{number} {one if number == 1 else many}"
