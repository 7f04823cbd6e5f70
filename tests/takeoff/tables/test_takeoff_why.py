import re
from importlib.resources import files

import pytest
from msgspec.structs import replace

from shared.files.job import job_from_json
from shared.job import Job, Reading, Unit
from takeoff.bill import make_bill
from takeoff.tables.takeoff_why import why_text
from takeoff.take_off import take_off

SUM = re.compile(r": ([\d.]+)(?: \w+)?(?: x ([\d.]+))?(?: / ([\d.]+))? = ([\d.]+)(?: (?:L|US gal|US fl oz|ft))?$")
PRODUCT = re.compile(r": ([\d.]+) x ([\d.]+)(?: x ([\d.]+))? = (-?[\d.]+) m2$")


@pytest.fixture(scope="module")
def example() -> Job:
    return job_from_json((files("desktop") / "data" / "example.json").read_bytes(), "the example")


def why(job: Job) -> str:
    takeoff = take_off(job)
    return why_text(takeoff, job, make_bill(job, takeoff))


@pytest.fixture(scope="module")
def text(example: Job) -> str:
    return why(example)


@pytest.mark.parametrize("unit", list(Unit))
def test_every_sum_of_a_need_comes_to_what_is_written_behind_it(example: Job, unit: Unit) -> None:
    sums = [match for line in why(replace(example, unit=unit)).splitlines() if (match := SUM.search(line))]
    assert len(sums) > 20
    for match in sums:
        size, times, per, amount = match.groups()
        reckoned = float(size) * float(times or 1) / float(per or 1)
        assert reckoned == pytest.approx(float(amount), rel=2e-3, abs=2e-3)


def test_every_product_of_lengths_comes_to_the_area_behind_it(text: str) -> None:
    products = [match for line in text.splitlines() if (match := PRODUCT.search(line))]
    assert len(products) > 100
    for match in products:
        width, height, factor, area = match.groups()
        assert float(width) * float(height) * float(factor or 1) / 1e6 == pytest.approx(abs(float(area)), abs=6e-4)


def test_every_figure_names_its_rule_and_source(text: str) -> None:
    assert text.count("rule: ") > 100
    assert "rule: net: what is seen of it, all that hides it deducted" in text
    assert "source: exact: " in text
    assert "source: common practice, no source" in text


def test_it_goes_from_the_readings_to_the_cost(example: Job) -> None:
    room = example.rooms[0]
    face = replace(room.faces[0], readings=(Reading("start", "end", 3600.0),))
    job = replace(example, rooms=(replace(room, faces=(face, *room.faces[1:])), *example.rooms[1:]))
    lines = [line.strip() for line in why(job).splitlines()]
    basket = make_bill(job, take_off(job)).basket
    assert "read across, start to end: 3600 mm" in lines
    assert f"Total crowns {basket.cost:.2f}" in lines
    for heading in ("Joints", "Masking", "Needed", "Fronts", "Basket"):
        assert heading in lines


def test_what_was_left_out_is_told(example: Job) -> None:
    text = why(replace(example, products=()))
    assert "Left out: " in text
    assert "Basket" not in text.splitlines()


def test_an_empty_job_has_nothing_to_unfold() -> None:
    assert why(Job("Empty")) == "Empty\n"


def test_a_name_cannot_move_the_cursor_of_a_terminal(example: Job) -> None:
    assert "\x1b" not in why(replace(example, name="\x1b[2J"))
