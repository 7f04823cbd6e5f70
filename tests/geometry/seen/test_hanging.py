from geometry.outlines.shapes import box
from geometry.seen.hanging import Hung, hung_fronts
from shared.job import Part
from shared.trade.kinds import Kind

CABINETS = (Part("a", Kind.CABINET, box(0, 150, 600, 720)), Part("b", Kind.CABINET, box(600, 150, 600, 720)))


def front(x: float, width: float, y: float = 152, height: float = 716, kind: Kind = Kind.DOOR) -> Part:
    return Part("f", kind, box(x, y, width, height))


def test_a_front_hangs_on_the_cabinet_that_it_covers() -> None:
    assert hung_fronts((*CABINETS, front(602, 596))) == (Hung("f", ("b",), (600, 150, 1200, 870)),)


def test_one_drawer_of_several_hangs_on_the_whole_cabinet() -> None:
    (hung,) = hung_fronts((*CABINETS, front(2, 596, 700, 160, Kind.DRAWER_FRONT)))
    assert hung.box == (0, 150, 600, 870)


def test_a_front_over_two_cabinets_hangs_on_both() -> None:
    (hung,) = hung_fronts((*CABINETS, front(2, 1196)))
    assert (hung.behind, hung.box) == (("a", "b"), (0, 150, 1200, 870))


def test_a_little_of_the_next_cabinet_does_not_count() -> None:
    (hung,) = hung_fronts((*CABINETS, front(2, 650)))
    assert hung.behind == ("a",)


def test_a_filler_widens_and_a_kickboard_only_lowers_what_may_be_covered() -> None:
    filler, kick = Part("g", Kind.FILLER, box(1200, 150, 40, 720)), Part("k", Kind.KICKBOARD, box(0, 0, 3000, 150))
    (hung,) = hung_fronts((*CABINETS, filler, kick, front(602, 636, 5, 863)))
    assert (hung.behind, hung.box) == (("b",), (600, 0, 1240, 870))


def test_without_a_cabinet_nothing_hangs() -> None:
    assert hung_fronts((Part("x", Kind.FIXTURE, box(0, 0, 600, 720)), front(2, 596))) == ()
    assert hung_fronts((Part("g", Kind.FILLER, box(0, 150, 600, 720)), front(2, 596))) == ()
    assert hung_fronts(()) == ()
