"""Rows laid out, against places worked by hand from the usual heights (`shared/data/heights.toml`)."""

from itertools import combinations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.checking import check_outlines
from geometry.kitchens.rows import LaidRow, lay_row, left_for, next_start, over_mm, with_row
from geometry.kitchens.walls import start_kitchen, with_heights
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box
from geometry.outlines.sides import Box
from shared.checks.job import check_job
from shared.edits.drawn import find_face, with_face, with_parts
from shared.errors import JobError, ReadingError
from shared.job import Face, Job, Part, Unit, View, usual_heights
from shared.trade.kinds import Kind
from shared.typed.row_shortening import shortened
from shared.typed.rows import Row, read_row
from shared.typed.walls import read_walls

IN = 25.4
THREE = "450 door, 600 drawers 3, 900 pair"


def kitchen(walls: str, unit: Unit = Unit.MM) -> Job:
    return start_kitchen("Quince Lane 2", read_walls(walls, unit), usual_heights(unit), unit)


@pytest.fixture
def wall() -> Job:
    """One wall, 2400 long; its face is f1."""
    return kitchen("2400")


def row(text: str, unit: Unit = Unit.MM) -> Row:
    return read_row(text, unit)


def boxes(laid: LaidRow) -> list[tuple[Kind, Box]]:
    return [(part.kind, outline_box(part.outline)) for part in laid.parts]


def of(kind: Kind, laid: LaidRow) -> list[Box]:
    return [where for its, where in boxes(laid) if its is kind]


def test_every_part_of_a_row_stands_where_the_hand_puts_it(wall: Job) -> None:
    # 150 kickboard, 720 cabinet, 38 benchtop; reveals of 3: fronts begin 1.5 inside, drawers are (720 - 9) / 3 high
    laid = lay_row(wall, "f1", row(THREE))
    assert boxes(laid) == [
        (Kind.KICKBOARD, (0, 0, 1950, 150)),
        (Kind.CABINET, (0, 150, 450, 870)),
        (Kind.DOOR, (1.5, 151.5, 448.5, 868.5)),
        (Kind.CABINET, (450, 150, 1050, 870)),
        (Kind.DRAWER_FRONT, (451.5, 151.5, 1048.5, 388.5)),
        (Kind.DRAWER_FRONT, (451.5, 391.5, 1048.5, 628.5)),
        (Kind.DRAWER_FRONT, (451.5, 631.5, 1048.5, 868.5)),
        (Kind.CABINET, (1050, 150, 1950, 870)),
        (Kind.DOOR, (1051.5, 151.5, 1498.5, 868.5)),
        (Kind.DOOR, (1501.5, 151.5, 1948.5, 868.5)),
        (Kind.BENCHTOP, (0, 870, 1950, 908)),
    ]
    assert (laid.start_mm, laid.width_mm, laid.left_mm, laid.cabinets) == (0, 1950, 450, 3)


def test_a_row_in_inches_stands_where_the_hand_puts_it() -> None:
    # 4 1/2 kickboard, 30 cabinet, 1 1/2 benchtop; reveals of 1/8
    laid = lay_row(kitchen("96", Unit.INCH), "f1", row("18 door, 24 drawers 3, 36 pair", Unit.INCH))
    by_hand = [
        (Kind.KICKBOARD, (0, 0, 78, 4.5)),
        (Kind.CABINET, (0, 4.5, 18, 34.5)),
        (Kind.DOOR, (1 / 16, 4.5 + 1 / 16, 18 - 1 / 16, 34.5 - 1 / 16)),
        (Kind.CABINET, (18, 4.5, 42, 34.5)),
        (Kind.DRAWER_FRONT, (18 + 1 / 16, 4.5 + 1 / 16, 42 - 1 / 16, 14.5 - 1 / 16)),
        (Kind.DRAWER_FRONT, (18 + 1 / 16, 14.5 + 1 / 16, 42 - 1 / 16, 24.5 - 1 / 16)),
        (Kind.DRAWER_FRONT, (18 + 1 / 16, 24.5 + 1 / 16, 42 - 1 / 16, 34.5 - 1 / 16)),
        (Kind.CABINET, (42, 4.5, 78, 34.5)),
        (Kind.DOOR, (42 + 1 / 16, 4.5 + 1 / 16, 60 - 1 / 16, 34.5 - 1 / 16)),
        (Kind.DOOR, (60 + 1 / 16, 4.5 + 1 / 16, 78 - 1 / 16, 34.5 - 1 / 16)),
        (Kind.BENCHTOP, (0, 34.5, 78, 36)),
    ]
    assert [part.kind for part in laid.parts] == [kind for kind, _ in by_hand]
    for (_, sides), (_, in_inches) in zip(boxes(laid), by_hand, strict=True):
        assert sides == pytest.approx([IN * size for size in in_inches])
    assert (laid.width_mm, laid.left_mm) == pytest.approx((78 * IN, 18 * IN))


