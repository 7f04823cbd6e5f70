"""The example's basket equals its hand calculation, sum by sum (examples/harbour-row-basket.md)."""

import re
from collections import Counter
from collections.abc import Iterator
from itertools import product as every
from math import ceil
from pathlib import Path

import pytest

from examples.make_harbour_row import harbour_row
from shared.edits.finishes import find_product
from shared.job import Job
from shared.trade.products import Product
from takeoff.basket.cheapest import basket
from takeoff.figures.to_buy import Basket, BasketRow, Need, Needs
from takeoff.needs.quantities import needs
from takeoff.take_off import take_off
from tests.takeoff.hand_calculation import Row, names_on, rows_under, totals_on

PAGE = Path(__file__).parents[3] / "examples" / "harbour-row-basket.md"
AREAS = PAGE.with_name("harbour-row.md")
ROUNDED = 1e-4
"""The areas on the page are rounded to 0.0001 m2."""


@pytest.fixture(scope="module")
def job() -> Job:
    return harbour_row()


@pytest.fixture(scope="module")
def needed(job: Job) -> Needs:
    return needs(job, take_off(job))


@pytest.fixture(scope="module")
def bought(job: Job, needed: Needs) -> Basket:
    return basket(job, needed)


@pytest.fixture(scope="module")
def options(needed: Needs) -> dict[str, Need]:
    return {need.product: need for wanted in needed.wanted for need in wanted.options}


def test_the_areas_added_up_are_those_counted_by_hand() -> None:
    section = PAGE.read_text("utf-8").split("\n## Worked out first\n", 1)[1].split("\n## ", 1)[0]
    rows = [line for line in section.splitlines() if "`" in line and not line.startswith("| beyond")]
    added = Counter(float(number) for line in rows for number in re.findall(r"\d\.\d{4}", line.split("`")[1]))
    assert added == Counter(row.printed for row in rows_under("Areas", AREAS) if row.printed)
    assert names_on(PAGE)["all"] == pytest.approx(totals_on(AREAS)["coated, m2"], abs=0.001)


def test_every_product_is_needed_as_by_hand(options: dict[str, Need]) -> None:
    by_hand = {row.words[0]: pytest.approx(row.amounts[0], rel=ROUNDED) for row in rows_under("Needs", PAGE)}
    assert {product_id: need.amount.amount for product_id, need in options.items()} == by_hand


def test_two_part_products_are_mixed_as_by_hand(options: dict[str, Need]) -> None:
    text = PAGE.read_text("utf-8")
    litres = re.findall(r"[Oo]f (\d\.\d+) L of [a-z ]+?(\d\.\d+)(?: are base)? and (\d\.\d+)", text)
    mixed = {need.product: (need.amount.amount, *need.mixed) for need in options.values() if need.mixed}
    assert list(mixed) == ["tile-colour", "clear"]
    for found, by_hand in zip(mixed.values(), litres, strict=True):
        assert found == pytest.approx(tuple(map(float, by_hand)), abs=6e-4)


def test_the_sets_listed_by_hand_are_all_from_which_no_pack_can_be_taken(job: Job) -> None:
    listed = {(row.words[0], row.words[2]): float(row.words[3]) for row in rows_under("Sets of packs", PAGE)}
    to_buy = {row.words[0]: float(row.words[1]) for row in rows_under("Sets of packs", PAGE)}
    found = {
        (product.id, words): holds
        for product in job.products
        for words, holds in least_sets(product, to_buy[product.id])
    }
    assert listed == pytest.approx(found)


def test_the_set_bought_is_the_cheapest_of_those_listed(bought: Basket, job: Job) -> None:
    listed: dict[str, list[tuple[float, str]]] = {}
    for row in rows_under("Sets of packs", PAGE):
        product = find_product(job, row.words[0])
        listed.setdefault(product.stands_for or product.id, []).append((row.amounts[0], row.words[2]))
    cheapest = [min(sets) for sets in listed.values()]
    assert [(row.cost, in_words(row)) for row in bought.rows] == [(round(cost, 2), words) for cost, words in cheapest]


def test_the_basket_is_as_by_hand(bought: Basket) -> None:
    rows = {row.words[0]: row for row in rows_under("Basket", PAGE)}
    by_hand = {name: (row.words[1], row.printed, float(row.words[3])) for name, row in rows.items()}
    left_over = {name: pytest.approx(float(row.words[2]), abs=1e-3) for name, row in rows.items()}
    assert {row.product: (in_words(row), row.cost, row.one_more) for row in bought.rows} == by_hand
    assert {row.product: row.left_over for row in bought.rows} == left_over


def test_hinges_handles_and_holes_are_as_by_hand(needed: Needs) -> None:
    by_hand = {row.words[0]: row.amounts[0] for row in rows_under("Fronts", PAGE)}
    found = needed.hardware
    assert (found.hinges.amount, found.handles.amount, found.holes_to_fill.amount) == (
        by_hand["hinges"],
        by_hand["handles"],
        by_hand["holes to fill"],
    )


def test_the_totals_are_as_by_hand(bought: Basket) -> None:
    by_hand = totals_on(PAGE)
    assert bought.cost == by_hand["cost, crowns"]
    assert bought.tax == by_hand["of it tax, crowns"]
    assert bought.budget == by_hand["budget, crowns"]
    assert bought.budget - bought.cost == by_hand["left of the budget, crowns"]
    assert (bought.over, bought.proved) == (0.0, True)


def test_nothing_is_left_out(needed: Needs, bought: Basket) -> None:
    assert (needed.findings, bought.findings) == ((), ())


@pytest.mark.parametrize(
    ("heading", "close"), [("Needs", 5.1e-5), ("Sets of packs", 0.001), ("Basket", 0.001), ("Fronts", 0.001)]
)
def test_the_amounts_printed_by_hand_are_what_their_sums_come_to(heading: str, close: float) -> None:
    wrong: list[Row] = [row for row in rows_under(heading, PAGE) if abs(row.amounts[-1] - row.printed) > close]
    assert wrong == []


def least_sets(product: Product, to_buy: float) -> Iterator[tuple[str, float]]:
    """Every set of packs that is enough and of which none can be spared, with what it holds: by trying them all."""
    sizes = [pack.size for pack in product.packs]
    for counts in every(*(range(ceil(to_buy / size) + 1) for size in sizes)):
        holds = sum(many * size for many, size in zip(counts, sizes, strict=True))
        smallest = min((size for many, size in zip(counts, sizes, strict=True) if many), default=0.0)
        if holds >= to_buy > holds - smallest:
            yield set_in_words(zip(counts, sizes, strict=True)), holds


def in_words(row: BasketRow) -> str:
    return set_in_words((each.many, each.pack.size) for each in row.packs)


def set_in_words(packs: Iterator[tuple[int, float]]) -> str:
    """A set of packs as the page writes it: "0.5 + 2 x 1"."""
    return " + ".join(f"{many} x {size:g}" if many > 1 else f"{size:g}" for many, size in packs if many)
