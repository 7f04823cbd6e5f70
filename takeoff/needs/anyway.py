"""The demands of what is needed whatever is measured: masks, drop sheets, blades, days of hire, loads of waste."""

from collections.abc import Iterator

from shared.trade.products import Measure
from takeoff.figures.to_buy import Used
from takeoff.needs.demands import Demand, Products

ANYWAY = "needed anyway: the number that was typed for the product"
TYPED = "typed by hand"


def demands_of_what_is_needed_anyway(products: Products) -> Iterator[Demand]:
    """A demand for each product that is counted in pieces and needed whatever is measured."""
    for product in products.all:
        if product.anyway and product.measure is Measure.PIECES:
            use = Used("needed anyway", size=product.anyway, times=1, per=1.0)
            yield Demand(products.options(product), use, ANYWAY, product.called, TYPED, product)