def test_what_is_no_cabinet_stands_in_the_row_too(wall: Job) -> None:
    laid = lay_row(wall, "f1", row("600 oven, 600 dishwasher, 18 end panel, 300 open, 50 filler"))
    assert boxes(laid) == [
        (Kind.KICKBOARD, (0, 0, 1200, 150)),
        (Kind.KICKBOARD, (1218, 0, 1568, 150)),
        (Kind.FIXTURE, (0, 150, 600, 870)),
        (Kind.FIXTURE, (600, 150, 1200, 870)),
        (Kind.END_PANEL, (1200, 0, 1218, 870)),
        (Kind.CABINET, (1218, 150, 1518, 870)),
        (Kind.FILLER, (1518, 150, 1568, 870)),
        (Kind.BENCHTOP, (0, 870, 1568, 908)),
    ]
    assert [part.name for part in laid.parts if part.kind is Kind.FIXTURE] == ["oven", "dishwasher"]


def test_a_gap_ends_kickboard_and_benchtop_but_not_the_splashback(wall: Job) -> None:
    laid = lay_row(wall, "f1", row("450 door, 700 gap, 2 of 450 door, splashback"))
    assert of(Kind.KICKBOARD, laid) == [(0, 0, 450, 150), (1150, 0, 2050, 150)]
    assert of(Kind.BENCHTOP, laid) == [(0, 870, 450, 908), (1150, 870, 2050, 908)]
    assert of(Kind.SPLASHBACK, laid) == [(0, 908, 2050, 1508)]
    assert of(Kind.CABINET, laid) == [(0, 150, 450, 870), (1150, 150, 1600, 870), (1600, 150, 2050, 870)]


def test_a_tall_cabinet_ends_the_benchtop_and_reaches_to_the_tops_of_the_wall_cabinets(wall: Job) -> None:
    # 150 + 720 + 38 + 600 + 720 = 2228
    laid = lay_row(wall, "f1", row("600 tall, 450 door"))
    assert of(Kind.CABINET, laid) == [(0, 150, 600, 2228), (600, 150, 1050, 870)]
    assert of(Kind.DOOR, laid)[0] == (1.5, 151.5, 598.5, 2226.5)
    assert (of(Kind.KICKBOARD, laid), of(Kind.BENCHTOP, laid)) == ([(0, 0, 1050, 150)], [(600, 870, 1050, 908)])


def test_wall_cabinets_hang_over_the_splashback(wall: Job) -> None:
    laid = lay_row(wall, "f1", row("above 600 door, 900 gap, 800 pair"))
    assert boxes(laid) == [
        (Kind.CABINET, (0, 1508, 600, 2228)),
        (Kind.DOOR, (1.5, 1509.5, 598.5, 2226.5)),
        (Kind.CABINET, (1500, 1508, 2300, 2228)),
        (Kind.DOOR, (1501.5, 1509.5, 1898.5, 2226.5)),
        (Kind.DOOR, (1901.5, 1509.5, 2298.5, 2226.5)),
    ]
    assert laid.left_mm == 100


def test_the_rest_takes_what_is_left_of_the_wall(wall: Job) -> None:
    assert of(Kind.FILLER, lay_row(wall, "f1", row(f"{THREE}, rest filler"))) == [(1950, 150, 2400, 870)]
    thirds = lay_row(wall, "f1", row("600 door, 3 of rest door"))
    assert of(Kind.CABINET, thirds)[1:] == [(600, 150, 1200, 870), (1200, 150, 1800, 870), (1800, 150, 2400, 870)]
    assert thirds.left_mm == 0


