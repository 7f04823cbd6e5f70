"""What can be changed in What if: each of them on the example and on a new job."""

from functools import cache
from importlib.resources import files

import pytest
from msgspec.structs import replace

from desktop.buy.what_if_changes import CHANGES, Change
from shared.checks.job import check_job
from shared.edits.build_ups import start_job
from shared.edits.finishes import find_product
from shared.errors import ReadingError
from shared.files.job import job_from_json
from shared.job import Job, Unit
from takeoff.bill import Bill, make_bill
from takeoff.figures.measured import Takeoff
from takeoff.memory import counts_alike
from takeoff.take_off import take_off


@cache
def example() -> tuple[Bill, Takeoff]:
    """The example and its takeoff; nobody changes them."""
    return bill_of(job_from_json((files("desktop") / "data" / "example.json").read_bytes(), "example"))


@cache
def inch_job() -> tuple[Bill, Takeoff]:
    """The same rooms with the ready-made build-ups of a job in inches, each pack 10."""
    job = start_job("Plum Lane 4", Unit.INCH, example()[0].job.rooms)
    priced = (
        replace(product, packs=tuple(replace(pack, price=10.0) for pack in product.packs)) for product in job.products
    )
    return bill_of(replace(job, products=tuple(priced)))


def bill_of(job: Job) -> tuple[Bill, Takeoff]:
    takeoff = take_off(job)
    return make_bill(job, takeoff), takeoff


def changes(what: str, counted: tuple[Bill, Takeoff]) -> tuple[Change, ...]:
    return tuple(CHANGES[what](*counted))


def cost_of(job: Job) -> float:
    check_job(job)
    return bill_of(job)[0].basket.cost


def change_of(what: str, which: str) -> Change:
    return next(change for change in changes(what, example()) if change.which == which)


@pytest.mark.parametrize("what", CHANGES)
def test_changing_anything_to_what_it_is_costs_the_same(what: str) -> None:
    for bill, takeoff in (example(), inch_job()):
        for change in changes(what, (bill, takeoff)):
            assert cost_of(change.made(bill.job, change.now)) == bill.basket.cost, change.which


@pytest.mark.parametrize("what", CHANGES)
def test_the_example_has_something_of_every_sort_to_change_told_apart_by_its_words(what: str) -> None:
    words = [change.which for change in changes(what, example())]

    assert words
    assert len(set(words)) == len(words)


def test_what_is_shown_is_read_as_the_same() -> None:
    for what in CHANGES:
        for change in changes(what, example()):
            if change.words is not None and change.now is not None:
                text = change.words.show(change.now, Unit.MM)
                assert change.words.read(text, Unit.MM) == (change.now or change.words.read("", Unit.MM)), change.which


def test_every_other_product_or_finish_can_be_tried() -> None:
    job = example()[0].job
    for what in ("a product", "a finish"):
        for change in changes(what, example()):
            for _, value in change.options:
                check_job(change.made(job, value))


def test_a_product_that_is_chosen_is_the_one_that_is_bought() -> None:
    change = change_of("a product", "satin, sage")
    bill, _ = bill_of(change.made(example()[0].job, "front-colour"))

    assert "front-colour" in {row.product for row in bill.basket.rows}
    assert "front-colour-other" not in {row.product for row in bill.basket.rows}


def test_a_spread_rate_holds_wherever_the_product_is_laid() -> None:
    change = change_of("a spread rate", "Larkmoor clear, two-part")
    job = change.made(example()[0].job, 5.0)
    bill, _ = bill_of(job)
    need = next(need for wanted in bill.needs.wanted for need in wanted.options if need.product == "clear")

    assert find_product(job, "clear").covers_m2 == 5.0
    assert {used.per for used in need.used} == {5.0}


def test_a_change_is_said_in_words() -> None:
    change = change_of("a spread rate", "Ebbstone tile colour, slate blue")

    assert change.said(6.0, Unit.MM) == "Ebbstone tile colour, slate blue: 6 m\u00b2/L instead of 9 m\u00b2/L"


def test_a_spread_rate_of_nothing_is_refused() -> None:
    words = change_of("a spread rate", "Ebbstone tile colour, slate blue").words
    assert words is not None
    with pytest.raises(ReadingError):
        words.read("0", Unit.MM)


def test_only_a_finish_of_a_kind_asks_for_measuring_anew() -> None:
    job = example()[0].job
    for what in CHANGES:
        for change in changes(what, example()):
            value = change.options[-1][1] if change.options else 1.0
            if value != change.now:
                assert counts_alike(change.made(job, value), job) is (what != "a finish"), change.which


def test_what_counts_alike_has_the_same_takeoff() -> None:
    change = change_of("coats", "Tiles, slate blue: clear, Larkmoor clear, two-part")
    job = change.made(example()[0].job, 3)

    assert counts_alike(job, example()[0].job)
    assert take_off(job) == example()[1]


def test_a_kind_of_which_the_job_says_nothing_can_be_tried_with_every_finish() -> None:
    bill, takeoff = example()
    older = replace(bill.job, kinds=())
    found = {change.which: change.now for change in changes("a finish", bill_of(older))}
    assert found == {change.which: change.now for change in changes("a finish", (bill, takeoff))}
    for change in changes("a finish", bill_of(older)):
        assert cost_of(change.made(older, "fronts")) == cost_of(change.made(bill.job, "fronts")), change.which
