"""A finish is copied between jobs, by a file of its own or from any job's, and names the same products there."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace

from shared.checks.job import check_job
from shared.edits.build_ups import start_job
from shared.edits.finishes import find_finish, find_product, with_changed_product
from shared.errors import FileError, JobError, RecoatError
from shared.files.finish import ENDING, finish_alone, read_finish_file, with_finish_from, write_finish_file
from shared.files.job import JobFile, job_to_json, write_job_file
from shared.job import Job, Unit
from shared.trade.finishes import Finish, Step, Work
from shared.trade.products import Money, Pack, Product, Use

COLOUR = Product("colour", "Satin", Use.COLOUR, (Pack(1.0, 48.0),), covers_m2=12.0, stands_for="satin", on_shelf=0.3)
OTHER = Product("other", "Other satin", Use.COLOUR, (Pack(2.5, 96.0),), covers_m2=10.0, stands_for="satin")
SLEEVE = Product("sleeve", "Small sleeve", Use.SLEEVE, (Pack(10.0, 22.0),))
TAPE = Product("tape", "Masking tape", Use.TAPE, (Pack(50.0, 8.4),))
SAGE = Finish(
    "sage", "Sage", (Step(Work.RINSE, coats=2), Step(Work.COLOUR, "colour", coats=2, tool="sleeve")), "#A3B59B"
)
CROWNS = Money("crowns", tax=0.1, budget=750.0)


@pytest.fixture
def source() -> Job:
    products = (COLOUR, OTHER, SLEEVE, TAPE)
    return replace(start_job("Source"), finishes=(SAGE,), kinds=NO_FINISH.kinds, products=products, money=CROWNS)


NO_FINISH = finish_alone(start_job("None"), "tiles")


def named(job: Job, finish: Finish) -> Iterator[Product]:
    return (find_product(job, name) for step in finish.steps for name in (step.product, step.tool) if name)


def priced(job: Job) -> list[float | None]:
    return [pack.price for product in job.products for pack in product.packs]


def test_a_finish_goes_with_its_products_and_their_stand_ins_and_nothing_else(source: Job) -> None:
    alone = finish_alone(source, "sage")
    assert (alone.name, alone.finishes, alone.rooms) == ("Sage", (SAGE,), ())
    assert [product.id for product in alone.products] == ["colour", "other", "sleeve"]
    assert {product.on_shelf for product in alone.products} == {0.0}
    assert alone.money == Money("crowns", tax=0.1)
    check_job(alone)


def test_what_is_written_is_read(source: Job, tmp_path: Path) -> None:
    path = tmp_path / f"sage{ENDING}"
    write_finish_file(path, source, "sage")
    assert read_finish_file(path) == finish_alone(source, "sage")


def test_a_finish_is_copied_from_any_job_file(source: Job, tmp_path: Path) -> None:
    path = tmp_path / "whole.recoat"
    write_job_file(path, JobFile(source))
    job = with_finish_from(start_job("New"), read_finish_file(path), "sage")
    assert job.finishes[-1].name == "Sage"


def test_it_names_the_same_products_under_whatever_ids(source: Job) -> None:
    taken = replace(start_job("New"), products=(replace(TAPE, id="colour"), replace(TAPE, id="product1")))
    job = with_finish_from(taken, source, "sage")
    assert [product.name for product in named(job, job.finishes[-1])] == ["Satin", "Small sleeve"]
    assert [product.id for product in job.products] == ["colour", "product1", "product2", "other", "sleeve"]
    check_job(job)


def test_a_product_that_is_there_already_is_used_with_its_own_price_and_shelf(source: Job) -> None:
    own = replace(COLOUR, id="mine", packs=(Pack(1.0, 51.0),), on_shelf=2.0)
    job = with_finish_from(replace(source, products=(own, SLEEVE)), source, "sage")
    assert [product.id for product in job.products] == ["mine", "sleeve", "other"]
    assert next(named(job, job.finishes[-1])) is own


def test_one_that_covers_less_is_another_product(source: Job) -> None:
    job = with_finish_from(with_changed_product(source, replace(COLOUR, covers_m2=8.0)), source, "sage")
    assert [product.covers_m2 for product in job.products if product.name == "Satin"] == [8.0, 12.0]


def test_a_copy_in_the_same_job_gets_a_name_and_an_id_of_its_own(source: Job) -> None:
    job = with_finish_from(source, source, "sage")
    assert [(finish.id, finish.name) for finish in job.finishes] == [("sage", "Sage"), ("finish1", "Sage 2")]
    assert job.products == source.products
    assert find_finish(job, "finish1").shade == SAGE.shade


def test_prices_come_along_where_they_mean_the_same(source: Job) -> None:
    same = replace(source, finishes=(), products=(TAPE,), money=replace(CROWNS, budget=90.0))
    assert priced(with_finish_from(same, source, "sage")) == [8.4, 48.0, 96.0, 22.0]
    other = replace(same, money=Money("marks"))
    assert priced(with_finish_from(other, source, "sage")) == [8.4, None, None, None]


def test_a_job_that_has_said_nothing_of_money_takes_over_that_of_the_prices(source: Job) -> None:
    job = with_finish_from(replace(start_job("New"), money=Money(budget=300.0)), source, "sage")
    assert job.money == Money("crowns", tax=0.1, budget=300.0)
    assert 48.0 in priced(job)


@pytest.mark.parametrize("unit", Unit)
def test_ready_made_build_ups_copied_among_new_jobs_add_no_product(unit: Unit) -> None:
    job = start_job("New", unit)
    for finish in job.finishes:
        copied = with_finish_from(job, start_job("Other", unit), finish.id)
        assert copied.products == job.products
        assert copied.finishes[-1].steps == finish.steps


def test_a_finish_whose_product_is_missing_is_refused(source: Job) -> None:
    with pytest.raises(JobError, match='the job has no product "colour"'):
        finish_alone(replace(source, products=(SLEEVE,)), "sage")
    with pytest.raises(JobError, match='the job has no finish "gold"'):
        with_finish_from(source, source, "gold")


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "not a job file"),
        (b"[]", "should be a group of fields"),
        (b'{"name": "x", "finishes": [{"id": "a"}]}', 'finish 1 .a.: the field "name" is missing'),
        (job_to_json(replace(NO_FINISH, finishes=())), "the file has no finish; choose another file"),
        (job_to_json(replace(NO_FINISH, finishes=(Finish("a", "A", shade="red"),))), 'its shade is "red"'),
    ],
)
def test_a_file_that_is_none_is_refused_in_words_that_name_it(tmp_path: Path, content: bytes, words: str) -> None:
    path = tmp_path / "none.buildup"
    path.write_bytes(content)
    with pytest.raises(RecoatError, match=words) as refused:
        read_finish_file(path)
    assert str(path) in str(refused.value)


def test_a_file_that_is_not_there_is_refused_in_words(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="there is no such file"):
        read_finish_file(tmp_path / "nothing.buildup")
