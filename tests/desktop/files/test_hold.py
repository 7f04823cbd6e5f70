"""Two windows on one job: neither saves over the other in silence."""

import os
import subprocess
import sys
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from threading import Event

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QMessageBox, QPushButton

from desktop.command_line import main
from desktop.state.copies import new_copy
from shared.files.job import JobFile, read_job_file, write_job_file
from shared.files.stamp import stamp_of
from shared.job import Job
from tests.desktop.state.working_window import drawn
from tests.holding import PROJECT, Hold, hold
from tests.processes import apart_from_the_person
from tests.window import Keys, Person

__all__ = ["hold"]

THEIRS = JobFile(Job(name="Theirs"))


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "kitchen.recoat"


@pytest.fixture
def saved(person: Person, path: Path) -> Person:
    """A job with a wall that is saved to the file."""
    person.begin_wall("3600", "2400")
    save(person, path)
    return person


@pytest.fixture
def changed(saved: Person, path: Path) -> Person:
    """The same after an edit, and after somebody else has saved another job to the file at half past two."""
    saved.draw_boxes("doo", ("0", "150", "450", "720"))
    put_theirs(path)
    return saved


@pytest.fixture
def other_window(path: Path) -> Iterator[subprocess.Popen[bytes]]:
    """Another window in a process of its own that has the file open."""
    write_job_file(path, THEIRS)
    command = (sys.executable, "-c", "import sys; from desktop.command_line import main; sys.exit(main())", str(path))
    window = subprocess.Popen(command, cwd=PROJECT, env=apart_from_the_person(path.parent))
    yield window
    window.kill()
    window.wait()


def put_theirs(path: Path, theirs: JobFile = THEIRS) -> None:
    """Somebody else saves a job to the file at half past two."""
    write_job_file(path, theirs)
    moment = datetime(2026, 3, 9, 14, 32).astimezone().timestamp()
    os.utime(path, (moment, moment))


def save(person: Person, path: Path) -> None:
    person.app.files.write_to(path)
    person.wait_until(lambda: person.shown.is_saved and person.shown.path == path)


def open_file(person: Person, path: Path) -> None:
    person.app.files.open_path(path)
    person.wait_until(lambda: person.app.store.shown is not None and person.shown.path == path)


def claim_beside(path: Path) -> Path:
    return path.with_name(f".{path.name}.open")


def asked(person: Person) -> list[QMessageBox]:
    """The questions that wait for an answer."""
    return [box for box in person.app.window.findChildren(QMessageBox) if box.isVisible()]


def question(person: Person) -> QMessageBox:
    """The question that is asked, once it is and hears the keys."""
    person.wait_until(lambda: any(box.isActiveWindow() for box in asked(person)))
    return asked(person)[0]


def answer(person: Person, key: Qt.Key, keys: Keys = Keys.NoModifier) -> str:
    """Answer the question by a key; what it said."""
    box = question(person)
    words = f"{box.text()} {box.informativeText()}"
    person.press(key, keys)
    person.wait_until(lambda: not asked(person))
    return words


def come_back(person: Person) -> None:
    """Without a window manager nobody else gives the keys back to the window when a question closes."""
    person.app.window.activateWindow()
    person.wait_until(person.app.window.isActiveWindow)


def trouble(person: Person) -> str:
    """What the window says went wrong, once it does."""
    notice = person.app.window.notice
    person.wait_until(lambda: not notice.text().startswith("Saved") and bool(notice.text()))
    return person.app.window.notice.text()


def test_a_job_that_is_open_elsewhere_opens_as_a_copy_by_return(person: Person, path: Path, hold: Hold) -> None:
    write_job_file(path, THEIRS)
    hold(path)
    person.app.files.open_path(path)
    words = answer(person, Qt.Key.Key_Return)
    come_back(person)
    person.wait_until(lambda: person.app.store.shown is not None)

    assert words.startswith("kitchen.recoat is already open. It has been open in another window since ")
    assert person.shown.job == THEIRS.job
    assert person.shown.path is None
    assert not person.shown.is_saved


def test_a_job_that_is_open_elsewhere_stays_closed_by_escape(person: Person, path: Path, hold: Hold) -> None:
    write_job_file(path, THEIRS)
    hold(path)
    person.app.files.open_path(path)
    answer(person, Qt.Key.Key_Escape)

    assert person.app.store.shown is None


