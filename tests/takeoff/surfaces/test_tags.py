from geometry.outlines.shapes import box
from shared.job import Face, Part
from shared.trade.kinds import Kind
from takeoff.surfaces.tags import tags


def face_of_fronts(*fronts: tuple[str, float, float]) -> Face:
    parts = (Part(name, Kind.DOOR, box(x, y, 300, 200)) for name, x, y in fronts)
    return Face("b", "B", parts=tuple(parts))


def test_base_fronts_are_numbered_from_the_left_and_up_each_stack_then_upper_ones() -> None:
    face = face_of_fronts(
        ("upper right", 400, 1500),
        ("upper left", 0, 1500),
        ("top drawer", 2, 600),
        ("door", 400, 150),
        ("drawer", 0, 150),
    )
    assert tags(face) == {"drawer": "B1", "top drawer": "B2", "door": "B3", "upper left": "B4", "upper right": "B5"}


def test_only_fronts_have_tags() -> None:
    assert tags(Face("b", "B", parts=(Part("cabinet", Kind.CABINET, box(0, 0, 600, 720)),))) == {}


def test_a_tall_door_is_a_base_front_and_the_one_over_it_an_upper_one() -> None:
    face = face_of_fronts(("over", 0, 1400), ("beside", 400, 150), ("tall", 0, 150))
    assert tags(face) == {"tall": "B1", "beside": "B2", "over": "B3"}
