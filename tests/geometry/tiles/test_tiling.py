import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box, circle
from geometry.parts.moves import moved
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Region
from geometry.seen.regions import region_polygon
from geometry.tiles.tiling import SAGITTA_MM, Tiling, grout_lines, tiling
from shared.errors import JobError
from shared.job import Outline, Part, Tiles, Vertex
from shared.trade.kinds import Kind
from tests.geometry.faces import random_face

SQUARE = Tiles(150, 150, 2)


def region_of(*outlines: Outline) -> Region:
    """The region of the first outline, less the others as holes."""
    first, *holes = outlines
    parts = [Part("tiles", Kind.SPLASHBACK, first)]
    parts += [Part(f"hole {place}", Kind.CUT_OUT, hole) for place, hole in enumerate(holes)]
    return arrange(parts).region("tiles")


def tiled(tiles: Tiles, *outlines: Outline) -> Tiling:
    left, bottom, _, _ = outline_box(outlines[0])
    return tiling(region_of(*outlines), tiles, (left, bottom))


def one_by_one(region: Region, tiles: Tiles, corner: tuple[float, float]) -> Tiling:
    """The same counted slowly: every tile and every piece of grout line asked for by itself."""
    polygon = region_polygon(region)
    x, y = corner[0] + tiles.start_x_mm, corner[1] + tiles.start_y_mm
    across, up = tiles.width_mm + tiles.grout_mm, tiles.height_mm + tiles.grout_mm
    left, bottom, right, top = polygon.bounds
    whole = cut = 0
    level = upright = 0.0
    inner = polygon.buffer(-1e-6)
    for course in range(math.floor((bottom - y) / up) - 1, math.ceil((top - y) / up) + 2):
        low, away, half = y + course * up, x + course * tiles.course_shift * across, tiles.grout_mm / 2
        level += inner.intersection(shapely.LineString([(left, low - half), (right, low - half)])).length
        for place in range(math.floor((left - away) / across) - 1, math.ceil((right - away) / across) + 2):
            at = away + place * across
            body = shapely.box(at + 1e-6, low + 1e-6, at + tiles.width_mm - 1e-6, low + tiles.height_mm - 1e-6)
            whole += polygon.contains(body)
            cut += polygon.intersects(body) and not polygon.contains(body)
            upright += inner.intersection(
                shapely.LineString([(at - half, low - half), (at - half, low + up - half)])
            ).length
    return Tiling(whole, cut, level, upright)


def test_tiles_that_fit_are_whole() -> None:
    counted = tiled(SQUARE, box(0, 900, 4 * 152 - 2, 3 * 152 - 2))
    assert (counted.whole, counted.cut) == (12, 0)
    assert counted.grout_mm == pytest.approx(2 * 606 + 3 * 454)


def test_tiles_at_the_far_sides_are_cut_where_they_do_not_fit() -> None:
    counted = tiled(SQUARE, box(0, 900, 4 * 152 + 40, 3 * 152 - 60))
    assert (counted.whole, counted.cut) == (8, 7)  # 4 x 2 whole; 5 in the low course, 2 at the right end


def test_a_hole_within_one_tile_cuts_it() -> None:
    counted = tiled(SQUARE, box(0, 0, 606, 454), box(200, 200, 50, 50))
    assert (counted.whole, counted.cut) == (11, 1)


def test_a_hole_that_takes_a_whole_tile_cuts_none() -> None:
    counted = tiled(SQUARE, box(0, 0, 606, 454), box(151, 151, 152, 152))
    assert (counted.whole, counted.cut) == (11, 0)


def test_a_region_within_one_tile_is_one_cut_tile_without_grout() -> None:
    assert tiled(Tiles(300, 300, 2), box(0, 0, 100, 100)) == Tiling(0, 1, 0.0, 0.0)


def test_a_tile_missing_less_than_a_micrometre_is_whole() -> None:
    assert tiled(SQUARE, box(0, 0, 150 - 5e-7, 150)).whole == 1


def test_a_border_along_the_middle_of_a_grout_line_is_none() -> None:
    tiles = Tiles(150, 150, 2, start_x_mm=1, start_y_mm=1)
    counted = tiled(tiles, box(0, 0, 3 * 152, 2 * 152))
    assert (counted.whole, counted.cut) == (6, 0)
    assert counted.grout_mm == pytest.approx(2 * 304 + 456, abs=1e-4)


def test_half_bond_cuts_the_ends_of_every_other_course() -> None:
    tiles = Tiles(198, 98, 2, course_shift=0.5)
    counted = tiled(tiles, box(0, 0, 998, 398))
    assert (counted.whole, counted.cut) == (5 + 4 + 5 + 4, 4)
    assert counted.grout_mm == pytest.approx(3 * 998 + 4 * 99 + 5 * 100 + 4 * 100 + 5 * 99)


def test_nothing_is_tiled_where_nothing_is_seen() -> None:
    assert tiling(Region("tiles", (), 0.0), SQUARE, (0, 0)) == Tiling(0, 0, 0.0, 0.0)
    assert grout_lines(Region("tiles", (), 0.0), SQUARE, (0, 0), 100) == ()


