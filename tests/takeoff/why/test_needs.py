"""Why so much of every product of the example is needed."""

import re
from importlib.resources import files

import pytest
from msgspec.structs import replace

from shared.files.job import job_from_json
from shared.job import Job, Unit
from shared.written.writing import Writing
from takeoff.bill import make_bill
from takeoff.take_off import take_off
from takeoff.why.needs import NeedRows
from takeoff.why.row import WhyRow

NUMBER = re.compile(r"[\d.]+")


@pytest.fixture(scope="module")
def example() -> Job:
    return job_from_json((files("desktop") / "data" / "example.json").read_bytes(), "the example")


def rows_of(job: Job) -> list[WhyRow]:
    takeoff = take_off(job)
    rows = NeedRows(takeoff, job, Writing(job.unit))
    return [rows.row(need) for need in make_bill(job, takeoff).bought]


def number_of(words: str) -> float:
    found = NUMBER.match(words)
    assert found is not None
    return float(found.group())


def test_the_steps_of_a_need_add_up_as_they_are_read(example: Job) -> None:
    rows = rows_of(example)
    assert len(rows) > 8
    for row in rows:
        steps = sum(number_of(child.amount) for child in row.children if child.amount)
        whole = number_of(row.amount) / (1000 if row.amount.endswith("mL") else 1)
        assert steps == pytest.approx(whole, abs=0.06)


@pytest.mark.parametrize("unit", list(Unit))
def test_the_parts_of_a_use_add_up_to_the_size_that_it_begins_with(example: Job, unit: Unit) -> None:
    square = Writing(unit).square_unit
    uses = [use for row in rows_of(replace(example, unit=unit)) for use in row.children if square in use.factors]
    assert len(uses) > 8
    for use in uses:
        assert [child.parts for child in use.children] == [(part,) for part in use.parts]
        area = sum(number_of(child.amount) for child in use.children)
        assert area == pytest.approx(number_of(use.factors), abs=0.0006 * len(use.children), rel=1e-3)
