"""Reads numbers as tables write them: with a decimal point or comma, with or without signs between thousands."""

import re
from fractions import Fraction

from shared.errors import ReadingError
from shared.typed.length_words import quoted

SIGNS = (".", ",")
"""The two decimal signs."""

LONGEST_NUMBER = 30
"""Characters. Nobody writes as many by intent; it also bounds the number."""

_BETWEEN = " '\N{RIGHT SINGLE QUOTATION MARK}\N{NO-BREAK SPACE}\N{NARROW NO-BREAK SPACE}\N{THIN SPACE}"
"""What may stand between thousands. Whichever of `SIGNS` is not the decimal sign may stand there too."""

_PATTERNS = {
    sign: re.compile(
        rf"[+-]?(?:[1-9][0-9]{{0,2}}(?P<between>[{_BETWEEN}{other}])[0-9]{{3}}(?:(?P=between)[0-9]{{3}})*|[0-9]*)"
        rf"(?:[{sign}][0-9]+)?"
    )
    for sign, other in ((".", ","), (",", "."))
}


def possible_signs(text: str) -> frozenset[str]:
    """The decimal signs with which this text is a number: both for "24" and "1,234"; empty for a text that is none."""
    plain = text.strip()
    if len(plain) > LONGEST_NUMBER or not re.search("[0-9]", plain):
        return frozenset()
    return frozenset(sign for sign in SIGNS if _PATTERNS[sign].fullmatch(plain))


def read_number(text: str, decimal: str) -> Fraction:
    """The number that this text says with this decimal sign, exactly; ReadingError where it says none."""
    if decimal not in possible_signs(text):
        raise ReadingError(f"{quoted(text)} is not a number", do=f"write it like 1234{decimal}50")
    return Fraction(re.sub(rf"[^0-9{decimal}+-]", "", text).replace(",", "."))


def says_one_number(text: str) -> bool:
    """Whether this text can be one number only, whichever sign is the decimal one: true of "24", not of "1,234"."""
    return len({read_number(text, sign) for sign in possible_signs(text)}) == 1
