"""What is said of sides stays with them when corners come and go."""

import pytest

from geometry.edits.renumbering import with_reshaped
from geometry.edits.reshaping import corner_cut, corner_put_in, corner_rounded, corner_taken_out, side_lengthened
from geometry.outlines.shapes import box
from shared.edits.drawn import find_face, find_part
from shared.errors import JobError, OutlineError
from shared.job import Face, Job, Outline, Part, Room, Tie, View
from shared.trade.kinds import Kind

TOP = box(0, 0, 2400, 600)
BACK = 0
RIGHT_END, FRONT = 1, 2


def kitchen(coated: tuple[int, ...] | None = (RIGHT_END, FRONT), *, locked: bool = False) -> Job:
    """A wall, and on a plan a benchtop whose back runs along it from 100 to 2500 mm."""
    part = Part("top", Kind.BENCHTOP, TOP, coated_sides=coated, locked=locked)
    plan = Face("plan", "P", View.PLAN, (part,), ties=(Tie("top", BACK, "wall", 100, 2500),))
    return Job("Harbour Row", (Room("r1", "Kitchen", (Face("wall", "A"), plan)),))


def outline_of(job: Job) -> Outline:
    return find_part(job, "top")[1].outline


def coated(job: Job) -> tuple[int, ...] | None:
    return find_part(job, "top")[1].coated_sides


def ties(job: Job) -> list[tuple[int, float, float]]:
    return [(tie.side, tie.start_mm, tie.end_mm) for tie in find_face(job, "plan").ties]


def test_a_corner_put_in_before_a_side_moves_its_number_on() -> None:
    after = with_reshaped(kitchen(), "top", corner_put_in(TOP, BACK, (800, 0)))
    assert coated(after) == (RIGHT_END + 1, FRONT + 1)


def test_both_pieces_of_a_parted_side_are_coated_and_tied() -> None:
    after = with_reshaped(kitchen((BACK,)), "top", corner_put_in(TOP, BACK, (800, 0)))
    assert coated(after) == (0, 1)
    assert ties(after) == [(0, 100, 900), (1, 900, 2500)]


def test_taking_the_corner_out_again_gives_the_start() -> None:
    before = kitchen((BACK, FRONT))
    parted = with_reshaped(before, "top", corner_put_in(TOP, BACK, (800, 0)))
    assert with_reshaped(parted, "top", corner_taken_out(outline_of(parted), 1)) == before


@pytest.mark.parametrize(
    ("corner", "expected"),
    [(2, (1, 2, 3)), (1, (2, 3))],
    ids=["between coated sides", "beside one that is not"],
)
def test_a_rounded_corner_is_coated_where_both_its_sides_are(corner: int, expected: tuple[int, ...]) -> None:
    after = with_reshaped(kitchen(), "top", corner_rounded(TOP, corner, 50))
    assert coated(after) == expected


def test_what_is_cut_off_a_tied_side_is_not_tied() -> None:
    after = with_reshaped(kitchen(), "top", corner_cut(TOP, 1, 300))
    assert ties(after) == [(0, 100, 2200)]


def test_a_side_that_gets_another_length_keeps_its_place_on_the_wall() -> None:
    after = with_reshaped(kitchen(), "top", side_lengthened(TOP, BACK, 2300))
    assert ties(after) == [(0, 100, 2500)]


def test_sides_that_are_coated_as_usual_stay_so() -> None:
    assert coated(with_reshaped(kitchen(None), "top", corner_cut(TOP, 1, 300))) is None


def test_what_cannot_be_measured_is_refused() -> None:
    triangle = corner_taken_out(TOP, 0)
    job = with_reshaped(kitchen(), "top", triangle)
    with pytest.raises(OutlineError, match="too few corners"):
        with_reshaped(job, "top", corner_taken_out(triangle.outline, 0))


def test_a_locked_part_is_refused_by_name() -> None:
    with pytest.raises(JobError, match="it is locked"):
        with_reshaped(kitchen(locked=True), "top", corner_cut(TOP, 1, 300))
