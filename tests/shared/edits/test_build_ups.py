"""What a new job begins with: build-ups that hold together, in packs that are usual where it is used."""

from collections.abc import Iterator
from fractions import Fraction

import pytest

from shared.checks.job import check_job
from shared.edits.build_ups import BuildUps, ready_made, start_job
from shared.job import USUAL_FINISHES, Job, Unit
from shared.trade.finishes import Material, Step, Work
from shared.trade.kinds import usual
from shared.trade.products import Measure, Use

GALLON_L = 231 * Fraction("25.4") ** 3 / 10**6
"""231 in3, exact (NIST Handbook 44, appendix C)."""

both_units = pytest.mark.parametrize("unit", Unit)


def steps_of(made: BuildUps) -> Iterator[Step]:
    return (step for finish in made.finishes for step in finish.steps)


def coats(made: BuildUps, finish_id: str, material: Material) -> dict[Work, int]:
    steps = next(finish.steps for finish in made.finishes if finish.id == finish_id)
    return {step.work: step.coats for step in steps if material in step.on or not step.on}


@both_units
def test_a_job_that_begins_with_them_holds_together(unit: Unit) -> None:
    job = start_job("New", unit)
    check_job(job)
    assert (job.unit, job.finishes, job.products) == (unit, *ready_made(unit))


def test_there_is_one_for_every_finish_that_a_kind_usually_gets() -> None:
    ids = [finish.id for finish in ready_made().finishes]
    assert set(ids) == {row.finish for row in usual().values() if row.finish}
    assert [(finish.id, finish.name) for finish in ready_made().finishes] == [
        (one.id, one.name) for one in USUAL_FINISHES
    ]


@both_units
def test_every_step_names_products_that_are_there(unit: Unit) -> None:
    made = ready_made(unit)
    ids = {product.id for product in made.products} | {""}
    assert all({step.product, step.tool} <= ids for step in steps_of(made))


def test_coats_are_those_of_common_practice() -> None:
    # Common practice, no source: tiles two colour and two clear; benchtop primer, two and two; fronts primer and two.
    made = ready_made()
    assert [coats(made, "tiles", Material.TILE).get(work, 0) for work in (Work.PRIME, Work.COLOUR, Work.CLEAR)] == [
        0,
        2,
        2,
    ]
    assert [coats(made, "benchtop", Material.LAMINATE)[work] for work in (Work.PRIME, Work.COLOUR, Work.CLEAR)] == [
        1,
        2,
        2,
    ]
    assert [coats(made, "fronts", Material.MELAMINE)[work] for work in (Work.PRIME, Work.COLOUR)] == [1, 2]
    assert all(coats(made, finish.id, Material.TILE)[Work.RINSE] == 2 for finish in made.finishes)


@pytest.mark.parametrize("material", Material)
def test_the_order_of_work_is_kept_on_every_material(material: Material) -> None:
    order = list(Work)
    for finish in ready_made().finishes:
        places = [order.index(step.work) for step in finish.steps if material in step.on or not step.on]
        assert places == sorted(places)
        assert {Work.CLEAN, Work.KEY, Work.COLOUR} <= {order[place] for place in places}


@both_units
def test_all_of_it_is_used_and_nothing_has_a_price_yet(unit: Unit) -> None:
    made = ready_made(unit)
    used = {name for step in steps_of(made) for name in (step.product, step.tool)}
    words = {product.stands_for for product in made.products if product.id in used}
    beside = {
        product.id
        for product in made.products
        if product.use in (Use.SEALANT, Use.TAPE) or product.stands_for in words - {""}
    }
    assert used | beside == {product.id for product in made.products} | {""}
    assert {pack.price for product in made.products for pack in product.packs} == {None}


def test_one_colour_may_stand_in_for_another() -> None:
    words = [product.stands_for for product in ready_made().products if product.use is Use.COLOUR]
    assert words.count("fronts colour") == 2


def test_a_job_in_inches_is_bought_for_in_quarts_and_gallons() -> None:
    litres = {
        pack.size
        for product in ready_made(Unit.INCH).products
        if product.measure is Measure.LITRES and product.use is not Use.SEALANT
        for pack in product.packs
    }
    assert litres == {float(GALLON_L * share) for share in (Fraction(1), Fraction(1, 4), Fraction(1, 16))}


def test_a_cartridge_and_a_roll_of_an_inch_job_are_exact() -> None:
    sizes = {product.id: [pack.size for pack in product.packs] for product in ready_made(Unit.INCH).products}
    assert sizes["silicone"] == [float(Fraction("10.1") * GALLON_L / 128)]  # 10.1 US fl oz, exact
    assert sizes["tape"] == [float(60 * 36 * Fraction("0.0254"))]  # 60 yd, exact


def test_a_job_made_without_them_has_finishes_without_steps() -> None:
    assert [finish.steps for finish in Job("Old").finishes] == [(), (), ()]
