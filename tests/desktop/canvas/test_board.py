from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QImage, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from desktop.canvas.board import Canvas
from desktop.gestures.gesture import Held
from desktop.gestures.preview import Preview
from desktop.look.palette import dark, light
from desktop.painting.drawing import PaintOptions
from geometry.outlines.shapes import box
from shared.job import View
from takeoff.drawing.sizes import sizes_box
from tests.desktop.drawn import DRAWING


@pytest.fixture
def canvas(qtbot: QtBot) -> Iterator[Canvas]:
    canvas = Canvas(light())
    qtbot.addWidget(canvas)
    canvas.resize(800, 600)
    canvas.show_drawing(DRAWING)
    canvas.show()
    yield canvas
    canvas.close()


def place_of(canvas: Canvas, x_mm: float, y_mm: float) -> QPoint:
    return canvas.glass.to_device.map(QPointF(x_mm, y_mm)).toPoint()


def turn_wheel(
    canvas: Canvas,
    angle: QPoint,
    pixels: QPoint | None = None,
    keys: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier,
    at: QPointF | None = None,
) -> None:
    where = at or QPointF(400, 300)
    phase = Qt.ScrollPhase.NoScrollPhase  # X11 gives none
    none = Qt.MouseButton.NoButton
    event = QWheelEvent(where, canvas.mapToGlobal(where), pixels or QPoint(), angle, none, keys, phase, False)
    QApplication.sendEvent(canvas, event)


def test_a_face_is_shown_whole_with_room_round_it(canvas: Canvas) -> None:
    low, high = place_of(canvas, 0, 0), place_of(canvas, 3600, 2400)
    assert canvas.rect().adjusted(40, 40, -40, -40).contains(low)
    assert canvas.rect().adjusted(40, 40, -40, -40).contains(high)
    assert low.y() > high.y()


def test_a_plan_has_its_wall_at_the_top(canvas: Canvas) -> None:
    canvas.show_drawing(DRAWING._replace(face="f2", view=View.PLAN))
    assert place_of(canvas, 0, 0).y() < place_of(canvas, 0, 600).y()


def test_an_empty_face_is_looked_at_as_if_a_wall_stood_there(canvas: Canvas) -> None:
    canvas.show_drawing(DRAWING._replace(face="f3", box=(0, 0, 0, 0), areas=(), lines=(), texts=(), sizes=()))
    assert canvas.rect().contains(place_of(canvas, 3600, 2400))


def test_pointing_pressing_and_letting_go_are_said_in_millimetres(canvas: Canvas, qtbot: QtBot) -> None:
    place = place_of(canvas, 1000, 500)
    with qtbot.waitSignal(canvas.pressed) as pressed:
        QTest.mousePress(canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.ShiftModifier, place)
    with qtbot.waitSignal(canvas.released) as released:
        QTest.mouseRelease(canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.ControlModifier, place)
    at, keys = pressed.args
    assert at == pytest.approx((1000, 500), abs=1 / canvas.glass.scale)
    assert keys == Held(shift=True)
    assert released.args[1] == Held(free=True)


def test_two_fingers_move_the_face_and_do_not_zoom(canvas: Canvas) -> None:
    before = canvas.glass
    turn_wheel(canvas, QPoint(0, 120), QPoint(7, -30))
    assert canvas.glass == before.panned(QPointF(7, -30))


def test_a_wheel_with_ctrl_zooms_about_the_hand(canvas: Canvas) -> None:
    hand = QPointF(200, 200)
    under = canvas.glass.in_mm(hand)
    scale = canvas.glass.scale
    turn_wheel(canvas, QPoint(0, 120), keys=Qt.KeyboardModifier.ControlModifier, at=hand)
    assert canvas.glass.scale == pytest.approx(scale * 1.0015**120)
    assert canvas.glass.in_mm(hand) == pytest.approx(under)


@pytest.mark.parametrize("keys", [Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ControlModifier])
def test_a_wheel_that_has_not_turned_changes_nothing(canvas: Canvas, keys: Qt.KeyboardModifier) -> None:
    before = canvas.glass
    turn_wheel(canvas, QPoint(0, 0), keys=keys)
    assert canvas.glass == before


def test_zoom_has_ends(canvas: Canvas) -> None:
    for _ in range(100):
        canvas.zoom_in()
    assert canvas.glass.scale == 50
    for _ in range(200):
        canvas.zoom_out()
    assert canvas.glass.scale == 0.005


def test_zooming_by_keys_and_whole_again(canvas: Canvas) -> None:
    whole = canvas.glass
    QTest.keyClick(canvas, Qt.Key.Key_Plus, Qt.KeyboardModifier.ControlModifier)
    assert canvas.glass.scale > whole.scale
    QTest.keyClick(canvas, Qt.Key.Key_0, Qt.KeyboardModifier.ControlModifier)
    assert canvas.glass == whole


def test_a_whole_face_has_room_for_its_sizes_when_they_are_shown(canvas: Canvas) -> None:
    canvas.set_options(PaintOptions(sizes=False))
    bare = canvas.glass
    canvas.set_options(PaintOptions(sizes=True))
    left, bottom, right, top = sizes_box(DRAWING.box)

    assert canvas.rect().contains(place_of(canvas, left, bottom))
    assert canvas.rect().contains(place_of(canvas, right, top))
    canvas.set_options(PaintOptions(sizes=False))
    assert canvas.glass == bare


def test_the_face_keeps_still_under_a_gesture_that_reaches_beyond_it(canvas: Canvas) -> None:
    whole, grown = canvas.glass, DRAWING._replace(box=(-2000, 0, 9000, 4000))
    canvas.show_preview(Preview(spot=(0, 0)), still=True)
    canvas.show_drawing(grown)
    assert canvas.glass == whole

    canvas.show_preview(Preview())
    assert canvas.rect().contains(place_of(canvas, -2000, 0))
    assert canvas.rect().contains(place_of(canvas, 9000, 4000))


