import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Corner, Face, Part, Vertex, View
from shared.trade.kinds import Kind, Treatment
from takeoff.figures.measured import Takeoff
from takeoff.take_off import take_off
from tests.takeoff.rows import face_of, job_of, masked_mm


def test_tape_runs_where_the_finish_changes_and_where_the_coat_ends(counted: Takeoff) -> None:
    assert masked_mm(counted, "tiles", "edge") == pytest.approx(3600)
    assert masked_mm(counted, "tiles", "outlet1") == pytest.approx(2 * (115 + 72))
    assert masked_mm(counted, "wall", "upper") == pytest.approx(3600)


def test_no_tape_between_parts_of_one_finish(counted: Takeoff) -> None:
    assert masked_mm(counted, "kick", "base1") == 0
    assert masked_mm(counted, "base1", "base2") == 0


def test_no_tape_against_a_front_that_is_taken_off(counted: Takeoff) -> None:
    assert not any("door1" in row.parts for row in counted.masking)


def test_a_front_coated_in_place_is_taped_like_anything_else(wall_a: Face) -> None:
    hung = replace(
        wall_a,
        parts=tuple(
            replace(p, treatment=Treatment.IN_PLACE, finish="tiles") if p.id == "door1" else p for p in wall_a.parts
        ),
    )
    assert masked_mm(take_off(job_of(hung)), "door1", "base1") == pytest.approx(2 * (1196 + 718))


def test_the_floor_and_a_free_end_of_the_wall_are_protected(counted: Takeoff) -> None:
    # the left end of A meets no other face: the last face of the room has no corner
    assert masked_mm(counted, "kick", None) == pytest.approx(3600 + 150 + 150)
    assert masked_mm(counted, "base1", None) == pytest.approx(722)


def test_up_a_corner_tape_runs_only_where_the_finishes_differ(counted: Takeoff) -> None:
    # left end 600; at the corner with B both are tiled from 910 to 1410, only A from there to 1510
    assert masked_mm(counted, "tiles", None) == pytest.approx(600 + 100)
    assert masked_mm(counted, "edge", None) == pytest.approx(38)
    assert masked_mm(counted, "tiles-b", None) == 0


def test_two_finishes_that_meet_up_a_corner_are_taped_once(wall_a: Face, wall_b: Face) -> None:
    other = replace(wall_b, parts=tuple(replace(p, finish="fronts") if p.id == "tiles-b" else p for p in wall_b.parts))
    takeoff = take_off(job_of(wall_a, other))
    assert masked_mm(takeoff, "tiles", None) == pytest.approx(600 + 600)
    assert masked_mm(takeoff, "tiles-b", None) == 0


def test_an_outside_corner_is_masked_but_not_sealed(wall_a: Face, wall_b: Face) -> None:
    takeoff = take_off(job_of(replace(wall_a, corner=Corner.OUTSIDE), wall_b))
    assert masked_mm(takeoff, "tiles", None) == pytest.approx(600 + 100)
    assert not any(row.next_face for row in takeoff.joints)


def test_up_a_corner_out_of_plumb_it_is_the_same(wall_a: Face, wall_b: Face) -> None:
    def leaning(part: Part) -> Part:
        return replace(part, outline=tuple(Vertex(v.x or v.y / 200, v.y) for v in part.outline))

    out_of_plumb = replace(wall_b, parts=tuple(map(leaning, wall_b.parts)))
    takeoff = take_off(job_of(wall_a, out_of_plumb))
    assert masked_mm(takeoff, "tiles", None) == pytest.approx(600 + 100)
    assert masked_mm(takeoff, "tiles-b", None) == 0
    assert sum(row.length_mm.amount for row in takeoff.joints if row.next_face) == pytest.approx(500)


def test_without_a_wall_only_the_floor_is_protected() -> None:
    face = face_of(Part("panel", Kind.END_PANEL, box(0, 0, 600, 900)))
    assert masked_mm(take_off(job_of(face)), "panel", None) == pytest.approx(600)


def test_on_a_plan_nothing_outside_is_protected(counted: Takeoff) -> None:
    assert masked_mm(counted, "top", None) == 0
    assert masked_mm(counted, "top", "sink") == pytest.approx(2 * 3.141592653589793 * 200)


def test_under_a_sloping_ceiling_tape_follows_the_slope() -> None:
    slope = (Vertex(0, 0), Vertex(4000, 0), Vertex(0, 3000))
    face = face_of(Part("wall", Kind.WALL, slope), Part("tiles", Kind.SPLASHBACK, slope))
    assert masked_mm(take_off(job_of(face)), "tiles", None) == pytest.approx(3000 + 4000 + 5000)


def test_what_sticks_out_beyond_the_wall_is_not_taped_there() -> None:
    face = face_of(
        Part("wall", Kind.WALL, box(0, 0, 2000, 2400)),
        Part("bench", Kind.BENCHTOP, box(1000, 872, 2000, 38)),
    )
    assert masked_mm(take_off(job_of(face)), "bench", None) == 0
    assert masked_mm(take_off(job_of(face)), "bench", "wall") == pytest.approx(2 * 1000 + 38)


def test_a_plan_is_taped_where_a_coated_top_meets_what_is_left() -> None:
    face = replace(
        face_of(Part("top", Kind.BENCHTOP, box(0, 0, 2000, 600)), Part("hob", Kind.FIXTURE, box(500, 50, 580, 500))),
        view=View.PLAN,
    )
    assert masked_mm(take_off(job_of(face)), "top", "hob") == pytest.approx(2 * (580 + 500))
