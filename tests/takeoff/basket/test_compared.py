"""What differs between two baskets."""

from msgspec.structs import replace

from shared.job import Job
from shared.trade.products import Pack, Product, Use
from takeoff.basket.cheapest import basket
from takeoff.basket.compared import Compared, Difference, compare
from takeoff.figures.to_buy import Basket
from tests.takeoff.basket.test_cheapest import SATIN, needs

CLEAR = Product("clear", "Clear", Use.CLEAR, (Pack(1.0, 50.0),))
JOB = Job("", products=(SATIN, CLEAR))


def bought(job: Job = JOB, **amounts: float) -> Basket:
    return basket(job, needs(*({product: amount} for product, amount in amounts.items())))


def test_a_basket_does_not_differ_from_itself() -> None:
    assert compare(bought(satin=3.0), bought(satin=3.0)) == Compared((), 0, 0.0)


def test_only_what_differs_is_given_with_how_many_packs_and_how_much_more() -> None:
    before, after = bought(satin=3.9, clear=2.0), bought(satin=10.1, clear=2.0)
    found = compare(before, after)
    assert found == Compared((Difference("satin", before.rows[0], after.rows[0]),), 1, 104.0)
    assert (found.rows[0].packs, found.rows[0].cost) == (1, 104.0)


def test_a_need_that_takes_the_same_packs_differs_by_none() -> None:
    found = compare(bought(satin=3.9), bought(satin=3.5))
    assert [(row.packs, row.cost) for row in found.rows] == [(0, 0.0)]


def test_what_is_no_longer_bought_comes_last_and_costs_less() -> None:
    found = compare(bought(clear=2.0), bought(satin=1.0))
    assert [(row.wanted, row.packs, row.cost) for row in found.rows] == [("satin", 1, 24.0), ("clear", -2, -100.0)]
    assert (found.packs, found.cost) == (-1, -76.0)


def test_what_has_no_price_has_no_difference_in_cost() -> None:
    unpriced = replace(JOB, products=(replace(SATIN, packs=(Pack(4.0),)), CLEAR))
    found = compare(bought(satin=3.9), bought(unpriced, satin=3.9))
    assert [(row.packs, row.cost) for row in found.rows] == [(0, None)]


def test_products_of_one_name_are_told_apart() -> None:
    job = Job("", products=(SATIN, replace(CLEAR, id="satin2")))

    def both(first: float, second: float) -> Basket:
        named = tuple(each._replace(name="Satin") for each in needs({"satin": first}, {"satin2": second}).wanted)
        return basket(job, needs()._replace(wanted=named))

    assert [(row.packs, row.cost) for row in compare(both(1.0, 1.0), both(1.0, 3.0)).rows] == [(2, 100.0)]
