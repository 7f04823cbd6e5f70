import math

import pytest

from desktop.gestures.gesture import Done, Gesture, Held
from desktop.gestures.preview import Point
from desktop.gestures.trace import Trace
from geometry.outline import area_mm2
from shared.errors import OutlineError
from tests.desktop.gestures.scenes import SCENE, new_outline

FREE = Held(free=True)
ASLANT = Held(shift=True, free=True)


def corners_of(done: Done | None) -> list[Point]:
    return [(round(vertex.x, 9), round(vertex.y, 9)) for vertex in new_outline(done)]


def traced(*points: Point, held: Held = FREE) -> Gesture:
    trace = Trace(SCENE)
    for point in points:
        trace.press(point, held)
    return trace


def test_corners_that_return_to_the_start_close_an_outline() -> None:
    trace = traced((2000, 1000), (2600, 1004), (2597, 1500), (2004, 1500))
    done = trace.press((2005, 1004))
    assert corners_of(done) == [(2000, 1000), (2600, 1000), (2600, 1500), (2004, 1500)]


def test_sides_run_square_unless_shift_is_held() -> None:
    trace = traced((2000, 1000), (2600, 1100))
    assert trace.preview.path[-1].y == 1000
    aslant = Trace(SCENE)
    aslant.press((2000, 1000), FREE)
    aslant.press((2600, 1100), ASLANT)
    assert aslant.preview.path[-1].y == 1100


def test_sides_run_square_to_a_slanting_one() -> None:
    trace = Trace(SCENE)
    trace.press((2000, 1000), FREE)
    trace.press((2300, 1400), ASLANT)
    trace.point((1900, 1750), FREE)
    end = trace.preview.path[-1]
    assert (end.x - 2300) * 300 + (end.y - 1400) * 400 == pytest.approx(0)


def test_typed_lengths_run_where_the_hand_points() -> None:
    trace = Trace(SCENE)
    trace.press((2000, 1000))
    for hand, length_mm in (((2300, 1010), 600), ((2610, 1700), 500), ((2100, 1490), 600)):
        trace.point(hand)
        trace.read(length_mm)
    done = trace.enter()
    assert corners_of(done) == [(2000, 1000), (2600, 1000), (2600, 1500), (2000, 1500)]


def test_an_arc_goes_through_a_pointed_place() -> None:
    trace = traced((2000, 1000), (2600, 1000)).turned()
    trace.press((2600, 1600), FREE)
    trace.press((2900, 1300), FREE)
    trace.press((2000, 1600), FREE)
    done = trace.enter()
    assert area_mm2(new_outline(done)) == pytest.approx(
        600 * 600 + math.pi * 300**2 / 2
    )  # exact: a half circle on a square


def test_an_arc_takes_a_typed_rise() -> None:
    # Chord 21, rise 6: segment 89.254148 (design page "Areas": seen, a bulge test), here ten times as large.
    trace = traced((2000, 1000)).turned()
    trace.press((2210, 1000), FREE)
    trace.point((2100, 900))
    trace.read(60)
    done = trace.enter()
    assert area_mm2(new_outline(done)) == pytest.approx(8925.4148, abs=1e-3)


def test_a_slip_is_taken_back_one_corner_at_a_time() -> None:
    trace = traced((2000, 1000), (2600, 1000), (2600, 1500))
    trace.back()
    trace.point((2600, 1300), FREE)
    assert [(vertex.x, vertex.y) for vertex in trace.preview.path] == [(2000, 1000), (2600, 1000), (2600, 1300)]
    trace.back()
    trace.back()
    assert not trace.is_begun


def test_taking_back_a_corner_takes_back_the_arc_to_it() -> None:
    trace = traced((2000, 1000)).turned()
    trace.press((2600, 1000), FREE)
    trace.press((2300, 800), FREE)
    trace.back()
    trace.point((2600, 1000), FREE)
    assert [vertex.bulge for vertex in trace.preview.path] == [0, 0]


def test_an_outline_that_crosses_itself_is_refused_and_nothing_is_lost() -> None:
    trace = traced((2000, 1000), (2600, 1500), (2600, 1000), (2000, 1500), held=ASLANT)
    with pytest.raises(OutlineError, match="cross"):
        trace.enter()
    assert len(trace.preview.path) == 4


def test_two_corners_close_nothing() -> None:
    trace = traced((2000, 1000), (2600, 1000))
    with pytest.raises(OutlineError):
        trace.enter()


def test_the_hand_is_told_that_the_outline_closes_at_the_start() -> None:
    trace = traced((2000, 1000), (2600, 1000), (2600, 1500))
    trace.point((2010, 1010))
    assert "closes here" in trace.preview.words
