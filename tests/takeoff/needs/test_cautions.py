"""Cautions: said for the steps that are done where somebody could be hurt, and never that something is safe."""

import tomllib
from importlib.resources import files

import pytest
from msgspec.structs import replace

from examples.make_harbour_row import harbour_row
from geometry.outlines.shapes import box
from shared.edits.build_ups import start_job
from shared.edits.finishes import find_product, with_changed_product, with_product_exchanged, without_step
from shared.job import Face, Job, Part, Room
from shared.trade.kinds import Kind
from takeoff.needs.cautions import cautions
from takeoff.take_off import take_off

TILES = Part("tiles", Kind.SPLASHBACK, box(0, 900, 2400, 600))
DOOR = Part("door", Kind.DOOR, box(0, 150, 450, 700))
PLAIN_TIMBER = replace(DOOR, made_of="timber")
BENCHTOP = Part("top", Kind.BENCHTOP, box(0, 860, 2400, 38))


def job_with(*parts: Part) -> Job:
    return start_job("J", rooms=(Room("r", "Kitchen", (Face("f", "A", parts=parts),)),))


def said(job: Job) -> dict[str, tuple[str, ...]]:
    """The finishes that call for each caution, by the first of these words that is in it."""
    words = ("isocyanates", "silica", "asbestos", "lead", "Vapours", "outlets", "burners", "food")
    found = cautions(job, take_off(job))
    return {next(word for word in words if word in each.text): each.finishes for each in found}


@pytest.mark.parametrize(
    ("part", "called_for"),
    [
        (TILES, {"isocyanates", "silica", "asbestos", "Vapours", "burners"}),
        (BENCHTOP, {"isocyanates", "Vapours", "burners", "food"}),
        (DOOR, {"Vapours"}),
        (PLAIN_TIMBER, {"Vapours"}),
        (replace(DOOR, made_of="old paint on timber"), {"lead", "Vapours"}),
        (replace(TILES, made_of="painted steel"), {"isocyanates", "lead", "Vapours", "burners"}),
    ],
)
def test_what_is_coated_calls_for_its_cautions(part: Part, called_for: set[str]) -> None:
    assert set(said(job_with(part))) == called_for


def test_a_power_outlet_on_the_face_calls_for_one() -> None:
    assert "outlets" in said(job_with(TILES, Part("outlet", Kind.OUTLET, box(100, 1000, 115, 72))))
    assert "outlets" not in said(job_with(TILES))


def test_it_goes_when_what_called_for_it_goes() -> None:
    job = job_with(TILES)
    one_part = with_changed_product(job, replace(find_product(job, "tile-colour"), ratio=None))
    assert "isocyanates" in said(one_part)
    assert "isocyanates" not in said(with_product_exchanged(one_part, "clear", "tile-colour"))
    assert "silica" not in said(without_step(job, "tiles", 2))


def test_nothing_is_said_of_a_job_in_which_nothing_is_coated() -> None:
    assert cautions(start_job("J"), take_off(start_job("J"))) == ()
    assert said(job_with(Part("wall", Kind.WALL, box(0, 0, 3000, 2400)))) == {}


def test_the_example_calls_for_all_of_them_each_once() -> None:
    found = said(harbour_row())
    assert found["lead"] == ("fronts",)
    assert found["Vapours"] == ("tiles", "benchtop", "fronts")
    assert len(found) == len(cautions(harbour_row(), take_off(harbour_row()))) == 8


def test_every_caution_names_who_decides_and_none_says_that_something_is_safe() -> None:
    rows = tomllib.loads((files("takeoff") / "data" / "cautions.toml").read_text("utf-8"))["caution"]
    deciding = ("data sheet", "local code", "local health authority", "licensed")
    assert [row["text"] for row in rows if not any(each in row["text"] for each in deciding)] == []
    assert [row["text"] for row in rows if "safe" in row["text"].casefold()] == []
