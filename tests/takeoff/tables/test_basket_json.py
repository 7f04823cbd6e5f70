import json
from importlib.resources import files
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from msgspec.structs import replace

from shared.files.job import job_from_json
from shared.job import Job
from takeoff.bill import Bill, make_bill
from takeoff.figures.measured import Takeoff
from takeoff.tables.takeoff_json import takeoff_json, takeoff_schema
from takeoff.take_off import take_off


@pytest.fixture(scope="module")
def example() -> Job:
    return job_from_json((files("desktop") / "data" / "example.json").read_bytes(), "the example")


@pytest.fixture(scope="module")
def takeoff(example: Job) -> Takeoff:
    return take_off(example)


@pytest.fixture(scope="module")
def bill(example: Job, takeoff: Takeoff) -> Bill:
    return make_bill(example, takeoff)


@pytest.fixture(scope="module")
def document(example: Job, takeoff: Takeoff, bill: Bill) -> dict[str, Any]:
    read: dict[str, Any] = json.loads(takeoff_json(takeoff, example, bill))
    return read


def test_it_keeps_to_its_schema(document: dict[str, Any]) -> None:
    assert list(Draft202012Validator(takeoff_schema()).iter_errors(document)) == []


def test_the_uses_of_every_product_sum_to_what_is_needed_of_it(document: dict[str, Any]) -> None:
    options = [option for wanted in document["needs"]["wanted"] for option in wanted["options"]]
    assert len(options) > 5
    for option in options:
        sums = [
            use["size"] * use["times"] / use["per"] / (1 - use["loss"]) * (1 + use["allowance"]) + use["left_behind"]
            for use in option["uses"]
        ]
        assert sum(sums) == pytest.approx(option["amount"])
        assert option["rule"]
        assert option["source"]


def test_packs_shelf_and_left_over_meet_what_is_needed(document: dict[str, Any]) -> None:
    for row in document["basket"]["rows"]:
        bought = sum(pack["many"] * pack["size"] for pack in row["packs"])
        assert bought + row["from_shelf"] - row["left_over"] == pytest.approx(row["needed"], abs=1e-6)
        assert sum(pack["many"] * pack["price"] for pack in row["packs"]) == pytest.approx(row["cost"])
    total = sum(row["cost"] for row in document["basket"]["rows"])
    assert total == pytest.approx(document["basket"]["cost"])


def test_without_a_bill_both_are_null(example: Job, takeoff: Takeoff) -> None:
    document = json.loads(takeoff_json(takeoff, example))
    assert (document["needs"], document["basket"]) == (None, None)


def test_without_any_price_there_is_no_cost(example: Job, takeoff: Takeoff) -> None:
    products = tuple(replace(p, packs=tuple(replace(pack, price=None) for pack in p.packs)) for p in example.products)
    job = replace(example, products=products)
    document = json.loads(takeoff_json(takeoff, job, make_bill(job, takeoff)))
    assert (document["basket"]["cost"], document["basket"]["tax"]) == (None, None)
    assert list(Draft202012Validator(takeoff_schema()).iter_errors(document)) == []


def test_what_was_left_out_of_it_is_among_the_findings(example: Job, takeoff: Takeoff) -> None:
    job = replace(example, products=())
    document = json.loads(takeoff_json(takeoff, job, make_bill(job, takeoff)))
    assert len(document["findings"]) > len(takeoff.findings)
    assert document["basket"]["rows"] == []
