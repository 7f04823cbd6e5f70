"""How one person writes numbers; and every length, area, pack, section, rate and price in that writing."""

import re
from collections.abc import Iterable
from math import floor, log10
from typing import NamedTuple

from shared.job import Butt, Fillet, Section, Unit
from shared.trade.products import Measure, Pack
from shared.written.packs import amount_in, amount_unit, show_amount, show_size
from shared.written.units import (
    MM2_IN_A_SQUARE_METRE,
    area_in,
    large_unit,
    length_words,
    plain_number,
    show_area,
    show_length,
    show_total_length,
)

NO_PACKS = "none"

NO_PRICE = "no price"

RATE_DIGITS = 4
"""Digits of a spread rate, as none is known more exactly (common practice, no source)."""

_DECIMALS = {Measure.LITRES: 3, Measure.METRES: 2}
"""The decimals of an amount in a sum, so that the terms add up as they are read."""

_SQUARES = re.compile(r"\b(m|mm|ft|leg)2\b")
_DECIMAL_POINT = re.compile(r"(?<=\d)\.(?=\d)")
_MULTIPLIED = re.compile(r"(?<=\d) x (?=\d)")


class Writing(NamedTuple):
    """The job's unit, and the signs that a person writes numbers with. The defaults are for the terminal and for files.

    `thousands` is put between the thousands of money whose whole part has at least `grouped_from` digits; "" for none.
    `minus` is the sign in sums; a field shows the hyphen of a keyboard instead. `squared` ends the unit of an area.
    """

    unit: Unit = Unit.MM
    decimal: str = "."
    thousands: str = ""
    grouped_from: int = 4
    times: str = "x"
    divided: str = "/"
    minus: str = "-"
    squared: str = "2"

    def number(self, number: float) -> str:
        """A number to a thousandth, without needless decimals: "2", "2.5"."""
        return plain_number(number, self.decimal)

    def percent(self, share: float) -> str:
        """A share in percent: 0.1 is "10 %"."""
        return f"{self.number(100 * share)} %"

    def ratio(self, parts: tuple[float, float]) -> str:
        """Base to hardener by volume: "4:1"."""
        return ":".join(map(self.number, parts))

    def length(self, length_mm: float) -> str:
        """A length as it is read off a tape, without "mm": "600.5", `94 1/2"`."""
        return show_length(length_mm, self.unit, decimal=self.decimal)

    def length_with_unit(self, length_mm: float) -> str:
        """A length as it is read off a tape: "600.5 mm", `94 1/2"`."""
        return length_words(length_mm, self.unit, decimal=self.decimal)

    def total_length(self, length_mm: float) -> str:
        """A length that was added up: "9.80 m"."""
        return self._signed(show_total_length(length_mm, self.unit, decimal=self.decimal))

    def total_length_in_sum(self, length_mm: float) -> str:
        """A length that was added up, as a factor of a sum, so that the sum comes out as it is read: "32.15 ft"."""
        return self._signed(show_total_length(length_mm, self.unit, decimal=self.decimal, fine=True))

    def area(self, area_mm2: float) -> str:
        """An area: "2.14 m2"."""
        return self._squared(show_area(area_mm2, self.unit, decimal=self.decimal))

    def area_in_sum(self, area_mm2: float) -> str:
        """An area as a term of a sum, with one digit more, so that the terms add up as they are read: "2.140 m2"."""
        return self._squared(show_area(area_mm2, self.unit, decimal=self.decimal, fine=True))

    def area_number(self, area_mm2: float) -> str:
        """An area, for a column whose head names the unit: "2.14"."""
        return self.area(area_mm2).split(" ")[0]

    @property
    def square_unit(self) -> str:
        """The unit of areas: "m2"."""
        return large_unit(self.unit) + self.squared

    def off_length(self, length_mm: float) -> str:
        """How far a length could be off: "± 2.5 mm"."""
        return f"± {self.length_with_unit(length_mm)}"

    def off_area(self, area_mm2: float) -> str:
        """How far an area could be off: "± 0.012 m2"."""
        return f"± {self.area_in_sum(area_mm2)}"

    def section(self, section: Section) -> str:
        """A bead's section: "fillet 6", "butt 5 x 5"."""
        match section:
            case Fillet(leg_mm=leg):
                return f"fillet {self.length(leg)}"
            case Butt(width_mm=width, depth_mm=depth):
                return f"butt {self.length(width)} {self.times} {self.length(depth)}"

    def amount(self, amount: float, measure: Measure) -> str:
        """An amount of a product as a person says it: "1.62 L", "236 mL", "5.4" pieces."""
        return show_amount(amount, measure, self.unit, decimal=self.decimal)

    def amount_in_sum(self, amount: float, measure: Measure, *, small: bool = False) -> str:
        """An amount of a product as a term of a sum, in the one unit of all its terms: "0.236 L".

        `small` says that the product comes in small packs. An amount that would be shown as 0 gets its first digit.
        """
        if measure is Measure.PIECES:
            return self.number(amount)
        number = amount_in(amount, measure, self.unit, small=small)
        digits = _DECIMALS[measure]
        if 0 < abs(number) < 0.5 * 10**-digits:
            digits = -floor(log10(abs(number)))
        return f"{number:.{digits}f}".replace(".", self.decimal) + f" {amount_unit(measure, self.unit, small=small)}"

    def pack_size(self, size: float, measure: Measure) -> str:
        """The size of a pack as its label says it: "4 L", "25"."""
        return show_size(size, measure, self.unit, decimal=self.decimal)

    def pack(self, pack: Pack, measure: Measure) -> str:
        """One pack: "1 L kit", "box of 25"; "day" or "load" for a single piece that is called so."""
        if measure is Measure.PIECES and pack.size == 1 and pack.name:
            return pack.name
        size = self.pack_size(pack.size, measure)
        return f"{pack.name or 'pack'} of {size}" if measure is Measure.PIECES else f"{size} {pack.name}".strip()

    def packs(self, packs: Iterable[tuple[Pack, int]], measure: Measure) -> str:
        """Packs, and how many of each: "2 x 1 L kit, 1 x 0.5 L tin"; "none" for none."""
        return ", ".join(f"{many} {self.times} {self.pack(pack, measure)}" for pack, many in packs) or NO_PACKS

    def spread_rate(self, covers_m2: float, measure: Measure) -> str:
        """A spread rate: "12 m2/L", "489 ft2/gal", "2 m2 each". `covers_m2` is the m2 of a litre or a piece."""
        rate = float(f"{covers_m2 * self.spread_rate_of_one(measure):.{RATE_DIGITS}g}")
        return f"{self.number(rate)} {self.spread_rate_unit(measure)}"

    def spread_rate_unit(self, measure: Measure) -> str:
        """The unit of a spread rate: "m2/L", "ft2/gal", "m2 each"."""
        if measure is not Measure.LITRES:
            return f"{self.square_unit} each"
        return f"{self.square_unit}/{'L' if self.unit is Unit.MM else 'gal'}"

    def spread_rate_of_one(self, measure: Measure) -> float:
        """The number that is written for a spread rate of 1 m2 a litre, or 1 m2 a piece (exact)."""
        square = area_in(MM2_IN_A_SQUARE_METRE, self.unit)
        return square / amount_in(1.0, measure, self.unit) if measure is Measure.LITRES else square

    def money(self, amount: float, currency: str = "") -> str:
        """Money to the cent: "1,024.90", or "24.90 crowns". Never "-0.00"."""
        whole, cents = f"{round(amount, 2) + 0.0:,.2f}".split(".")
        is_grouped = sum(map(str.isdigit, whole)) >= self.grouped_from
        words = whole.replace(",", self.thousands if is_grouped else "")
        return f"{self._signed(words)}{self.decimal}{cents} {currency}".rstrip()

    def cost(self, cost: float | None) -> str:
        """A cost: "24.90"; "no price" for None."""
        return NO_PRICE if cost is None else self.money(cost)

    def sentence(self, words: str) -> str:
        """A sentence of the takeoff in this writing. It comes with its numbers as on a terminal."""
        multiplied = _MULTIPLIED.sub(f" {self.times} ", self.squares(words))
        return multiplied if self.decimal == "." else _DECIMAL_POINT.sub(self.decimal, multiplied)

    def squares(self, words: str) -> str:
        """Words of the takeoff with their squares in this writing. Their numbers stay, as those of a source must."""
        return _SQUARES.sub(rf"\g<1>{self.squared}", words)

    def _squared(self, words: str) -> str:
        return self._signed(words.removesuffix("2") + self.squared)

    def _signed(self, words: str) -> str:
        return words.replace("-", self.minus, 1)
