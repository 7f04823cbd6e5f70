from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.edits.splitting import Into, with_split
from geometry.outlines.measured import area_mm2, outline_box
from geometry.outlines.shapes import box, circle
from shared.checks.job import check_job
from shared.edits.drawn import find_face, find_part
from shared.errors import JobError
from shared.job import Face, Job, Outline, Part, Room, Tie, Tiles, Unit, Vertex, View
from shared.trade.kinds import Kind

PRONGS = tuple(
    Vertex(x, y) for x, y in ((0, 0), (900, 0), (900, 600), (600, 600), (600, 200), (300, 200), (300, 600), (0, 600))
)


FRONT = box(100, 150, 603, 720)


def front(outline: Outline = FRONT) -> Part:
    return Part("p1", Kind.DRAWER_FRONT, outline, "front")


def split(
    part: Part, into: Into, *, up: bool = False, reveal_mm: float = 0.0, unit: Unit = Unit.MM
) -> tuple[Outline, ...]:
    """The outlines of the pieces of a part that stands alone."""
    job, ids = with_split(replace(job_of(part), unit=unit), [part.id], into, up=up, reveal_mm=reveal_mm)
    return tuple(find_part(job, piece)[1].outline for piece in ids)


def job_of(*parts: Part) -> Job:
    wall = Face("a", "A", parts=(Part("w", Kind.WALL, box(0, 0, 3600, 2400)),))
    return Job("J", (Room("r", "R", (wall, Face("f", "P", View.PLAN, parts))),))


def test_two_doors_stand_side_by_side_with_a_reveal() -> None:
    assert split(front(), 2, reveal_mm=3) == (box(100, 150, 300, 720), box(403, 150, 300, 720))


def test_three_drawers_stand_one_on_another() -> None:
    assert split(front(box(0, 0, 600, 726)), 3, up=True, reveal_mm=3) == (
        box(0, 0, 600, 240),
        box(0, 243, 600, 240),
        box(0, 486, 600, 240),
    )


def test_listed_sizes_leave_the_rest_as_one_more_piece() -> None:
    pieces = split(front(box(0, 0, 1500, 700)), (600, 450), reveal_mm=2)
    assert pieces == (box(0, 0, 600, 700), box(602, 0, 450, 700), box(1054, 0, 446, 700))


def test_listed_sizes_that_fill_it_leave_nothing() -> None:
    assert len(split(front(box(0, 0, 1052, 700)), (600, 450), reveal_mm=2)) == 2


def test_listed_sizes_that_are_too_long_are_refused_by_how_much() -> None:
    with pytest.raises(JobError, match="front: the pieces and their reveals are 52 mm longer than it is"):
        split(front(box(0, 0, 1000, 700)), (600, 450), reveal_mm=2)
    with pytest.raises(JobError, match='are 2" longer'):
        split(front(box(0, 0, 1000, 700)), (600, 450.8), unit=Unit.INCH)


@pytest.mark.parametrize("count", [-1, 0, 1, 10_000])
def test_no_pieces_and_too_many_are_refused(count: int) -> None:
    with pytest.raises(JobError, match=f"front: it cannot be split into {count}; split it into 2 to 1000 pieces"):
        split(front(), count)


@pytest.mark.parametrize(("into", "reveal"), [(3, 301.0), (900, 0.0), ((600.0,), 2.9), ((600.0, -5.0), 0.0)])
def test_pieces_that_leave_nothing_are_refused(into: int | tuple[float, ...], reveal: float) -> None:
    with pytest.raises(JobError, match="front: pieces and reveals do not fit into its 603 mm"):
        split(front(), into, reveal_mm=reveal)


@pytest.mark.parametrize("reveal", [-1.0, 604.0, float("nan")])
def test_a_reveal_that_does_not_fit_is_refused(reveal: float) -> None:
    with pytest.raises(JobError, match="the reveal does not fit"):
        split(front(), 2, reveal_mm=reveal)


def test_sizes_that_are_no_numbers_are_refused() -> None:
    with pytest.raises(JobError, match="do not fit"):
        split(front(), (float("nan"), 100.0))


def test_round_sides_are_refused() -> None:
    with pytest.raises(JobError, match="front: it has round sides"):
        split(front(circle(0, 0, 100)), 2)


def test_a_slanting_end_is_cut_where_it_stands() -> None:
    gable = (Vertex(0, 0), Vertex(200, 0), Vertex(200, 100), Vertex(0, 300))
    left, right = split(front(gable), 2)
    assert left == (Vertex(0, 0), Vertex(100, 0), Vertex(100, 200), Vertex(0, 300))
    assert right == (Vertex(100, 0), Vertex(200, 0), Vertex(200, 100), Vertex(100, 200))


