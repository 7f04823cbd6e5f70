"""Measure, by mouse and keys: drawing, picking, dragging, typing, taking back."""

import pytest
from PySide6.QtCore import Qt

from geometry.outlines.measured import outline_box
from shared.job import Part
from tests.window import Keys, Person


@pytest.fixture
def kitchen(person: Person) -> Person:
    """A wall of 3600 x 2400 with one cabinet, 600 x 720, at the left end 150 above the floor; the cabinet is picked."""
    _begin(person)
    return person


def _begin(person: Person) -> None:
    person.leave_job()
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_B, Keys.AltModifier)
    person.read("0", "150", "600", "720")
    person.press(Qt.Key.Key_P, Keys.AltModifier)


def test_a_box_is_drawn_by_four_readings_and_is_picked(kitchen: Person) -> None:
    assert outline_box(_picked(kitchen).outline) == (0, 150, 600, 870)


def test_a_job_just_begun_is_not_said_to_be_saved(person: Person) -> None:
    person.begin_wall("3600", "2400")

    assert person.app.window.name.text().endswith("not yet saved")


def test_a_box_is_drawn_by_pointing(kitchen: Person) -> None:
    kitchen.press(Qt.Key.Key_B, Keys.AltModifier)
    kitchen.click_at(1205, 303, Keys.ControlModifier)
    kitchen.read("450", "720")

    left, bottom, right, top = outline_box(_picked(kitchen).outline)
    assert (right - left, top - bottom) == (450, 720)
    assert left == pytest.approx(1205, abs=5)


def test_digits_typed_over_the_face_go_to_the_reading_line(kitchen: Person) -> None:
    kitchen.press(Qt.Key.Key_B, Keys.AltModifier)
    kitchen.type("600+450")

    assert kitchen.app.measure.line.edit.text() == "600+450"
    assert kitchen.app.measure.line.answer.text() == "= 1050 mm"


def test_a_wrong_reading_is_answered_at_once_and_nothing_is_lost(person: Person, subtests: pytest.Subtests) -> None:
    for wrong in ("12x", "-5", "5 kg", "1e999", "((((", "1/0"):
        with subtests.test(wrong):
            _begin(person)
            _assert_answered(person, wrong)


def _assert_answered(kitchen: Person, wrong: str) -> None:
    before = kitchen.shown.job
    kitchen.press(Qt.Key.Key_B, Keys.AltModifier)
    kitchen.read("600", "0")
    kitchen.read(wrong)

    assert kitchen.app.measure.line.edit.text() == wrong
    assert wrong in kitchen.app.measure.line.answer.text()
    kitchen.app.measure.line.edit.clear()
    kitchen.read("300", "400")
    assert before is not kitchen.shown.job
    assert outline_box(_picked(kitchen).outline) == (600, 0, 900, 400)


def test_a_width_of_less_than_nothing_is_refused_in_words(kitchen: Person) -> None:
    before = kitchen.shown.job
    kitchen.press(Qt.Key.Key_B, Keys.AltModifier)
    kitchen.read("600", "0", "-5")

    assert kitchen.app.measure.line.answer.text()
    assert kitchen.shown.job is before


def test_up_brings_back_an_earlier_reading(kitchen: Person) -> None:
    kitchen.press(Qt.Key.Key_B, Keys.AltModifier)
    kitchen.type("1")
    kitchen.press(Qt.Key.Key_Up)

    assert kitchen.app.measure.line.edit.text() == "720"


def test_escape_drops_what_was_begun_then_what_is_picked_then_the_mode(kitchen: Person) -> None:
    kitchen.press(Qt.Key.Key_B, Keys.AltModifier)
    kitchen.read("600")
    assert kitchen.app.measure.line.wants.text().endswith("height above the floor")

    kitchen.press(Qt.Key.Key_Escape)
    assert "left end" in kitchen.app.measure.line.wants.text()
    kitchen.press(Qt.Key.Key_Escape)
    assert kitchen.shown.picked == ()
    kitchen.press(Qt.Key.Key_Escape)
    assert kitchen.app.hand.mode.value == "Pick"


def test_arrows_nudge_by_one_and_with_shift_by_ten_millimetres(kitchen: Person) -> None:
    kitchen.press(Qt.Key.Key_Right)
    kitchen.press(Qt.Key.Key_Up, Keys.ShiftModifier)

    assert outline_box(_picked(kitchen).outline) == (1, 160, 601, 880)


def test_totals_move_while_a_part_is_dragged_and_a_drag_is_one_step(kitchen: Person) -> None:
    kitchen.draw_boxes("spl", ("0", "900", "3600", "600"))
    kitchen.press(Qt.Key.Key_P, Keys.AltModifier)
    before, words = kitchen.shown, _totals(kitchen)
    kitchen.begin_drag((300, 300), (300, 600), (300, 700))

    kitchen.wait_until(lambda: _totals(kitchen) != words)
    assert kitchen.shown.job is before.job
    kitchen.drop(300, 700)
    assert len(kitchen.shown.history.past) == len(before.history.past) + 1
    kitchen.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert kitchen.shown.job is before.job
    assert _totals(kitchen) == words


def test_escape_ends_a_drag_and_the_job_stays_as_it_was(kitchen: Person) -> None:
    before = kitchen.shown.job
    kitchen.begin_drag((300, 300), (300, 600), (300, 700))
    kitchen.press(Qt.Key.Key_Escape)
    kitchen.drop(300, 700)

    assert kitchen.shown.job is before
    assert kitchen.shown.tried is None


def test_copies_are_pasted_beside_and_deleted_again(kitchen: Person) -> None:
    number = len(_parts(kitchen))
    kitchen.press(Qt.Key.Key_C, Keys.ControlModifier)
    kitchen.press(Qt.Key.Key_V, Keys.ControlModifier)
    assert len(_parts(kitchen)) == number + 1

    kitchen.press(Qt.Key.Key_Delete)
    assert len(_parts(kitchen)) == number


def test_undo_to_the_start_and_redo_to_the_end(kitchen: Person) -> None:
    end = kitchen.shown.job
    while kitchen.shown.history.can_undo:
        kitchen.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert len(_parts(kitchen)) == 1

    while kitchen.shown.history.can_redo:
        kitchen.press(Qt.Key.Key_Z, Keys.ControlModifier | Keys.ShiftModifier)
    assert kitchen.shown.job is end


def test_a_circle_is_drawn_from_its_centre_and_radius(kitchen: Person) -> None:
    kitchen.press(Qt.Key.Key_R, Keys.AltModifier)
    kitchen.read("1800", "1200", "200")

    assert outline_box(_picked(kitchen).outline) == pytest.approx((1600, 1000, 2000, 1400))


def test_a_shape_is_traced_by_pointing_and_closed_by_return(kitchen: Person) -> None:
    kitchen.press(Qt.Key.Key_T, Keys.AltModifier)
    for corner in ((1000, 300), (1600, 300), (1600, 1100), (1000, 1100)):
        kitchen.click_at(*corner)
    kitchen.press(Qt.Key.Key_Return)

    left, bottom, right, top = outline_box(_picked(kitchen).outline)
    assert (left, bottom, right, top) == pytest.approx((1000, 300, 1600, 1100), abs=10)


def _picked(person: Person) -> Part:
    (part,) = person.shown.picked_parts
    return part


def _parts(person: Person) -> tuple[Part, ...]:
    face = person.shown.shown_face
    assert face is not None
    return face.parts


def _totals(person: Person) -> tuple[str, ...]:
    return person.totals
