"""Baskets of invented products: which packs, what they cost, what is left over, what is left out and said."""

import math
from decimal import Decimal
from math import inf, nan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shared.job import Job
from shared.trade.products import Money, Pack, Product, Use
from takeoff.basket.cheapest import basket, price_with_tax
from takeoff.basket.offers import PackOffer
from takeoff.basket.packs import cheapest
from takeoff.basket.stock import MOST_PACKS
from takeoff.figures.measured import Figure, Fronts, Reason
from takeoff.figures.to_buy import Basket, BasketRow, Bought, Hardware, Need, Needs, Wanted

LITRE = Pack(1.0, 24.0)
FOUR_LITRES = Pack(4.0, 69.0)
TEN_LITRES = Pack(10.0, 149.0)
SATIN = Product("satin", "Satin, sage", Use.COLOUR, (LITRE, FOUR_LITRES, TEN_LITRES))
OTHER_SATIN = Product("other", "Other satin", Use.COLOUR, (Pack(2.5, 45.0),))

GALLON_L = 3.785411784


def figure(amount: float) -> Figure:
    return Figure(amount, Reason("", "", Fronts.OFF, ()))


NOTHING = Hardware(figure(0), figure(0), figure(0))


def needs(*wanted: dict[str, float]) -> Needs:
    """Each is how much of every product that would do."""
    return Needs(
        tuple(
            Wanted(next(iter(each)), tuple(Need(product, figure(amount)) for product, amount in each.items()))
            for each in wanted
        ),
        NOTHING,
    )


def bought(*wanted: dict[str, float], of: tuple[Product, ...], money: Money | None = None) -> Basket:
    return basket(Job("", products=of, money=money or Money()), needs(*wanted))


def row(amount: float, product: Product) -> BasketRow:
    return bought({product.id: amount}, of=(product,)).rows[0]


def test_nothing_needed_is_an_empty_basket() -> None:
    assert bought(of=(SATIN,)) == Basket((), 0.0, 0.0, 0.0, proved=True)


def test_a_row_says_what_is_bought_and_what_is_left_over() -> None:
    assert row(7.9, SATIN) == BasketRow(
        wanted="satin",
        product="satin",
        need=7.9,
        from_shelf=0.0,
        packs=(Bought(FOUR_LITRES, 2),),
        cost=138.0,
        left_over=0.1,
        one_more=24.0,
    )


def test_a_row_says_how_long_an_opened_pack_keeps() -> None:
    assert row(7.9, Product("p", "P", Use.CLEAR, (LITRE,), keeps_days=90.0)).keeps_days == 90.0


def test_the_shelf_is_used_first() -> None:
    found = row(8.3, Product("p", "P", Use.COLOUR, SATIN.packs, on_shelf=0.5))
    assert (found.from_shelf, found.packs, found.left_over) == (0.5, (Bought(FOUR_LITRES, 2),), 0.2)


@pytest.mark.parametrize("packs", [(), SATIN.packs, (Pack(1.0),)])
def test_what_the_shelf_holds_costs_nothing_whatever_the_packs(packs: tuple[Pack, ...]) -> None:
    found = bought({"p": 2.0}, of=(Product("p", "P", Use.COLOUR, packs, on_shelf=5.0),))
    assert (found.rows[0].packs, found.rows[0].cost, found.rows[0].left_over) == ((), 0.0, 3.0)
    assert (found.cost, found.findings) == (0.0, ())


def test_of_products_that_stand_in_for_each_other_the_cheaper_is_bought() -> None:
    found = bought({"satin": 2.2, "other": 2.4}, of=(SATIN, OTHER_SATIN))
    assert [(each.wanted, each.product, each.need, each.cost) for each in found.rows] == [("satin", "other", 2.4, 45.0)]


def test_a_shelf_decides_which_product_is_cheaper() -> None:
    shelved = Product("satin", "Satin", Use.COLOUR, SATIN.packs, on_shelf=1.5)
    assert bought({"satin": 2.2, "other": 2.4}, of=(shelved, OTHER_SATIN)).rows[0].product == "satin"


def test_of_products_alike_the_one_that_was_named_is_bought() -> None:
    twin = Product("twin", "Twin", Use.COLOUR, SATIN.packs)
    assert bought({"twin": 3.0, "satin": 3.0}, of=(SATIN, twin)).rows[0].product == "twin"


