"""Packs and amounts of products as labels write them: "4 L", "300 mL", "1 gal", "25"; and the units that they come in.

`shared.typed.packs.read_size` reads back all that `show_size` writes.
"""

import tomllib
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from importlib.resources import files

import msgspec

from shared.job import Unit
from shared.trade.products import Measure, Product
from shared.written.units import THOUSANDTHS, plain_number

SAME = 1e-9
"""The share of a size by which its float may be off."""

HALF_A_LITRE = 0.5
"""Labels of less than this are in millilitres or fluid ounces (common practice, no source)."""

SYSTEM_OF = {Unit.INCH: "US", Unit.MM: "imp"}
"""The system of a gallon that is written without one, by the unit of the job."""

_TO_SHOW: dict[Measure, tuple[tuple[str, ...], tuple[str, ...]]] = {
    Measure.LITRES: (("usgal", "usqt", "uspt", "usfloz", "impgal", "impqt", "imppt", "impfloz"), ("l",)),
    Measure.METRES: (("ft", "yd"), ("m",)),
}
"""The customary units in which a size may be shown, and the metric one."""

_SMALLEST = {Measure.LITRES: "usfloz", Measure.METRES: "ft"}
"""The smallest customary unit in which an amount is shown."""


class PackUnit(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A unit on labels. Its fields are explained at the head of `data/pack_units.toml`."""

    measure: Measure
    one: str
    said: tuple[str, ...]
    system: str = ""

    @property
    def size(self) -> Fraction:
        """How many litres, metres or pieces one of this unit is, exactly."""
        return Fraction(self.one)

    def sign(self) -> str:
        """The unit as it is written together with its system: "US gal"; without one: "L"."""
        return f"{self.system} {self.said[0]}".strip()


class _PackUnits(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The whole content of `data/pack_units.toml`."""

    systems: dict[str, tuple[str, ...]]
    unit: tuple[PackUnit, ...]


def show_size(size: float, measure: Measure, unit: Unit, *, decimal: str = ".") -> str:
    """The size of a pack as its label writes it: "4 L", "300 mL", "1 gal".

    It is in the first unit that gives a short number, or else in the first of all, to three decimals. A job in inches
    tries gallons first, a job in millimetres litres. `size` is in litres, metres or pieces.
    """
    if measure is Measure.PIECES:
        return plain_number(size, decimal)
    units = tuple(_units_to_show(size, measure, unit))
    chosen = next((each for each in units if _is_short(size / each.size)), units[0])
    return f"{plain_number(float(size / chosen.size), decimal)} {_sign(chosen, unit)}"


def show_amount(amount: float, measure: Measure, unit: Unit, *, decimal: str = ".") -> str:
    """An amount of a product that is needed or left over, rounded: "1.62 L", "236 mL", "34.5 m", "5.4" pieces.

    It is never in pints: people who buy gallons and quarts use fluid ounces below them (common practice, no source). In
    a job in inches, less than a fluid ounce or a foot is written as a part of one.
    """
    if measure is Measure.PIECES:
        return plain_number(round(amount, 1), decimal)
    least = float(units_by_spelling()[_SMALLEST[measure]].size) if unit is Unit.INCH else 0.0
    shown = next(each for each in _units_to_show(max(amount, least), measure, unit) if each.said[0] != "pt")
    number = float(amount / shown.size)
    digits = 0 if shown.said[0] == "mL" else 1 if measure is Measure.METRES else 2
    return f"{round(number, digits) + 0.0:.{digits}f}".replace(".", decimal) + f" {_sign(shown, unit)}"


def is_small(product: Product) -> bool:
    """Whether a product comes in small packs only, such as cartridges: no pack of it holds a US pint.

    Their labels give fluid ounces, or millilitres (common practice, no source).
    """
    pint = float(units_by_spelling()["uspt"].size)
    return product.measure is Measure.LITRES and max((pack.size for pack in product.packs), default=pint) < pint


def amount_unit(measure: Measure, unit: Unit, *, small: bool = False) -> str:
    """The unit that a table gives all amounts in: "L" or "m", and for a job in inches "US gal" or "ft".

    What comes in `small` packs is in "US fl oz" there.
    """
    return _table_unit(measure, unit, small=small).sign()


def amount_in(amount: float, measure: Measure, unit: Unit, *, small: bool = False) -> float:
    """The number of an amount in the unit of `amount_unit`."""
    return float(amount / _table_unit(measure, unit, small=small).size)


def _table_unit(measure: Measure, unit: Unit, *, small: bool) -> PackUnit:
    if small and unit is Unit.INCH:
        return units_by_spelling()[_SMALLEST[measure]]
    customary, metric = {Measure.PIECES: (("pieces",), ("pieces",)), **_TO_SHOW}[measure]
    return units_by_spelling()[customary[0] if unit is Unit.INCH else metric[0]]


@cache
def _pack_units() -> _PackUnits:
    table = tomllib.loads((files("shared") / "data" / "pack_units.toml").read_text("utf-8"))
    return msgspec.convert(table, _PackUnits)


@cache
def units_by_spelling() -> dict[str, PackUnit]:
    """The units by every spelling, folded. Units of a system are spelled with each name of their system before them."""
    systems = _pack_units().systems
    return {
        folded(f"{before} {said}"): unit
        for unit in _pack_units().unit
        for said in unit.said
        for before in (systems[unit.system] if unit.system else ("",))
    }


def _units_to_show(size: float, measure: Measure, unit: Unit) -> Iterator[PackUnit]:
    """The units to try for a size, the best first: the customary ones that go into it, and the metric one."""
    customary, metric = _TO_SHOW[measure]
    if measure is Measure.LITRES:
        metric = ("l",) if size >= HALF_A_LITRE else ("ml",)
    small = tuple(name for name in customary if size >= units_by_spelling()[name].size * (1 - SAME))
    names = (*small, *metric) if unit is Unit.INCH else (*metric, *small)
    yield from (units_by_spelling()[name] for name in names)


def _is_short(number: float | Fraction) -> bool:
    return abs(float(number) - round(float(number), THOUSANDTHS)) <= SAME * float(number)


def _sign(shown: PackUnit, unit: Unit) -> str:
    """The unit as it is written in a job: without its system if that is the job's own."""
    return shown.said[0] if not shown.system or SYSTEM_OF[unit] == shown.system else shown.sign()


def folded(text: str) -> str:
    """The spelling of a unit in small letters, without spaces and points."""
    return text.casefold().replace(" ", "").replace(".", "")