def test_a_step_in_line_with_the_cut_leaves_clean_pieces() -> None:
    step = tuple(Vertex(x, y) for x, y in ((0, 0), (200, 0), (200, 100), (100, 100), (100, 300), (0, 300)))
    left, right = split(front(step), 2)
    assert area_mm2(left) == pytest.approx(30_000)
    assert right == box(100, 0, 100, 100)


def test_what_would_fall_apart_is_refused_and_the_other_way_is_cut() -> None:
    with pytest.raises(JobError, match="front: a piece would fall apart"):
        split(front(PRONGS), 2, up=True)
    assert [area_mm2(piece) for piece in split(front(PRONGS), 3)] == pytest.approx([180_000, 60_000, 180_000])


@given(st.integers(2, 40), st.floats(0, 20), st.booleans(), st.sampled_from([box(-7.3, 11.1, 1003.7, 977.9), PRONGS]))
def test_the_pieces_and_what_is_left_free_are_the_whole(count: int, reveal: float, up: bool, outline: Outline) -> None:
    try:
        pieces = split(front(outline), count, up=up, reveal_mm=reveal)
    except JobError:
        return
    boxes = [outline_box(piece) for piece in pieces]
    sizes = [each[2 + up] - each[up] for each in boxes]
    assert sizes == pytest.approx([sizes[0]] * count)
    assert [after[up] - here[up + 2] for here, after in pairwise(boxes)] == pytest.approx(
        [reveal] * (count - 1), abs=1e-9
    )
    assert boxes[-1][up + 2] == outline_box(outline)[up + 2]
    if not reveal:
        assert sum(map(area_mm2, pieces)) == pytest.approx(area_mm2(outline))


def test_the_first_piece_keeps_the_id_and_all_are_as_the_part_was() -> None:
    part = Part("p1", Kind.DOOR, box(0, 0, 603, 700), "door", finish="fronts", profile_factor=1.2, back_coated=True)
    job, ids = with_split(job_of(part, Part("p2", Kind.DOOR, box(900, 0, 300, 700))), ("p1",), 2, reveal_mm=3)
    assert ids == ("p1", "p3")
    assert [each.id for each in find_face(job, "f").parts] == ["p1", "p3", "p2"]
    pieces = [find_part(job, part_id)[1] for part_id in ids]
    assert {(each.name, each.finish, each.profile_factor, each.back_coated) for each in pieces} == {
        ("door", "fronts", 1.2, True)
    }
    check_job(job)


def test_coated_sides_stay_where_they_are_and_cuts_are_as_usual_for_the_kind() -> None:
    ends = (1, 3)
    top = Part("p1", Kind.BENCHTOP, box(0, 0, 600, 600), coated_sides=ends)
    door = Part("p2", Kind.DOOR, box(0, 700, 600, 600), coated_sides=ends)
    job, ids = with_split(job_of(top, door), ("p1", "p2"), 2)
    assert [find_part(job, part_id)[1].coated_sides for part_id in ids] == [(3,), (1,), (1, 3), (1, 3)]


def test_tiles_keep_their_pattern() -> None:
    part = Part("p1", Kind.SPLASHBACK, box(50, 0, 600, 600), tiles=Tiles(150, 150, 2, start_x_mm=10))
    job, ids = with_split(job_of(part), ("p1",), 2)
    tiles = find_part(job, ids[1])[1].tiles
    assert tiles is not None
    assert tiles.start_x_mm == -290


@pytest.mark.parametrize("clockwise", [False, True])
def test_ties_are_shared_out_along_the_wall(clockwise: bool) -> None:
    outline, side = box(0, 0, 3000, 600), 0
    if clockwise:
        outline, side = (outline[0], *outline[:0:-1]), 3
    job = job_of(Part("p1", Kind.BENCHTOP, outline))
    plan = find_face(job, "f")
    tied = Face("f", "P", View.PLAN, plan.parts, ties=(Tie("p1", side, "a", 200, 3200),))
    job = Job("J", (Room("r", "R", (job.faces[0], tied)),))
    job, ids = with_split(job, ("p1",), (1200.0,))
    ties = find_face(job, "f").ties
    assert [(tie.part, tie.start_mm, tie.end_mm) for tie in ties] == [(ids[0], 200, 1400), (ids[1], 1400, 3200)]
    for tie in ties:
        part = find_part(job, tie.part)[1]
        ends = part.outline[tie.side], part.outline[(tie.side + 1) % 4]
        assert {end.y for end in ends} == {0}


def test_a_locked_part_is_not_split() -> None:
    part = Part("p1", Kind.DOOR, box(0, 0, 603, 700), "pantry door", locked=True)
    with pytest.raises(JobError, match="pantry door: it is locked"):
        with_split(job_of(part), ("p1",), 2)


def test_nothing_picked_is_refused() -> None:
    with pytest.raises(JobError, match="pick"):
        with_split(job_of(), (), 2)