def test_two_products_are_not_mixed_though_it_would_cost_less() -> None:
    small = Product("small", "Small", Use.COLOUR, (Pack(1.0, 10.0),))
    large = Product("large", "Large", Use.COLOUR, (Pack(10.0, 50.0),))
    found = bought({"large": 11.0, "small": 11.0}, of=(small, large))
    assert found.rows[0].cost == 100.0


def test_gallons_are_exact() -> None:
    gallons = Product("g", "G", Use.COLOUR, (Pack(GALLON_L, 40.0),))
    for many in range(1, 60):
        assert row(many * GALLON_L, gallons).packs == (Bought(gallons.packs[0], many),)


def test_the_noise_of_a_sum_of_floats_buys_no_pack() -> None:
    amount = math.nextafter(4.0, 5.0)
    assert row(amount, SATIN).packs == (Bought(FOUR_LITRES, 1),)


def test_a_need_a_thousandth_of_a_litre_too_large_for_a_pack_is_not_met_by_it() -> None:
    assert row(4.001, SATIN).packs == (Bought(LITRE, 1), Bought(FOUR_LITRES, 1))


@pytest.mark.parametrize(
    ("price", "money", "with_tax"),
    [
        (24.0, Money(tax=0.1), 24.0),
        (24.0, Money(tax=0.1, tax_included=False), 26.4),
        (2.05, Money(tax=0.1, tax_included=False), 2.26),
        (1.15, Money(tax=0.1, tax_included=False), 1.27),
        (9.99, Money(tax=0.075, tax_included=False), 10.74),
        (0.285, Money(), 0.29),
    ],
)
def test_a_price_with_tax_is_to_the_cent_and_half_a_cent_is_rounded_up(
    price: float, money: Money, with_tax: float
) -> None:
    assert price_with_tax(price, money) == with_tax


def test_the_cost_with_tax_is_that_of_its_packs_and_says_how_much_of_it_is_tax() -> None:
    found = bought({"satin": 7.9}, of=(SATIN,), money=Money(tax=0.1, tax_included=False, budget=100.0))
    assert (found.cost, found.tax, found.budget) == (151.8, 13.8, 100.0)
    assert found.over == pytest.approx(51.8)


def test_tax_inside_the_prices_is_a_share_of_them() -> None:
    assert bought({"satin": 7.9}, of=(SATIN,), money=Money(tax=0.15)).tax == 18.0


def test_packs_without_a_price_are_not_bought_where_another_has_one() -> None:
    found = bought({"p": 3.0}, of=(Product("p", "P", Use.COLOUR, (Pack(4.0), LITRE)),))
    assert (found.rows[0].packs, found.rows[0].cost) == ((Bought(LITRE, 3),), 72.0)
    assert [(each.code, each.message) for each in found.findings] == [
        ("no-price", "P: the pack of 4 L has no price, so it is not bought; type its price.")
    ]


def test_where_no_pack_has_a_price_the_fewest_are_bought_and_there_is_no_cost() -> None:
    unpriced = Product("p", "P", Use.COLOUR, (Pack(1.0), Pack(4.0), Pack(10.0)))
    found = bought({"p": 3.2}, {"satin": 4.0}, of=(unpriced, SATIN))
    assert [(each.packs, each.cost, each.one_more) for each in found.rows] == [
        ((Bought(Pack(4.0), 1),), None, None),
        ((Bought(FOUR_LITRES, 1),), 69.0, 24.0),
    ]
    assert found.cost == 69.0
    assert [each.code for each in found.findings] == ["no-price"]


def test_a_product_with_a_price_comes_before_one_without() -> None:
    unpriced = Product("p", "P", Use.COLOUR, (Pack(3.0),))
    assert bought({"p": 3.0, "satin": 3.0}, of=(unpriced, SATIN)).rows[0].product == "satin"


@pytest.mark.parametrize("size", [0.0, -1.0, 1e-12])
def test_a_pack_that_holds_nothing_is_said_and_not_bought(size: float) -> None:
    found = bought({"p": 3.0}, of=(Product("p", "P", Use.COLOUR, (Pack(size, 1.0), LITRE)),))
    assert found.rows[0].packs == (Bought(LITRE, 3),)
    assert [each.code for each in found.findings] == ["empty-pack"]


