import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from geometry.parts.moves import mirrored
from shared.job import Face, Job, Part, Tie, View
from shared.trade.kinds import Kind
from takeoff.figures.measured import Takeoff
from takeoff.take_off import take_off
from tests.takeoff.rows import bead_mm, codes, job_of, joint_row, part_row


def without_parts(face: Face, *ids: str) -> Face:
    return replace(face, parts=tuple(part for part in face.parts if part.id not in ids))


def with_tie(plan: Face, start_mm: float, end_mm: float) -> Face:
    return replace(plan, ties=(Tie("top", 0, "a", start_mm, end_mm),))


def test_a_joint_that_plan_and_elevation_could_claim_is_counted_on_the_elevation(counted: Takeoff) -> None:
    rows = [row for row in counted.joints if row.name == "benchtop to splashback"]
    assert {row.face for row in rows} == {"a", "b"}


def test_where_the_elevation_shows_no_benchtop_the_plan_claims_the_joint(wall_a: Face, plan: Face) -> None:
    wall = without_parts(wall_a, "edge")
    lowered = tuple(
        replace(part, outline=box(0, 872, 3600, 638)) if part.id == "tiles" else part for part in wall.parts
    )
    takeoff = take_off(job_of(replace(wall, parts=lowered), plan))
    assert bead_mm(takeoff, "top", "tiles") == pytest.approx(3600)
    assert {row.face for row in takeoff.joints if "top" in row.parts and "tiles" in row.parts} == {"p"}


def test_the_plan_claims_only_what_the_elevation_leaves(wall_a: Face, plan: Face) -> None:
    parts = tuple(replace(part, outline=box(0, 872, 1000, 38)) if part.id == "edge" else part for part in wall_a.parts)
    filled = (*parts, Part("strip", Kind.FILLER, box(1000, 872, 2600, 38)))
    takeoff = take_off(job_of(replace(wall_a, parts=filled), plan))
    assert bead_mm(takeoff, "edge", "tiles") == pytest.approx(1000)
    assert bead_mm(takeoff, "top", "tiles") == pytest.approx(2600)


def test_a_joint_on_a_mirrored_benchtop_lies_where_it_is_on_the_wall(wall_a: Face, plan: Face) -> None:
    """The elevation shows the benchtop over its first metre; the plan, mirrored in place, claims the rest."""
    parts = tuple(replace(part, outline=box(0, 872, 1000, 38)) if part.id == "edge" else part for part in wall_a.parts)
    filled = (*parts, Part("strip", Kind.FILLER, box(1000, 872, 2600, 38)))
    mirrored_plan = replace(plan, parts=tuple(mirrored(part, 1800) for part in plan.parts))
    takeoff = take_off(job_of(replace(wall_a, parts=filled), mirrored_plan))
    (path,) = joint_row(takeoff, "top", "tiles").path
    assert (path.start, path.end) == ((1000, 0), (3600, 0))


def test_a_front_edge_on_plan_and_elevation_is_counted_once_and_told(wall_a: Face, plan: Face) -> None:
    both = replace(plan, parts=(replace(plan.parts[0], coated_sides=(1, 2, 3)), *plan.parts[1:]))
    takeoff = take_off(job_of(wall_a, both))
    top = part_row(takeoff, "top")
    assert top.coated_mm2.amount == pytest.approx(top.net_mm2.amount + 2 * 600 * 38)
    assert codes(takeoff) == ["edge-twice"]


def test_a_front_edge_that_no_elevation_shows_is_counted_on_the_plan(wall_a: Face, plan: Face) -> None:
    both = replace(plan, parts=(replace(plan.parts[0], coated_sides=(1, 2, 3)), *plan.parts[1:]))
    takeoff = take_off(job_of(without_parts(wall_a, "edge"), both))
    top = part_row(takeoff, "top")
    assert top.coated_mm2.amount == pytest.approx(top.net_mm2.amount + (600 + 3600 + 600) * 38)


@pytest.mark.parametrize(
    ("start_mm", "end_mm", "expected"),
    [
        (0, 3600, []),
        (0, 3602, []),
        (0, 3590, ["tie-length", "tie-benchtop"]),
        (100, 3700, ["tie-outside", "tie-benchtop"]),
        (3600, 0, []),
    ],
)
def test_tied_lengths_are_compared_with_what_the_face_says(
    wall_a: Face, plan: Face, start_mm: float, end_mm: float, expected: list[str]
) -> None:
    assert codes(take_off(job_of(wall_a, with_tie(plan, start_mm, end_mm)))) == expected


def test_a_tie_that_disagrees_is_told_in_words(wall_a: Face, plan: Face) -> None:
    finding = take_off(job_of(wall_a, with_tie(plan, 0, 3590))).findings[0]
    assert finding.message == (
        "On P the tied side of benchtop is 3600 mm long, along A it is 3590 mm; measure it again."
    )
    assert (finding.face, finding.parts) == ("p", ("top",))


def test_a_side_neither_tied_nor_coated_is_told(wall_a: Face, plan: Face) -> None:
    loose = replace(plan, parts=(replace(plan.parts[0], coated_sides=(1,)), *plan.parts[1:]))
    (finding,) = take_off(job_of(wall_a, replace(loose, ties=()))).findings
    assert finding.code == "loose-side"
    assert finding.message.startswith("benchtop: its back, front, left neither runs along a wall")


def test_a_plan_of_its_own_is_counted_without_ties(plan: Face) -> None:
    alone = replace(plan, ties=(), view=View.PLAN)
    job: Job = job_of(alone)
    assert part_row(take_off(job), "top").coated_mm2.amount > 0
