"""A wall traced over a phone's photo, by mouse and keys, to a takeoff that is the hand calculation."""

from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPolygonF, QTransform
from PySide6.QtTest import QTest

from desktop.gestures.gesture import REACH_DOTS
from geometry.photos.squaring import check_lengths
from shared.trade.kinds import Kind
from tests.desktop.photographed import TURNED_RIGHT, saved, with_exif, written
from tests.journeys.by_hand import Page, assert_as_by_hand
from tests.window import Keys, Person

PAGE = Page(Path(__file__).with_name("photo-wall-by-hand.md"))
WALL = 3600.0, 2400.0
SPLASHBACK = ((0.0, 910.0), (2400.0, 910.0), (2400.0, 1510.0), (0.0, 1510.0))
CABINETS = ((0.0, 0.0), (2400.0, 0.0), (2400.0, 910.0), (0.0, 910.0))
TAKEN = ((360.0, 1880.0), (2710.0, 2050.0), (2580.0, 300.0), (520.0, 460.0))
"""Where the wall's corners are on the photo: lower left, lower right, upper right, upper left."""

UNSTEADY = ((-9.0, 0.0), (8.0, -7.0), (10.0, 6.0), (-6.0, 9.0))
"""By how much the hand misses each of them, in mm of the face."""


@cache
def photo() -> bytes:
    """The wall with its cabinets and its splashback, taken aslant with the phone on its side, as EXIF says."""
    corners = ((0, 0), (WALL[0], 0), WALL, (0, WALL[1]))
    wall = QPolygonF([QPointF(*corner) for corner in corners])
    taken = QTransform.quadToQuad(wall, QPolygonF([QPointF(*corner) for corner in TAKEN]))
    assert isinstance(taken, QTransform)
    image = QImage(3000, 2250, QImage.Format.Format_RGB32)
    image.fill(QColor("dimgrey"))
    with QPainter(image) as painter:
        painter.setTransform(taken)
        painter.setPen(Qt.PenStyle.NoPen)
        for shape, colour in ((corners, "white"), (CABINETS, "saddlebrown"), (SPLASHBACK, "lightsteelblue")):
            painter.setBrush(QColor(colour))
            painter.drawPolygon(QPolygonF([QPointF(*corner) for corner in shape]))
    on_its_side = image.transformed(QTransform().rotate(-90))
    return with_exif(written(on_its_side), TURNED_RIGHT)


@pytest.fixture
def over_the_photo(person: Person, tmp_path: Path) -> Person:
    """A new wall, and the photo squared under it by the wall's own corners."""
    person.begin_wall("3600", "2400")
    person.app.menus.action("&Add photo...").trigger()
    person.fill_file_dialog(saved(tmp_path, photo(), "kitchen.jpeg"))
    person.wait_until(lambda: "lower left" in person.app.measure.line.wants.text())
    fitted = 3200 / 3000  # The photo, 3000 x 2250 dots, is shown 3200 x 2400 in the middle of the wall.
    for (u, v), (aside, over) in zip(TAKEN, UNSTEADY, strict=True):
        person.click_at(200 + u * fitted + aside, 2400 - v * fitted + over)
    person.read("3600, 2400")
    person.press(Qt.Key.Key_Return)
    person.wait_until(lambda: person.app.face_photos.layer(person.shown) is not None)
    return person


def edge_seen(person: Person, start: tuple[float, float], end: tuple[float, float]) -> tuple[float, float]:
    """Where on the canvas, on the way from a point of the face to another, the eye sees the photo change most."""
    image, view = person.app.measure.canvas.grab().toImage(), person.app.measure.canvas.glass.to_device
    steps = 400
    places = [tuple(a + (b - a) * n / steps for a, b in zip(start, end, strict=True)) for n in range(steps + 1)]
    dots = [image.pixelColor(view.map(QPointF(x, y)).toPoint()) for x, y in places]
    changes = [abs(one.red() - two.red()) + abs(one.blue() - two.blue()) for one, two in pairwise(dots)]
    x, y = places[changes.index(max(changes)) + 1]
    return x, y


