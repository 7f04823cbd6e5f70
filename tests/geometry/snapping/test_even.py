from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box, circle
from geometry.outlines.sides import Box
from geometry.snapping.even import NOBODY, evenly_spaced, peers, same_size
from shared.job import Face, Part, Unit, View
from shared.trade.kinds import Kind

REACH = 10.0


def outlets(*xs: float, y: float = 1100) -> tuple[Part, ...]:
    return tuple(Part(f"o{x}", Kind.OUTLET, box(x, y, 100, 70)) for x in xs)


def face(*parts: Part, view: View = View.ELEVATION) -> Face:
    return Face("f", "A", view, parts=(Part("w", Kind.WALL, box(0, 0, 4000, 2400)), *parts))


ROW = peers(face(*outlets(0, 400)), Kind.OUTLET)


@pytest.mark.parametrize(
    ("dragged", "by", "gap"),
    [
        ((803, 1100, 903, 1170), -3, 300),
        ((195, 1100, 295, 1170), 5, 100),
        ((-404, 1100, -304, 1170), 4, 300),
    ],
    ids=["as far beyond", "half way between", "as far before"],
)
def test_a_dragged_part_comes_to_stand_evenly_and_says_the_gap(dragged: Box, by: float, gap: float) -> None:
    found = evenly_spaced(dragged, ROW, 0, REACH)
    assert found is not None
    assert (found.by_mm, found.words) == (by, f"evenly spaced: {gap} mm")


def test_the_equal_gaps_are_shown() -> None:
    found = evenly_spaced((803, 1100, 903, 1170), ROW, 0, REACH)
    assert found is not None
    assert sorted(found.guides) == [((100, 1135), (400, 1135)), ((500, 1135), (800, 1135))]


def test_spacing_goes_up_too() -> None:
    shelves = tuple(Part(f"s{y}", Kind.SHELF, box(0, y, 600, 20)) for y in (1000, 1320))
    found = evenly_spaced((0, 1642, 600, 1662), peers(face(*shelves), Kind.SHELF), 1, REACH)
    assert found is not None
    assert (found.by_mm, found.words) == (-2, "evenly spaced: 300 mm")
    assert ((300, 1340), (300, 1640)) in found.guides


@pytest.mark.parametrize(
    ("dragged", "why"),
    [
        ((815, 1100, 915, 1170), "out of reach"),
        ((803, 1400, 903, 1470), "another band"),
        ((440, 1100, 540, 1170), "over its neighbour"),
    ],
)
def test_what_is_not_nearly_even_stays(dragged: Box, why: str) -> None:
    assert evenly_spaced(dragged, ROW, 0, REACH) is None, why


def test_parts_that_touch_are_not_spaced() -> None:
    assert evenly_spaced((203, 1100, 303, 1170), peers(face(*outlets(0, 100)), Kind.OUTLET), 0, REACH) is None


def test_only_the_very_next_beyond_counts() -> None:
    three = peers(face(*outlets(0, 400, 1200)), Kind.OUTLET)
    assert evenly_spaced((1601, 1100, 1701, 1170), three, 0, REACH) is None
    found = evenly_spaced((2001, 1100, 2101, 1170), three, 0, REACH)
    assert found is not None
    assert found.words == "evenly spaced: 700 mm"


def test_gaps_are_said_in_the_jobs_unit() -> None:
    inches = peers(face(*outlets(0, 354)), Kind.OUTLET, unit=Unit.INCH)
    found = evenly_spaced((708, 1100, 808, 1170), inches, 0, REACH)
    assert found is not None
    assert found.words == 'evenly spaced: 10"'


