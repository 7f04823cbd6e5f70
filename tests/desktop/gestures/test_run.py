import pytest
from msgspec.structs import replace

from desktop.gestures.run import Run
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box
from geometry.parts.extent import extent
from shared.edits.drawn import find_part, with_face
from shared.errors import JobError, ReadingError
from shared.job import Face, Job, Part, Room, Unit, View
from shared.trade.kinds import Kind
from tests.desktop.gestures.scenes import SCENE, ended

WALL = Face("f1", "A", parts=(Part("wall", Kind.WALL, box(0, 0, 2400, 2400)),))
EMPTY = SCENE._replace(job=Job("Harbour Row", (Room("r1", "Kitchen", (WALL,)),)))


def test_a_line_is_a_row_and_all_of_it_is_picked() -> None:
    done = ended(Run(EMPTY).type("450 door, 600 drawers 3, 900 pair"))
    kinds = [find_part(done.job, part)[1].kind for part in done.picked]
    assert kinds.count(Kind.CABINET) == 3
    assert kinds.count(Kind.DOOR) == 3
    assert kinds.count(Kind.DRAWER_FRONT) == 3
    assert done.label == "Row of cabinets"
    assert [size.length_mm for size in done.preview.sizes] == [1950]


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("450 door, 600 drawers 3, 900 pair", "3 cabinets, 1950 of 2400 mm, 450 left"),
        ("2400 pair", "1 cabinet, 2400 of 2400 mm, 0 left"),
        ("600 oven", "600 of 2400 mm, 1800 left"),
        ("600", "⏎ the row begins at 600"),
        ("450 door, 600 dr", "2 cabinets, 1050 of 2400 mm, 1350 left"),
        ("450 door, 600 d", "1 cabinet, 450 of 2400 mm, 1950 left …"),
        ("450 door, 600", "1 cabinet, 450 of 2400 mm, 1950 left …"),
        ("600 d", "…"),
    ],
)
def test_what_a_line_comes_to_is_said(line: str, words: str) -> None:
    assert Run(EMPTY).says(line) == words


def test_what_is_only_begun_is_not_taken_and_no_slip_yet() -> None:
    run = Run(EMPTY)
    assert run.so_far("450 door, 600 d") == "450 door"
    assert run.so_far("450") == ""
    for line in ("450 door, 600 d", "450 door, 600", "600 d"):
        with pytest.raises(ReadingError):
            run.type(line)
    with pytest.raises(ReadingError, match="not known"):
        run.says("450 door, 600 wombat")


def test_in_an_inch_job_rows_are_read_and_said_in_inches() -> None:
    scene = EMPTY._replace(job=replace(EMPTY.job, unit=Unit.INCH))
    assert Run(scene).says("18 door, 24 1/2 pair") == '2 cabinets, 42 1/2" of 94 1/2", 52" left'


def test_a_row_goes_on_where_the_last_one_ends() -> None:
    first = ended(Run(EMPTY).type("600 door"))
    run = Run(EMPTY).again(EMPTY._replace(job=first.job))
    assert run.wants == "cabinets from 600: widths and words"
    second = ended(run.type("450 door"))
    assert _left(second.job, second.picked) == 600


@pytest.mark.parametrize("typed", [True, False])
def test_where_a_row_begins_is_typed_alone_or_pointed_at(typed: bool) -> None:
    run = Run(EMPTY)
    assert (run.type("900") if typed else run.press((900, 400))) is None
    assert run.wants == "cabinets from 900: widths and words"
    done = ended(run.type("600 door"))
    assert _left(done.job, done.picked) == 900


def test_where_a_row_begins_is_taken_back() -> None:
    run = Run(EMPTY)
    run.type("900")
    assert run.is_begun
    run.back()
    assert run.wants == "cabinets from 0: widths and words"


@pytest.mark.parametrize("line", ["600 door", "above 600 door"])
def test_the_other_way_is_a_row_of_wall_cabinets(line: str) -> None:
    run = Run(EMPTY).turned()
    assert run.wants == "wall cabinets from 0: widths and words"
    done = ended(run.type(line))
    assert done.label == "Row of wall cabinets"
    heights = EMPTY.job.rooms[0].heights
    cabinet = find_part(done.job, done.picked[0])[1]
    bottom = heights.kickboard_mm + heights.cabinet_mm + heights.benchtop_mm + heights.splashback_mm
    assert outline_box(cabinet.outline)[1] == bottom


def test_the_way_stays_on_the_face_and_is_dropped_on_another() -> None:
    job = with_face(EMPTY.job, "r1", Face("f2", "B", parts=(Part("other", Kind.WALL, box(0, 0, 3000, 2400)),)))
    above = Run(EMPTY._replace(job=job)).turned()
    assert above.again(EMPTY._replace(job=job, picked=("wall",))).wants.startswith("wall cabinets")
    assert above.again(EMPTY._replace(job=job, face_id="f2")).wants.startswith("cabinets")


def test_a_row_too_long_says_by_how_much_and_offers_lines_that_fit() -> None:
    run, line = Run(EMPTY), "600 door, 900 pair, 1200 drawers 3"
    with pytest.raises(ReadingError, match="300 mm longer than the 2400 mm"):
        run.type(line)
    offers = run.offers(line)
    assert [offer.words for offer in offers] == ["600 door to 300", "900 pair to 600", "1200 drawers 3 to 900"]
    for offer in offers:
        assert run.says(offer.text) == "3 cabinets, 2400 of 2400 mm, 0 left"


def test_a_line_that_is_no_row_offers_nothing() -> None:
    assert Run(EMPTY).offers("600 wombat") == ()


def test_a_row_does_not_begin_beyond_the_wall_or_where_something_stands() -> None:
    run = Run(SCENE)
    for begins in ("3600", "9000", "700"):
        with pytest.raises(ReadingError, match="no room for a row here"):
            run.type(begins)
    assert not run.is_begun


def test_on_a_plan_no_row_is_asked_for_or_taken() -> None:
    plan = Face("f2", "B", View.PLAN, (Part("top", Kind.BENCHTOP, box(0, 0, 2400, 600)),))
    run = Run(EMPTY._replace(job=with_face(EMPTY.job, "r1", plan), face_id="f2"))
    assert run.wants == ""
    assert run.press((300, 300)) is None
    for line in ("600", "600 door"):
        with pytest.raises(JobError, match="stands on a wall"):
            run.type(line)
        assert run.offers(line) == ()


def test_where_the_row_will_begin_is_shown_on_the_face() -> None:
    run = Run(EMPTY)
    run.type("900")
    _, bottom, _, top = extent(WALL)
    assert run.preview.guides == (((900, bottom), (900, top)),)


def _left(job: Job, ids: tuple[str, ...]) -> float:
    return min(outline_box(find_part(job, part)[1].outline)[0] for part in ids)
