"""What stands in a field about finishes, products and prices: read from what a person types, and written back.

Each of these reads a text and shows a value. An empty text is None where that may be; what makes no sense raises
ReadingError. `unit` is the job's: jobs in inches say spread rates in square feet a US gallon.
"""

import re
from typing import NamedTuple, Protocol

from desktop.look.wording import decimal_sign, money_words
from shared.errors import ReadingError
from shared.job import Unit
from shared.limits import MOST_MONEY, MOST_OF_A_PRODUCT
from shared.trade.products import Measure
from shared.typed.length_words import quoted
from shared.typed.numbers import read_number
from shared.typed.packs import read_size, show_size
from shared.written.units import area_in, large_unit

DIGITS = 3
"""Decimals of a plain number."""

PRECISE = 4
"""Digits of a spread rate: none is known better."""

MM2_IN_M2 = 1e6

_AS_TYPED = str.maketrans({"\N{SUPERSCRIPT TWO}": "2", "\N{MICRO SIGN}": "u", "\N{GREEK SMALL LETTER MU}": "u"})

_SHADE = re.compile(r"#?([0-9A-Fa-f]{6})")
_RATIO = re.compile(r"(?P<base>[^:/]+)(?::|/| to )(?P<hardener>[^:/]+)")


class FieldWords(Protocol):
    """A way to read a field and to show what is in it."""

    def read(self, text: str, unit: Unit) -> object:
        """The value that a text says."""

    def show(self, value: object, unit: Unit) -> str:
        """The text for a value; "" for None."""


class NumberWords(NamedTuple):
    """A number from `least` to `most`, with its `sign` after it; `above` where `least` itself makes no sense.

    A share is shown in `percent`; a `whole` number is a count; one that may be left `empty` is None then.
    """

    what: str
    least: float = 0.0
    most: float = MOST_OF_A_PRODUCT
    above: bool = False
    empty: bool = False
    sign: str = ""
    percent: bool = False
    whole: bool = False

    def read(self, text: str, unit: Unit) -> float | None:
        """The number, a share where it is shown in percent."""
        if self.empty and not text.strip():
            return None
        number = float(read_number(_without(text, self._mark), decimal_sign()))
        number = number / 100 if self.percent else number
        if not self.least <= number <= self.most or (self.above and number <= self.least):
            raise ReadingError(f"the {self.what} must be {self._reach()}", where=quoted(text), do=self._advice())
        if self.whole and number != round(number):
            raise ReadingError(f"the {self.what} must be a whole number", where=quoted(text), do="type one")
        return round(number) if self.whole else number

    def show(self, value: object, unit: Unit) -> str:
        """The number without needless decimals, in percent where it is a share."""
        if not isinstance(value, int | float):
            return ""
        return f"{plain(value * 100 if self.percent else value)} {self._mark}".rstrip()

    @property
    def _mark(self) -> str:
        return "%" if self.percent else self.sign

    def _reach(self) -> str:
        least, most = (self.show(end, Unit.MM) for end in (self.least, self.most))
        if self.above:
            return f"more than {least}"
        return f"from {least} to {most}"

    def _advice(self) -> str:
        return "type another, or leave the field empty" if self.empty else "type another"


class MoneyWords(NamedTuple):
    """An amount of money, to the cent; `nothing` where the field is empty."""

    what: str
    nothing: float | None = None

    def read(self, text: str, unit: Unit) -> float | None:
        """The amount, 0 or more."""
        amount = NumberWords(self.what, most=MOST_MONEY, empty=True).read(text, unit)
        return self.nothing if amount is None else amount

    def show(self, value: object, unit: Unit) -> str:
        """The amount with two decimals."""
        return money_words(value) if isinstance(value, int | float) and value != self.nothing else ""


