import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Job, Part
from shared.trade.kinds import Kind, Treatment
from takeoff.needs.hardware import hardware, hinges_of, holes_to_fill, look_at_fronts
from tests.takeoff.rows import face_of, job_of


def door(height_mm: float = 700, name: str = "door", **said: float) -> Part:
    return replace(Part(name, Kind.DOOR, box(0, 0, 450, height_mm)), **said)


def drawer(name: str = "drawer", **said: float) -> Part:
    return replace(Part(name, Kind.DRAWER_FRONT, box(500, 0, 450, 200)), **said)


# A maker's chart, seen; its bands of 40, 60, 80 and 100 in are read off an axis: weak.
@pytest.mark.parametrize(
    ("height_in", "hinges"), [(28, 2), (40, 2), (41, 3), (60, 3), (61, 4), (80, 4), (81, 5), (100, 5)]
)
def test_a_taller_door_has_more_hinges(height_in: float, hinges: int) -> None:
    assert hinges_of(door(height_in * 25.4)) == hinges


def test_a_door_says_its_own_number_of_hinges_and_a_drawer_front_has_none() -> None:
    assert hinges_of(door(hinges=4)) == 4
    assert hinges_of(drawer()) == 0


def test_a_door_taller_than_the_chart_is_a_finding_until_it_says_its_hinges() -> None:
    tall = job_of(face_of(door(2600)))
    assert [(each.code, each.parts) for each in look_at_fronts(tall)] == [("hinges", ("door",))]
    assert hardware(tall).hinges.amount == 0
    said = job_of(face_of(door(2600, hinges=6)))
    assert (hardware(said).hinges.amount, tuple(look_at_fronts(said))) == (6, ())


# Hole centres of 76, 96 and 128 mm (seen); "3 3/4 in" is sold for 96 (common practice, no source).
@pytest.mark.parametrize(
    ("old_mm", "new_mm", "holes"),
    [
        (96.0, 96.0, 0),
        (95.25, 96.0, 0),
        (76.0, 96.0, 2),
        (128.0, 96.0, 2),
        (0.0, 96.0, 1),
        (96.0, 0.0, 2),
        (0.0, 0.0, 0),
        (None, 96.0, 0),
        (96.0, None, 0),
    ],
)
def test_a_new_handle_that_does_not_fit_leaves_holes(old_mm: float | None, new_mm: float | None, holes: int) -> None:
    assert holes_to_fill(replace(door(), hole_centres_mm=old_mm), new_mm) == holes


@pytest.fixture
def kitchen() -> Job:
    """Three rooms alike of two doors, of which one has a knob, and a drawer front; the new handles have 96 mm."""
    face = face_of(door(hole_centres_mm=76.0), door(1200, "tall", hole_centres_mm=0.0), drawer(hole_centres_mm=96.0))
    job = replace(job_of(face), handle_centres_mm=96.0)
    return replace(job, rooms=(replace(job.rooms[0], alike=3),))


def test_everything_is_counted_in_each_of_the_rooms_alike(kitchen: Job) -> None:
    found = hardware(kitchen)
    assert [figure.amount for figure in found] == [3 * (2 + 3), 3 * 3, 3 * (2 + 1)]
    assert [(term.what, term.amount, term.parts) for term in found.hinges.reason.terms] == [
        ("3 fronts with 2", 6, ("door",)),
        ("3 fronts with 3", 9, ("tall",)),
    ]


def test_the_weak_source_of_hinges_is_said(kitchen: Job) -> None:
    assert "weak" in hardware(kitchen).hinges.reason.source


def test_a_front_that_is_left_is_not_counted() -> None:
    job = job_of(face_of(replace(door(), treatment=Treatment.LEFT)))
    assert [figure.amount for figure in hardware(job)] == [0, 0, 0]


def test_old_hole_centres_that_nobody_said_are_a_finding_where_new_handles_go_on() -> None:
    job = job_of(face_of(door(), drawer(hole_centres_mm=96.0)))
    assert tuple(look_at_fronts(job)) == ()
    found = tuple(look_at_fronts(replace(job, handle_centres_mm=96.0)))
    assert [(each.code, each.face, each.parts) for each in found] == [("hole-centres", "a", ("door",))]