@pytest.mark.parametrize("packs", [(), (Pack(0.0, 1.0),)])
def test_what_has_no_pack_is_left_out_and_said(packs: tuple[Pack, ...]) -> None:
    found = bought({"p": 3.0}, {"satin": 1.0}, of=(Product("p", "P", Use.COLOUR, packs), SATIN))
    assert [each.product for each in found.rows] == ["satin"]
    assert [each.code for each in found.findings][-1] == "no-packs"


@pytest.mark.parametrize("amount", [nan, inf, 2_000_000.0, 1.01 * MOST_PACKS])
def test_more_than_any_number_of_packs_holds_is_left_out_and_said(amount: float) -> None:
    found = bought({"p": amount}, of=(Product("p", "P", Use.COLOUR, (LITRE,)),))
    assert (found.rows, found.cost) == ((), 0.0)
    assert [each.code for each in found.findings] == ["too-many-packs"]


def test_a_large_need_that_packs_do_hold_is_met() -> None:
    assert row(99_999.5, SATIN).cost == 10_000 * 149.0


def test_a_trouble_that_comes_twice_is_said_once() -> None:
    found = bought({"p": 3.0}, {"p": 1.0}, of=(Product("p", "P", Use.COLOUR, ()),))
    assert len(found.findings) == 1


def test_the_effort_used_up_leaves_an_answer_that_is_enough_and_not_proved() -> None:
    offer = PackOffer(7_000_003, (170_003, 310_019, 513_257, 770_017), (1703, 3001, 5003, 7507))
    choice = cheapest((offer,), 0.0)
    assert not choice.proved
    assert sum(size * many for size, many in zip(offer.sizes, choice.counts, strict=True)) >= offer.missing


@settings(max_examples=60, deadline=None)
@given(
    st.floats(0.0, 1_000_000.0),
    st.lists(st.tuples(st.floats(1e-9, 1e6), st.none() | st.floats(0.0, 1e8)), min_size=1, max_size=6),
    st.floats(0.0, 1_000_000.0),
)
def test_whatever_may_be_typed_is_bought_or_left_out_in_words(
    amount: float, packs: list[tuple[float, float | None]], on_shelf: float
) -> None:
    product = Product("p", "P", Use.COLOUR, tuple(Pack(*pack) for pack in packs), on_shelf=on_shelf)
    found = bought({"p": amount}, of=(product,), money=Money(tax=1.0, tax_included=False))
    assert found.findings or found.rows[0].cost is not None
    assert all(each.left_over >= 0 for each in found.rows)


AMOUNTS = st.floats(0.001, 500.0)
PACKS = st.lists(
    st.builds(Pack, st.sampled_from([0.25, 0.5, 0.946352946, 1.0, 2.5, GALLON_L, 4.0, 10.0]), st.floats(0.01, 500.0)),
    min_size=1,
    max_size=4,
).map(tuple)


@settings(max_examples=150, deadline=None)
@given(AMOUNTS, PACKS, st.floats(0.0, 100.0))
def test_any_basket_is_enough_sums_up_and_has_no_pack_too_many(
    amount: float, packs: tuple[Pack, ...], on_shelf: float
) -> None:
    product = Product("p", "P", Use.COLOUR, packs, on_shelf=on_shelf)
    money = Money(tax=0.1, tax_included=False)
    found = bought({"p": amount}, of=(product,), money=money)
    (only,) = found.rows
    held = on_shelf + sum(each.many * each.pack.size for each in only.packs)
    prices = [Decimal(str(price_with_tax(each.pack.price or 0.0, money))) * each.many for each in only.packs]
    assert found.proved
    assert held >= amount - 1e-8
    assert only.left_over == pytest.approx(held - amount, abs=1e-7)
    assert all(only.left_over < each.pack.size + 1e-8 for each in only.packs)
    assert Decimal(str(only.cost)) == sum(prices)
    assert found.cost == only.cost


def test_a_pack_that_costs_nothing_is_told() -> None:
    free = Product("p", "P", Use.CLEAR, (Pack(1.0, 0.0),))
    found = bought({"p": 0.5}, of=(free,)).findings
    assert [finding.code for finding in found] == ["free-pack"]
