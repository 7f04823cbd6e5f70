"""Where the work can hurt someone the page Finish says so, and defers."""

from PySide6.QtCore import Qt

from desktop.finish.cautions_view import NOTHING
from desktop.finish.page import Heading
from shared.files.job import JobFile
from shared.job import Job
from tests.window import Keys, Person


def _open(person: Person) -> tuple[str, ...]:
    person.press(Qt.Key.Key_2, Keys.ControlModifier)
    person.app.finish.heading(Heading.CAUTIONS).click()
    return person.app.finish.cautions.words


def test_the_example_warns_of_dust_vapour_and_power_and_says_for_what_and_from_where(person: Person) -> None:
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    words = _open(person)
    assert any("silica" in caution and "Tiles" in caution and "Source: " in caution for caution in words)
    assert any("electrician" in caution for caution in words)
    assert "never says that anything is safe" in person.app.finish.cautions.head.text()


def test_where_nothing_is_coated_there_is_nothing_to_warn_of(person: Person) -> None:
    person.app.files.show_new(JobFile(Job("Bare")))
    assert _open(person) == (NOTHING,)