def test_the_photo_shows_the_splashback_where_it_is(over_the_photo: Person) -> None:
    _, low = edge_seen(over_the_photo, (1200, 700), (1200, 1200))
    right, _ = edge_seen(over_the_photo, (2000, 1300), (2800, 1300))
    assert low == pytest.approx(910, abs=15)
    assert right == pytest.approx(2400, abs=15)


def test_a_splashback_traced_over_the_photo_with_typed_lengths_is_the_hand_calculation(over_the_photo: Person) -> None:
    person = over_the_photo
    person.press(Qt.Key.Key_K, Keys.AltModifier)
    person.type("spl")
    person.press(Qt.Key.Key_Return)
    person.press(Qt.Key.Key_T, Keys.AltModifier)
    person.read("0, 910")
    canvas = person.app.measure.canvas
    for towards, length in (((1500, 910), "2400"), ((2400, 1300), "600"), ((1000, 1510), "2400")):
        QTest.mouseMove(canvas, canvas.glass.to_device.map(QPointF(*towards)).toPoint())
        person.read(length)
    person.press(Qt.Key.Key_Return)
    net = {row.kind.value: row.net_mm2.amount for row in person.shown.takeoff.parts}
    assert net == pytest.approx({"wall": 3600 * 2400 - 2400 * 600, "splashback": 2400 * 600})
    assert person.shown.job.faces[0].photo == "kitchen.jpg"


@pytest.fixture
def checked(over_the_photo: Person) -> Person:
    """Two lengths known by the tape are pointed at on the photo, from edge to edge as the eye sees it."""
    person = over_the_photo
    for start, end, length in (((0, 1210), seen_right(person), "2400"), (seen_low(person), seen_high(person), "600")):
        person.app.menus.action("Chec&k a length on the photo").trigger()
        person.click_at(*start)
        person.click_at(*end)
        person.read(length)
    return person


def seen_right(person: Person) -> tuple[float, float]:
    return edge_seen(person, (2000, 1210), (2800, 1210))


def seen_low(person: Person) -> tuple[float, float]:
    return edge_seen(person, (1200, 700), (1200, 1200))


def seen_high(person: Person) -> tuple[float, float]:
    return edge_seen(person, (1200, 1300), (1200, 1800))


@pytest.fixture
def traced(checked: Person) -> Person:
    """The splashback, clicked corner by corner over the photo."""
    person = checked
    right, low, high = seen_right(person)[0], seen_low(person)[1], seen_high(person)[1]
    person.press(Qt.Key.Key_K, Keys.AltModifier)
    person.type("spl")
    person.press(Qt.Key.Key_Return)
    person.press(Qt.Key.Key_T, Keys.AltModifier)
    for corner in ((0, low), (right, low), (right, high), (0, high)):
        person.click_at(*corner)
    person.press(Qt.Key.Key_Return)
    return person


def test_a_splashback_clicked_over_the_photo_is_as_large_as_the_photo_is_right(traced: Person) -> None:
    place = traced.shown.job.faces[0].photo_place
    assert place is not None
    off_across, off_up = (abs(check.off_mm) for check in check_lengths(place))
    for words in ("2400 by the tape: the photo says", "600 by the tape: the photo says"):
        assert words in photo_words(traced)
    dot = traced.app.measure.canvas.reach_mm / REACH_DOTS
    splashback = next(row for row in traced.shown.takeoff.parts if row.kind is Kind.SPLASHBACK)
    off_mm2 = abs(splashback.gross_mm2.amount - 2400 * 600)
    assert 0 < off_mm2 <= (off_across + 2 * dot) * 600 + (off_up + 2 * dot) * 2400


def test_corrected_by_the_tape_it_is_counted_as_by_hand(traced: Person) -> None:
    for label, reading in (("From left", "0"), ("From floor", "910"), ("Width", "2400"), ("Height", "600")):
        field = traced.app.measure.details.row(label).focusProxy()
        assert field is not None
        traced.click(field)
        traced.press(Qt.Key.Key_A, Keys.ControlModifier)
        traced.read(reading)
    assert_as_by_hand(traced.shown.job, traced.shown.takeoff, PAGE)


def photo_words(person: Person) -> str:
    """What is said of the photo while nothing is picked."""
    person.press(Qt.Key.Key_P, Keys.AltModifier)
    person.press(Qt.Key.Key_Escape)
    return person.app.measure.details.photo.words.text()
