"""The reading line, whole: lists, kinds by name, a preview while typing, slips that leave no trace."""

import pytest
from PySide6.QtCore import Qt

from geometry.outlines.measured import outline_box
from shared.trade.kinds import Kind
from tests.window import Keys, Person


@pytest.fixture
def wall(person: Person) -> Person:
    """A wall of 3600 x 2400, about to be drawn on."""
    _begin(person)
    return person


def _begin(person: Person) -> None:
    """Leave what is open for a wall of 3600 x 2400, about to be drawn on."""
    person.leave_job()
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_B, Keys.AltModifier)


def _boxes(person: Person) -> list[tuple[Kind, str, tuple[float, float, float, float]]]:
    face = person.shown.shown_face
    assert face is not None
    return [(part.kind, part.name, outline_box(part.outline)) for part in face.parts[1:]]


def _tried(person: Person) -> int:
    """How many parts the first face has as it is shown."""
    return len(person.shown.now.faces[0].parts)


def test_several_readings_in_one_line_answer_one_after_the_other(wall: Person) -> None:
    wall.read("0, 150", "600, 720")
    assert _boxes(wall) == [(Kind.CABINET, "", (0, 150, 600, 870))]


def test_a_line_may_say_what_is_drawn_and_the_next_is_of_that_kind_too(wall: Person) -> None:
    wall.read("outlet 300, 1100, 120, 80", "900, 1100, 120, 80")
    assert [kind for kind, _, _ in _boxes(wall)] == [Kind.OUTLET, Kind.OUTLET]
    assert wall.app.measure.modes.kinds.currentText() == "outlet"


def test_sizes_may_come_before_the_place(person: Person, subtests: pytest.Subtests) -> None:
    for sizes in ("900 by 440", "900, 440", "900 x 440", "900x440"):
        with subtests.test(sizes):
            _begin(person)
            person.read(f"sink {sizes} at 860, 80")
            assert _boxes(person) == [(Kind.FIXTURE, "sink", (860, 80, 1760, 520))]


def test_a_multiple_beside_a_size_is_still_one(wall: Person) -> None:
    wall.read("2x450 by 720 at 0, 150", "0, 900, 2x450, 600")
    assert [box for _, _, box in _boxes(wall)] == [(0, 150, 900, 870), (0, 900, 900, 1500)]


def test_a_line_may_begin_with_a_fraction_in_one_sign(wall: Person) -> None:
    wall.read("½, 150, 600, 720")
    assert _boxes(wall) == [(Kind.CABINET, "", (0.5, 150, 600.5, 870))]


def test_every_key_typed_over_the_face_is_heard_once(wall: Person) -> None:
    heard: list[str] = []
    wall.app.measure.line.heard.connect(heard.append)
    wall.type("60")
    assert heard == ["6", "60"]


def test_what_a_line_comes_to_is_shown_before_return(wall: Person) -> None:
    before = wall.shown.job
    wall.type("0, 150, 600, 720")
    assert wall.app.measure.line.answer.text() == "= 0 · 150 · 600 · 720 mm"
    assert _boxes(wall) == [(Kind.CABINET, "", (0, 150, 600, 870))]
    assert wall.shown.job is before

    wall.press(Qt.Key.Key_Escape)
    assert _boxes(wall) == []


def test_the_line_says_what_comes_next(wall: Person) -> None:
    wall.type("0, 150")
    assert "then width" in wall.app.measure.line.hint.text()


REFUSED = {
    "0, 150, 600, 720, 3": "more readings here than are needed",
    "0, 150, 600, -5": "must be above 0",
    "0, 150, wombat": "not a unit of length",
    "wombat 0, 150": "is not a kind of part",
    "0\t150\t600 kg\t720": "not a unit of length",
    "900 by 440 at 860": "a place needs two readings",
}


def test_a_line_that_is_refused_stays_and_leaves_no_trace(person: Person, subtests: pytest.Subtests) -> None:
    for text, words in REFUSED.items():
        with subtests.test(text):
            _begin(person)
            _assert_refused(person, text, words)


def _assert_refused(wall: Person, text: str, words: str) -> None:
    wants, before = wall.app.measure.line.wants.text(), wall.shown.job
    wall.app.measure.line.edit.setFocus()
    wall.app.measure.line.edit.insert(text)
    wall.press(Qt.Key.Key_Return)

    assert words in wall.app.measure.line.answer.text()
    assert wall.app.measure.line.text == text
    assert wall.shown.job is before
    wall.app.measure.line.edit.clear()
    wall.read("0")
    assert wall.app.measure.line.wants.text() != wants
    wall.read("150, 600, 720")
    assert len(_boxes(wall)) == 1


def test_nothing_is_read_where_nothing_is_wanted(wall: Person) -> None:
    wall.press(Qt.Key.Key_P, Keys.AltModifier)
    wall.press(Qt.Key.Key_Escape)
    wall.read("600")
    assert "nothing to type" in wall.app.measure.line.answer.text()


def test_up_and_down_go_through_earlier_lines(wall: Person) -> None:
    wall.read("0, 150", "600, 720")
    wall.type("9")
    wall.press(Qt.Key.Key_Up)
    wall.press(Qt.Key.Key_Up)
    assert wall.app.measure.line.text == "0, 150"
    wall.press(Qt.Key.Key_Down)
    assert wall.app.measure.line.text == "600, 720"


def test_escape_over_the_face_drops_the_line_too(wall: Person) -> None:
    wall.type("900 wombats")
    wall.app.measure.canvas.setFocus()
    wall.press(Qt.Key.Key_Escape)
    assert wall.app.measure.line.text == ""
    assert wall.app.measure.line.answer.text() == ""


def test_a_line_half_typed_is_read_anew_where_the_face_or_the_mode_is_another(wall: Person) -> None:
    wall.press(Qt.Key.Key_U, Keys.AltModifier)
    wall.type("600 door, rest open")
    assert _tried(wall) > 1

    wall.press(Qt.Key.Key_3, Keys.ControlModifier)
    assert _tried(wall) == 1
    wall.press(Qt.Key.Key_1, Keys.ControlModifier)
    assert _tried(wall) > 1
    wall.press(Qt.Key.Key_B, Keys.AltModifier)
    assert _tried(wall) == 1
    assert "not a unit of length" in wall.app.measure.line.answer.text()


def test_the_line_says_what_to_do_where_there_is_no_face(wall: Person) -> None:
    wall.app.menus.action("&Delete the face").trigger()
    assert wall.app.measure.line.wants.text() == "add a face first"
