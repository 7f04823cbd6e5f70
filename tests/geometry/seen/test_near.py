import math

import msgspec
import pytest

from geometry.outlines.shapes import box, circle
from geometry.seen.near import NearMiss, near_misses
from shared.job import Outline, Part, Vertex
from shared.trade.kinds import Kind

WALL = Part("wall", Kind.WALL, box(0, 0, 4000, 2700))


def cabinet(part_id: str, x: float, y: float = 100, width: float = 600, height: float = 720) -> Part:
    return Part(part_id, Kind.CABINET, box(x, y, width, height))


def turned(outline: Outline, angle: float) -> Outline:
    c, s = math.cos(angle), math.sin(angle)
    return tuple(Vertex(v.x * c - v.y * s, v.x * s + v.y * c, v.bulge) for v in outline)


@pytest.mark.parametrize("gap", [3, -3, 0.01, -0.01, 5, -5])
def test_cabinets_that_miss_or_overlap_by_a_little_are_named_with_gap_and_length(gap: float) -> None:
    (miss,) = near_misses((WALL, cabinet("a", 0), cabinet("b", 600 + gap)))
    assert miss.parts == ("a", "b")
    assert (miss.gap_mm, miss.length_mm) == pytest.approx((gap, 720))


@pytest.mark.parametrize("gap", [0, 5.01, -5.01, 300])
def test_what_touches_or_is_clearly_apart_is_no_miss(gap: float) -> None:
    assert near_misses((WALL, cabinet("a", 0), cabinet("b", 600 + gap))) == ()


def test_the_limit_can_be_chosen() -> None:
    parts = (cabinet("a", 0), cabinet("b", 608))
    assert near_misses(parts) == ()
    assert near_misses(parts, 10) == (NearMiss(("a", "b"), 8, 720, (1, 3)),)


def test_the_length_is_what_they_share() -> None:
    (miss,) = near_misses((cabinet("a", 0), cabinet("b", 603, 500)))
    assert miss.length_mm == pytest.approx(320)


def test_corners_that_nearly_meet_are_no_miss() -> None:
    assert near_misses((cabinet("a", 0), cabinet("b", 603, 823))) == ()
    assert near_misses((cabinet("a", 0), cabinet("b", 597, 817))) == ()


def test_nothing_changes_when_a_face_is_turned_or_outlines_run_the_other_way() -> None:
    parts = (cabinet("a", 0), cabinet("b", 603))
    for angle in (0.3, 2.0, 4.0):
        around = [msgspec.structs.replace(part, outline=turned(part.outline, angle)) for part in parts]
        around[1] = msgspec.structs.replace(around[1], outline=around[1].outline[::-1])
        (miss,) = near_misses(around)
        assert (miss.gap_mm, miss.length_mm) == pytest.approx((3, 720))


def test_a_wedge_is_measured_where_it_is_widest() -> None:
    leaning = Part("b", Kind.CABINET, (Vertex(600, 100), Vertex(1200, 100), Vertex(1200, 820), Vertex(604, 820)))
    (miss,) = near_misses((cabinet("a", 0), leaning))
    assert (miss.gap_mm, miss.length_mm) == pytest.approx((4, 720))


@pytest.mark.parametrize("kind", [Kind.DOOR, Kind.DRAWER_FRONT])
def test_reveals_of_fronts_are_meant(kind: Kind) -> None:
    fronts = (Part("d", kind, box(2, 102, 295, 716)), Part("e", kind, box(300, 102, 298, 716)))
    benchtop = Part("top", Kind.BENCHTOP, box(0, 820, 600, 38))
    assert near_misses((WALL, cabinet("a", 0), *fronts, benchtop)) == ()


def test_what_rolls_out_has_room_beside_it() -> None:
    fridge = Part("fridge", Kind.FIXTURE, box(603, 0, 600, 1700), hides=False)
    assert near_misses((WALL, cabinet("a", 0), fridge)) == ()


def test_a_gap_that_a_filler_covers_is_no_miss() -> None:
    filler = Part("f", Kind.FILLER, box(600, 100, 4, 720))
    assert near_misses((WALL, cabinet("a", 0), cabinet("b", 604), filler)) == ()


def test_a_strip_along_the_border_of_a_part_is_no_overlap() -> None:
    strip = Part("f", Kind.FILLER, box(0, 100, 4, 720))
    assert near_misses((cabinet("a", 0), strip)) == ()


def test_arcs_and_nothing_have_no_misses() -> None:
    assert near_misses((Part("r", Kind.FIXTURE, circle(0, 0, 30)), Part("s", Kind.FIXTURE, circle(63, 0, 30)))) == ()
    assert near_misses(()) == ()
    assert near_misses((WALL,)) == ()
