"""Bad input while drawing, by mouse and keys: a clear sentence each, nothing lost, nothing half done, nothing stuck."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtWidgets import QApplication

from desktop.command_line import main
from desktop.measure.modes import Mode
from shared.checks.job import check_job
from shared.job import Face, Job, Unit
from tests.journeys.hostile import Said, job_of, written
from tests.window import Keys, Person

NONSENSE = (
    *("0", "-35", "1.5", "10000", "1e999", "wombat 300", "900 by 440 at 860", "900 by -5 at 0, 0", "600 kg, 450 ea"),
    *("600\t450\t900 kg", "450\ndoor\n\n", "((((", "½", "1/0", "\x00", "\N{RIGHT-TO-LEFT OVERRIDE}054"),
    *("\N{GRINNING FACE} 600", "<b>600</b>", "9" * 10_000, "600, " * 2_500, "chain 6000, 4500", "diagonal 43260"),
    *("5 of 900 pair", "600 drawers 1000", "round 100000", "rise 1e9", "99999 right"),
)
"""What a clumsy or a hostile person types or pastes; in some modes some of it makes sense."""


@pytest.fixture
def kitchen(person: Person) -> Person:
    """Two walls, a row of cabinets on the first; nothing is picked."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.read("2400, 3000")
    person.press(Qt.Key.Key_U, Keys.AltModifier)
    person.read("600 door, 450 drawers 3, 900 pair, splashback")
    person.press(Qt.Key.Key_Escape)
    return person


@pytest.fixture
def decimal_comma() -> Iterator[None]:
    usual = QLocale()
    QLocale.setDefault(QLocale("de_DE"))
    yield
    QLocale.setDefault(usual)


def _face(person: Person) -> Face:
    face = person.shown.shown_face
    assert face is not None
    return face


def _assert_all_answered(person: Person, mode: Mode) -> None:
    """Paste all the nonsense in a mode, a part picked; each is answered, or is one step that can be undone."""
    before, part = person.shown.job, _face(person).parts[4].id
    for text in NONSENSE:
        person.app.store.pick((part,))
        person.app.hand.choose_mode(mode)
        QApplication.clipboard().setText(text)
        person.app.measure.line.edit.setFocus()
        person.press(Qt.Key.Key_V, Keys.ControlModifier)
        assert person.shown.job is before
        person.press(Qt.Key.Key_Return)
        _assert_answered_or_done(person, before)
        for _ in range(4):
            person.press(Qt.Key.Key_Escape)
        assert (person.app.measure.line.text, person.app.hand.mode) == ("", Mode.PICK)
        assert person.shown.now is before


def _assert_answered_or_done(person: Person, before: Job) -> None:
    """What is refused stays in the line with a sentence beside it; what is done is one step that holds together."""
    if person.app.measure.line.text:
        assert person.shown.job is before
        assert person.app.measure.line.answer.text().endswith(".")
        assert person.app.measure.line.answer.text().isprintable()
    check_job(person.shown.job)
    if person.shown.job is not before:
        person.app.store.undo()
    assert person.shown.job is before


def test_nonsense_is_answered_in_every_mode(kitchen: Person, subtests: pytest.Subtests) -> None:
    drawn = kitchen.shown.job
    for mode in Mode:
        with subtests.test(mode.name):
            kitchen.show_anew(drawn)
            _assert_all_answered(kitchen, mode)


@pytest.mark.usefixtures("decimal_comma")
def test_nonsense_is_answered_in_inches_where_the_comma_is_the_decimal_sign(
    kitchen: Person, subtests: pytest.Subtests
) -> None:
    kitchen.app.faces.set_unit(Unit.INCH)
    drawn = kitchen.shown.job
    for mode in Mode:
        with subtests.test(mode.name):
            kitchen.show_anew(drawn)
            _assert_all_answered(kitchen, mode)


def test_readings_tenfold_off_are_told_and_move_nothing(kitchen: Person, subtests: pytest.Subtests) -> None:
    drawn = kitchen.shown.job
    for line in ("wall 24000", "wall 240", "left 240, right 24000, diagonal 10", "chain 600, 4.5, 900"):
        with subtests.test(line):
            kitchen.show_anew(drawn)
            _assert_told(kitchen, line)


def _assert_told(kitchen: Person, line: str) -> None:
    drawn = _face(kitchen).parts
    kitchen.press(Qt.Key.Key_O, Keys.AltModifier)
    kitchen.read("600, 1050, 1950", line)

    found = [finding for finding in kitchen.shown.takeoff.findings if finding.code == "readings"]
    assert found or line.startswith("chain")  # new lines, as far as the tape tells
    assert _face(kitchen).parts is drawn
    for decide in (kitchen.app.measure.details.readings.spread, kitchen.app.measure.details.readings.stands):
        decide.click()
        check_job(kitchen.shown.job)


def test_a_face_deleted_while_one_of_its_readings_is_typed_again(kitchen: Person) -> None:
    kitchen.press(Qt.Key.Key_O, Keys.AltModifier)
    kitchen.read("600, 1050, 1950")
    again = kitchen.app.measure.details.readings.again
    again.setFocus()
    again.selectAll()
    kitchen.type("620")
    kitchen.app.menus.action("&Delete the face").trigger()

    assert kitchen.shown.now is kitchen.shown.job
    assert [face.name for face in kitchen.shown.job.faces] == ["B"]
    kitchen.app.store.undo()
    assert len(kitchen.shown.job.faces) == 2


READING = {"start": "start", "end": "line", "length_mm": 600}
BAD_READINGS: dict[str, tuple[dict[str, Any], str]] = {
    "negative": ({"length_mm": -5}, "a reading must be above 0"),
    "endless": ({"length_mm": 1e300}, "a reading must be above 0"),
    "text": ({"length_mm": "600"}, "should be a number"),
    "no way": ({"way": "sideways"}, '"sideways" is not one of the words'),
    "going nowhere": ({"end": "start"}, "it begins and ends at the same place"),
    "no corner": ({"way": "straight"}, 'begins or ends at "start"'),
    "steering": ({"end": "\N{RIGHT-TO-LEFT OVERRIDE}a"}, "contains a control character (U+202E)"),
}


def _with_readings(*readings: dict[str, Any]) -> dict[str, Any]:
    job = job_of()
    job["rooms"][0]["faces"][0]["readings"] = readings
    return job


@pytest.mark.parametrize("name", BAD_READINGS)
def test_a_bad_reading_in_a_file_is_named(desk: Path, said: Said, name: str) -> None:
    fields, words = BAD_READINGS[name]
    assert words in said("check", written(desk, _with_readings({**READING, **fields})))


def test_five_hundred_readings_that_all_disagree_are_told(desk: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = written(desk, _with_readings(*({**READING, "length_mm": 600 + count} for count in range(500))))
    assert main(["check", str(path)]) == 1
    assert "disagree" in capsys.readouterr().out
