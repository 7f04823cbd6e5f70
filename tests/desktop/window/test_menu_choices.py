"""What the menus offer to choose, where there is nothing that it could be chosen for."""

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QLabel

from desktop.measure.modes import KEYS
from desktop.window.menu_table import CORNERS
from shared.files.job import JobFile
from shared.job import Corner, Job
from tests.window import Person


def test_no_corner_can_be_chosen_where_no_face_is_shown(person: Person) -> None:
    person.app.files.show_new(JobFile(Job("Bare")))
    actions = person.app.window.findChildren(QAction)
    (corner,) = (action for action in actions if action.text() == CORNERS[Corner.INSIDE])
    assert not corner.isEnabled()


def test_no_form_takes_a_letter_of_a_menu_or_a_mode(person: Person) -> None:
    """Alt and K are for the chooser of kinds; the doors of the start are gone while a job is open."""
    window = person.app.window
    taken = {"Alt+A", *KEYS.values(), *(_alt(action.text()) for action in window.menuBar().actions())}
    things: list[QLabel | QAbstractButton] = [*window.findChildren(QLabel), *window.findChildren(QAbstractButton)]
    letters = {thing.text(): _alt(thing.text()) for thing in things if not window.start.isAncestorOf(thing)}
    assert {words: key for words, key in letters.items() if key in taken} == {}


def _alt(words: str) -> str:
    """The key that reaches a widget of these words; "" where none does."""
    return QKeySequence.mnemonic(words).toString()
