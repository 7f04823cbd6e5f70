"""Reads sizes of packs as labels write them: "4 L", "300 mL", "1 gal", "10.1 fl oz", "6 x 300 mL", "25 sheets".

Whatever `shared.written.packs.show_size` gives, `read_size` reads back.
"""

import re
from fractions import Fraction
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import Unit
from shared.limits import MOST_OF_A_PRODUCT
from shared.trade.products import Measure
from shared.typed.length_words import quoted
from shared.typed.numbers import read_number
from shared.written.packs import SYSTEM_OF, PackUnit, folded, units_by_spelling

ADVICE = "write a size such as 4 L, 300 mL, 1 US gal, 10.1 fl oz, 50 m, 60 yd or 25 sheets"

LONGEST_SIZE = 60
"""Characters. Nobody writes as many by intent."""

_PATTERN = re.compile(
    r"(?:(?:pack|box|roll|set) of )?(?:(?P<many>[0-9]+) ?[x*\N{MULTIPLICATION SIGN}] ?)?"
    r"(?P<number>[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9.,][0-9., '\N{RIGHT SINGLE QUOTATION MARK}]*?) ?"
    r"(?P<unit>[^\W0-9][^0-9]*[23]?|')?",
    re.IGNORECASE,
)


class PackSize(NamedTuple):
    """A size as it was read: how much, and of which measure (None when no unit was written).

    `granted` says in words what was taken for granted: that "gal" is the US gallon; "" for nothing.
    """

    amount: float
    measure: Measure | None
    granted: str = ""


def read_size(text: str, measure: Measure, unit: Unit, *, decimal: str = ".") -> float:
    """The size that this text says, in litres, metres or pieces; a bare number is in `measure`.

    `unit` is the job's: in inches "gal" is the US gallon, else the imperial one. ReadingError where the text says no
    size, a size that is not above 0, or one of another measure.
    """
    size = parsed_size(text, unit, decimal=decimal)
    if size.measure not in (None, measure):
        raise ReadingError(f"this is counted in {measure}, not in {size.measure}", where=quoted(text), do=ADVICE)
    return size.amount


def parsed_size(text: str, unit: Unit, *, decimal: str = ".") -> PackSize:
    """The size that this text says, in whatever measure. ReadingError where it says none, or one not above 0."""
    match = _match(text)
    if match is None:
        raise ReadingError("this is not a pack size", where=quoted(text), do=ADVICE)
    known = _unit_of(match["unit"], unit, text) if match["unit"] else None
    amount = _number(match["number"], decimal) * int(match["many"] or 1) * (known.size if known else 1)
    if not 0 < amount <= MOST_OF_A_PRODUCT:
        what = "a pack cannot be empty" if amount <= 0 else "no pack holds that much"
        raise ReadingError(what, where=quoted(text), do=ADVICE)
    return PackSize(float(amount), known.measure if known else None, _granted(known, match["unit"] or ""))


def number_in(text: str) -> str:
    """The number in a size, without its unit and its count: "300" of "6 x 300 mL"; "" for a text that is no size."""
    match = _match(text)
    return match["number"] if match else ""


def _match(text: str) -> re.Match[str] | None:
    return _PATTERN.fullmatch(" ".join(text.split())) if len(text) <= LONGEST_SIZE else None


def _unit_of(typed: str, unit: Unit, text: str) -> PackUnit:
    plain = folded(typed)
    spellings = units_by_spelling()
    known = spellings.get(plain) or spellings.get(f"{SYSTEM_OF[unit].casefold()}{plain}")
    if known is None:
        raise ReadingError(f"{quoted(typed)} is not a unit for packs", where=quoted(text), do=ADVICE)
    return known


def _granted(known: PackUnit | None, typed: str) -> str:
    """The words that say which system's unit was taken, when only the job says which; else ""."""
    if known is None or not known.system or folded(typed) in units_by_spelling():
        return ""
    return f"{typed.strip()} is taken for {known.sign()}, {float(known.size):g} L"


def _number(text: str, decimal: str) -> Fraction:
    try:
        if "/" in text:
            return sum((Fraction(part) for part in text.split()), Fraction(0))
    except ZeroDivisionError as trouble:
        raise ReadingError("a size cannot be divided by 0", where=quoted(text), do=ADVICE) from trouble
    return read_number(text, decimal)
