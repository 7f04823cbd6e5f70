import pytest

from geometry.edits.copying import copied_along, mirrored_parts
from geometry.outlines.measured import area_mm2, outline_box
from geometry.outlines.shapes import box, rounded_box
from shared.checks.job import check_job
from shared.edits.drawn import find_face, find_part
from shared.errors import JobError
from shared.job import Face, Job, Part, Room, Tie, View, Way
from shared.trade.kinds import Kind


@pytest.fixture
def job() -> Job:
    wall = Face("a", "A", parts=(Part("w", Kind.WALL, box(0, 0, 3600, 2400)),))
    parts = (
        Part("p1", Kind.BENCHTOP, box(0, 0, 1200, 600), "top", coated_sides=(1,)),
        Part("p2", Kind.FIXTURE, rounded_box(300, 100, 400, 300, 50), "sink"),
        Part("p3", Kind.SHELF, box(2000, 0, 600, 300), "shelf", locked=True),
    )
    return Job("J", (Room("r", "R", (wall, Face("f", "P", View.PLAN, parts, ties=(Tie("p1", 0, "a", 0, 1200),)))),))


def boxes(job: Job, ids: tuple[str, ...]) -> list[tuple[float, ...]]:
    return [outline_box(find_part(job, part_id)[1].outline) for part_id in ids]


def test_copies_stand_at_the_pitch_each_before_its_own(job: Job) -> None:
    after, ids = copied_along(job, ("p1", "p2"), 2, 1500)
    assert ids == ("p4", "p5", "p6", "p7")
    assert [part.id for part in find_face(after, "f").parts] == ["p1", "p4", "p5", "p2", "p6", "p7", "p3"]
    assert [each[0] for each in boxes(after, ids)] == [1500, 3000, 1800, 3300]
    assert find_face(after, "f").ties == find_face(job, "f").ties
    assert find_part(after, "p4")[1].coated_sides == (1,)
    check_job(after)


def test_a_negative_pitch_goes_left_or_down(job: Job) -> None:
    after, ids = copied_along(job, ("p1",), 1, -700, Way.UP)
    assert boxes(after, ids) == [(0, -700, 1200, -100)]


def test_a_copy_of_a_locked_part_is_free(job: Job) -> None:
    after, ids = copied_along(job, ("p3",), 1, 700)
    assert find_part(after, "p3")[1].locked
    assert not find_part(after, ids[0])[1].locked


@pytest.mark.parametrize(
    ("count", "pitch", "words"),
    [
        (0, 100, "0 copies cannot be made; make 1 to 1000"),
        (1001, 1, "1001 copies"),
        (1, 0, "stand on top of the part"),
        (100, 1000, "top: it would reach beyond 100 m"),
        (1, float("nan"), "beyond 100 m"),
    ],
)
def test_copies_that_make_no_sense_are_refused(job: Job, count: int, pitch: float, words: str) -> None:
    with pytest.raises(JobError, match=words):
        copied_along(job, ("p1",), count, pitch)


def test_more_copies_than_a_job_holds_are_refused(job: Job) -> None:
    for _ in range(3):
        job, _ = copied_along(job, tuple(part.id for part in find_face(job, "f").parts if not part.locked), 15, 1)
    with pytest.raises(JobError, match="at most 20000 can be measured"):
        copied_along(job, tuple(part.id for part in find_face(job, "f").parts), 2, 1)


def test_mirroring_in_place_changes_left_and_right_of_all_together(job: Job) -> None:
    after, ids = mirrored_parts(job, ("p1", "p2"), None)
    assert boxes(after, ids) == [(0, 0, 1200, 600), pytest.approx((500, 100, 900, 400))]
    assert area_mm2(find_part(after, "p2")[1].outline) == pytest.approx(area_mm2(find_part(job, "p2")[1].outline))
    assert mirrored_parts(after, ids, None)[0] == job


def test_coated_and_tied_sides_stay_with_their_sides(job: Job) -> None:
    after, _ = mirrored_parts(job, ("p1",), 0)
    top = find_part(after, "p1")[1]
    assert top.coated_sides == (1,)
    assert {top.outline[1].x, top.outline[2].x} == {-1200}
    assert find_face(after, "f").ties == (Tie("p1", 0, "a", 0, 1200),)


def test_a_mirrored_copy_stands_across_the_line(job: Job) -> None:
    after, ids = mirrored_parts(job, ("p1", "p3"), 300, Way.UP, copy=True)
    assert boxes(after, ids) == [(0, 0, 1200, 600), (2000, 300, 2600, 600)]
    assert find_part(after, "p3") == (find_face(after, "f"), find_part(job, "p3")[1])


def test_a_locked_part_is_not_mirrored_in_place(job: Job) -> None:
    with pytest.raises(JobError, match="shelf: it is locked"):
        mirrored_parts(job, ("p1", "p3"), None)
