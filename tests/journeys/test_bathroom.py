"""A bathroom by mouse and keys: round basin, bath with rounded ends, sloping ceiling, tiles; counted as by hand."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from tests.journeys.by_hand import Page, assert_as_by_hand
from tests.takeoff.hand_calculation import rows_under, totals_on
from tests.window import Keys, Person

PAGE = Page(Path(__file__).with_name("bathroom-by-hand.md"))
SLOPING = "wall to 0, 0, to 2400, 0, to 2400, 1200, to 1200, 2400, to 0, 2400"
TILES_UNDER_IT = "splashback to 0, 0, to 2400, 0, to 2400, 1200, to 2100, 1500, to 0, 1500"


def mode(person: Person, letter: Qt.Key) -> None:
    person.press(letter, Keys.AltModifier)


def add_plan(person: Person, width: str, depth: str) -> None:
    """A further face, seen from above: its kind stands before its width."""
    person.press(Qt.Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
    person.press(Qt.Key.Key_Tab, Keys.ShiftModifier)
    person.press(Qt.Key.Key_Down)
    person.press(Qt.Key.Key_Tab)
    person.type(width)
    person.press(Qt.Key.Key_Tab)
    person.read(depth)


def delete_at(person: Person, x: float, y: float) -> None:
    mode(person, Qt.Key.Key_P)
    person.click_at(x, y)
    person.press(Qt.Key.Key_Delete)


def fill(person: Person, label: str, text: str) -> None:
    """A field of the details."""
    field = person.app.measure.details.row(label).focusProxy()
    assert field is not None
    person.click(field)
    person.press(Qt.Key.Key_A, Keys.ControlModifier)
    person.read(text)


@pytest.fixture
def walls(person: Person) -> Person:
    """Two walls that meet at an inside corner; the room is no kitchen."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.read("1700, 2400 end")
    window = person.app.window
    person.app.menus.action("Rename the room...").trigger()
    person.wait_until(lambda: QApplication.activeWindow() not in (window, None))
    person.read("Bathroom")
    window.activateWindow()
    person.wait_until(window.isActiveWindow)
    return person


@pytest.fixture
def bath_wall(walls: Person) -> Person:
    """The bath, and tiles of 200 over it."""
    mode(walls, Qt.Key.Key_B)
    walls.read("bath 0, 0, 1700, 560", "splashback 0, 560, 1700, 1500")
    mode(walls, Qt.Key.Key_P)
    fill(walls, "Tile width", "200")
    fill(walls, "Grout", "3")
    return walls


@pytest.fixture
def basin_wall(bath_wall: Person) -> Person:
    """The wall anew under its slope, tiles up to the slope, the vanity, the mirror."""
    person = bath_wall
    person.press(Qt.Key.Key_Right, Keys.AltModifier)
    delete_at(person, 1200, 1200)
    mode(person, Qt.Key.Key_T)
    for line in (SLOPING, TILES_UNDER_IT):
        person.read(line)
        person.press(Qt.Key.Key_Return)
    mode(person, Qt.Key.Key_B)
    person.read(
        "cabinet 900, 150, 900, 650", "door 902, 152, 446, 646", "1352, 152, 446, 646", "bench 900, 800, 900, 40"
    )
    mode(person, Qt.Key.Key_R)
    person.read("mirror 1350, 1180, 250")
    return person


@pytest.fixture
def bathroom(basin_wall: Person) -> Person:
    """The plans of the vanity top and of the bath."""
    person = basin_wall
    add_plan(person, "900", "480")
    delete_at(person, 450, 240)
    mode(person, Qt.Key.Key_R)
    for _ in range(2):
        mode(person, Qt.Key.Key_A)
    person.read("bench 0, 0, 900, 480, 60")
    mode(person, Qt.Key.Key_A)
    person.read("basin 450, 240, 200")
    add_plan(person, "1700", "800")
    for _ in range(2):
        mode(person, Qt.Key.Key_A)
    person.read("bath 100, 100, 1500, 600, 300")
    return person


def test_the_bathroom_is_counted_as_by_hand(bathroom: Person, subtests: pytest.Subtests) -> None:
    with subtests.test("areas and lengths"):
        assert_as_by_hand(bathroom.shown.job, bathroom.shown.takeoff, PAGE)
    with subtests.test("tiles and grout lines"):
        (by_hand,) = rows_under("Tiles", PAGE.path)
        (row,) = bathroom.shown.takeoff.tiles
        assert (row.whole, row.cut, row.grout_mm.amount) == pytest.approx(by_hand.amounts)
        assert bathroom.shown.takeoff.totals.grout_mm / 1e3 == pytest.approx(totals_on(PAGE.path)["grout lines, m"])
    with subtests.test("the name of the room"):
        assert [room.name for room in bathroom.shown.job.rooms] == ["Bathroom"]
