"""Edits of finishes and products keep the job whole and share what they do not touch."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from shared.checks.job import check_job
from shared.edits import finishes as edits
from shared.edits.drawn import find_part, with_changed_parts
from shared.errors import JobError
from shared.job import Job, KindChoice
from shared.trade.finishes import Finish, Step, Work
from shared.trade.kinds import Kind, Treatment
from shared.trade.products import Pack, Product, Use

PRIMER = Product("primer", "Grip primer", Use.PRIMER, (Pack(1.0), Pack(4.0)), covers_m2=10.0)
COLOUR = Product("colour", "Satin", Use.COLOUR, (Pack(1.0),), covers_m2=11.0)
SLEEVE = Product("sleeve", "Small sleeve", Use.SLEEVE, (Pack(10.0),))
PRIME = Step(Work.PRIME, "primer", tool="sleeve")
PAINT = Step(Work.COLOUR, "colour", coats=2, tool="sleeve")
RINSE = Step(Work.RINSE)
GOLD = Finish("gold", "Gold", (PAINT,))


@pytest.fixture
def job(kitchen: Job) -> Job:
    """The small kitchen, with products and steps; one door is gold, and so are all drawer fronts."""
    steps = {"fronts": (RINSE, PRIME, PAINT), "tiles": (PAINT,)}
    finishes = tuple(replace(finish, steps=steps.get(finish.id, ())) for finish in kitchen.finishes)
    with_products = replace(kitchen, finishes=(*finishes, GOLD), products=(PRIMER, COLOUR, SLEEVE))
    gold = replace(find_part(with_products, "p4")[1], finish="gold")
    drawers = KindChoice(Kind.DRAWER_FRONT, Treatment.TAKEN_OFF, "gold")
    return edits.with_kind_choice(with_changed_parts(with_products, [gold]), drawers)


def kind_choice(job: Job, kind: Kind) -> KindChoice:
    return next(choice for choice in job.kind_choices if choice.kind is kind)


def works(job: Job, finish_id: str) -> list[Work]:
    return [step.work for step in edits.find_finish(job, finish_id).steps]


def test_with_a_finish_go_the_choices_of_it(job: Job) -> None:
    left = edits.without_finish(job, "gold")
    assert find_part(left, "p4")[1].finish == ""
    assert kind_choice(left, Kind.DRAWER_FRONT) == KindChoice(Kind.DRAWER_FRONT, Treatment.TAKEN_OFF, "fronts")
    check_job(left)


def test_a_kind_whose_usual_finish_goes_is_left_without_one(job: Job) -> None:
    left = edits.without_finish(job, "tiles")
    assert kind_choice(left, Kind.SPLASHBACK) == KindChoice(Kind.SPLASHBACK, Treatment.IN_PLACE)
    check_job(left)


def test_a_kind_of_which_the_job_says_nothing_is_added_when_it_is_chosen(job: Job) -> None:
    older = replace(job, kinds=tuple(choice for choice in job.kinds if choice.kind is not Kind.SHELF))
    gold = KindChoice(Kind.SHELF, Treatment.IN_PLACE, "gold")
    chosen = edits.with_kind_choice(older, gold)
    assert chosen.kinds == (*older.kinds, gold)
    assert edits.with_kind_choice(chosen, replace(gold, finish="")).kinds == (*older.kinds, replace(gold, finish=""))


def test_a_finish_that_goes_leaves_a_kind_of_which_the_job_says_nothing_without_it(job: Job) -> None:
    older = replace(job, kinds=())
    assert kind_choice(older, Kind.SPLASHBACK).finish == "tiles"
    left = edits.without_finish(older, "tiles")
    assert kind_choice(left, Kind.SPLASHBACK) == KindChoice(Kind.SPLASHBACK, Treatment.IN_PLACE)
    assert left.kinds == ()


def test_a_finish_that_goes_leaves_the_faces_that_do_not_use_it_the_same_objects(job: Job) -> None:
    left = edits.without_finish(job, "gold")
    same = {one.id for one, other in zip(job.faces, left.faces, strict=True) if one is other}
    assert same == {"f2", "f3", "f4"}
    assert left.rooms[1] is job.rooms[1]


def test_a_copied_finish_stands_after_its_own_with_a_name_and_an_id_of_its_own(job: Job) -> None:
    twice = edits.copied_finish(edits.copied_finish(job, "tiles"), "tiles")
    assert [finish.name for finish in twice.finishes[:3]] == ["Tiles", "Tiles 3", "Tiles 2"]
    assert [finish.steps for finish in twice.finishes[:3]] == [(PAINT,)] * 3
    check_job(twice)


def test_a_step_is_added_where_it_is_asked_for_changed_moved_and_taken_out(job: Job) -> None:
    more = edits.with_step(job, "fronts", Step(Work.CLEAN), at=0)
    assert works(more, "fronts") == [Work.CLEAN, Work.RINSE, Work.PRIME, Work.COLOUR]
    assert works(edits.with_step(job, "fronts", Step(Work.CLEAR)), "fronts")[-1] is Work.CLEAR
    moved = edits.with_step_moved(more, "fronts", 3, 0)
    assert works(moved, "fronts") == [Work.COLOUR, Work.CLEAN, Work.RINSE, Work.PRIME]
    assert edits.with_step_moved(moved, "fronts", 0, 3) == more
    changed = edits.with_changed_step(more, "fronts", 0, Step(Work.KEY))
    assert works(changed, "fronts")[0] is Work.KEY
    assert edits.without_step(more, "fronts", 0) == job


def test_a_product_that_a_step_uses_stays_until_the_step_uses_another(job: Job) -> None:
    with pytest.raises(JobError, match=r"finish Fronts and cabinets, step 2 \(prime\): it uses Grip primer; choose an"):
        edits.without_product(job, "primer")
    with pytest.raises(JobError, match="it uses Small sleeve"):
        edits.without_product(job, "sleeve")
    exchanged = edits.with_product_exchanged(job, "primer", "colour")
    assert edits.find_finish(exchanged, "fronts").steps[1] == replace(PRIME, product="colour")
    left = edits.without_product(exchanged, "primer")
    assert left.products == (COLOUR, SLEEVE)


def test_an_exchanged_tool_is_exchanged_in_every_step(job: Job) -> None:
    other = edits.with_product(job, replace(SLEEVE, id="wide"))
    exchanged = edits.with_product_exchanged(other, "sleeve", "wide")
    assert {step.tool for finish in exchanged.finishes for step in finish.steps if step.product} == {"wide"}


def test_a_product_keeps_its_place_when_it_changes(job: Job) -> None:
    changed = edits.with_changed_product(job, replace(COLOUR, name="Gloss"))
    assert [product.name for product in changed.products] == ["Grip primer", "Gloss", "Small sleeve"]
    assert changed.products[0] is PRIMER
    assert edits.with_product(job, replace(PRIMER, id="new"), at=0).products[0].id == "new"


def test_a_pack_is_added_changed_and_taken_away(job: Job) -> None:
    more = edits.with_pack(job, "primer", Pack(10.0, 90.0))
    assert [pack.size for pack in edits.find_product(more, "primer").packs] == [1.0, 4.0, 10.0]
    dearer = edits.with_changed_pack(more, "primer", 2, Pack(10.0, 95.0))
    assert edits.find_product(dearer, "primer").packs[2] == Pack(10.0, 95.0)
    assert edits.without_pack(dearer, "primer", 2) == job


def test_fresh_ids_are_used_by_nothing_nor_named_by_a_step(job: Job) -> None:
    assert (edits.fresh_finish_id(job), edits.fresh_product_id(job)) == ("finish1", "product1")
    named = edits.with_step(job, "tiles", Step(Work.CLEAR, "product7", tool="product9"))
    assert edits.fresh_product_id(named) == "product10"


@pytest.mark.parametrize(
    "edit",
    [
        lambda job: edits.with_changed_finish(job, Finish("nowhere", "")),
        lambda job: edits.copied_finish(job, "nowhere"),
        lambda job: edits.without_finish(job, "nowhere"),
        lambda job: edits.with_kind_choice(job, KindChoice(Kind.DOOR, Treatment.TAKEN_OFF, "nowhere")),
        lambda job: edits.with_step(job, "nowhere", RINSE),
        lambda job: edits.with_changed_product(job, replace(PRIMER, id="nowhere")),
        lambda job: edits.without_product(job, "nowhere"),
        lambda job: edits.with_product_exchanged(job, "primer", "nowhere"),
        lambda job: edits.with_pack(job, "nowhere", Pack(1.0)),
    ],
)
def test_an_id_that_the_job_does_not_have_is_refused(job: Job, edit: Callable[[Job], object]) -> None:
    with pytest.raises(JobError, match=r'the job has no (finish|product) "nowhere"'):
        edit(job)


@pytest.mark.parametrize(
    "edit",
    [
        lambda job, at: edits.with_changed_step(job, "fronts", at, RINSE),
        lambda job, at: edits.without_step(job, "fronts", at),
        lambda job, at: edits.with_step_moved(job, "fronts", at, 0),
        lambda job, at: edits.with_changed_pack(job, "primer", at, Pack(2.0)),
        lambda job, at: edits.without_pack(job, "primer", at),
    ],
)
@pytest.mark.parametrize("at", [-1, 3])
def test_a_step_or_pack_that_is_not_there_is_refused(job: Job, edit: Callable[[Job, int], Job], at: int) -> None:
    with pytest.raises(JobError, match=f"so there is no number {at + 1}"):
        edit(job, at)


def test_an_id_that_is_used_already_is_refused(job: Job) -> None:
    with pytest.raises(JobError, match='the id "tiles" is used already'):
        edits.with_finish(job, Finish("tiles", "Again"))
    with pytest.raises(JobError, match='the id "primer" is used already'):
        edits.with_product(job, PRIMER)


EDITS: tuple[Callable[[Job], Job], ...] = (
    lambda job: edits.without_finish(job, "gold"),
    lambda job: edits.without_finish(job, "fronts"),
    lambda job: edits.with_finish(job, GOLD),
    lambda job: edits.copied_finish(job, "gold"),
    lambda job: edits.with_step(job, "tiles", PRIME, at=0),
    lambda job: edits.with_step_moved(job, "fronts", 2, 0),
    lambda job: edits.without_step(job, "fronts", 0),
    lambda job: edits.without_product(job, "primer"),
    lambda job: edits.with_product_exchanged(job, "primer", "colour"),
    lambda job: edits.with_product(job, PRIMER),
    lambda job: edits.with_pack(job, "primer", Pack(2.5)),
    lambda job: edits.without_pack(job, "colour", 0),
)


@given(st.lists(st.sampled_from(EDITS), max_size=8))
def test_a_job_holds_together_and_no_step_loses_its_product_after_any_edits(chosen: list[Callable[[Job], Job]]) -> None:
    steps = (RINSE, PRIME, PAINT)
    job = Job("Small", products=(PRIMER, COLOUR, SLEEVE))
    job = edits.with_finish(edits.with_changed_finish(job, Finish("fronts", "Fronts", steps)), GOLD)
    for edit in chosen:
        try:
            job = edit(job)
        except JobError:
            continue
        check_job(job)
        ids = {product.id for product in job.products} | {""}
        assert all({step.product, step.tool} <= ids for finish in job.finishes for step in finish.steps)
