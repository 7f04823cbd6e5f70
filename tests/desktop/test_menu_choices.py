"""What the menus offer to choose, where there is nothing that it could be chosen for."""

from PySide6.QtGui import QAction

from desktop.menu_table import CORNERS
from shared.job import Corner, Job
from shared.job_file import JobFile
from tests.window import Person


def test_no_corner_can_be_chosen_where_no_face_is_shown(person: Person) -> None:
    person.app.files.show_new(JobFile(Job("Bare")))
    actions = person.app.window.findChildren(QAction)
    (corner,) = (action for action in actions if action.text() == CORNERS[Corner.INSIDE])
    assert not corner.isEnabled()
