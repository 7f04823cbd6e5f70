import math

import pytest
from msgspec.structs import replace

from desktop.gestures.gesture import Done, Held, Scene
from desktop.gestures.preview import NOTHING
from desktop.gestures.reshape import Corners
from geometry.outlines.measured import area_mm2, outline_box
from geometry.outlines.shapes import circle
from geometry.outlines.sides import Point
from shared.edits.drawn import find_part, with_changed_parts, with_parts
from shared.errors import JobError, OutlineError, ReadingError
from shared.job import Outline, Part
from shared.trade.kinds import Kind
from tests.desktop.gestures.scenes import JOB, SCENE, ended

FREE = Held(free=True)
OUTLET = SCENE._replace(picked=("outlet",))
LEFT, LOW, RIGHT, TOP = 800, 1100, 915, 1172
BOTTOM_LEFT, BOTTOM_RIGHT, TOP_RIGHT = (LEFT, LOW), (RIGHT, LOW), (RIGHT, TOP)
BOTTOM: Point = ((LEFT + RIGHT) / 2, LOW)
RIGHT_SIDE: Point = (RIGHT, (LOW + TOP) / 2)


def outline(done: Done | None, part: str = "outlet") -> Outline:
    return find_part(ended(done).job, part)[1].outline


def corners(done: Done | None) -> list[Point]:
    return [(round(vertex.x, 6), round(vertex.y, 6)) for vertex in outline(done)]


def chosen(at: Point, scene: Scene = OUTLET) -> Corners:
    gesture = Corners(scene)
    gesture.press(at)
    gesture.release(at)
    return gesture


def test_the_corners_and_the_middles_of_the_sides_are_shown() -> None:
    shown = Corners(OUTLET).preview
    assert list(shown.marks) == [(LEFT, LOW), (RIGHT, LOW), (RIGHT, TOP), (LEFT, TOP)]
    assert BOTTOM in shown.dots
    assert Corners(SCENE).preview == NOTHING


def test_a_corner_is_dragged() -> None:
    gesture = chosen(TOP_RIGHT)
    gesture.press(TOP_RIGHT)
    gesture.point((1000, 1250), FREE)
    assert gesture.preview.sizes
    done = gesture.release((1000, 1250), FREE)
    assert corners(done) == [(LEFT, LOW), (RIGHT, LOW), (1000, 1250), (LEFT, TOP)]
    assert ended(done).label == "Reshape outlet"


def test_a_dragged_corner_snaps() -> None:
    gesture = chosen(TOP_RIGHT)
    gesture.press(TOP_RIGHT)
    gesture.point((1490, 880))
    assert gesture.preview.words == "corner of cabinet"
    assert corners(gesture.release((1490, 880)))[2] == (1500, 870)


def test_a_dragged_side_moves_parallel_to_itself() -> None:
    gesture = chosen(RIGHT_SIDE)
    gesture.press(RIGHT_SIDE)
    gesture.point((1000, 1400), FREE)
    assert outline_box(outline(gesture.release((1000, 1400), FREE))) == (LEFT, LOW, 1000, TOP)


def test_a_dragged_arc_stays_an_arc() -> None:
    basin = Part("basin", Kind.FIXTURE, circle(2500, 1500, 200))
    scene = SCENE._replace(job=with_parts(JOB, "f1", (basin,)), picked=("basin",))
    gesture = chosen((2500, 1300), scene)
    gesture.press((2500, 1300))
    done = gesture.release((2500, 1500 - 100), FREE)
    assert [vertex.bulge for vertex in outline(done, "basin")] == pytest.approx([0.5, 1])


@pytest.mark.parametrize(
    ("line", "place"),
    [("1000, 1250", (1000, 1250)), ("to 1000, 1250", (1000, 1250)), ("20 right, 8 up", (RIGHT + 20, TOP + 8))],
)
def test_a_corner_goes_to_a_typed_place(line: str, place: Point) -> None:
    assert corners(chosen(TOP_RIGHT).type(line))[2] == place


def test_a_side_gets_a_typed_length_and_a_box_stays_square() -> None:
    assert outline_box(outline(chosen(BOTTOM).type("150"))) == (LEFT, LOW, LEFT + 150, TOP)
    assert outline_box(outline(chosen(RIGHT_SIDE).type("100"))) == (LEFT, LOW, RIGHT, LOW + 100)


def test_a_side_gets_a_length_and_an_angle() -> None:
    done = chosen(BOTTOM).type("100 at -30")
    assert corners(done)[1] == (round(LEFT + 100 * math.sqrt(3) / 2, 6), LOW - 50)


