"""Opening, saving and leaving, so that nothing is lost."""

import logging
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox

from shared.files.job import read_job_file
from tests.window import Keys, Person

Answer = QMessageBox.StandardButton


@pytest.fixture
def drawn(person: Person) -> Person:
    """A new job with a wall and a door that nobody has saved."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("doo", ("0", "150", "450", "720"))
    return person


def test_the_example_opens_as_a_job_without_a_file(person: Person) -> None:
    person.click(person.app.start.example)
    person.wait_until(lambda: person.app.store.shown is not None)

    assert person.shown.path is None
    assert len(person.shown.job.faces) >= 7


def test_a_file_that_is_no_job_is_refused_in_one_sentence_and_the_job_stays(drawn: Person, tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.recoat"
    wrong.write_bytes(b"PK\x03\x04 no job at all")
    before = drawn.shown.job
    drawn.app.files.open_path(wrong)
    drawn.wait_until(drawn.app.window.notice.isVisible)

    assert str(wrong) in drawn.app.window.notice.text()
    assert "\n" not in drawn.app.window.notice.text()
    assert drawn.shown.job is before


def test_closing_asks_and_cancel_keeps_the_window(drawn: Person) -> None:
    drawn.app.window.close()
    drawn.answer(Answer.Cancel)

    assert drawn.app.window.isVisible()
    assert not drawn.shown.is_saved


def test_closing_asks_and_discard_closes(drawn: Person) -> None:
    drawn.app.window.close()
    drawn.answer(Answer.Discard, closes=True)

    drawn.wait_until(lambda: not drawn.app.window.isVisible())


def test_closing_asks_and_save_saves_then_closes(drawn: Person, tmp_path: Path) -> None:
    path = tmp_path / "kept.json"
    job = drawn.shown.job
    drawn.app.window.close()
    drawn.answer(Answer.Save)
    drawn.fill_file_dialog(path, closes=True)

    drawn.wait_until(lambda: not drawn.app.window.isVisible())
    assert read_job_file(path).job == job


def test_closing_with_all_saved_closes_at_once(drawn: Person, tmp_path: Path) -> None:
    drawn.app.files.write_to(tmp_path / "x.recoat")
    drawn.wait_until(lambda: drawn.shown.is_saved)
    drawn.app.window.close()

    assert not drawn.app.window.isVisible()


def test_a_folder_that_is_not_there_is_said_and_the_job_is_still_unsaved(drawn: Person, tmp_path: Path) -> None:
    drawn.app.files.write_to(tmp_path / "not there" / "x.recoat")
    drawn.wait_until(drawn.app.window.notice.isVisible)

    assert "not there" in drawn.app.window.notice.text()
    assert not drawn.shown.is_saved


def test_what_is_saved_and_undone_is_not_saved_any_more(drawn: Person, tmp_path: Path) -> None:
    drawn.app.files.write_to(tmp_path / "x.recoat")
    drawn.wait_until(lambda: drawn.shown.is_saved)
    drawn.press(Qt.Key.Key_Z, Keys.ControlModifier)

    assert not drawn.shown.is_saved


def test_files_that_were_saved_are_offered_at_the_start(drawn: Person, tmp_path: Path) -> None:
    drawn.app.files.write_to(tmp_path / "x.recoat")
    drawn.wait_until(lambda: drawn.shown.is_saved)

    assert drawn.app.files.recent == (tmp_path / "x.recoat",)


def test_an_error_that_nobody_foresaw_is_told_and_the_job_is_kept(
    drawn: Person, caplog: pytest.LogCaptureFixture
) -> None:
    error = RuntimeError("out of the blue")
    with caplog.at_level(logging.ERROR):
        drawn.app.report.report_error(RuntimeError, error, None)

    assert "went wrong" in drawn.app.window.notice.text()
    assert "out of the blue" in caplog.text
    assert any(drawn.app.recovery.folder.glob("*.recoat"))
