import pytest

from geometry.checking import check_outlines
from geometry.outlines.shapes import box
from geometry.photos.marks import rectangle_marks
from shared.errors import JobError, OutlineError
from shared.job import Face, Job, Part, PhotoLength, PhotoMark, PhotoPlace, Room, Tiles, Vertex
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


def teeth(many: int, *, turned: bool = False) -> list[Vertex]:
    """The corners of teeth 900 mm long, side by side from left to right, or turned: one above the other."""
    corners = [(10.0 * number, 900.0 * (number % 2)) for number in range(many)]
    corners += [(10.0 * many, 1_000.0), (0.0, 1_000.0)]
    return [Vertex(y, x) if turned else Vertex(x, y) for x, y in corners]


@pytest.mark.parametrize("turned", [False, True])
def test_an_outline_of_many_teeth_passes_unless_two_of_them_cross(turned: bool) -> None:
    sound = teeth(1_900, turned=turned)
    check_outlines(job(Part("p", Kind.SPLASHBACK, tuple(sound))))
    leaning = Vertex(900, 7_035) if turned else Vertex(7_035, 900)
    crossing = (*sound[:701], leaning, *sound[702:])
    with pytest.raises(OutlineError, match=r"^face A, splashback \(p\): side 70\d and side 70\d of the outline cross"):
        check_outlines(job(Part("p", Kind.SPLASHBACK, crossing)))


def test_an_outline_with_too_many_sides_beside_each_other_is_refused() -> None:
    slanting = [Vertex(10.0 * step + far, far - 10.0 * step) for step in range(400) for far in (0.0, 50_005.0)]
    around = (*slanting, Vertex(90_000, 60_000), Vertex(90_000, -60_000), Vertex(-1_000, -60_000))
    with pytest.raises(OutlineError, match=r"^face A, splashback \(p\): too many sides of its outline pass each other"):
        check_outlines(job(Part("p", Kind.SPLASHBACK, around)))


def test_tiled_parts_that_cut_too_many_tiles_are_refused_together() -> None:
    strips = [Part(f"p{n}", Kind.SPLASHBACK, box(0, 200.0 * n, 100_000, 190), tiles=Tiles(5, 5, 1)) for n in range(30)]
    check_outlines(job(*strips[:20]))
    with pytest.raises(JobError, match=r"^face A, splashback \(p24\): its outline, with those of the tiled parts"):
        check_outlines(job(*strips))