class SpreadWords(NamedTuple):
    """How much a litre or a piece covers, in m2: a number, its unit granted. Above zero; None where it is empty."""

    measure: Measure

    def read(self, text: str, unit: Unit) -> float | None:
        """The m2 that a litre or a piece covers in one coat."""
        number = _without(text, self.sign(unit))
        rate = NumberWords("spread rate", above=True, empty=True).read(number, unit)
        return None if rate is None else rate / self._shown_of_one(unit)

    def show(self, value: object, unit: Unit) -> str:
        """The rate with its unit, as precise as labels are: "12 m2/L"."""
        if not isinstance(value, int | float):
            return ""
        return f"{plain(float(f'{value * self._shown_of_one(unit):.{PRECISE}g}'))} {self.sign(unit)}"

    def sign(self, unit: Unit) -> str:
        """The unit: "m2/L", "ft2/gal", "m2 each"."""
        square = f"{large_unit(unit)}\N{SUPERSCRIPT TWO}"
        if self.measure is not Measure.LITRES:
            return f"{square} each"
        return f"{square}/L" if unit is Unit.MM else f"{square}/gal"

    def _shown_of_one(self, unit: Unit) -> float:
        """The number shown for one m2 a litre, or one m2 a piece (exact: shared.units, shared.pack_sizes)."""
        square = area_in(MM2_IN_M2, unit)
        if self.measure is not Measure.LITRES or unit is Unit.MM:
            return square
        return square * read_size("1 US gal", Measure.LITRES, unit)


class SizeWords(NamedTuple):
    """How much is in a pack, as its label says it: more than nothing."""

    measure: Measure

    def read(self, text: str, unit: Unit) -> float:
        """The size in litres, metres or pieces."""
        return read_size(text, self.measure, unit, decimal=decimal_sign())

    def show(self, value: object, unit: Unit) -> str:
        """The size as a label says it; one that no pack has as it stands in the job."""
        if not isinstance(value, int | float):
            return ""
        return show_size(value, self.measure, unit, decimal=decimal_sign()) if value > 0 else plain(value)


class StockWords(NamedTuple):
    """How much of a product there is already: a size, or nothing."""

    measure: Measure

    def read(self, text: str, unit: Unit) -> float:
        """The amount in litres, metres or pieces; 0 for an empty field."""
        if text.strip(" 0.,") == "":
            return 0.0
        return read_size(text, self.measure, unit, decimal=decimal_sign())

    def show(self, value: object, unit: Unit) -> str:
        """The amount; nothing for nothing."""
        return SizeWords(self.measure).show(value, unit) if value else ""


class RatioWords(NamedTuple):
    """Base to hardener by volume, "4:1"; None where the field is empty: the product is no two-part one."""

    def read(self, text: str, unit: Unit) -> tuple[float, float] | None:
        """The two parts, both above zero."""
        if not text.strip():
            return None
        match = _RATIO.fullmatch(text.strip())
        advice = "write it like 4:1, or leave the field empty"
        if match is None:
            raise ReadingError("this is not a mix ratio", where=quoted(text), do=advice)
        base, hardener = (float(read_number(match[part], decimal_sign())) for part in ("base", "hardener"))
        if not (0 < base <= MOST_OF_A_PRODUCT and 0 < hardener <= MOST_OF_A_PRODUCT):
            raise ReadingError("both parts of a mix ratio must be above 0", where=quoted(text), do=advice)
        return base, hardener

    def show(self, value: object, unit: Unit) -> str:
        """The parts with a colon."""
        return ":".join(plain(part) for part in value) if isinstance(value, tuple) else ""


class ShadeWords(NamedTuple):
    """A colour as "#RRGGBB"; "" where none is chosen."""

    def read(self, text: str, unit: Unit) -> str:
        """The colour, its letters large."""
        if not text.strip():
            return ""
        match = _SHADE.fullmatch(text.strip())
        if match is None:
            advice = "write it like #A3B59B, or leave the field empty"
            raise ReadingError("this is not a colour", where=quoted(text), do=advice)
        return f"#{match[1].upper()}"

    def show(self, value: object, unit: Unit) -> str:
        """The colour as it is."""
        return value if isinstance(value, str) else ""


def _without(text: str, sign: str) -> str:
    """A text without the sign at its end, also as keyboards have it: "m2" and "um"."""
    typed = text.strip()
    return typed[: -len(sign)].rstrip() if sign and _folded(typed).endswith(_folded(sign)) else typed


def _folded(text: str) -> str:
    return text.lower().translate(_AS_TYPED)


def plain(number: float) -> str:
    """A number without needless decimals, to a thousandth. Never "-0"."""
    return f"{round(number, DIGITS) + 0.0:.{DIGITS}f}".rstrip("0").rstrip(".").replace(".", decimal_sign())