def test_doors_and_drawer_fronts_are_compared_with_each_other_and_with_nothing_else() -> None:
    parts = (
        Part("c", Kind.CABINET, box(0, 150, 600, 720)),
        Part("d", Kind.DOOR, box(2, 152, 296, 716)),
        Part("e", Kind.DRAWER_FRONT, box(302, 152, 296, 716), name="bin"),
    )
    assert peers(face(*parts), Kind.DOOR).names == ("door", "bin")
    assert peers(face(*parts), Kind.DOOR, without={"e"}, names={"d": "door A1"}).names == ("door A1",)
    assert peers(face(*parts), Kind.CABINET).names == ("cabinet",)


DOORS = peers(
    face(
        Part("near", Kind.DOOR, box(1000, 152, 396, 716), name="near"),
        Part("far", Kind.DOOR, box(3000, 152, 396, 500), name="far"),
    ),
    Kind.DOOR,
)


@pytest.mark.parametrize(
    ("here", "axis", "by", "words"),
    [
        ((893, 152), 0, 3, "as wide as near"),
        ((104, 152), 0, 0, "as wide as near"),
        ((107, 152), 0, -3, "as wide as near"),
        ((893, 655), 1, -3, "as high as far"),
        ((893, 864), 1, 4, "as high as near"),
    ],
)
def test_a_pulled_corner_makes_a_box_as_large_as_another_part(
    here: tuple[float, float], axis: int, by: float, words: str
) -> None:
    found = same_size(here, (500, 152), DOORS, axis, REACH)
    assert found is not None
    assert (found.by_mm, found.words) == (by, words)


@pytest.mark.parametrize(("axis", "end"), [(0, (1396, 152)), (1, (1000, 868))])
def test_the_size_that_is_equalled_is_shown(axis: int, end: tuple[float, float]) -> None:
    found = same_size((893, 864), (500, 152), DOORS, axis, REACH)
    assert found is not None
    assert found.guides == (((1000, 152), end),)


def test_a_plan_is_deep_and_not_high() -> None:
    plan = face(Part("b", Kind.BENCHTOP, box(0, 0, 900, 600), name="island"), view=View.PLAN)
    found = same_size((2000, 605), (1000, 0), peers(plan, Kind.BENCHTOP), 1, REACH)
    assert found is not None
    assert found.words == "as deep as island"


def test_nothing_is_like_nobody() -> None:
    assert same_size((1, 1), (0, 0), NOBODY, 0, REACH) is None
    assert evenly_spaced((0, 0, 1, 1), NOBODY, 0, REACH) is None
    assert same_size((500, 0), (500, 0), DOORS, 0, REACH) is None
    assert same_size((700, 0), (500, 0), DOORS, 0, REACH) is None


def test_a_round_part_is_compared_by_the_box_round_it() -> None:
    lamps = tuple(Part(f"l{x}", Kind.FIXTURE, circle(x, 2000, 50)) for x in (500, 1000))
    found = evenly_spaced((1447, 1950, 1547, 2050), peers(face(*lamps), Kind.FIXTURE), 0, REACH)
    assert found is not None
    assert found.by_mm == pytest.approx(3)


@given(
    st.lists(st.integers(0, 60), min_size=1, max_size=6, unique=True), st.integers(-50, 700), st.sampled_from([0, 1])
)
def test_what_is_noticed_comes_true(places: Sequence[int], at: int, axis: int) -> None:
    """After going so far, two gaps beside the box are equal, and to go on there is nothing."""
    parts = [box(place * 12, 0, 10, 10) if axis == 0 else box(0, place * 12, 10, 10) for place in places]
    among = peers(face(*(Part(str(n), Kind.OUTLET, outline) for n, outline in enumerate(parts))), Kind.OUTLET)
    outline = box(at, 0, 10, 10) if axis == 0 else box(0, at, 10, 10)
    found = evenly_spaced(outline_box(outline), among, axis, 3.0)
    if found is None:
        return
    assert abs(found.by_mm) <= 3.0
    sizes = [end[axis] - start[axis] for start, end in found.guides]
    assert sizes[0] == pytest.approx(sizes[1])
    assert f"{sizes[0]:g} mm" in found.words
