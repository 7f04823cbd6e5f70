"""The words of a typed length: numbers, units and signs. What they mean together is for `shared.typed.lengths`."""

import re
import unicodedata
from enum import Enum
from fractions import Fraction
from typing import NamedTuple

from shared.errors import ReadingError

ADVICE = 'type a length such as 2400, 2.4 m, 94 1/2", 600+450 or 3x450'

LONGEST_TYPED = 200
"""Characters. Nobody types as many by intent; it also bounds the numbers."""

_LONGEST_QUOTED = 40


class Mark(Enum):
    """What a word is."""

    NUMBER = "number"
    UNIT = "unit"
    PLUS = "+"
    MINUS = "-"
    TIMES = "x"
    OVER = "/"


class Word(NamedTuple):
    """One word: what it is and how it was typed.

    `number` is the value of a number, 0 for any other word. `unit` is the name of a unit, "" for any other word.
    """

    mark: Mark
    typed: str
    number: Fraction = Fraction(0)
    unit: str = ""


_SPELLINGS = {
    "mm": ("mm", "millimetre", "millimetres", "millimeter", "millimeters"),
    "cm": ("cm", "centimetre", "centimetres", "centimeter", "centimeters"),
    "m": ("m", "metre", "metres", "meter", "meters"),
    "in": ("in", "inch", "inches", '"'),
    "ft": ("ft", "foot", "feet", "'"),
}
_UNIT_OF = {spelling: unit for unit, spellings in _SPELLINGS.items() for spelling in spellings}

# Signs come from a keyboard, a phone that curls its quotes, or out of a drawing. Wide forms are folded first (NFKC).
_KEYBOARD = str.maketrans(
    {
        "\N{PRIME}": "'",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{LEFT SINGLE QUOTATION MARK}": "'",
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        "\N{LEFT DOUBLE QUOTATION MARK}": '"',
        "\N{MULTIPLICATION SIGN}": "x",
        "*": "x",
        "\N{FRACTION SLASH}": "/",
        "\N{DIVISION SLASH}": "/",
        "\N{DIVISION SIGN}": "/",
        "\N{MINUS SIGN}": "-",
        "\N{EN DASH}": "-",
    }
)

_PATTERN = re.compile(r"""(?P<number>\d+(?:\.\d*)?|\.\d+)|(?P<sign>[-+/])|(?P<unit>[^\W\d_]+\.?|"|')|\s+|(?P<odd>.)""")

_SWAPPED = str.maketrans(".,", ",.")


def quoted(text: str) -> str:
    """What was typed, in quotes. The middle of a long text is left out."""
    short = " ".join(text.split())
    if len(short) > _LONGEST_QUOTED:
        short = f"{short[: _LONGEST_QUOTED // 2]} ... {short[-8:]}"
    return f"“{short}”"


def words_of(text: str, decimal: str) -> tuple[Word, ...]:
    """The words of a typed length, from left to right. `decimal` is the decimal sign.

    ReadingError for an empty text, one that is too long, or a word that is no number, unit of length or sign.
    """
    if not text.strip():
        raise ReadingError("no length was typed", do=ADVICE)
    if len(text) > LONGEST_TYPED:
        raise ReadingError("this is too long to be a length", where=quoted(text), do=ADVICE)
    plain = on_a_keyboard(text)
    matches = _PATTERN.finditer(plain if decimal == "." else plain.translate(_SWAPPED))
    return tuple(_word(match, text, decimal) for match in matches if match.lastgroup)


def on_a_keyboard(text: str) -> str:
    """The text with every fraction written out, every sign as it is on a keyboard and every letter small."""
    written = "".join(_written_out(character) for character in text)
    return unicodedata.normalize("NFKC", written).translate(_KEYBOARD).replace("''", '"').lower()


def in_a_length(word: str) -> bool:
    """Whether a word of letters belongs to a typed length: a unit, with or without its point, or the sign "x"."""
    return word == Mark.TIMES.value or word.removesuffix(".") in _UNIT_OF


def _written_out(character: str) -> str:
    # A raised or ringed digit is a number by itself too: 24 with a raised 2 behind it is not 242.
    if unicodedata.decomposition(character).startswith(("<fraction>", "<super>", "<sub>", "<circle>")):
        return f" {unicodedata.normalize('NFKC', character)} "
    return character


def _word(match: re.Match[str], text: str, decimal: str) -> Word:
    typed = match[0]
    if match.lastgroup == "number":
        return Word(Mark.NUMBER, typed, Fraction(typed.rstrip(".")))
    if match.lastgroup == "sign":
        return Word(Mark(typed), typed)
    return _unit_or_times(typed, text, decimal)


def _unit_or_times(typed: str, text: str, decimal: str) -> Word:
    if typed == Mark.TIMES.value:
        return Word(Mark.TIMES, typed)
    unit = _UNIT_OF.get(typed.removesuffix("."))
    if unit is None:
        raise _odd(typed, text, decimal)
    return Word(Mark.UNIT, typed, unit=unit)


def _odd(typed: str, text: str, decimal: str) -> ReadingError:
    if typed == "," and decimal == ".":
        return ReadingError(
            "a comma separates two lengths",
            where=quoted(text),
            do="write decimals with a point and thousands with nothing between",
        )
    if typed == ",":
        return ReadingError(
            "a point is not the decimal sign here",
            where=quoted(text),
            do="write decimals with a comma and thousands with nothing between",
        )
    if typed.isalpha():
        return ReadingError(
            f"{quoted(typed)} is not a unit of length", where=quoted(text), do="use mm, cm, m, in or ft"
        )
    return ReadingError(f"{quoted(typed)} does not belong in a length", where=quoted(text), do=ADVICE)
