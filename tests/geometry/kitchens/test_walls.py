import pytest
from msgspec.structs import replace

from geometry.checking import check_outlines
from geometry.kitchens.walls import start_kitchen, with_heights, with_kitchen
from geometry.outlines.measured import outline_box
from shared.checks.job import check_job
from shared.errors import JobError, ReadingError
from shared.job import Corner, Job, Unit, usual_heights
from shared.trade.kinds import Kind
from shared.typed.walls import read_walls

HEIGHTS = replace(usual_heights(), ceiling_mm=2550)


@pytest.fixture
def started() -> Job:
    return start_kitchen("Quince Lane 2", read_walls("2400, 3000 out, 1800", Unit.MM), HEIGHTS, Unit.MM)


def test_a_kitchen_has_a_face_for_each_wall(started: Job) -> None:
    (room,) = started.rooms
    assert (started.name, room.name, room.heights) == ("Quince Lane 2", "Kitchen", HEIGHTS)
    assert [(face.name, face.corner) for face in room.faces] == [
        ("A", Corner.INSIDE),
        ("B", Corner.OUTSIDE),
        ("C", Corner.NONE),
    ]
    walls = [(part.kind, outline_box(part.outline)) for face in room.faces for part in face.parts]
    assert walls == [(Kind.WALL, (0, 0, width, 2550)) for width in (2400, 3000, 1800)]
    check_job(started)
    check_outlines(started)


def test_four_walls_close_when_the_last_corner_is_said() -> None:
    job = start_kitchen("Four walls", read_walls("3000, 2400, 3000, 2400 inside", Unit.MM), HEIGHTS, Unit.MM)
    assert [face.corner for face in job.faces] == [Corner.INSIDE] * 4


def test_a_kitchen_in_inches_keeps_its_unit() -> None:
    job = start_kitchen("Inches", read_walls("94 1/2", Unit.INCH), usual_heights(Unit.INCH), Unit.INCH)
    assert (job.unit, outline_box(job.faces[0].parts[0].outline)) == (Unit.INCH, (0, 0, 2400.3, 2438.4))


def test_a_room_more_leaves_the_others_and_goes_on_with_the_letters(started: Job) -> None:
    job = with_kitchen(started, "Laundry", read_walls("1500, 1700", Unit.MM), usual_heights())
    assert job.rooms[0] is started.rooms[0]
    assert [face.name for face in job.rooms[1].faces] == ["D", "E"]
    check_job(job)


def test_what_is_no_room_is_refused(started: Job) -> None:
    with pytest.raises(ReadingError, match="at least one wall"):
        with_kitchen(started, "Laundry", (), HEIGHTS)
    with pytest.raises(JobError, match="Laundry: the usual ceiling is 0 mm"):
        with_kitchen(started, "Laundry", read_walls("1500", Unit.MM), replace(HEIGHTS, ceiling_mm=0))


def test_a_room_gets_other_heights_and_keeps_its_faces(started: Job) -> None:
    job = with_heights(started, "r1", replace(HEIGHTS, kickboard_mm=100))
    assert job.rooms[0].heights.kickboard_mm == 100
    assert job.rooms[0].faces is started.rooms[0].faces
    assert with_heights(started, "r1", HEIGHTS) is started
    with pytest.raises(JobError, match="Kitchen: the usual cabinet is -1 mm"):
        with_heights(started, "r1", replace(HEIGHTS, cabinet_mm=-1))
