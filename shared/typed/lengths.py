"""Reads what a person types as a length. `shared.written.units` writes lengths in the same way.

    reading  = [+ -] product { (+ -) product }                2400-38   600+450+900
    product  = measure { (x *) measure | / number }           3x450   2400/4   3 x 1' 6"   7' 10"/2
    measure  = number [unit] | number feet number [inches]    2400   2.4 m   94 1/2"   7' 10 1/2"
    number   = whole fraction | fraction | decimal            94 1/2   1/2   2.5

A bare number is in the job's unit; after feet it is inches. Where one unit is typed, once, at the very end, it counts
for the whole reading: `600+450+900 cm`. A fraction stands after a space: `94-1/2` is a difference. There are no
brackets.
"""

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import Unit
from shared.limits import LONGEST_MM, MOST_OF_A_LINE
from shared.typed.length_words import ADVICE, Mark, Word, quoted, words_of
from shared.written.units import show_total_length, size_mm

_INCHES_A_FOOT = 12


class _Measure(NamedTuple):
    """A number, and the size of its unit in mm; None when no unit was typed."""

    number: Fraction
    size: Fraction | None


def read_length(
    text: str, unit: Unit, *, decimal: str = ".", allow_zero: bool = False, allow_negative: bool = False
) -> float:
    """The length in mm that this text says, reckoned exactly and rounded once.

    `decimal` is the decimal sign. Moves and positions may be zero or negative; other lengths may not. ReadingError
    where the text says no length, one beyond 100 m, or one that is zero or negative and may not be.
    """
    words = words_of(text, decimal)
    length = _Reader(text, words, _unit_of_all(words) or unit).reading()
    _refuse_odd(length, text, unit, allow_zero=allow_zero, allow_negative=allow_negative)
    return float(length)


def read_lengths(
    text: str, unit: Unit, *, decimal: str = ".", allow_zero: bool = False, allow_negative: bool = False
) -> tuple[float, ...]:
    """The lengths in mm of a list such as `2400, 3000, 1800`, parted by commas, semicolons, tabs or new lines.

    A comma that is the decimal sign parts two lengths only before a space. A unit that is typed once counts for the
    whole line; when several are typed, a length without one is in the job's unit. ReadingError where an item says no
    length, where there is no item, or more than `MOST_OF_A_LINE`.
    """
    pieces = parted(text, decimal)
    if not pieces:
        raise ReadingError("no length was typed", do=ADVICE)
    if len(pieces) > MOST_OF_A_LINE:
        raise ReadingError(f"these are {len(pieces)} readings", do=f"type at most {MOST_OF_A_LINE} in one line")
    lists = [words_of(piece, decimal) for piece in pieces]
    units = [word.unit for words in lists for word in words if word.mark is Mark.UNIT]
    of_line = units[0] if len(units) == 1 else unit
    lengths = []
    for piece, words in zip(pieces, lists, strict=True):
        length = _Reader(piece, words, _unit_of_all(words) or of_line).reading()
        _refuse_odd(length, piece, unit, allow_zero=allow_zero, allow_negative=allow_negative)
        lengths.append(float(length))
    return tuple(lengths)


def parted(text: str, decimal: str = ".") -> tuple[str, ...]:
    """The pieces of a list between commas, semicolons, tabs and new lines; empty ones are left out.

    A comma that is the decimal sign parts two pieces only before a space.
    """
    plain = text.replace(", " if decimal == "," else ",", ";")
    for sign in "\t\n\r":
        plain = plain.replace(sign, ";")
    return tuple(piece for piece in plain.split(";") if piece.strip(" ,"))


def _refuse_odd(length: Fraction, text: str, unit: Unit, *, allow_zero: bool, allow_negative: bool) -> None:
    if length < 0 and not allow_negative:
        raise ReadingError("a length cannot be negative", where=quoted(text), do="type a length above 0")
    if length == 0 and not allow_zero:
        raise ReadingError("a length cannot be 0", where=quoted(text), do="type a length above 0")
    if abs(length) > LONGEST_MM:
        most = show_total_length(LONGEST_MM, unit)
        raise ReadingError(f"this is longer than {most}", where=quoted(text), do="check the number and its unit")


