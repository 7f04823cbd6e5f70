"""How far a litre goes."""

from shared.job import Unit
from shared.trade.products import Measure, Product
from shared.written.units import MM2_IN_A_SQUARE_METRE, area_in, large_unit

FROM_SOLIDS = "spread rate: 10 x solids % / dry film um (exact)"

LITRES_IN_A_GALLON = 3.785411784
"""The US one, which tins are read in where lengths are in inches: 231 in3 (exact)."""

DIGITS = 2
"""Decimals to which a spread rate is written; data sheets give one at most (common practice, no source)."""


def spread_m2_per_l(solids: float, film_um: float) -> float:
    """The m2 that a litre covers in one coat: 10 x volume solids % / dry film in um (exact; no loss).

    `solids` is a share, 0 to 1. ZeroDivisionError for a film of 0.
    """
    return 1000 * solids / film_um


def applied_m2_per_l(spread: float, thinning: float) -> float:
    """The m2 that a litre of the thinned mixture covers, of which a litre unthinned covers `spread` (exact).

    The solids are those of before in 1 + `thinning` of the volume. The litres of the product needed stay the same.
    """
    return spread / (1 + thinning)


def covers_m2(product: Product) -> float | None:
    """The m2 that a litre (or a piece) of a product covers in one coat, as it is in its tin.

    What it says itself, else what follows from its solids and film. None where that is not said, or is not above zero.
    Thinner makes more of the mixture but covers no more: the rate is by litre of the product, thinned or not.
    """
    if product.covers_m2 is not None:
        return product.covers_m2 if product.covers_m2 > 0 else None
    if product.solids is None or product.film_um is None or product.solids <= 0 or product.film_um <= 0:
        return None
    return spread_m2_per_l(product.solids, product.film_um)


def spread_words(covers: float, measure: Measure, unit: Unit) -> str:
    """How much of an area one of the measure covers, in the job's unit: "12 m2/L", "489 ft2/gal", "2 m2 a piece"."""
    area = area_in(covers * MM2_IN_A_SQUARE_METRE, unit)
    if measure is not Measure.LITRES:
        return f"{round(area, DIGITS):g} {large_unit(unit)}2 a piece"
    if unit is Unit.INCH:
        return f"{round(area * LITRES_IN_A_GALLON):g} {large_unit(unit)}2/gal"
    return f"{round(area, DIGITS):g} {large_unit(unit)}2/L"
