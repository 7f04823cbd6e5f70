"""Setting out through the window: lines, doubts, and what the person decides about them."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton

from desktop.measure.readings_form import ReadingsForm
from geometry.set_out.lines import set_out
from shared.job import Face
from tests.window import Keys, Person


@pytest.fixture
def wall(person: Person) -> Person:
    """A wall of 3600 x 2400 in Set-out, with a cabinet whose left side stands at 1050 and whose right side at 1950."""
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_B, Keys.AltModifier)
    person.read("cabinet 1050, 150, 900, 720")
    person.press(Qt.Key.Key_O, Keys.AltModifier)
    return person


def _face(person: Person) -> Face:
    face = person.shown.shown_face
    assert face is not None
    return face


def _right(person: Person) -> float:
    """The right side of the cabinet."""
    return max(vertex.x for vertex in _face(person).parts[1].outline)


def _lines(person: Person) -> list[float]:
    return [round(line.at_mm, 1) for line in set_out(_face(person), person.shown.job.tape).lines]


def _form(person: Person) -> ReadingsForm:
    return person.app.measure.details.readings


def _press(person: Person, button: QPushButton) -> None:
    person.wait_until(lambda: button.height() > 0)
    person.click(button)


def _text(person: Person, row: int, column: int) -> str:
    item = _form(person).table.topLevelItem(row)
    assert item is not None
    return item.text(column)


def _choose(person: Person, row: int) -> None:
    item = _form(person).table.topLevelItem(row)
    assert item is not None
    _form(person).table.setCurrentItem(item)


def test_the_reading_in_doubt_is_the_one_that_is_read_again(wall: Person) -> None:
    wall.read("600, 1050, 1950, 2410", "chain 600, 450, 900, 450, 1200")

    assert _form(wall).again.text() == "2410"


def test_readings_are_listed_with_what_is_off_and_nothing_is_asked_where_all_agree(wall: Person) -> None:
    wall.read("600, 1050, 1950")
    form = _form(wall)
    assert form.isVisible()
    assert [_text(wall, row, 0) for row in range(3)] == ["left end, 600", "left end, 1050", "left end, 1950"]
    assert not form.sentences.isVisible()
    assert not form.spread.isEnabled()


def test_a_misread_length_is_named_and_typed_again_and_what_stands_on_its_line_goes_along(wall: Person) -> None:
    wall.read("600, 1050, 1950", "chain 600, 450, 930", "chain 600, 450, 900")
    form = _form(wall)
    assert "Measure the 930 from 1050 to 1950 again first" in form.sentences.text()
    _choose(wall, 5)
    form.again.setFocus()
    form.again.selectAll()
    wall.type("900")
    wall.press(Qt.Key.Key_Return)
    assert not form.sentences.isVisible()
    assert _lines(wall) == [600, 1050, 1950]


def test_a_person_may_decide_that_a_reading_stands(wall: Person) -> None:
    wall.read("600, 1050, 1950", "chain 600, 450, 930", "chain 600, 450, 900")
    form = _form(wall)
    _choose(wall, 5)
    _press(wall, form.stands)
    assert not form.sentences.isVisible()
    assert _text(wall, 5, 2) == "kept"
    wall.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert form.sentences.isVisible()


def test_the_difference_may_be_spread(wall: Person) -> None:
    wall.read("600, 1050, 1953", "chain 600, 450, 900")
    _press(wall, _form(wall).spread)
    assert all(abs(residual) < 1e-9 for residual in set_out(_face(wall), wall.shown.job.tape).residuals_mm)


def test_a_reading_is_taken_away(wall: Person) -> None:
    wall.read("600, 1050")
    form = _form(wall)
    _choose(wall, 0)
    _press(wall, form.take_away)
    assert _lines(wall) == [1050]


def test_a_wall_is_drawn_with_the_corners_that_were_read(wall: Person) -> None:
    wall.read("floor 3600, left 2400, right 2390, top 3600, diagonal 4326.66")
    form = _form(wall)
    assert form.draw.isVisible()
    _press(wall, form.draw)
    corners = _face(wall).parts[0].outline
    assert (corners[0].x, corners[0].y) == (0, 0)
    assert corners[3].y == pytest.approx(2400, abs=1)
    assert not form.draw.isVisible()
    wall.type("up 908")
    assert wall.app.measure.line.answer.text() == "908 · 1492 left"


def test_what_a_reading_typed_again_moves_is_shown_before_it_is_taken(wall: Person) -> None:
    wall.read("1050, 1950")
    form = _form(wall)
    _choose(wall, 1)
    form.again.setFocus()
    form.again.selectAll()
    wall.type("2000")
    before = wall.shown.job
    assert _right(wall) == pytest.approx(2000)
    assert wall.shown.job is before
    wall.press(Qt.Key.Key_Return)
    assert _right(wall) == pytest.approx(2000)
    assert wall.shown.job is not before
