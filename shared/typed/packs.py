"""How much is in a pack, as labels write it: "4 L", "300 mL", "1 gal", "10.1 fl oz", "6 x 300 mL", "50 m", "25 sheets".

Whatever `show_size` gives, `read_size` reads back.
"""

import re
import tomllib
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec

from shared.errors import ReadingError
from shared.job import Unit
from shared.limits import MOST_OF_A_PRODUCT
from shared.trade.products import Measure
from shared.typed.length_words import quoted
from shared.typed.numbers import read_number

ADVICE = "write a size such as 4 L, 300 mL, 1 US gal, 10.1 fl oz, 50 m, 60 yd or 25 sheets"

SAME = 1e-9
"""Share of a size by which a float may miss it."""

DIGITS = 3
"""Decimals of a size: no label says more."""

HALF_A_LITRE = 0.5
"""Below it labels speak of millilitres and fluid ounces (common practice, no source)."""

LONGEST_SIZE = 60
"""Characters. Nobody writes as many by intent."""

_SYSTEM_OF = {Unit.INCH: "US", Unit.MM: "imp"}
"""Whose gallon it is where nothing else is said."""

_TO_SHOW: dict[Measure, tuple[tuple[str, ...], tuple[str, ...]]] = {
    Measure.LITRES: (("usgal", "usqt", "uspt", "usfloz", "impgal", "impqt", "imppt", "impfloz"), ("l",)),
    Measure.METRES: (("ft", "yd"), ("m",)),
}
"""The customary units in which a size may be shown, and the metric one."""

_SMALLEST = {Measure.LITRES: "usfloz", Measure.METRES: "ft"}
"""The smallest customary unit in which an amount is shown."""

_PATTERN = re.compile(
    r"(?:(?:pack|box|roll|set) of )?(?:(?P<many>[0-9]+) ?[x*\N{MULTIPLICATION SIGN}] ?)?"
    r"(?P<number>[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9.,][0-9., '\N{RIGHT SINGLE QUOTATION MARK}]*?) ?"
    r"(?P<unit>[^\W0-9][^0-9]*[23]?|')?",
    re.IGNORECASE,
)