def test_a_mosaic_is_counted_to_the_last_tile() -> None:
    counted = tiled(Tiles(20, 20, 0), box(0, 0, 3600, 600), circle(1000, 300, 100))
    assert counted.whole + counted.cut < 5400
    assert counted.whole * 400 < 3600 * 600 - math.pi * 1e4 < (counted.whole + counted.cut) * 400


@settings(max_examples=150, deadline=None)
@given(
    seed=st.integers(0, 10_000),
    width=st.sampled_from([33.3, 60.0, 97.0, 150.0]),
    height=st.sampled_from([25.0, 75.5, 148.0]),
    grout=st.sampled_from([0.0, 2.0, 3.175]),
    shift=st.sampled_from([0.0, 0.5, 1 / 3, 1.0]),
    start=st.tuples(st.floats(-300, 300), st.floats(-300, 300)),
)
def test_any_tiling_is_what_counting_one_by_one_gives(
    seed: int, width: float, height: float, grout: float, shift: float, start: tuple[float, float]
) -> None:
    tiles = Tiles(width, height, grout, *start, shift)
    parts = random_face(seed, arcs=False, slivers=False)
    region = max(arrange(parts).regions, key=lambda region: region.area_mm2)
    if not region.rings:
        return
    quick, slow = tiling(region, tiles, (0, 0)), one_by_one(region, tiles, (0, 0))
    assert quick[:2] == slow[:2]
    assert quick[2:] == pytest.approx(slow[2:], abs=1e-3)
    lines = grout_lines(region, tiles, (0, 0), 100_000)
    assert sum(math.hypot(b.x - a.x, b.y - a.y) for a, b in lines) == pytest.approx(quick.grout_mm, abs=1e-6)


@given(across=st.integers(-5, 5), up=st.integers(-5, 5), x=st.floats(-500, 500), y=st.floats(-500, 500))
def test_a_start_moved_by_whole_tiles_changes_nothing(across: int, up: int, x: float, y: float) -> None:
    shape = (box(0, 0, 1000, 700), circle(400, 300, 90))
    one = tiled(Tiles(97, 61, 2.5, x, y), *shape)
    other = tiled(Tiles(97, 61, 2.5, x + across * 99.5, y + up * 63.5), *shape)
    assert one[:2] == other[:2]
    assert one.grout_mm == pytest.approx(other.grout_mm, abs=1e-3)


@given(x=st.integers(-3000, 3000), y=st.integers(-3000, 3000), shift=st.sampled_from([0.0, 0.5]))
def test_moving_the_part_moves_its_tiles_along(x: int, y: int, shift: float) -> None:
    tiles = Tiles(97, 61, 2.5, 10, 20, shift)
    here = Part("tiles", Kind.SPLASHBACK, circle(400, 300, 290))
    there = moved(here, x, y)
    one, other = tiled(tiles, here.outline), tiled(tiles, there.outline)
    assert one[:2] == other[:2]
    assert one.grout_mm == pytest.approx(other.grout_mm, abs=1e-3)


@given(seed=st.integers(0, 2000), shift=st.sampled_from([0.0, 0.5]))
def test_tiles_without_grout_cover_their_region_and_whole_ones_lie_within(seed: int, shift: float) -> None:
    for region in arrange(random_face(seed)).regions:
        counted = tiling(region, Tiles(40, 60, 0, 7, 9, shift), (0, 0))
        beside_arcs = SAGITTA_MM * region_polygon(region).length * 1.1
        assert counted.whole * 2400 <= region.area_mm2 + beside_arcs
        assert (counted.whole + counted.cut) * 2400 >= region.area_mm2 - beside_arcs


def test_lines_that_would_be_too_many_are_not_drawn() -> None:
    region = region_of(box(0, 0, 3600, 600))
    assert grout_lines(region, Tiles(20, 20, 0, course_shift=0.5), (0, 0), 1000) == ()
    assert len(grout_lines(region, Tiles(20, 20, 0), (0, 0), 1000)) == 179 + 29


def test_a_border_through_too_many_tiles_is_refused_before_they_are_counted() -> None:
    teeth = [Vertex(45.0 * number, 89_000.0 * (number % 2)) for number in range(200)]
    region = region_of((*teeth, Vertex(90_000, 90_000), Vertex(0, 90_000)))
    mosaic = Tiles(5, 5, 1)
    with pytest.raises(JobError, match="too many tiles to count them"):
        tiling(region, mosaic, (0.0, 0.0))
    assert grout_lines(region, mosaic, (0.0, 0.0), 10**9) == ()


def test_the_finest_mosaic_is_counted_as_far_as_a_face_may_reach() -> None:
    counted = tiled(Tiles(5, 5, 1, course_shift=0.5), box(0, 0, 100_000, 100_000))
    assert counted.whole + counted.cut == pytest.approx((100_000 / 6) ** 2, rel=1e-3)
