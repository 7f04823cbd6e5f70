"""How far a litre goes."""

from shared.trade.products import Product

FROM_SOLIDS = "spread rate: 10 x solids % / dry film um (exact)"


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
