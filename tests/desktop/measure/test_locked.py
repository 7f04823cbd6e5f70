"""A locked part under the hand of a person."""

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt

from geometry.outlines.measured import outline_box
from shared.edits.drawn import with_changed_parts
from shared.job import Part
from tests.window import Person


@pytest.fixture
def locked(person: Person) -> Person:
    """A wall with one cabinet on it, which is locked and picked."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("cab", ("600", "150", "600", "720"))
    person.press(Qt.Key.Key_Escape)
    person.press(Qt.Key.Key_Escape)
    store = person.app.store
    store.edit("Lock", with_changed_parts(store.open.job, (replace(cabinet(person), locked=True),)))
    return person


def cabinet(person: Person) -> Part:
    return person.shown.job.faces[0].parts[-1]


def test_a_locked_part_is_picked_but_stays_where_it_is_and_the_line_says_why(locked: Person) -> None:
    locked.click_at(900, 500)
    assert locked.shown.picked == (cabinet(locked).id,)
    locked.begin_drag((900, 500), (1000, 500), (1400, 500))
    locked.drop(1400, 500)
    assert outline_box(cabinet(locked).outline) == (600, 150, 1200, 870)
    assert locked.app.measure.line.answer.text() == "cabinet: it is locked; unlock it, or leave it out."


def test_the_arrows_and_the_delete_key_leave_a_locked_part_alone_and_the_line_says_why(locked: Person) -> None:
    locked.click_at(900, 500)
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Delete):
        locked.app.measure.line.say("")
        locked.press(key)
        assert outline_box(cabinet(locked).outline) == (600, 150, 1200, 870)
        assert "it is locked" in locked.app.measure.line.answer.text()
