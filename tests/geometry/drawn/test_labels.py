import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.drawn.labels import SAGITTA_MM, label_spot
from geometry.outlines.measured import contains
from geometry.outlines.shapes import box, circle
from geometry.seen.arrange import arrange
from shared.job import Outline, Part, Vertex
from shared.trade.kinds import Kind


def turned(outline: Outline) -> Outline:
    first, *rest = outline
    return tuple(Vertex(vertex.x, vertex.y) for vertex in (first, *reversed(rest)))


def test_the_name_of_a_box_stands_in_its_middle_with_the_whole_box_to_itself() -> None:
    assert label_spot((box(100, 200, 600, 720),)) == (400, 560, 600, 720)


def test_the_name_of_a_circle_stands_in_its_middle() -> None:
    spot = label_spot((circle(50, 60, 30),))
    assert spot is not None
    assert tuple(spot) == pytest.approx((50, 60, 60, 60), abs=2 * SAGITTA_MM)


def test_the_name_of_an_l_stands_inside_it() -> None:
    ell = tuple(Vertex(x, y) for x, y in [(0, 0), (1000, 0), (1000, 100), (100, 100), (100, 1000), (0, 1000)])
    spot = label_spot((ell,))
    assert spot is not None
    assert (spot.x < 100 and spot.y < 1000) or (spot.y < 100 and spot.x < 1000)


def test_a_name_keeps_clear_of_a_hole_in_the_middle() -> None:
    spot = label_spot((box(0, 0, 1000, 500), turned(box(400, 100, 200, 300))))
    assert spot is not None
    assert spot.x + spot.width_mm / 2 <= 400 or spot.x - spot.width_mm / 2 >= 600 or spot.y < 100 or spot.y > 400


def test_a_name_stands_along_the_rail_of_a_glazed_door_not_up_its_stile() -> None:
    spot = label_spot((box(0, 0, 600, 720), turned(box(70, 70, 460, 580))))
    assert spot == pytest.approx((300, 685, 600, 70))


def test_of_two_pieces_the_larger_is_named() -> None:
    spot = label_spot((box(0, 0, 100, 100), box(1000, 0, 500, 300)))
    assert spot == (1250, 150, 500, 300)


def test_what_is_not_seen_has_no_place_for_a_name() -> None:
    assert label_spot(()) is None


places = st.integers(0, 12).map(lambda n: n * 50.0)
lengths = st.integers(1, 8).map(lambda n: n * 50.0)
outlines = st.one_of(st.builds(box, places, places, lengths, lengths), st.builds(circle, places, places, lengths))


@given(st.lists(outlines, min_size=1, max_size=8))
def test_every_visible_region_has_its_name_inside(shapes: list[Outline]) -> None:
    parts = [Part(str(number), Kind.CABINET, outline) for number, outline in enumerate(shapes)]
    for region in arrange(parts).regions:
        spot = label_spot(region.rings)
        assert (spot is None) == (region.area_mm2 == 0)
        if spot is not None:
            assert sum(contains(ring, spot.x, spot.y) for ring in region.rings) % 2 == 1