def test_what_a_file_is_called_is_read_as_text_only(person: Person, tmp_path: Path, hold: Hold) -> None:
    path = tmp_path / "<b>kitchen<b>.recoat"
    write_job_file(path, THEIRS)
    hold(path)
    person.app.files.open_path(path)
    labels = {label.objectName(): label.textFormat() for label in question(person).findChildren(QLabel)}
    answer(person, Qt.Key.Key_Escape)

    assert labels["qt_msgbox_label"] is labels["qt_msgbox_informativelabel"] is Qt.TextFormat.PlainText


def test_another_window_is_seen_and_once_it_is_killed_its_job_opens(
    person: Person, path: Path, other_window: subprocess.Popen[bytes]
) -> None:
    person.wait_until(claim_beside(path).is_file)
    person.app.files.open_path(path)
    answer(person, Qt.Key.Key_Escape)
    other_window.kill()
    other_window.wait()
    assert claim_beside(path).is_file()

    open_file(person, path)
    assert person.shown.job == THEIRS.job


def test_the_open_job_is_opened_anew_without_a_question(saved: Person, path: Path) -> None:
    put_theirs(path)
    saved.app.files.open_path(path)
    saved.wait_until(lambda: saved.shown.job == THEIRS.job)

    assert saved.shown.path == path
    assert claim_beside(path).is_file()


def test_saving_over_what_somebody_saved_asks_first_and_escape_changes_nothing(changed: Person, path: Path) -> None:
    changed.press(Qt.Key.Key_S, Keys.ControlModifier)
    words = answer(changed, Qt.Key.Key_Escape)

    assert words.startswith("kitchen.recoat has changed. This file was changed at 14:32 on 2026-03-09, after it was ")
    assert read_job_file(path) == THEIRS
    assert not changed.shown.is_saved


def test_saving_over_what_somebody_saved_saves_elsewhere_by_return(changed: Person, path: Path) -> None:
    mine = path.with_name("mine.recoat")
    changed.press(Qt.Key.Key_S, Keys.ControlModifier)
    answer(changed, Qt.Key.Key_Return)
    changed.fill_file_dialog(mine)
    changed.wait_until(lambda: changed.shown.is_saved)

    assert changed.shown.path == mine
    assert read_job_file(mine).job == changed.shown.job
    assert read_job_file(path) == THEIRS


def test_what_somebody_saved_is_replaced_if_one_says_so_and_is_asked_about_once(changed: Person, path: Path) -> None:
    changed.press(Qt.Key.Key_S, Keys.ControlModifier)
    answer(changed, Qt.Key.Key_R, Keys.AltModifier)
    come_back(changed)
    changed.wait_until(lambda: changed.shown.is_saved)
    assert read_job_file(path).job == changed.shown.job

    changed.press(Qt.Key.Key_Z, Keys.ControlModifier)
    changed.press(Qt.Key.Key_S, Keys.ControlModifier)
    changed.wait_until(lambda: changed.shown.is_saved)


def test_a_save_asked_for_before_another_has_ended_finds_no_change_and_no_other_window(
    saved: Person, path: Path
) -> None:
    for name in ("moved.recoat", "kitchen.recoat"):
        saved.draw_boxes("doo", ("0", "150", "450", "720"))
        for _ in range(2):
            saved.app.files.write_to(path.with_name(name))
        saved.draw_boxes("doo", ("0", "150", "450", "720"))
        saved.app.files.write_to(path.with_name(name))
        saved.wait_until(lambda: saved.shown.is_saved)

        assert asked(saved) == []
        assert saved.app.window.notice.text().startswith(f"Saved {name}")
        assert read_job_file(path.with_name(name)).job == saved.shown.job


def test_closing_over_what_somebody_saved_loses_neither(changed: Person, path: Path) -> None:
    changed.app.window.close()
    changed.answer(QMessageBox.StandardButton.Save, closes=True)  # another question follows
    answer(changed, Qt.Key.Key_Escape)

    assert changed.app.window.isVisible()
    assert not changed.shown.is_saved
    assert read_job_file(path) == THEIRS


def test_saving_as_a_job_that_is_open_elsewhere_is_refused_in_words(saved: Person, path: Path, hold: Hold) -> None:
    theirs = path.with_name("theirs.recoat")
    write_job_file(theirs, THEIRS)
    hold(theirs)
    saved.app.files.write_to(theirs)

    assert "theirs.recoat: it has been open in another window since" in trouble(saved)
    assert read_job_file(theirs) == THEIRS
    assert saved.shown.path == path


