"""What would make the basket of one tiled wall cheaper: 12 m2, two coats of colour and one clear coat, bare sums."""

import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Job, Part
from shared.trade.finishes import Finish, Step, Work
from shared.trade.kinds import Kind
from shared.trade.products import Allowances, Money, Pack, Product, Use
from takeoff.basket.cheapest import basket
from takeoff.basket.savings import savings, under_budget
from takeoff.figures.measured import Takeoff
from takeoff.figures.to_buy import Basket
from takeoff.needs.quantities import needs
from takeoff.take_off import take_off
from tests.takeoff.rows import face_of, job_of

TILED = Finish("tiles", "Tiles", steps=(Step(Work.COLOUR, "satin", coats=2), Step(Work.CLEAR, "clear")))
PRODUCTS = (
    Product("satin", "Tern satin", Use.COLOUR, (Pack(1.0, 40.0),), covers_m2=12),
    Product("clear", "Tern clear", Use.CLEAR, (Pack(1.0, 30.0),), covers_m2=12),
)
COAT_FEWER = "Tiles: 1 coat of Tern satin instead of 2"
NO_CLEAR = "Tiles: no coat of Tern clear instead of 1"
LEFT_OUT = "Tiles left out"


def job(budget: float = 0.0, allowance: float = 0.0) -> Job:
    """Two litres of satin and one of clear: 110."""
    wall = job_of(face_of(Part("tiles", Kind.SPLASHBACK, box(0, 0, 12_000, 1000))))
    return replace(
        wall,
        products=PRODUCTS,
        finishes=(TILED,),
        allowances=Allowances(allowance=allowance, tray_l=0),
        money=Money(budget=budget),
    )


def counted(of: Job) -> tuple[Job, Takeoff, Basket]:
    takeoff = take_off(of)
    return of, takeoff, basket(of, needs(of, takeoff))


def test_each_change_alone_saves_what_the_basket_with_it_costs_less() -> None:
    of, takeoff, before = counted(job())
    found = savings(of, takeoff, before)
    assert before.cost == 110.0
    assert [(each.what, each.saves) for each in found] == [(LEFT_OUT, 110.0), (COAT_FEWER, 40.0), (NO_CLEAR, 30.0)]
    assert [each.basket for each in found] == [basket(each.job, needs(each.job, takeoff)) for each in found]


def test_what_saves_nothing_is_not_named() -> None:
    cheap = replace(job(), products=(PRODUCTS[0], replace(PRODUCTS[1], packs=(Pack(1.0, 0.0),))))
    assert [each.what for each in savings(*counted(cheap))] == [LEFT_OUT, COAT_FEWER]


def test_a_smaller_allowance_saves_where_packs_get_fewer() -> None:
    roomier = Product("satin", "Tern satin", Use.COLOUR, (Pack(0.7, 40.0),), covers_m2=12)
    found = savings(*counted(replace(job(allowance=0.10), products=(roomier, PRODUCTS[1]))))
    assert ("An allowance of 5% instead of 10%", 40.0) in [(each.what, each.saves) for each in found]


@pytest.mark.parametrize("budget", [0.0, 110.0, 200.0])
def test_nothing_is_asked_of_a_basket_that_is_not_over_its_budget(budget: float) -> None:
    assert under_budget(*counted(job(budget))) == ()


def test_what_is_enough_alone_is_named_the_least_first() -> None:
    assert [each.what for each in under_budget(*counted(job(75.0)))] == [COAT_FEWER, LEFT_OUT]
    assert all(not each.basket.over for each in under_budget(*counted(job(75.0))))


def test_where_nothing_is_enough_alone_changes_are_added_up_until_they_are() -> None:
    of, takeoff, before = counted(two_walls(budget=105.0))
    assert before.cost == 220.0
    (only,) = under_budget(of, takeoff, before)
    assert only.what == f"Others: 1 coat of Tern satin instead of 2; {COAT_FEWER}; {NO_CLEAR}"
    assert (only.saves, only.enough) == (120.0, True)


def test_what_is_not_enough_together_says_so() -> None:
    (only,) = under_budget(*counted(two_walls(budget=50.0)))
    assert (only.saves, only.enough) == (130.0, False)


def two_walls(budget: float) -> Job:
    """Two walls, each with a finish and products of its own; those of the other cost 50 and 10."""
    one = job(budget)
    second = Part("tiles2", Kind.SPLASHBACK, box(0, 2000, 12_000, 1000), finish="other")
    face = replace(one.faces[0], parts=(*one.faces[0].parts, second))
    others = tuple(
        replace(product, id=f"{product.id}2", packs=(Pack(1.0, price),))
        for product, price in zip(PRODUCTS, (50.0, 10.0), strict=True)
    )
    steps = tuple(replace(step, product=f"{step.product}2") for step in TILED.steps)
    return replace(
        one,
        rooms=(replace(one.rooms[0], faces=(face,)),),
        products=(*PRODUCTS, *others),
        finishes=(TILED, Finish("other", "Others", steps)),
    )
