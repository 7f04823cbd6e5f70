"""Packs that are far from the others of their product, by price and by size; and those that only differ."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from shared.edits.build_ups import ready_made
from shared.findings import Code
from shared.job import Unit
from shared.trade.products import Pack
from takeoff.basket.unusual import look_at_unusual_packs
from tests.takeoff.odd_jobs import SATIN


def said(*packs: Pack) -> list[tuple[Code, str]]:
    found = look_at_unusual_packs(replace(SATIN, packs=packs), Unit.MM)
    return [(each.code, each.message) for each in found]


def codes(*packs: Pack) -> list[Code]:
    return [code for code, _ in said(*packs)]


def test_the_pack_that_costs_ten_times_the_others_is_named() -> None:
    tins = (Pack(0.5, 15.0, "tin"), Pack(1.0, 240.0, "tin"), Pack(4.0, 84.0, "tin"))
    message = (
        "Tern satin: for what is in it, the 1 L tin at 240.00 costs 9 times what the other packs cost; "
        "check what they hold and cost."
    )
    assert said(*tins) == [(Code.UNUSUAL_PRICE, message)]


@pytest.mark.parametrize(
    "packs",
    [(Pack(1.0, 24.0), Pack(25.0, 60.0)), (Pack(1.0, 24.0), Pack(2.5, 5.5)), (Pack(10.0, 24.0), Pack(2.5, 55.0))],
)
def test_a_slip_in_a_size_or_a_price_is_found_among_two(packs: tuple[Pack, ...]) -> None:
    assert codes(*packs) == [Code.UNUSUAL_PRICE]


def test_a_size_that_no_price_confirms_is_said_with_its_neighbour() -> None:
    assert said(Pack(0.75), Pack(1.5), Pack(41.0)) == [
        (Code.UNUSUAL_PACK, "Tern satin: a pack holds 41 L, 27 times the next one, 1.5 L; check it.")
    ]
    assert codes(Pack(0.05), Pack(1.0), Pack(2.5)) == [Code.UNUSUAL_PACK]
    assert codes(Pack(1.0, 24.0), Pack(41.0)) == [Code.UNUSUAL_PACK]


def test_a_large_pack_at_a_price_in_keeping_is_not_looked_at() -> None:
    assert codes(Pack(1.0, 24.0), Pack(20.0, 320.0)) == []
    assert codes(Pack(1.0), Pack(4.0)) == codes(Pack(1.0, 24.0)) == codes(Pack(0.0, 4.0), Pack(1.0, 0.0)) == []


@pytest.mark.parametrize("unit", Unit)
def test_no_ready_made_pack_is_looked_at(unit: Unit) -> None:
    assert [each for product in ready_made(unit).products for each in look_at_unusual_packs(product, unit)] == []


@given(st.lists(st.tuples(st.floats(0.2, 20), st.floats(0.5, 1.2)), min_size=2, max_size=6), st.floats(2, 80))
def test_packs_that_differ_as_shops_sell_them_are_never_looked_at(packs: list[tuple[float, float]], per: float) -> None:
    assert codes(*(Pack(size, size * per * share) for size, share in packs)) == []
