import pytest

from geometry.checking import check_outlines
from geometry.shapes import box
from shared.errors import OutlineError
from shared.job import Face, Job, Part, Room, Vertex
from shared.kinds import Kind


def job(*parts: Part) -> Job:
    return Job("kitchen", rooms=(Room("r", "Kitchen", (Face("f", "A", parts=parts),)),))


def test_a_job_of_sound_outlines_passes() -> None:
    check_outlines(job(Part("w", Kind.WALL, box(0, 0, 2400, 2700))))


def test_the_first_bad_outline_is_named_with_its_face() -> None:
    bow_tie = (Vertex(0, 0), Vertex(10, 10), Vertex(10, 0), Vertex(0, 10))
    with pytest.raises(OutlineError, match=r"^face A, sink run \(b\): side 1 and side 3"):
        check_outlines(job(Part("w", Kind.WALL, box(0, 0, 9, 9)), Part("b", Kind.BENCHTOP, bow_tie, name="sink run")))
