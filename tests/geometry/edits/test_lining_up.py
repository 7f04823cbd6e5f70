import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.edits.hand import locked
from geometry.edits.lining_up import Alignment, aligned, evened_out, matched_size
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box, circle
from geometry.parts.alike import same_kind, same_size
from shared.edits.drawn import find_face, find_part
from shared.errors import JobError, OutlineError
from shared.job import Face, Job, Outline, Part, Room, Unit, Way
from shared.trade.kinds import Kind

IDS = ("p1", "p2", "p3")


def job_of(*outlines: Outline, unit: Unit = Unit.MM) -> Job:
    parts = tuple(
        Part(f"p{number}", Kind.DOOR, outline, f"door {number}") for number, outline in enumerate(outlines, start=1)
    )
    return Job("J", (Room("r", "R", (Face("f", "A", parts=parts),)),), unit=unit)


@pytest.fixture
def job() -> Job:
    return job_of(box(0, 0, 100, 50), box(500, 20, 200, 100), box(250, 300, 50, 60))


def boxes(job: Job) -> list[tuple[float, ...]]:
    return [outline_box(part.outline) for part in find_face(job, "f").parts]


@pytest.mark.parametrize(
    ("alignment", "place", "expected"),
    [
        (Alignment.LEFT, 0, [0, 0, 0]),
        (Alignment.RIGHT, 2, [700, 700, 700]),
        (Alignment.BOTTOM, 1, [0, 0, 0]),
        (Alignment.TOP, 3, [360, 360, 360]),
        (Alignment.MIDDLE_ACROSS, 0, [300, 250, 325]),
        (Alignment.MIDDLE_UP, 1, [155, 130, 150]),
    ],
)
def test_parts_come_in_line_within_their_common_box(
    job: Job, alignment: Alignment, place: int, expected: list[float]
) -> None:
    assert [each[place] for each in boxes(aligned(job, IDS, alignment))] == expected


def test_a_locked_part_that_is_in_line_may_lead_the_others(job: Job) -> None:
    lead = locked(job, ("p1",), True)
    assert [each[0] for each in boxes(aligned(lead, IDS, Alignment.LEFT))] == [0, 0, 0]
    with pytest.raises(JobError, match="door 1: it is locked; unlock it"):
        aligned(lead, IDS, Alignment.RIGHT)
    assert locked(lead, ("p1",), False) == job


def test_one_part_alone_is_not_aligned(job: Job) -> None:
    with pytest.raises(JobError, match="needs at least 2 picked parts"):
        aligned(job, ("p1",), Alignment.LEFT)


def test_gaps_become_equal_and_the_ends_stay(job: Job) -> None:
    across = boxes(evened_out(job, IDS))
    assert [(each[0], each[2]) for each in across] == [(0, 100), (500, 700), (275, 325)]
    up = boxes(evened_out(job, IDS, Way.UP))
    assert [(each[1], each[3]) for each in up] == [(0, 50), (125, 225), (300, 360)]


def test_parts_longer_than_their_space_are_refused_by_how_much() -> None:
    crowded = job_of(box(0, 0, 100, 50), box(10, 0, 200, 50), box(150, 0, 100, 50))
    with pytest.raises(JobError, match="together they are 150 mm longer than the space they have"):
        evened_out(crowded, IDS)


@given(st.lists(st.tuples(st.floats(-5000, 5000), st.floats(1, 900)), min_size=3, max_size=8))
def test_evening_out_twice_is_evening_out_once(spans: list[tuple[float, float]]) -> None:
    job = job_of(*(box(x, 0, width, 10) for x, width in spans))
    ids = tuple(part.id for part in find_face(job, "f").parts)
    try:
        once = evened_out(job, ids)
    except JobError:
        return
    assert [each for one in boxes(evened_out(once, ids)) for each in one] == pytest.approx(
        [each for one in boxes(once) for each in one], abs=1e-6
    )


def test_sizes_are_matched_from_the_lower_left_corner(job: Job) -> None:
    assert boxes(matched_size(job, IDS, "p2"))[2] == (250, 300, 450, 400)
    assert boxes(matched_size(job, IDS, "p2", height=False)) == [
        (0, 0, 200, 50),
        (500, 20, 700, 120),
        (250, 300, 450, 360),
    ]


def test_a_circle_is_not_matched_to_an_oblong() -> None:
    job = job_of(box(0, 0, 100, 50), circle(300, 300, 40))
    with pytest.raises(OutlineError, match="door 2: its arcs cannot be stretched"):
        matched_size(job, ("p1", "p2"), "p1")


def test_a_locked_part_may_be_the_measure_but_is_not_changed(job: Job) -> None:
    assert boxes(matched_size(locked(job, ("p2",), True), IDS, "p2"))[0] == (0, 0, 200, 100)
    with pytest.raises(JobError, match="door 1: it is locked"):
        matched_size(locked(job, ("p1",), True), IDS, "p2")


def test_what_is_alike_is_found_in_drawing_order() -> None:
    parts = (
        Part("a", Kind.DOOR, box(0, 0, 400, 700)),
        Part("b", Kind.CABINET, box(0, 0, 400.4, 700)),
        Part("c", Kind.DOOR, box(500, 0, 450, 700)),
        Part("d", Kind.OUTLET, box(0, 900, 115, 72)),
    )
    face = Face("f", "A", parts=parts)
    assert same_kind(face, ("c", "d")) == ("a", "c", "d")
    assert same_size(face, ("a",)) == ("a", "b")
    assert same_kind(face, ()) == same_size(face, ()) == ()


def test_a_part_that_is_not_there_is_refused(job: Job) -> None:
    with pytest.raises(JobError, match='no part "p9"'):
        aligned(job, ("p1", "p9"), Alignment.LEFT)
    assert find_part(job, "p1")[1].locked is False
