"""How the person's system writes numbers: in its own decimal sign, with real superscripts and signs of reckoning."""

from PySide6.QtCore import QLocale

from shared.job import Unit
from shared.typed.numbers import possible_signs
from shared.written.writing import Writing

TIMES = "\N{MULTIPLICATION SIGN}"
DIVIDED = "\N{DIVISION SIGN}"
MINUS = "\N{MINUS SIGN}"
SQUARED = "\N{SUPERSCRIPT TWO}"


def decimal_sign() -> str:
    """The decimal sign of the person's system: a comma, or else a point."""
    return "," if QLocale().decimalPoint() == "," else "."


def own_writing(unit: Unit = Unit.MM) -> Writing:
    """How the person's system writes numbers, in a job of this unit; the unit counts for nothing in a sentence.

    Thousands are parted in threes, by a sign that a field reads back, or not at all.
    """
    system, decimal = QLocale(), decimal_sign()
    sign = system.groupSeparator()
    is_read = sign in system.toString(1e6, "f", 0) and decimal in possible_signs(f"1{sign}000{decimal}00")
    grouped_from = 4 if sign in system.toString(1e3, "f", 0) else 5
    return Writing(unit, decimal, sign if is_read else "", grouped_from, TIMES, DIVIDED, MINUS, SQUARED)


def counted(number: int, one: str, many: str) -> str:
    """A number of things in words: "1 part", "2 parts"."""
    return f"{number} {one if number == 1 else many}"
