"""Published traverses typed into the reading line corner by corner: the takeoff says the printed areas."""

import math

import pytest
from PySide6.QtCore import Qt

from tests.window import Keys, Person

# A surveying course's text (seen): 140 493.11, printed as 140 494; 250 552.09, printed as 250 550 +- 20.
# The quadrilateral: seen. The segment of chord 21 and rise 6: 89.254148 (seen: a bulge test), here ten times as large.
TRAVERSES = {
    "five corners": (
        (
            "splashback to 406.31, 1259.97",
            "to 235.12, 1489.47",
            "to 65.81, 1126.40",
            "to 317.89, 942.04",
            "to 675.32, 1282.54",
        ),
        140_493.11,
        0.005,
    ),
    "five corners in one line": (
        ("spl 406.31, 1259.97, to 235.12, 1489.47, to 65.81, 1126.40, to 317.89, 942.04, to 675.32, 1282.54",),
        140_493.11,
        0.005,
    ),
    "four corners": (
        ("splashback to 600, 1000", "to 254.542, 1209.288", "to 97.543, 566.876", "to 470.303, 397.969"),
        250_552.09,
        0.005,
    ),
    "quadrilateral": (("splashback to 2, 1", "to 2, 3", "to 1, 2", "to 0, 0"), 2.5, 1e-9),
    "quadrilateral in centimetres": (("splashback to 2, 1 cm", "to 2 cm, 3", "to 1, 2 cm", "to 0, 0"), 250, 1e-6),
    "circular segment": (("splashback to 600, 900", "210 right rise 60 down"), 8925.4148, 5e-5),
    "equilateral triangle (exact)": (
        ("splashback to 600, 900", "300 at 60", "300 at -60"),
        math.sqrt(3) / 4 * 300**2,
        1e-6,
    ),
}


@pytest.fixture
def wall(person: Person) -> Person:
    """A wall of 3600 x 2400, about to be traced on."""
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_T, Keys.AltModifier)
    return person


@pytest.mark.parametrize(("lines", "area_mm2", "within"), TRAVERSES.values(), ids=TRAVERSES.keys())
def test_a_published_traverse_has_its_printed_area(
    wall: Person, lines: tuple[str, ...], area_mm2: float, within: float
) -> None:
    before = wall.shown.job
    wall.read(*lines)
    wall.press(Qt.Key.Key_Return)

    (picked,) = wall.shown.picked
    row = next(row for row in wall.shown.takeoff.parts if row.id == picked)
    assert row.net_mm2.amount == pytest.approx(area_mm2, abs=within)

    wall.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert wall.shown.job is before


def test_the_way_back_to_the_start_is_said_while_it_is_typed(wall: Person) -> None:
    wall.read("splashback to 600, 900", "300 right")
    wall.type("400 up")
    assert wall.app.measure.line.answer.text() == "500 back to the start"