class PackUnit(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A unit on labels; its fields are explained at the head of `data/pack_units.toml`."""

    measure: Measure
    one: str
    said: tuple[str, ...]
    system: str = ""

    @property
    def size(self) -> Fraction:
        """How much of the measure one is, exactly."""
        return Fraction(self.one)

    def sign(self) -> str:
        """How it is written where its system matters: "US gal"."""
        return f"{self.system} {self.said[0]}".strip()


class _PackUnits(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """All of the data file."""

    systems: dict[str, tuple[str, ...]]
    unit: tuple[PackUnit, ...]


class PackSize(NamedTuple):
    """A size as it was read: how much, of which measure (None where no unit was written), and what was granted."""

    amount: float
    measure: Measure | None
    granted: str = ""


def read_size(text: str, measure: Measure, unit: Unit, *, decimal: str = ".") -> float:
    """How much this says, in litres, metres or pieces; a bare number is in that measure.

    `unit` is the job's, which says whose gallon "gal" is. ReadingError where it says no size, none above 0, or one of
    another measure.
    """
    size = parsed_size(text, unit, decimal=decimal)
    if size.measure not in (None, measure):
        raise ReadingError(f"this is counted in {measure}, not in {size.measure}", where=quoted(text), do=ADVICE)
    return size.amount


def parsed_size(text: str, unit: Unit, *, decimal: str = ".") -> PackSize:
    """What this says of a size, whatever it is a size of. ReadingError where it says none, or none above 0."""
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
    """The digits of a size, without its unit and without how many of it; "" where it is no size."""
    match = _match(text)
    return match["number"] if match else ""


def show_size(size: float, measure: Measure, unit: Unit, *, decimal: str = ".") -> str:
    """A pack's size as its label writes it: in the first unit in which it is a short number, else to three decimals.

    A job in inches sees gallons first, one in millimetres litres first; 0.3 L is "300 mL".
    """
    if measure is Measure.PIECES:
        return _shown(size, decimal)
    units = tuple(_units_to_show(size, measure, unit))
    chosen = next((each for each in units if _is_short(size / each.size)), units[0])
    return f"{_shown(float(size / chosen.size), decimal)} {_sign(chosen, unit)}"


def show_amount(amount: float, measure: Measure, unit: Unit, *, decimal: str = ".") -> str:
    """So much of a product, as is needed or left over, rounded: "1.62 L", "236 mL", "34.5 m", "5.4" pieces.

    No pints: whoever buys in gallons and quarts has fluid ounces below them (common practice, no source). In inch jobs
    what is less than a fluid ounce or a foot is a part of it.
    """
    if measure is Measure.PIECES:
        return _shown(round(amount, 1), decimal)
    least = float(_by_spelling()[_SMALLEST[measure]].size) if unit is Unit.INCH else 0.0
    shown = next(each for each in _units_to_show(max(amount, least), measure, unit) if each.said[0] != "pt")
    number = float(amount / shown.size)
    digits = 0 if shown.said[0] == "mL" else 1 if measure is Measure.METRES else 2
    return f"{round(number, digits) + 0.0:.{digits}f}".replace(".", decimal) + f" {_sign(shown, unit)}"


def amount_unit(measure: Measure, unit: Unit) -> str:
    """The one unit in which a table gives all amounts: "L", "m", or "US gal", "ft" where the job is in inches."""
    return _table_unit(measure, unit).sign()


def amount_in(amount: float, measure: Measure, unit: Unit) -> float:
    """An amount as a number of the table's unit."""
    return float(amount / _table_unit(measure, unit).size)


def _table_unit(measure: Measure, unit: Unit) -> PackUnit:
    customary, metric = {Measure.PIECES: (("pieces",), ("pieces",)), **_TO_SHOW}[measure]
    return _by_spelling()[customary[0] if unit is Unit.INCH else metric[0]]


@cache
def _pack_units() -> _PackUnits:
    table = tomllib.loads((files("shared") / "data" / "pack_units.toml").read_text("utf-8"))
    return msgspec.convert(table, _PackUnits)


@cache
def _by_spelling() -> dict[str, PackUnit]:
    """Every spelling of every unit, with its system before it where it has one; folded."""
    systems = _pack_units().systems
    return {
        _folded(f"{before} {said}"): unit
        for unit in _pack_units().unit
        for said in unit.said
        for before in (systems[unit.system] if unit.system else ("",))
    }


def _match(text: str) -> re.Match[str] | None:
    return _PATTERN.fullmatch(" ".join(text.split())) if len(text) <= LONGEST_SIZE else None


def _unit_of(typed: str, unit: Unit, text: str) -> PackUnit:
    plain = _folded(typed)
    spellings = _by_spelling()
    known = spellings.get(plain) or spellings.get(f"{_SYSTEM_OF[unit].casefold()}{plain}")
    if known is None:
        raise ReadingError(f"{quoted(typed)} is not a unit for packs", where=quoted(text), do=ADVICE)
    return known


def _granted(known: PackUnit | None, typed: str) -> str:
    """That a unit of two systems was taken for that of one, where only the job says which."""
    if known is None or not known.system or _folded(typed) in _by_spelling():
        return ""
    return f"{typed.strip()} is taken for {known.sign()}, {float(known.size):g} L"


def _number(text: str, decimal: str) -> Fraction:
    try:
        if "/" in text:
            return sum((Fraction(part) for part in text.split()), Fraction(0))
    except ZeroDivisionError as trouble:
        raise ReadingError("a size cannot be divided by 0", where=quoted(text), do=ADVICE) from trouble
    return read_number(text, decimal)


def _units_to_show(size: float, measure: Measure, unit: Unit) -> Iterator[PackUnit]:
    """The units to try for a size, the best first: those of which there is at least one, and the metric one."""
    customary, metric = _TO_SHOW[measure]
    if measure is Measure.LITRES:
        metric = ("l",) if size >= HALF_A_LITRE else ("ml",)
    small = tuple(name for name in customary if size >= _by_spelling()[name].size * (1 - SAME))
    names = (*small, *metric) if unit is Unit.INCH else (*metric, *small)
    yield from (_by_spelling()[name] for name in names)


def _is_short(number: float | Fraction) -> bool:
    return abs(float(number) - round(float(number), DIGITS)) <= SAME * float(number)


def _shown(number: float, decimal: str) -> str:
    return f"{round(number, DIGITS) + 0.0:.{DIGITS}f}".rstrip("0").rstrip(".").replace(".", decimal)


def _sign(shown: PackUnit, unit: Unit) -> str:
    """How a unit is written: without its system where the job says it."""
    return shown.said[0] if not shown.system or _SYSTEM_OF[unit] == shown.system else shown.sign()


def _folded(text: str) -> str:
    return text.casefold().replace(" ", "").replace(".", "")
