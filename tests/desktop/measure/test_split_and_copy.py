"""Split and Copy along through the window: keys only, a preview before Return, one step of undo."""

import pytest
from PySide6.QtCore import Qt

from desktop.measure.modes import Mode
from geometry.outlines.measured import outline_box
from shared.trade.kinds import Kind
from tests.window import Keys, Person


@pytest.fixture
def wall(person: Person) -> Person:
    """A wall of 3600 x 2400 with one cabinet of 900, picked."""
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_B, Keys.AltModifier)
    person.read("cabinet 0, 150, 900, 720")
    return person


def _cabinets(person: Person) -> list[tuple[float, float]]:
    face = person.shown.shown_face
    assert face is not None
    boxes = [outline_box(part.outline) for part in face.parts if part.kind is Kind.CABINET]
    return [(box[0], box[2] - box[0]) for box in boxes]


def test_a_part_is_split_by_keys_alone(wall: Person) -> None:
    before = wall.shown.job
    wall.press(Qt.Key.Key_S, Keys.AltModifier)
    assert wall.app.hand.mode is Mode.SPLIT
    wall.type("3")
    assert wall.app.measure.line.answer.text() == "3 pieces of 300"
    assert _cabinets(wall) == [(0, 300), (300, 300), (600, 300)]
    assert wall.shown.job is before

    wall.press(Qt.Key.Key_Return)
    assert len(wall.shown.picked) == 3
    wall.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert wall.shown.job is before


def test_ten_thousand_pieces_are_refused_in_words_and_nothing_is_lost(wall: Person) -> None:
    before = wall.shown.job
    wall.press(Qt.Key.Key_S, Keys.AltModifier)
    for line in ("0", "10000"):
        wall.read(line)
        assert f"cannot be split into {line}" in wall.app.measure.line.answer.text()
        assert wall.app.measure.line.text == line
        wall.app.measure.line.edit.clear()
    assert wall.shown.job is before


def test_a_part_is_copied_along_by_keys_alone(wall: Person) -> None:
    before = wall.shown.job
    wall.press(Qt.Key.Key_L, Keys.AltModifier)
    wall.read("2 at 1000")
    assert _cabinets(wall) == [(0, 900), (1000, 900), (2000, 900)]
    wall.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert wall.shown.job is before


def test_a_copy_is_dragged_to_its_pitch(wall: Person) -> None:
    wall.press(Qt.Key.Key_L, Keys.AltModifier)
    wall.begin_drag((450, 500), (700, 500), (1450, 510))
    assert len(_cabinets(wall)) == 2
    wall.drop(1450, 510)
    wall.press(Qt.Key.Key_Return)
    (_, first), (left, second) = _cabinets(wall)
    assert (first, second) == (900, 900)
    assert left == pytest.approx(1000, abs=10)
