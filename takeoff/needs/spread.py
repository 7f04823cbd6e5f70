"""Spread rates: how much area a litre covers."""

from shared.trade.products import Product

FROM_SOLIDS = "spread rate: 10 x solids % / dry film um (exact)"


def spread_m2_per_l(solids: float, film_um: float) -> float:
    """The m2 that a litre covers in one coat, without loss: 10 x volume solids % / dry film in um (exact).

    `solids` is a share, from 0 to 1. ZeroDivisionError for a film of 0.
    """
    return 1000 * solids / film_um


def applied_m2_per_l(spread: float, thinning: float) -> float:
    """The m2 that a litre of the thinned mixture covers: `spread` / (1 + `thinning`) (exact).

    `spread` is the m2 that a litre of the product covers before thinning. The same solids then fill 1 + `thinning` of
    the volume. The litres of the product that are needed stay the same.
    """
    return spread / (1 + thinning)


def covers_m2(product: Product) -> float | None:
    """The m2 that a litre (or a piece) of a product covers in one coat, before any thinner is added.

    It is the product's own spread rate, or else what its solids and film give. None if neither is known, or one is not
    above 0. Thinner makes more of the mixture but covers no more area.
    """
    if product.covers_m2 is not None:
        return product.covers_m2 if product.covers_m2 > 0 else None
    if product.solids is None or product.film_um is None or product.solids <= 0 or product.film_um <= 0:
        return None
    return spread_m2_per_l(product.solids, product.film_um)
