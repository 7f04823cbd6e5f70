"""How sure the takeoff is, in the count, over the totals, and by the tape that the menu names.

By hand, in mm, from the greatest error that a tape may have: a + b L, L in whole metres begun, and more where it is
read from the end hook (UK SI 2016/1153 schedule 1I = EU directive 2014/32 annex X, seen; OIML R 35-1 has the same a
and b, from memory):

    class II, 0.3 + 0.2 L + 0.2:    0.9 m 0.7, 1.5 m 0.9, 3 m 1.1
    class III, 0.6 + 0.4 L + 0.3:   0.9 m 1.3, 1.5 m 1.7, 3 m 2.1
"""

import math

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction

from shared.job import Unit
from shared.trade.tape import TapeClass
from tests.window import Keys, Person

AREA_M2 = {
    TapeClass.SECOND: math.hypot(0.6 * 1.1, 3 * 0.7, 3 * 0.9) / 1000,
    TapeClass.THIRD: math.hypot(0.6 * 2.1, 3 * 1.3, 3 * 1.7) / 1000,
}
"""Of 3000 x 600 mm, from 900 to 1500 above the floor."""

ROUND_IT_MM = math.hypot(2 * 1.1, 2 * 0.7, 2 * 0.9)
"""Of both sides of each, by class II."""

M2_IN_A_SQUARE_FOOT, MM_IN_AN_INCH = 0.3048**2, 25.4  # exact


@pytest.fixture
def splashback(person: Person) -> Person:
    """A wall with a splashback from its left end, 3000 x 600, 900 above the floor."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("spl", ("0", "900", "3000", "600"))
    return person


def tape(person: Person) -> TapeClass:
    return person.shown.job.tape


def test_the_totals_say_how_far_they_could_be_off(splashback: Person) -> None:
    assert splashback.tips_of_totals[0] == f"Tolerance of the tape: coated ± {AREA_M2[TapeClass.SECOND]:.3f} m²"
    assert splashback.tips_of_totals[1] == f"Tolerance of the tape: masking ± {ROUND_IT_MM:.1f} mm"


def test_the_tape_of_the_job_is_chosen_in_the_menu_in_one_step(splashback: Person) -> None:
    actions = splashback.app.window.findChildren(QAction)
    action = next(each for each in actions if each.text() == "Class III tape")
    steps = len(splashback.shown.history.past)
    action.trigger()

    assert tape(splashback) is TapeClass.THIRD
    assert action.isChecked()
    assert len(splashback.shown.history.past) == steps + 1
    assert splashback.tips_of_totals[0] == f"Tolerance of the tape: coated ± {AREA_M2[TapeClass.THIRD]:.3f} m²"
    splashback.app.store.undo()
    assert tape(splashback) is TapeClass.SECOND


def test_the_count_says_how_sure_it_is_and_by_which_rule(splashback: Person) -> None:
    splashback.press(Qt.Key.Key_3, Keys.ControlModifier)
    model = splashback.app.count.model
    row = model.row_at(model.index_of("sure Coated"))
    assert row is not None
    assert row.cells == ("Coated", "", "", "± 0.003 m²")
    assert any("UK SI 2016/1153" in child.cells[0] for child in row.children)
    (part,) = splashback.shown.takeoff.parts[1:]
    note = model.row_at(model.index_of(f"part {part.id} sure"))
    assert note is not None
    assert note.cells[0] == "Tolerance of the tape: coated ± 0.003 m²"


def test_an_inch_job_is_off_by_square_feet_and_inches(splashback: Person) -> None:
    splashback.app.faces.set_unit(Unit.INCH)
    feet = AREA_M2[TapeClass.SECOND] / M2_IN_A_SQUARE_FOOT
    assert splashback.tips_of_totals[0] == f"Tolerance of the tape: coated ± {feet:.2f} ft²"
    assert round(ROUND_IT_MM / MM_IN_AN_INCH * 8) == 1
    assert splashback.tips_of_totals[1] == 'Tolerance of the tape: masking ± 1/8"'
