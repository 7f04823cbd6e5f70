import pytest

from geometry.checking import check_outlines
from geometry.outlines.shapes import box
from geometry.photos.marks import rectangle_marks
from shared.errors import JobError, OutlineError
from shared.job import Face, Job, Part, PhotoLength, PhotoMark, PhotoPlace, Room, Vertex
from shared.trade.kinds import Kind


def job(*parts: Part) -> Job:
    return Job("kitchen", rooms=(Room("r", "Kitchen", (Face("f", "A", parts=parts),)),))


def test_a_job_of_sound_outlines_passes() -> None:
    check_outlines(job(Part("w", Kind.WALL, box(0, 0, 2400, 2700))))


def test_the_first_bad_outline_is_named_with_its_face() -> None:
    bow_tie = (Vertex(0, 0), Vertex(10, 10), Vertex(10, 0), Vertex(0, 10))
    with pytest.raises(OutlineError, match=r"^face A, sink run \(b\): side 1 and side 3"):
        check_outlines(job(Part("w", Kind.WALL, box(0, 0, 9, 9)), Part("b", Kind.BENCHTOP, bow_tie, name="sink run")))


def test_a_photo_whose_marks_are_in_a_line_is_named_with_its_face() -> None:
    one, two, three, four = (PhotoMark(100.0 * n, 100.0 * n, 100.0 * n, 0.0) for n in range(4))
    face = Face("f", "A", photo="wall.jpg", photo_place=PhotoPlace((one, two, three, four)))
    with pytest.raises(JobError, match=r"^face A, marks on the photo: the first, second and third marks are in a line"):
        check_outlines(Job("kitchen", rooms=(Room("r", "Kitchen", (face,)),)))


def test_a_known_length_beyond_the_photos_horizon_is_named_with_its_face() -> None:
    dots = ((0.0, 1000.0), (1000.0, 1000.0), (600.0, 500.0), (400.0, 500.0))
    known = PhotoLength(500.0, 0.0, 500.0, 900.0, 700.0)
    place = PhotoPlace(rectangle_marks(dots, 1000.0, 1000.0, (0.0, 0.0)), (known,))
    face = Face("f", "A", photo="wall.jpg", photo_place=place)
    with pytest.raises(JobError, match=r"^face A, photo: the photo does not show that part"):
        check_outlines(Job("kitchen", rooms=(Room("r", "Kitchen", (face,)),)))
