"""How fields about finishes, products and prices are read from what a person types, and shown again.

Each class here reads a text and shows a value. An empty text gives None if the field may be empty. A text that makes no
sense raises ReadingError. `unit` is the job's: jobs in inches give spread rates in square feet a US gallon.
"""

import re
from typing import NamedTuple, Protocol

from desktop.look.wording import decimal_sign, own_writing
from shared.errors import ReadingError
from shared.job import Unit
from shared.limits import MOST_MONEY, MOST_OF_A_PRODUCT
from shared.trade.products import Measure
from shared.typed.length_words import quoted
from shared.typed.numbers import read_number
from shared.typed.packs import read_size

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
    """A number from `least` to `most`, shown with its `sign` after it.

    `above` says that `least` itself makes no sense, `percent` that the number is a share shown in percent, `whole` that
    it is a count. `empty` says that the field may be left empty, which gives None.
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
        """The number; for one that is shown in percent, the share (50 % is 0.5)."""
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
        """The number without needless decimals, with its sign; a share in percent."""
        if not isinstance(value, int | float):
            return ""
        if self.percent:
            return own_writing().percent(value)
        return f"{own_writing().number(value)} {self.sign}".rstrip()

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
    """An amount of money, to the cent; an empty field gives `nothing`."""

    what: str
    nothing: float | None = None

    def read(self, text: str, unit: Unit) -> float | None:
        """The amount, 0 or more."""
        amount = NumberWords(self.what, most=MOST_MONEY, empty=True).read(text, unit)
        return self.nothing if amount is None else amount

    def show(self, value: object, unit: Unit) -> str:
        """The amount with two decimals."""
        return own_writing().money(value) if isinstance(value, int | float) and value != self.nothing else ""


class SpreadWords(NamedTuple):
    """The m2 that a litre or a piece covers: a number above 0, typed with or without its unit; None if empty."""

    measure: Measure

    def read(self, text: str, unit: Unit) -> float | None:
        """The m2 that a litre or a piece covers in one coat."""
        number = _without(text, self.sign(unit))
        rate = NumberWords("spread rate", above=True, empty=True).read(number, unit)
        return None if rate is None else rate / own_writing(unit).spread_rate_of_one(self.measure)

    def show(self, value: object, unit: Unit) -> str:
        """The rate with its unit, as precise as labels are: "12 m2/L"."""
        if not isinstance(value, int | float):
            return ""
        return own_writing(unit).spread_rate(value, self.measure)

    def sign(self, unit: Unit) -> str:
        """The unit: "m2/L", "ft2/gal", "m2 each"."""
        return own_writing(unit).spread_rate_unit(self.measure)


class SizeWords(NamedTuple):
    """How much is in a pack, as its label says it: more than nothing."""

    measure: Measure

    def read(self, text: str, unit: Unit) -> float:
        """The size in litres, metres or pieces."""
        return read_size(text, self.measure, unit, decimal=decimal_sign())

    def show(self, value: object, unit: Unit) -> str:
        """The size as a label says it; a size that no pack can have, 0 or less, as the bare number."""
        if not isinstance(value, int | float):
            return ""
        return own_writing(unit).pack_size(value, self.measure) if value > 0 else own_writing().number(value)


class StockWords(NamedTuple):
    """How much of a product the person has already: a size, or nothing."""

    measure: Measure

    def read(self, text: str, unit: Unit) -> float:
        """The amount in litres, metres or pieces; 0 for an empty field."""
        if text.strip(" 0.,") == "":
            return 0.0
        return read_size(text, self.measure, unit, decimal=decimal_sign())

    def show(self, value: object, unit: Unit) -> str:
        """The amount as a label says it; "" for 0."""
        return SizeWords(self.measure).show(value, unit) if value else ""


class RatioWords(NamedTuple):
    """Base to hardener by volume, "4:1"; None for an empty field: the product is not two-part."""

    def read(self, text: str, unit: Unit) -> tuple[float, float] | None:
        """The two parts of the ratio, both above 0; None for an empty text."""
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
        return own_writing().ratio(value) if isinstance(value, tuple) else ""


class ShadeWords(NamedTuple):
    """A colour as "#RRGGBB"; "" if none is chosen."""

    def read(self, text: str, unit: Unit) -> str:
        """The colour with capital letters; "" for an empty text."""
        if not text.strip():
            return ""
        match = _SHADE.fullmatch(text.strip())
        if match is None:
            advice = "write it like #A3B59B, or leave the field empty"
            raise ReadingError("this is not a colour", where=quoted(text), do=advice)
        return f"#{match[1].upper()}"

    def show(self, value: object, unit: Unit) -> str:
        """The colour as it is written in the job."""
        return value if isinstance(value, str) else ""


def _without(text: str, sign: str) -> str:
    """A text without the sign at its end. The sign may be as keyboards have it: "m2" for "m²", "um" for "µm"."""
    typed = text.strip()
    return typed[: -len(sign)].rstrip() if sign and _folded(typed).endswith(_folded(sign)) else typed


def _folded(text: str) -> str:
    return text.lower().translate(_AS_TYPED)