def test_the_next_row_begins_where_the_last_one_ended_and_else_in_a_gap(wall: Job) -> None:
    job, three = with_row(wall, "f1", row(f"300 gap, {THREE}"))
    assert (len(three.parts), next_start(job, "f1", above=False), next_start(job, "f1", above=True)) == (11, 2250, 0)
    laid = lay_row(job, "f1", row("rest filler"))
    assert (laid.start_mm, laid.width_mm, laid.left_mm) == (2250, 150, 0)
    full, _ = with_row(job, "f1", row("rest filler"))
    assert of(Kind.FILLER, lay_row(full, "f1", row("rest filler"))) == [(0, 150, 300, 870)]
    with pytest.raises(ReadingError, match="there is no room for a row here"):
        lay_row(full, "f1", row("100 filler"), 300)


def test_a_row_begins_before_what_stands_at_the_end_of_the_wall(wall: Job) -> None:
    returning = with_parts(wall, "f1", [Part("return", Kind.CABINET, box(1800, 0, 600, 870))])
    assert next_start(returning, "f1", above=False) == 0
    assert lay_row(returning, "f1", row("600 door")).left_mm == 1200
    job, _ = with_row(returning, "f1", row("600 door"))
    assert next_start(job, "f1", above=False) == 600


def test_windows_stand_in_the_way_of_wall_cabinets_and_outlets_do_not(wall: Job) -> None:
    job = with_parts(
        wall,
        "f1",
        [Part("w", Kind.WINDOW, box(1000, 1100, 900, 900)), Part("o", Kind.OUTLET, box(200, 1600, 115, 72))],
    )
    assert left_for(job, "f1", above=True, start_mm=0) == 1000
    assert left_for(job, "f1", above=False, start_mm=0) == 2400
    assert next_start(job, "f1", above=True) == 1900


def test_a_face_without_a_wall_has_no_end(wall: Job) -> None:
    job = with_face(wall, "r1", Face("f2", "B"))
    laid = lay_row(job, "f2", row("5 m door"))
    assert (laid.start_mm, laid.left_mm, over_mm(job, "f2", row("90 m door"))) == (0, None, 0)
    longer, _ = with_row(job, "f2", row("5 m door"))
    assert next_start(longer, "f2", above=False) == 5000
    with pytest.raises(ReadingError, match="no wall, so rest has no width"):
        lay_row(job, "f2", row("rest door"))


def test_a_row_that_is_too_long_says_by_how_much_and_what_could_give_way(wall: Job) -> None:
    long = row("600 door, 1200 pair, 650 drawers 3")
    with pytest.raises(ReadingError, match="the row is 50 mm longer than the 2400 mm there are"):
        lay_row(wall, "f1", long)
    assert over_mm(wall, "f1", long) == 50
    assert over_mm(wall, "f1", long, 100) == 150
    offers = shortened(long, over_mm(wall, "f1", long))
    assert offers[1] == ("1200 pair to 1150", "600 door, 1150 pair, 650 drawers 3")
    assert [lay_row(wall, "f1", row(text)).left_mm for _, text in offers] == [0, 0, 0]


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("2400 door, rest filler", "nothing is left for “rest filler”"),
        ("3 drawers 2", "“3 drawers 2” is too small for its fronts"),
        ("6 pair", "“6 pair” is too small for its fronts"),
        ("above 600 tall", "a tall cabinet stands on the floor"),
    ],
)
def test_what_cannot_stand_is_refused_in_words(wall: Job, typed: str, words: str) -> None:
    with pytest.raises(ReadingError, match=words):
        with_row(wall, "f1", row(typed))


def test_a_splashback_of_no_height_is_refused_and_other_parts_of_none_are_left_out(wall: Job) -> None:
    flat = replace(usual_heights(), kickboard_mm=0, benchtop_mm=0, splashback_mm=0, reveal_mm=0)
    job = with_heights(wall, "r1", flat)
    assert boxes(lay_row(job, "f1", row("600 door"))) == [
        (Kind.CABINET, (0, 0, 600, 720)),
        (Kind.DOOR, (0, 0, 600, 720)),
    ]
    with pytest.raises(ReadingError, match="usual splashback has no height"):
        lay_row(job, "f1", row("600 door, splashback"))