def test_a_whole_face_stays_whole_when_the_canvas_changes_its_size(canvas: Canvas) -> None:
    canvas.resize(500, 400)
    assert canvas.rect().contains(place_of(canvas, 3600, 2400))
    canvas.zoom_in()
    near = canvas.glass
    canvas.resize(700, 500)
    assert canvas.glass == near


def test_plain_characters_go_to_the_reading_line(canvas: Canvas, qtbot: QtBot) -> None:
    for typed in "9+-0x'":
        with qtbot.waitSignal(canvas.typed) as signal:
            QTest.keyClicks(canvas, typed)
        assert signal.args == [typed]


def test_a_shortcut_is_no_text(canvas: Canvas, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(canvas.typed):
        QTest.keyClick(canvas, Qt.Key.Key_B, Qt.KeyboardModifier.AltModifier)
        QTest.keyClick(canvas, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)


@pytest.mark.parametrize(
    ("key", "signal"),
    [
        (Qt.Key.Key_Return, "entered"),
        (Qt.Key.Key_Enter, "entered"),
        (Qt.Key.Key_Backspace, "took_back"),
        (Qt.Key.Key_Escape, "cancelled"),
        (Qt.Key.Key_Delete, "deleted"),
    ],
)
def test_keys_say_what_is_meant(canvas: Canvas, qtbot: QtBot, key: Qt.Key, signal: str) -> None:
    with qtbot.waitSignal(getattr(canvas, signal)):
        QTest.keyClick(canvas, key)


@pytest.mark.parametrize(
    ("key", "keys", "way"),
    [
        (Qt.Key.Key_Left, Qt.KeyboardModifier.NoModifier, [-1.0, 0.0]),
        (Qt.Key.Key_Up, Qt.KeyboardModifier.NoModifier, [0.0, 1.0]),
        (Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier, [10.0, 0.0]),
        (Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier, [0.0, -10.0]),
    ],
)
def test_arrow_keys_nudge(
    canvas: Canvas, qtbot: QtBot, key: Qt.Key, keys: Qt.KeyboardModifier, way: list[float]
) -> None:
    with qtbot.waitSignal(canvas.nudged) as nudged:
        QTest.keyClick(canvas, key, keys)
    assert nudged.args == way


def test_up_on_a_plan_goes_towards_the_wall(canvas: Canvas, qtbot: QtBot) -> None:
    canvas.show_drawing(DRAWING._replace(face="f2", view=View.PLAN))
    with qtbot.waitSignal(canvas.nudged) as nudged:
        QTest.keyClick(canvas, Qt.Key.Key_Up)
    assert nudged.args == [0.0, -1.0]


@pytest.mark.parametrize("space", [False, True])
def test_the_face_is_dragged_by_the_middle_button_or_with_space(canvas: Canvas, qtbot: QtBot, space: bool) -> None:
    button = Qt.MouseButton.LeftButton if space else Qt.MouseButton.MiddleButton
    before = canvas.glass
    if space:
        QTest.keyPress(canvas, Qt.Key.Key_Space)
    with qtbot.assertNotEmitted(canvas.pressed):
        QTest.mousePress(canvas, button, pos=QPoint(300, 300))
        QTest.mouseMove(canvas, QPoint(340, 280))
        QTest.mouseRelease(canvas, button, pos=QPoint(340, 280))
    assert canvas.glass == before.panned(QPointF(40, -20))
    if space:
        QTest.keyRelease(canvas, Qt.Key.Key_Space)
    with qtbot.waitSignal(canvas.pressed):
        QTest.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=QPoint(300, 300))


def test_a_screen_reader_is_told_what_stands_there_and_what_is_picked(canvas: Canvas) -> None:
    assert canvas.accessibleName() == "Face A, elevation"
    assert "3600 by 2400: 1 wall, 1 bulkhead" in canvas.accessibleDescription()
    canvas.set_options(PaintOptions(picked=frozenset({"door"})))
    assert canvas.accessibleDescription().endswith("Picked: door A1.")


def grabbed(canvas: Canvas) -> QImage:
    return canvas.grab().toImage()


def test_what_a_gesture_would_do_is_painted_and_goes_again(canvas: Canvas) -> None:
    before = grabbed(canvas)
    canvas.show_preview(
        Preview(
            outlines=(box(3100, 1000, 300, 300),), rubber=(0, 0, 500, 500), spot=(3400, 1300), words="corner of wall"
        )
    )
    assert grabbed(canvas) != before
    canvas.show_preview(Preview())
    assert grabbed(canvas) == before


def test_picked_parts_are_framed(canvas: Canvas) -> None:
    place = place_of(canvas, 825, 150)
    canvas.set_options(PaintOptions(picked=frozenset({"door"})))
    assert QColor(light().accent).name() in {
        grabbed(canvas).pixelColor(place.x(), place.y() + y).name() for y in (-1, 0)
    }


def test_a_face_stands_on_the_paper_of_the_look_that_it_is_shown_in(canvas: Canvas, qtbot: QtBot) -> None:
    assert grabbed(canvas).pixelColor(5, 5).name().upper() == light().paper
    other = Canvas(dark())
    qtbot.addWidget(other)
    other.show_drawing(DRAWING)
    assert grabbed(other).pixelColor(5, 5).name().upper() == dark().paper


def test_without_a_drawing_there_is_paper(canvas: Canvas) -> None:
    canvas.show_drawing(None)
    assert grabbed(canvas).pixelColor(400, 300).name().upper() == light().paper