@pytest.mark.parametrize(
    ("at", "line", "area"),
    [
        (TOP_RIGHT, "round 20", 115 * 72 - (1 - math.pi / 4) * 20**2),
        (TOP_RIGHT, "cut 20", 115 * 72 - 20**2 / 2),
        (RIGHT_SIDE, "radius 36", 115 * 72 + math.pi * 36**2 / 2),
        (RIGHT_SIDE, "rise 36", 115 * 72 + math.pi * 36**2 / 2),
        (RIGHT_SIDE, "rise -36", 115 * 72 - math.pi * 36**2 / 2),
        (RIGHT_SIDE, "rise 0", 115 * 72),
    ],
)
def test_words_round_cut_and_bend(at: Point, line: str, area: float) -> None:
    assert area_mm2(outline(chosen(at).type(line))) == pytest.approx(area)


def test_what_a_line_comes_to_is_said() -> None:
    assert chosen(TOP_RIGHT).says("1000, 1250") == "the corner at 1000 · 1250"
    assert chosen(TOP_RIGHT).says("round 20") == "rounded to a radius of 20"
    assert chosen(BOTTOM).says("150 at 45") == "150 long at 45°"
    assert chosen(BOTTOM).wants == "bottom side, now 115, its length"


@pytest.mark.parametrize(
    ("at", "line", "words"),
    [
        (TOP_RIGHT, "1000", "two readings"),
        (TOP_RIGHT, "rise 3", "only a side can become an arc"),
        (TOP_RIGHT, "round 80", "too short for that"),
        (TOP_RIGHT, "850, 900", "cross"),
        (BOTTOM, "round 3", "only a corner can be rounded"),
        (BOTTOM, "1, 2", "one length"),
        (BOTTOM, "0", "must be above 0"),
        (BOTTOM, "radius 3", "so small a radius"),
        (BOTTOM, "wombat", "not a unit"),
    ],
)
def test_what_cannot_be_is_refused_in_words(at: Point, line: str, words: str) -> None:
    with pytest.raises((ReadingError, OutlineError), match=words):
        chosen(at).type(line)


def test_insert_puts_a_corner_in_and_delete_takes_it_out() -> None:
    gesture = chosen(BOTTOM)
    done = ended(gesture.put_in())
    assert corners(done) == [(LEFT, LOW), BOTTOM, (RIGHT, LOW), (RIGHT, TOP), (LEFT, TOP)]
    after = gesture.again(OUTLET._replace(job=done.job))
    assert corners(after.take_out()) == [(LEFT, LOW), (RIGHT, LOW), (RIGHT, TOP), (LEFT, TOP)]


def test_in_the_other_way_a_click_puts_a_corner_in() -> None:
    gesture = Corners(OUTLET).turned()
    assert corners(gesture.press((830, 1095)))[1] == (830, LOW)


def test_three_corners_stay() -> None:
    part = find_part(JOB, "outlet")[1]
    job = with_changed_parts(JOB, (replace(part, outline=part.outline[:3]),))
    with pytest.raises(OutlineError, match="too few corners"):
        chosen(TOP_RIGHT, OUTLET._replace(job=job)).take_out()


def test_a_side_is_not_taken_out_and_a_corner_is_not_put_in_on_a_corner() -> None:
    with pytest.raises(JobError, match="remove one of its corners"):
        chosen(BOTTOM).take_out()
    with pytest.raises(JobError, match="click the side"):
        chosen(TOP_RIGHT).put_in()


def test_return_goes_round_the_part() -> None:
    gesture = Corners(OUTLET)
    said = []
    for _ in range(9):
        gesture.enter()
        said.append(gesture.wants.split(",")[0])
    assert said[:3] == ["corner at 800 · 1100", "bottom side", "corner at 915 · 1100"]
    assert said[8] == said[0]


def test_a_click_elsewhere_picks_another_part() -> None:
    assert ended(Corners(OUTLET).press((300, 400))).picked == ("door",)
    assert ended(Corners(SCENE._replace(picked=("outlet", "door"))).press((1200, 400))).picked == ("next",)


def test_a_locked_part_is_refused() -> None:
    job = with_changed_parts(JOB, (replace(find_part(JOB, "outlet")[1], locked=True),))
    scene = OUTLET._replace(job=job)
    with pytest.raises(JobError, match="locked"):
        chosen(BOTTOM, scene).type("150")
    gesture = chosen(TOP_RIGHT, scene)
    gesture.press(TOP_RIGHT)
    gesture.point((1000, 1250))
    assert gesture.preview.words == "it is locked"
    assert gesture.release((1000, 1250)) is None


def test_nothing_is_typed_before_something_is_chosen() -> None:
    with pytest.raises(ReadingError, match="click a corner or a side"):
        Corners(OUTLET).type("150")


def test_what_to_do_first_is_said_while_a_line_is_typed() -> None:
    with pytest.raises(ReadingError, match="click the part"):
        Corners(SCENE).says("cut 150")
