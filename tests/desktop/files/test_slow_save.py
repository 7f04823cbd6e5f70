"""What is edited while a slow save runs is not in the file, and is not lost."""

from collections.abc import Callable, Iterator
from pathlib import Path
from threading import Event

import pytest
from PySide6.QtWidgets import QMessageBox

from shared.files.disk import write_atomically
from shared.files.job import JobFile, read_job_file, write_job_file
from tests.desktop.state.working_window import drawn
from tests.window import Person

Answer = QMessageBox.StandardButton
Release = Callable[[], None]


@pytest.fixture
def working(person: Person, tmp_path: Path) -> Person:
    """A job with a file, and a door that is not in the file."""
    person.begin_wall("3600", "2400")
    person.app.files.write_to(tmp_path / "harbour-row.recoat")
    person.wait_until(lambda: person.shown.path is not None)
    person.draw_boxes("doo", ("0", "150", "450", "720"))
    return person


@pytest.fixture
def release(monkeypatch: pytest.MonkeyPatch) -> Iterator[Release]:
    """Lets the saves that were begun go on; until it is called, they wait."""
    may_go_on = Event()

    def slow(path: Path, content: bytes) -> None:
        assert may_go_on.wait(60)
        write_atomically(path, content)

    monkeypatch.setattr("shared.files.held.write_atomically", slow)
    yield may_go_on.set
    may_go_on.set()


def edit(person: Person) -> None:
    """Draw another door while the save runs."""
    person.draw_boxes("doo", ("900", "150", "450", "720"))


def test_closing_asks_again_for_what_was_edited_while_it_saved(
    working: Person, release: Release, tmp_path: Path
) -> None:
    working.app.window.close()
    working.answer(Answer.Save)
    edit(working)
    release()
    working.answer(Answer.Save, closes=True)
    working.wait_until(lambda: not working.app.window.isVisible())

    assert read_job_file(tmp_path / "harbour-row.recoat").job == working.shown.job


def test_opening_another_asks_again_and_cancel_keeps_the_edit(
    working: Person, release: Release, tmp_path: Path
) -> None:
    other = tmp_path / "other.recoat"
    write_job_file(other, JobFile(drawn()))
    working.app.files.leave_for(other)
    working.answer(Answer.Save)
    edit(working)
    job = working.shown.job
    release()
    working.answer(Answer.Cancel)

    assert working.shown.job is job
    assert not working.shown.is_saved
    working.app.recovery.keep_now()
    (copy,) = working.app.recovery.folder.glob("*.recoat")
    assert read_job_file(copy).job == job


def test_save_as_knows_its_file_and_is_not_saved_after_an_edit(
    working: Person, release: Release, tmp_path: Path
) -> None:
    path = tmp_path / "elsewhere.recoat"
    before = working.shown.job
    working.app.files.save_as()
    working.fill_file_dialog(path)
    edit(working)
    working.app.recovery.keep_now()
    release()
    working.wait_until(lambda: working.shown.path == path)

    assert read_job_file(path).job == before
    assert not working.shown.is_saved
    assert "What you changed since then is not saved yet." in working.app.window.notice.text()
    assert any(working.app.recovery.folder.glob("*.recoat"))


def test_a_job_that_was_opened_while_another_was_saved_does_not_get_its_file(working: Person, release: Release) -> None:
    working.app.files.save()
    working.app.store.close_job()
    working.app.files.show_new(JobFile(drawn()))
    release()
    working.wait_until(lambda: working.app.window.notice.text().startswith("Saved harbour-row.recoat, "))

    assert working.shown.path is None


def test_what_is_edited_while_another_file_is_read_is_asked_for(
    working: Person, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    other = tmp_path / "other.recoat"
    write_job_file(other, JobFile(drawn()))
    working.app.files.save()
    working.wait_until(lambda: working.shown.is_saved)
    may_go_on = Event()

    def slow(_: Path) -> JobFile:
        assert may_go_on.wait(60)
        return JobFile(drawn())

    monkeypatch.setattr("desktop.files.job.open_job", slow)
    working.app.files.leave_for(other)
    edit(working)
    job = working.shown.job
    may_go_on.set()
    working.answer(Answer.Cancel)
    assert working.shown.job is job


def test_a_job_given_up_for_another_that_cannot_be_read_is_kept_after_all(working: Person, tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.recoat"
    wrong.write_bytes(b"no job")
    working.app.recovery.keep_now()
    working.app.files.leave_for(wrong)
    working.answer(Answer.Discard)
    working.wait_until(working.app.window.notice.isVisible)

    assert any(working.app.recovery.folder.glob("*.recoat"))
    working.app.window.close()
    working.answer(Answer.Cancel)
    assert working.app.window.isVisible()


def test_a_save_says_what_it_saved(working: Person) -> None:
    working.app.files.save()
    working.wait_until(working.app.window.notice.isVisible)

    words = working.app.window.notice.text()
    assert words.startswith("Saved harbour-row.recoat, ")
    assert words[-3] == ":"
