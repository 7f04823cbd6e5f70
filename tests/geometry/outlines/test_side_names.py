"""Which way the sides of an outline face."""

from geometry.outlines.shapes import box, circle
from geometry.outlines.side_names import side_names
from shared.job import Vertex, View


def test_sides_of_a_box_on_a_wall_and_on_a_plan() -> None:
    assert side_names(box(100, 0, 600, 720), View.ELEVATION) == ("bottom", "right", "top", "left")
    assert side_names(box(0, 0, 3600, 600), View.PLAN) == ("back", "right", "front", "left")


def test_the_way_round_changes_nothing() -> None:
    clockwise = tuple(reversed(box(0, 0, 600, 720)))

    assert side_names(clockwise, View.ELEVATION) == ("top", "right", "bottom", "left")


def test_the_inner_sides_of_an_angled_benchtop_face_the_room() -> None:
    corner_top = tuple(Vertex(x, y) for x, y in ((0, 0), (2400, 0), (2400, 600), (600, 600), (600, 1800), (0, 1800)))

    assert side_names(corner_top, View.PLAN) == ("back", "right", "front", "right", "front", "left")


def test_halves_of_a_circle_face_down_and_up() -> None:
    assert side_names(circle(0, 0, 200), View.ELEVATION) == ("bottom", "top")


def test_no_outline_has_no_sides() -> None:
    assert side_names((), View.ELEVATION) == ()