def test_a_read_only_file_is_refused_in_words_and_the_job_is_still_unsaved(saved: Person, path: Path) -> None:
    saved.draw_boxes("doo", ("0", "150", "450", "720"))
    path.chmod(0o444)
    saved.press(Qt.Key.Key_S, Keys.ControlModifier)

    assert "kitchen.recoat: this file is read-only; choose another name" in trouble(saved)
    assert not saved.shown.is_saved


def test_the_claim_moves_with_the_job_and_goes_when_it_closes(saved: Person, path: Path) -> None:
    moved = path.with_name("moved.recoat")
    assert claim_beside(path).is_file()
    save(saved, moved)
    assert claim_beside(moved).is_file()
    saved.wait_until(lambda: not claim_beside(path).exists())

    saved.app.store.close_job()
    saved.wait_until(lambda: not claim_beside(moved).exists())


def test_an_open_that_is_stopped_or_declined_lets_that_file_go_and_keeps_this_one(
    saved: Person, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    other = path.with_name("other.recoat")
    write_job_file(other, THEIRS)
    may_go_on = Event()

    def slow(file: Path) -> JobFile:
        assert may_go_on.wait(60)
        return read_job_file(file)

    monkeypatch.setattr("desktop.files.job.open_job", slow)
    saved.app.files.open_path(other)
    saved.wait_until(saved.app.window.progress.isVisible)
    saved.click(saved.app.window.progress.stop)
    may_go_on.set()
    save(saved, path)  # right after what was stopped
    saved.wait_until(lambda: not claim_beside(other).exists())
    assert claim_beside(path).is_file()

    may_go_on.clear()
    saved.app.files.open_path(other)
    saved.draw_boxes("doo", ("0", "150", "450", "720"))
    may_go_on.set()
    saved.wait_until(lambda: bool(asked(saved)))
    assert claim_beside(other).is_file()
    saved.answer(QMessageBox.StandardButton.Cancel)
    saved.wait_until(lambda: not claim_beside(other).exists())
    assert claim_beside(path).is_file()


def test_a_save_that_ends_after_its_job_was_closed_leaves_no_claim(saved: Person, path: Path) -> None:
    moved = path.with_name("moved.recoat")
    saved.app.files.write_to(moved)
    saved.app.store.close_job()
    saved.wait_until(moved.is_file)

    saved.wait_until(lambda: not claim_beside(moved).exists() and not claim_beside(path).exists())
    assert read_job_file(moved).job == read_job_file(path).job
    assert saved.app.store.shown is None


def test_a_job_that_was_opened_by_a_link_is_saved_by_its_own_name(saved: Person, path: Path) -> None:
    link = path.with_name("link.recoat")
    link.symlink_to(path)
    open_file(saved, link)
    saved.draw_boxes("doo", ("0", "150", "450", "720"))
    save(saved, path)

    assert read_job_file(path).job == saved.shown.job
    assert link.is_symlink()


@pytest.mark.parametrize("is_changed", [False, True])
def test_a_recovered_job_holds_its_file_and_asks_if_somebody_saved_it_since(
    person: Person, path: Path, is_changed: bool
) -> None:
    write_job_file(path, THEIRS)
    copy = new_copy(person.app.recovery.folder)
    copy.write(JobFile(drawn()), path, stamp_of(path))
    copy.let_go()
    if is_changed:
        put_theirs(path, JobFile(Job(name="Theirs, later")))
    person.app.recovery.look()
    person.wait_until(person.app.kept.isVisible)
    person.click(next(each for each in person.app.kept.findChildren(QPushButton) if each.text() == "Recover"))
    person.wait_until(claim_beside(path).is_file)

    person.press(Qt.Key.Key_S, Keys.ControlModifier)
    if is_changed:
        assert "has changed. This file was changed at 14:32 on 2026-03-09" in answer(person, Qt.Key.Key_Escape)
        assert not person.shown.is_saved
    else:
        person.wait_until(lambda: person.shown.is_saved)
        assert read_job_file(path).job == drawn()


def test_the_claim_goes_with_the_window(saved: Person, path: Path) -> None:
    saved.app.window.close()

    assert not saved.app.window.isVisible()
    assert not claim_beside(path).exists()


def test_a_command_does_not_write_over_a_job_that_is_open(
    saved: Person, path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = saved.shown.job
    example = path.with_name("example.recoat")
    assert main(["example", str(example)]) == 0
    assert main(["convert", str(example), "-o", str(path)]) == 2

    assert "kitchen.recoat: it has been open in another window since" in capsys.readouterr().err
    assert read_job_file(path).job == job
