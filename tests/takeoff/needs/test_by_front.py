from math import pi

import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Job, Part
from shared.trade.kinds import Kind
from shared.trade.products import Allowances, Product, Use
from takeoff.needs.quantities import needs
from takeoff.take_off import take_off
from tests.takeoff.rows import face_of, job_of

HANDLE = Product("handle", "Bow handle, 128", Use.OTHER, stands_for="handle")
FILLER = Product("filler", "Fine filler", Use.FILLER)
OTHER_FILLER = replace(FILLER, id="coarse", name="Coarse filler")


@pytest.fixture
def two_rooms() -> Job:
    """Two rooms alike of a door of 18 mm, its old handle 96 apart, and a drawer front of 25 mm that had a knob."""
    face = face_of(
        Part("door", Kind.DOOR, box(0, 0, 450, 700), hole_centres_mm=96.0),
        Part("drawer", Kind.DRAWER_FRONT, box(500, 0, 450, 200), thickness_mm=25.0, hole_centres_mm=0.0),
    )
    job = replace(job_of(face), handle_centres_mm=128.0, products=(HANDLE, FILLER), allowances=Allowances(allowance=0))
    return replace(job, rooms=(replace(job.rooms[0], alike=2),))


def amounts(job: Job) -> dict[str, float]:
    found = needs(job, take_off(job))
    return {each.product: each.amount.amount for wanted in found.wanted for each in wanted.options}


def test_new_handles_are_bought_one_a_front(two_rooms: Job) -> None:
    assert amounts(two_rooms)["handle"] == 4


def test_filler_is_the_volume_of_the_holes(two_rooms: Job) -> None:
    # Two holes 18 mm deep and one of 25 mm, in each of two rooms; 5 mm across (common practice, no source).
    assert amounts(two_rooms)["filler"] == pytest.approx(2 * (2 * 18 + 25) * pi / 4 * 25 / 1e6)


def test_old_handles_that_go_back_on_ask_for_nothing(two_rooms: Job) -> None:
    assert amounts(replace(two_rooms, handle_centres_mm=None)) == {}


def test_handles_that_fit_the_old_holes_ask_for_no_filler(two_rooms: Job) -> None:
    fitting = tuple(replace(part, hole_centres_mm=128.0) for part in two_rooms.faces[0].parts)
    assert amounts(replace(job_of(face_of(*fitting)), handle_centres_mm=128.0, products=(HANDLE, FILLER))) == {
        "handle": 2
    }


def test_of_several_fillers_that_for_holes_counts(two_rooms: Job) -> None:
    assert set(amounts(replace(two_rooms, products=(FILLER, OTHER_FILLER)))) == set()
    for_holes = replace(OTHER_FILLER, stands_for="hole filler")
    assert set(amounts(replace(two_rooms, products=(FILLER, for_holes)))) == {"coarse"}


def test_a_product_that_is_used_as_handle_is_bought_as_one(two_rooms: Job) -> None:
    handle = Product("bow", "Bow handle", Use.HANDLE)
    assert amounts(replace(two_rooms, products=(handle,))) == {"bow": 4}
    assert amounts(replace(two_rooms, products=(handle,), handle_centres_mm=None)) == {}


def test_new_hinges_are_bought_by_the_number_of_each_door(two_rooms: Job) -> None:
    # By hand: the door of 700 mm has 2 hinges (data/hinges.toml), the drawer front none; there are two rooms alike.
    hinge = Product("hinge", "Hinge, soft close", Use.HINGE)
    assert amounts(replace(two_rooms, products=(hinge,))) == {"hinge": 4}
    other = replace(hinge, id="plain", name="Plain hinge")
    assert amounts(replace(two_rooms, products=(hinge, other))) == {}
    assert amounts(replace(two_rooms, products=(hinge, replace(other, stands_for="hinge")))) == {"plain": 4}
