"""Packs and amounts of products as labels write them: "4 L", "300 mL", "1 gal", "25"; and the units they come in.

Whatever `show_size` gives, `shared.typed.packs.read_size` reads back.
"""

import tomllib
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from importlib.resources import files

import msgspec

from shared.job import Unit
from shared.trade.products import Measure
from shared.written.units import THOUSANDTHS, plain_number

SAME = 1e-9
"""Share of a size by which a float may miss it."""

HALF_A_LITRE = 0.5
"""Below it labels speak of millilitres and fluid ounces (common practice, no source)."""

SYSTEM_OF = {Unit.INCH: "US", Unit.MM: "imp"}
"""Whose gallon it is where nothing else is said."""

_TO_SHOW: dict[Measure, tuple[tuple[str, ...], tuple[str, ...]]] = {
    Measure.LITRES: (("usgal", "usqt", "uspt", "usfloz", "impgal", "impqt", "imppt", "impfloz"), ("l",)),
    Measure.METRES: (("ft", "yd"), ("m",)),
}
"""The customary units in which a size may be shown, and the metric one."""

_SMALLEST = {Measure.LITRES: "usfloz", Measure.METRES: "ft"}
"""The smallest customary unit in which an amount is shown."""


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


def show_size(size: float, measure: Measure, unit: Unit, *, decimal: str = ".") -> str:
    """A pack's size as its label writes it: in the first unit in which it is a short number, else to three decimals.

    A job in inches sees gallons first, one in millimetres litres first; 0.3 L is "300 mL".
    """
    if measure is Measure.PIECES:
        return plain_number(size, decimal)
    units = tuple(_units_to_show(size, measure, unit))
    chosen = next((each for each in units if _is_short(size / each.size)), units[0])
    return f"{plain_number(float(size / chosen.size), decimal)} {_sign(chosen, unit)}"


def show_amount(amount: float, measure: Measure, unit: Unit, *, decimal: str = ".") -> str:
    """So much of a product, as is needed or left over, rounded: "1.62 L", "236 mL", "34.5 m", "5.4" pieces.

    No pints: whoever buys in gallons and quarts has fluid ounces below them (common practice, no source). In inch jobs
    what is less than a fluid ounce or a foot is a part of it.
    """
    if measure is Measure.PIECES:
        return plain_number(round(amount, 1), decimal)
    least = float(units_by_spelling()[_SMALLEST[measure]].size) if unit is Unit.INCH else 0.0
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
    return units_by_spelling()[customary[0] if unit is Unit.INCH else metric[0]]


@cache
def _pack_units() -> _PackUnits:
    table = tomllib.loads((files("shared") / "data" / "pack_units.toml").read_text("utf-8"))
    return msgspec.convert(table, _PackUnits)


@cache
def units_by_spelling() -> dict[str, PackUnit]:
    """Every spelling of every unit, with its system before it where it has one; folded."""
    systems = _pack_units().systems
    return {
        folded(f"{before} {said}"): unit
        for unit in _pack_units().unit
        for said in unit.said
        for before in (systems[unit.system] if unit.system else ("",))
    }


def _units_to_show(size: float, measure: Measure, unit: Unit) -> Iterator[PackUnit]:
    """The units to try for a size, the best first: those of which there is at least one, and the metric one."""
    customary, metric = _TO_SHOW[measure]
    if measure is Measure.LITRES:
        metric = ("l",) if size >= HALF_A_LITRE else ("ml",)
    small = tuple(name for name in customary if size >= units_by_spelling()[name].size * (1 - SAME))
    names = (*small, *metric) if unit is Unit.INCH else (*metric, *small)
    yield from (units_by_spelling()[name] for name in names)


def _is_short(number: float | Fraction) -> bool:
    return abs(float(number) - round(float(number), THOUSANDTHS)) <= SAME * float(number)


def _sign(shown: PackUnit, unit: Unit) -> str:
    """How a unit is written: without its system where the job says it."""
    return shown.said[0] if not shown.system or SYSTEM_OF[unit] == shown.system else shown.sign()


def folded(text: str) -> str:
    """A spelling of a unit, however it is written."""
    return text.casefold().replace(" ", "").replace(".", "")
