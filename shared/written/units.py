"""Lengths and areas as a person sees them, from the millimetres inside.

`shared.typed.lengths.read_length` reads back all that `show_length` writes. Units that are powers of ten of a
millimetre are worked out here, and all others by pint. It is imported when the first of those is met, as importing it
takes longer than everything else that happens when the program starts.
"""

from fractions import Fraction
from functools import cache

from shared.job import Unit

MM_IN_A_METRE = 1000.0
MM2_IN_A_SQUARE_METRE = 1_000_000.0
ML_IN_A_LITRE = 1000.0

TENTHS = 10
"""Millimetres are shown to a tenth: a tape is read to half a millimetre at best (common practice, no source)."""

DIVISIONS = 32
"""Inches are shown to a thirty-second, the finest division of a usual inch tape (common practice, no source)."""

THOUSANDTHS = 3
"""Decimals of a plain number, as nothing here is known more exactly (common practice, no source)."""

_TENFOLD = {"mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000)}

_BY_PINT = ("in", "ft")

_LARGE = {Unit.MM: "m", Unit.INCH: "ft"}


def size_mm(unit: str) -> Fraction:
    """How many millimetres one of this unit of length is, exactly: "mm", "cm", "m", "in", "ft"."""
    return _TENFOLD[unit] if unit in _TENFOLD else _sizes_by_pint()[unit]


@cache
def _sizes_by_pint() -> dict[str, Fraction]:
    import pint  # late: see the head of this module

    registry: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    return {unit: Fraction(registry.Quantity(Fraction(1), unit).to("mm").magnitude) for unit in _BY_PINT}


def large_unit(unit: Unit) -> str:
    """The unit of lengths that are added up, "m" or "ft". Areas are in its square, written "m2" or "ft2"."""
    return _LARGE[unit]


def length_in(length_mm: float, unit: Unit) -> float:
    """The number of metres or feet of a length."""
    return float(length_mm / size_mm(large_unit(unit)))


def area_in(area_mm2: float, unit: Unit) -> float:
    """The number of square metres or square feet of an area."""
    return float(area_mm2 / size_mm(large_unit(unit)) ** 2)


def show_total_length(length_mm: float, unit: Unit, *, decimal: str = ".", fine: bool = False) -> str:
    """A length that was added up: "9.80 m" or "32.2 ft". `fine` shows feet to a hundredth, for the terms of a sum."""
    return f"{_fixed(length_in(length_mm, unit), unit, decimal, more=fine and unit is Unit.INCH)} {large_unit(unit)}"


def show_area(area_mm2: float, unit: Unit, *, decimal: str = ".", fine: bool = False) -> str:
    """An area: "2.14 m2" or "23.0 ft2". `fine` shows one digit more, for the terms of a sum."""
    return f"{_fixed(area_in(area_mm2, unit), unit, decimal, more=fine)} {large_unit(unit)}2"


def show_length(length_mm: float, unit: Unit, *, decimal: str = ".") -> str:
    """A length as it is read off a tape: "3600", "600.5" millimetres, or `94 1/2"`."""
    if unit is Unit.MM:
        return _tenths(length_mm).replace(".", decimal)
    return _inches(length_mm)


def plain_number(number: float, decimal: str = ".") -> str:
    """A number to a thousandth, without needless decimals: "2", "2.5". Never "-0"."""
    return f"{round(number, THOUSANDTHS) + 0.0:.{THOUSANDTHS}f}".rstrip("0").rstrip(".").replace(".", decimal)


def labelled_mm(length_mm: float, unit: Unit) -> float:
    """The length that `show_length` shows for a length above 0, exactly; in inches at least the finest division."""
    if unit is Unit.MM:
        return round(length_mm * TENTHS) / TENTHS
    division = size_mm("in") / DIVISIONS
    return float(max(round(Fraction(length_mm) / division), 1) * division)


def length_words(length_mm: float, unit: Unit, *, decimal: str = ".") -> str:
    """A length with its unit, for a sentence: "600.5 mm", `94 1/2"`."""
    return show_length(length_mm, unit, decimal=decimal) + (" mm" if unit is Unit.MM else "")


def _fixed(number: float, unit: Unit, decimal: str, *, more: bool = False) -> str:
    """The number to a hundredth of a metre or square metre, or a tenth of a foot or square foot. Never "-0.00"."""
    digits = (2 if unit is Unit.MM else 1) + more
    return f"{round(number, digits) + 0.0:.{digits}f}".replace(".", decimal)


def _tenths(length_mm: float) -> str:
    return f"{round(length_mm * TENTHS) / TENTHS + 0.0:.1f}".removesuffix(".0")


def _inches(length_mm: float) -> str:
    parts = round(Fraction(length_mm) / size_mm("in") * DIVISIONS)
    whole, rest = divmod(abs(parts), DIVISIONS)
    fraction = str(Fraction(rest, DIVISIONS)) if rest else ""
    words = " ".join(word for word in (str(whole) if whole or not rest else "", fraction) if word)
    return f'{"-" if parts < 0 else ""}{words}"'
