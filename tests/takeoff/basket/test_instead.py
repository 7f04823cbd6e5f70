"""What else would do for a piece of work: why nothing cheaper is taken."""

from shared.job import Job
from shared.trade.products import Pack, Product, Use
from takeoff.basket.cheapest import basket
from takeoff.basket.instead import other_packs
from takeoff.figures.measured import Figure, Fronts, Reason
from takeoff.figures.to_buy import Hardware, Need, Needs, Wanted

NOTHING = Figure(0.0, Reason("", "", Fronts.OFF, ()))

SATIN = Product("satin", "Satin", Use.COLOUR, (Pack(1.0, 30.0), Pack(2.5, 65.0)), stands_for="satin")
OTHER = Product("other", "Other satin", Use.COLOUR, (Pack(2.0, 70.0),), stands_for="satin")


def wanted(litres: float, *products: Product) -> Wanted:
    return Wanted("satin", tuple(Need(product.id, Figure(litres, NOTHING.reason)) for product in products))


def others(litres: float, *products: Product) -> list[tuple[str, float | None]]:
    job = Job("Quince Lane 2", products=products)
    asked = (wanted(litres, *products),) if products else ()
    needs = Needs(asked, Hardware(NOTHING, NOTHING, NOTHING))
    return [(row.product, row.cost) for row in other_packs(job, needs, basket(job, needs))]


def test_one_size_only_and_what_stands_in_come_after_each_other_by_cost() -> None:
    # 3.1 L: a tin of 1 L and one of 2.5 L cost 95; four of 1 L 120, two of 2.5 L 130, two of the other 140.
    assert others(3.1, SATIN, OTHER) == [("satin", 120.0), ("satin", 130.0), ("other", 140.0)]


def test_what_is_taken_is_not_said_again() -> None:
    assert others(0.9, SATIN) == [("satin", 65.0)]


def test_a_pack_without_a_price_says_nothing() -> None:
    assert others(0.9, Product("satin", "Satin", Use.COLOUR, (Pack(1.0), Pack(2.0)))) == []


def test_an_empty_job_has_none() -> None:
    assert others(0.9) == []