class _Reader:
    """Goes through the words of one typed length once, from left to right.

    Each method reads what it is named after in the grammar at the head of this module, and passes it.
    """

    def __init__(self, text: str, words: Sequence[Word], bare: str) -> None:
        self.text = text
        self.words = words
        self.at = 0
        self.bare_size = size_mm(bare)

    def reading(self) -> Fraction:
        """The whole reading, in mm."""
        sign = self.take(Mark.PLUS, Mark.MINUS)
        length = Fraction(0)
        while True:
            length += -self.product() if sign is Mark.MINUS else self.product()
            sign = self.take(Mark.PLUS, Mark.MINUS)
            if sign is None:
                break
        if self.at < len(self.words):
            raise self.trouble(f"{quoted(self.words[self.at].typed)} does not fit there")
        return length

    def product(self) -> Fraction:
        """One term of the sum, in mm."""
        number, size = self.measure()
        while mark := self.take(Mark.TIMES, Mark.OVER):
            other = self.measure()
            if other.size is not None and (size is not None or mark is Mark.OVER):
                raise self.trouble("a length can only be multiplied or divided by a plain number")
            number = number * other.number if mark is Mark.TIMES else self.quotient(number, other.number)
            size = size or other.size
        return number * (size or self.bare_size)

    def measure(self) -> _Measure:
        """A number with or without a unit, or feet and inches."""
        number = self.number()
        unit = self.unit()
        if unit == "ft" and self.comes(Mark.NUMBER):
            return _Measure(number * _INCHES_A_FOOT + self.inches(), size_mm("in"))
        return _Measure(number, size_mm(unit) if unit else None)

    def inches(self) -> Fraction:
        """The inches after feet."""
        begin = self.at
        inches = self.number()
        if inches >= 1 and self.words[begin + 1 : begin + 2] and self.words[begin + 1].mark is Mark.OVER:
            raise self.trouble("this could be meant in two ways", do="type the inches with their mark, as in 7' 10\"/2")
        if self.unit() not in ("in", ""):
            raise self.trouble("only inches can follow feet")
        return inches

    def number(self) -> Fraction:
        """A decimal, a fraction (a share of two plain numbers is one too), or a whole number and a fraction."""
        first = self.plain_number()
        if self.comes(Mark.OVER, Mark.NUMBER):
            return self.over(first)
        if not self.comes(Mark.NUMBER, Mark.OVER, Mark.NUMBER):
            return first
        fraction = self.over(self.plain_number())
        if first.denominator != 1 or fraction >= 1:
            raise self.trouble("this is not a whole number and a fraction below 1, as in 94 1/2")
        return first + fraction

    def over(self, upper: Fraction) -> Fraction:
        """The fraction of `upper` over the number after the stroke. The reader stands at the stroke."""
        self.at += 1
        return self.quotient(upper, self.plain_number())

    def quotient(self, number: Fraction, by: Fraction) -> Fraction:
        """One number divided by another."""
        if by == 0:
            raise self.trouble("a length cannot be divided by 0")
        return number / by

    def plain_number(self) -> Fraction:
        """The number that comes next."""
        if self.at == len(self.words):
            raise self.trouble(f"nothing follows {quoted(self.words[-1].typed)}")
        word = self.words[self.at]
        if word.mark is not Mark.NUMBER:
            raise self.trouble(f"a number is missing before {quoted(word.typed)}")
        self.at += 1
        return word.number

    def unit(self) -> str:
        """The name of the unit that comes next; "" where the next word is no unit."""
        if not self.comes(Mark.UNIT):
            return ""
        self.at += 1
        return self.words[self.at - 1].unit

    def take(self, *marks: Mark) -> Mark | None:
        """The next mark, which is passed, if it is one of these; else None."""
        if self.at == len(self.words) or self.words[self.at].mark not in marks:
            return None
        self.at += 1
        return self.words[self.at - 1].mark

    def comes(self, *marks: Mark) -> bool:
        """Whether words of these marks come next, in this order."""
        return tuple(word.mark for word in self.words[self.at : self.at + len(marks)]) == marks

    def trouble(self, what: str, do: str = ADVICE) -> ReadingError:
        """The error for what is wrong with this length."""
        return ReadingError(what, where=quoted(self.text), do=do)


def _unit_of_all(words: Sequence[Word]) -> str:
    """The unit that counts for all bare numbers: the only one typed, if it is the last word; else ""."""
    units = [word.unit for word in words if word.mark is Mark.UNIT]
    return words[-1].unit if words and len(units) == 1 else ""
