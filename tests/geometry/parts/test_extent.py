from geometry.outlines.shapes import box, circle
from geometry.parts.extent import extent
from shared.job import Face, Part
from shared.trade.kinds import Kind


def test_the_walls_say_how_far_a_face_reaches() -> None:
    walls = (Part("w1", Kind.WALL, box(0, 0, 2400, 2700)), Part("w2", Kind.WALL, box(2400, 0, 600, 2400)))
    beyond = Part("c", Kind.CABINET, box(2900, -50, 600, 720))
    assert extent(Face("f", "A", parts=(*walls, beyond))) == (0, 0, 3000, 2700)


def test_without_a_wall_all_parts_say_it_arcs_included() -> None:
    parts = (Part("b", Kind.BENCHTOP, box(0, 0, 600, 300)), Part("r", Kind.FIXTURE, circle(600, 150, 100)))
    assert extent(Face("f", "P", parts=parts)) == (0, 0, 700, 300)


def test_an_empty_face_reaches_nowhere() -> None:
    assert extent(Face("f", "A")) == (0, 0, 0, 0)
