import pytest

from geometry.outlines.measured import area_mm2, check_outline, outline_box, signed_area_mm2
from geometry.outlines.shapes import box, circle, rounded_box
from geometry.parts.moves import mirrored, moved, resized
from shared.errors import OutlineError
from shared.job import Outline, Part, Tiles, Vertex, Way
from shared.trade.kinds import Kind


def part(outline: Outline) -> Part:
    return Part("p1", Kind.FIXTURE, outline, name="basin", coated_sides=(1,))


def test_moving_moves_the_box_and_nothing_else() -> None:
    before = part(rounded_box(0, 0, 100, 60, 10))
    after = moved(before, 7, -3)
    assert outline_box(after.outline) == pytest.approx((7, -3, 107, 57))
    assert area_mm2(after.outline) == pytest.approx(area_mm2(before.outline))
    assert (after.id, after.name, after.coated_sides) == ("p1", "basin", (1,))


def test_mirroring_keeps_area_and_side_numbers_and_twice_is_nothing() -> None:
    before = part(rounded_box(0, 0, 100, 60, 10))
    after = mirrored(before, 200)
    assert outline_box(after.outline) == pytest.approx((300, 0, 400, 60))
    assert signed_area_mm2(after.outline) == pytest.approx(-signed_area_mm2(before.outline))
    assert mirrored(after, 200) == before


def test_mirroring_over_a_level_line_turns_top_and_bottom() -> None:
    before = part((Vertex(0, 0), Vertex(100, 0), Vertex(100, 60, 0.5), Vertex(0, 60)))
    after = mirrored(before, 100, Way.UP)
    assert [(v.x, v.y) for v in after.outline] == [(0, 200), (100, 200), (100, 140), (0, 140)]
    assert outline_box(after.outline) == pytest.approx((0, 115, 100, 200))
    assert mirrored(after, 100, Way.UP) == before


@pytest.mark.parametrize(("way", "start"), [(Way.ACROSS, (40, 20)), (Way.UP, (10, 30))])
def test_a_mirrored_surface_has_its_tiles_mirrored(way: Way, start: tuple[float, float]) -> None:
    tiles = Tiles(150, 100, 2, start_x_mm=10, start_y_mm=20, course_shift=0.25)
    before = Part("p1", Kind.SPLASHBACK, box(500, 900, 200, 150), tiles=tiles)
    after = mirrored(before, 0, way)
    assert after.tiles == Tiles(150, 100, 2, start_x_mm=start[0], start_y_mm=start[1], course_shift=0.75)
    assert mirrored(after, 0, way) == before


def test_a_box_stretches_to_the_new_box() -> None:
    assert resized(part(box(0, 0, 10, 10)), (5, 5, 25, 15)).outline == box(5, 5, 20, 10)


def test_a_circle_grows_alike() -> None:
    outline = resized(part(circle(0, 0, 10)), (0, 0, 60, 60)).outline
    assert outline_box(outline) == pytest.approx((0, 0, 60, 60))
    assert area_mm2(outline) == pytest.approx(area_mm2(circle(0, 0, 30)))


def test_a_circle_is_not_made_oblong() -> None:
    with pytest.raises(OutlineError, match="basin: its arcs cannot be stretched"):
        resized(part(circle(0, 0, 10)), (0, 0, 60, 50))


def test_a_rounded_box_keeps_its_radius() -> None:
    outline = resized(part(rounded_box(0, 0, 100, 60, 10)), (0, 0, 200, 90)).outline
    assert area_mm2(outline) == pytest.approx(area_mm2(rounded_box(0, 0, 200, 90, 10)))


def test_rounded_ends_stay_round() -> None:
    outline = resized(part(rounded_box(0, 0, 100, 60, 30)), (0, 0, 200, 90)).outline
    check_outline(outline, "basin")
    assert area_mm2(outline) == pytest.approx(area_mm2(rounded_box(0, 0, 200, 90, 45)))


def test_a_rounded_box_narrower_than_its_corners_is_refused() -> None:
    with pytest.raises(OutlineError):
        resized(part(rounded_box(0, 0, 100, 60, 20)), (0, 0, 30, 60))


@pytest.mark.parametrize("size", [(0, 0, 0, 10), (0, 0, 10, -1), (0, 0, float("nan"), 10)])
def test_an_empty_size_is_refused(size: tuple[float, float, float, float]) -> None:
    with pytest.raises(OutlineError, match="the new size is 0"):
        resized(part(box(0, 0, 10, 10)), size)
