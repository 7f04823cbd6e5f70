from geometry.outlines.shapes import box
from geometry.parts.rank import rank_key
from shared.job import Part
from shared.trade.kinds import Kind

SQUARE = box(0, 0, 1, 1)


def order(*parts: Part) -> list[str]:
    places = sorted(range(len(parts)), key=lambda index: rank_key(parts[index], index))
    return [parts[index].id for index in places]


def test_kinds_lie_over_each_other_as_the_table_says() -> None:
    kinds = [Kind.OUTLET, Kind.DOOR, Kind.CABINET, Kind.WALL, Kind.FIXTURE, Kind.SPLASHBACK, Kind.BENCHTOP]
    ranked = order(*(Part(kind, kind, SQUARE) for kind in kinds))
    assert ranked == ["wall", "splashback", "cabinet", "benchtop", "door", "fixture", "outlet"]


def test_of_two_of_equal_rank_the_later_is_in_front() -> None:
    assert order(Part("a", Kind.FILLER, SQUARE), Part("b", Kind.KICKBOARD, SQUARE)) == ["a", "b"]


def test_a_raised_part_lies_over_any_kind() -> None:
    assert order(Part("a", Kind.WALL, SQUARE, level=1), Part("b", Kind.FIXTURE, SQUARE)) == ["b", "a"]


def test_a_part_that_does_not_hide_lies_behind_all_that_do_however_raised() -> None:
    fridge = Part("fridge", Kind.FIXTURE, SQUARE, level=9, hides=False)
    assert order(fridge, Part("wall", Kind.WALL, SQUARE)) == ["fridge", "wall"]