def test_a_row_on_a_plan_or_beyond_all_bounds_is_refused(wall: Job) -> None:
    job = with_face(with_face(wall, "r1", Face("f2", "P", View.PLAN)), "r1", Face("f3", "B"))
    with pytest.raises(JobError, match="face P: a row of cabinets stands on a wall"):
        lay_row(job, "f2", row("600 door"))
    with pytest.raises(JobError, match="more than 100 m away"):
        with_row(job, "f3", row("3 of 90 m door"))
    assert find_face(job, "f3").parts == ()


WORDS = ("door", "pair", "drawers", "drawers 4", "oven", "appliance", "open", "tall", "filler", "panel", "gap")
ITEMS = st.tuples(st.sampled_from(["", "", "2 of "]), st.integers(20, 900), st.sampled_from(WORDS))
ROWS = st.lists(ITEMS, min_size=1, max_size=7)


def overlap(one: Box, other: Box) -> bool:
    return min(one[2], other[2]) - max(one[0], other[0]) > 1e-6 and min(one[3], other[3]) - max(one[1], other[1]) > 1e-6


def within(inner: Box, outer: Box) -> bool:
    return all(low >= bound - 1e-6 for low, bound in zip(inner[:2], outer[:2], strict=True)) and all(
        high <= bound + 1e-6 for high, bound in zip(inner[2:], outer[2:], strict=True)
    )


@given(ROWS, st.integers(0, 2000), st.sampled_from(["", "above "]))
def test_a_row_that_fits_never_overlaps_itself(items: list[tuple[str, int, str]], start: int, above: str) -> None:
    assume(any(word != "gap" for _, _, word in items) and not (above and "tall" in [word for _, _, word in items]))
    asked = row(above + ", ".join(f"{times}{width} {word}" for times, width, word in items))
    job = kitchen("20000")
    after, laid = with_row(job, "f1", asked, start)
    check_job(after)
    check_outlines(after)
    added = [part for part in find_face(after, "f1").parts if part in laid.parts]
    fronts = [outline_box(part.outline) for part in added if part.kind in (Kind.DOOR, Kind.DRAWER_FRONT)]
    others = [part for part in added if part.kind not in (Kind.DOOR, Kind.DRAWER_FRONT)]
    cabinets = [outline_box(part.outline) for part in others if part.kind is Kind.CABINET]
    assert not any(overlap(*pair) for pair in combinations(fronts, 2))
    assert not any(overlap(*pair) for pair in combinations([outline_box(part.outline) for part in others], 2))
    assert all(any(within(front, cabinet) for cabinet in cabinets) for front in fronts)


@given(ROWS, st.integers(0, 2000), st.sampled_from(["", "above "]))
def test_what_stands_in_a_row_adds_up_to_its_width(items: list[tuple[str, int, str]], start: int, above: str) -> None:
    standing = [(times, width, word) for times, width, word in items if word not in ("gap", "tall")]
    assume(standing)
    laid = lay_row(kitchen("20000"), "f1", row(above + ", ".join(f"{t}{w} {word}" for t, w, word in standing)), start)
    kinds = (Kind.CABINET, Kind.FIXTURE, Kind.FILLER, Kind.END_PANEL)
    widths = [right - left for kind, (left, _, right, _) in boxes(laid) if kind in kinds]
    assert sum(widths) == pytest.approx(laid.width_mm)
    assert laid.left_mm == pytest.approx(20000 - start - laid.width_mm)


@given(ROWS, st.integers(100, 4000))
def test_a_row_is_laid_or_refused_and_every_offer_fits(items: list[tuple[str, int, str]], length: int) -> None:
    assume(any(word != "gap" for _, _, word in items))
    asked = row(", ".join(f"{times}{width} {word}" for times, width, word in items))
    job = kitchen(str(length))
    over = over_mm(job, "f1", asked)
    assert over == max(0, asked.fixed_mm - length)
    if not over:
        assert lay_row(job, "f1", asked).left_mm == pytest.approx(length - asked.fixed_mm)
        return
    with pytest.raises(ReadingError, match="longer than"):
        lay_row(job, "f1", asked)
    for _, text in shortened(asked, over):
        assert over_mm(job, "f1", row(text)) == pytest.approx(0, abs=1e-6)
