"""Set-out lines stand on the drawing where the readings put them, with their distances."""

from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.drawing import Role
from shared.job import START, Face, Job, Part, Reading, Room, Unit, Way
from shared.trade.kinds import Kind
from takeoff.drawing.set_out import set_out_marks

WALL = Part("p1", Kind.WALL, box(0, 0, 3600, 2400))
READ = (Reading(START, "1", 600.0), Reading(START, "2", 1050.0), Reading(START, "3", 870.0, Way.UP))
FACE = Face("f1", "A", parts=(WALL,), readings=READ)
JOB = Job("Test", (Room("r1", "Kitchen", (FACE,)),))
BOX = (0.0, 0.0, 3600.0, 2400.0)


def test_lines_run_across_the_whole_face_where_the_readings_put_them() -> None:
    lines, _ = set_out_marks(JOB, FACE, BOX)
    ends = [(line.path[0].x, line.path[0].y, line.path[1].x, line.path[1].y) for line in lines]
    assert {line.role for line in lines} == {Role.SET_OUT}
    assert [(x0, x1) for x0, _, x1, _ in ends[:2]] == [(600, 600), (1050, 1050)]
    assert all(y0 == 0 and y1 > 2400 for _, y0, _, y1 in ends[:2])
    left, low, right, high = ends[2]
    assert (left, low, high) == (0, 870, 870)
    assert right > 3600


def test_distances_are_written_in_the_unit_of_the_job_and_do_not_run_into_each_other() -> None:
    _, texts = set_out_marks(JOB, FACE, BOX)
    assert [text.text for text in texts] == ["600", "1050", "870"]
    first, second, _ = texts
    assert first.x + first.width_mm / 2 <= second.x - second.width_mm / 2
    _, inches = set_out_marks(replace(JOB, unit=Unit.INCH), FACE, BOX)
    assert inches[0].text == '23 5/8"'


def test_readings_may_go_one_way_only() -> None:
    for reading in READ:
        lines, texts = set_out_marks(JOB, replace(FACE, readings=(reading,)), BOX)
        assert (len(lines), len(texts)) == (1, 1)


def test_a_face_without_readings_has_none() -> None:
    assert set_out_marks(JOB, replace(FACE, readings=()), BOX) == ((), ())
