"""A kitchen typed as rows, its benchtop laid out, any of its sizes corrected: nothing comes apart."""

import pytest

from geometry.edits.following import shift
from geometry.kitchens.rows import with_row
from geometry.kitchens.walls import start_kitchen
from geometry.outlines.measured import area_mm2, outline_box
from shared.checks.job import check_job
from shared.edits.drawn import find_face
from shared.job import Face, Job, Unit, View, Way, usual_heights
from shared.typed.rows import read_row
from shared.typed.walls import read_walls
from takeoff.faces.benchtop_plans import with_benchtop_plans
from takeoff.take_off import take_off
from tests.takeoff.rows import codes

ROWS = (
    "600 door, 900 pair, rest open, splashback",
    "600 gap, 900 pair, 600 oven, rest drawers 3, splashback",
    "600 gap, 600 door, 450 open, splashback",
)


@pytest.fixture(params=[False, True], ids=["butted", "mitred"])
def kitchen(request: pytest.FixtureRequest) -> Job:
    """Three walls with base cabinets, and the plan of the benchtop over them."""
    job = start_kitchen("K", read_walls("2400, 3000, 2400", Unit.MM), usual_heights(), Unit.MM)
    for face, row in zip(job.faces, ROWS, strict=True):
        job, _ = with_row(job, face.id, read_row(row, Unit.MM))
    return with_benchtop_plans(job, job.rooms[0].id, mitred=request.param)[0]


def plan_of(job: Job) -> Face:
    return next(face for face in job.faces if face.view is View.PLAN)


def area_m2(job: Job) -> float:
    return sum(area_mm2(part.outline) for part in plan_of(job).parts) / 1e6


def test_rows_and_their_benchtop_leave_nothing_to_look_at(kitchen: Job) -> None:
    """Legs of 2400, 3000 and 600 + 600 + 450 + 20 of overhang, 600 deep, less two corners counted twice."""
    assert area_m2(kitchen) == pytest.approx((2.4 + 3.0 + 1.67) * 0.6 - 2 * 0.36)
    assert codes(take_off(kitchen)) == []


def test_no_corrected_size_takes_the_benchtop_apart(kitchen: Job) -> None:
    for face in kitchen.faces[:3]:
        for right in {outline_box(part.outline)[2] for part in face.parts}:
            for by in (-7.0, 60.0):
                after = shift(kitchen, face.id, Way.ACROSS, right, by).job
                check_job(after)
                assert codes(take_off(after)) == [], (face.name, right, by)


def test_the_benchtop_grows_with_its_wall(kitchen: Job) -> None:
    first, second, third = (face.id for face in kitchen.faces[:3])
    grown = shift(kitchen, first, Way.ACROSS, 600, 10).job
    grown = shift(grown, second, Way.ACROSS, 1500, 20).job
    grown = shift(grown, third, Way.ACROSS, 1200, 30).job
    assert area_m2(grown) == pytest.approx(area_m2(kitchen) + 0.6 * (0.010 + 0.020 + 0.030))
    walls = [outline_box(find_face(grown, face_id).parts[0].outline)[2] for face_id in (first, second, third)]
    assert walls == [2410, 3020, 2430]
