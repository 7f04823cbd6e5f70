"""The rows of a basket, gathered as one walks through a shop: coatings, sealing and masking, tools and cleaning."""

from typing import NamedTuple

from shared.job import Job
from shared.trade.products import Product, Use
from takeoff.figures.to_buy import Basket, BasketRow

_GROUPS = {
    "Coatings": (Use.FILLER, Use.PRIMER, Use.COLOUR, Use.CLEAR),
    "Handles and hinges": (Use.HANDLE, Use.HINGE),
    "Sealing and masking": (Use.SEALANT, Use.TAPE),
    "Tools and cleaning": (Use.CLEANER, Use.ABRASIVE, Use.SLEEVE, Use.OTHER),
}


class BasketLine(NamedTuple):
    """A row of the basket, and the product that is bought."""

    product: Product
    row: BasketRow


class BasketGroup(NamedTuple):
    """Rows that stand together, and the sum of their costs. `cost` is None if no row has a price."""

    name: str
    lines: tuple[BasketLine, ...]
    cost: float | None


def basket_groups(basket: Basket, job: Job) -> tuple[BasketGroup, ...]:
    """The groups of a basket, each in the order of its rows, without those that are empty. `job` is the basket's."""
    products = {product.id: product for product in job.products}
    lines = tuple(BasketLine(products[row.product], row) for row in basket.rows)
    groups = ((name, tuple(line for line in lines if line.product.use in uses)) for name, uses in _GROUPS.items())
    return tuple(BasketGroup(name, some, _cost(some)) for name, some in groups if some)


def _cost(lines: tuple[BasketLine, ...]) -> float | None:
    """The sum of the costs, added up in whole cents because sums of floats miss them; None if no row has a cost."""
    known = [line.row.cost for line in lines if line.row.cost is not None]
    return sum(round(100 * cost) for cost in known) / 100 if known else None
