"""Unsaved work outlives whatever ends its window, and is offered until the person says what becomes of it."""

import os
import secrets
import signal
import subprocess
import sys
import time
from contextlib import ExitStack
from datetime import datetime, timedelta
from pathlib import Path
from tempfile import mkdtemp
from threading import Event

import pytest
from PySide6.QtCore import SIGNAL, Qt, QTimer
from PySide6.QtWidgets import QMessageBox, QPushButton

from desktop.app import App
from desktop.start import application, keep_work_at_the_end
from desktop.state.copies import KeptCopy, Note, find_copies, new_copy
from desktop.window.end_signals import SIGNALS
from desktop.window.kept_jobs import KeptJobs, kept_words
from shared.errors import FileError
from shared.files.job import JobFile, read_job_file, write_job_file
from shared.job import Job
from tests.desktop.state.working_window import drawn
from tests.processes import apart_from_the_person
from tests.window import Keys, Person

PROJECT = Path(__file__).parents[3]
AT_MOST_S = 2.0

Answer = QMessageBox.StandardButton


class Working:
    """A window in a process of its own, in which somebody draws. It writes what it says to files beside its copies."""

    def __init__(self, folder: Path) -> None:
        self._said = Path(mkdtemp(dir=folder))
        with (self._said / "out").open("w") as out, (self._said / "err").open("w") as err:
            self.process = subprocess.Popen(
                (sys.executable, "-m", "tests.desktop.state.working_window", str(folder)),
                cwd=PROJECT,
                env={**apart_from_the_person(folder), "PYTHONPATH": str(PROJECT)},
                stdout=out,
                stderr=err,
            )

    @property
    def stood(self) -> dict[int, float]:
        """When each part stood, seconds since 1970."""
        lines = (line.split() for line in (self._said / "out").read_text().splitlines())
        return {int(many): float(at) for many, at in lines}

    @property
    def errors(self) -> str:
        """What it said of errors."""
        return (self._said / "err").read_text()

    def wait_for_part(self) -> None:
        """Wait until somebody draws."""
        while not (self._said / "out").read_text():
            assert self.process.poll() is None, self.errors
            time.sleep(0.05)

    def end(self, number: signal.Signals) -> float:
        """End the window; when that was."""
        ended_at = time.time()
        self.process.send_signal(number)
        self.process.wait(60)
        return ended_at

    def __enter__(self) -> "Working":
        return self

    def __exit__(self, *_: object) -> None:
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait(60)


def kept_parts(copy: KeptCopy) -> int:
    """How many of the parts drawn one after another are in a copy."""
    return sum(part.id.startswith("s") for face in read_job_file(copy.path).job.faces for part in face.parts)


def copy_of(folder: Path, process: int) -> KeptCopy:
    """The copy that this process left, which nobody holds."""
    (offer,) = (offer for offer in find_copies(folder).offers if offer.note.process == process)
    return offer.copy


def test_three_windows_killed_amid_steady_work_lose_two_seconds_each_at_most(tmp_path: Path) -> None:
    with ExitStack() as stack:
        windows = [stack.enter_context(Working(tmp_path)) for _ in range(3)]
        for window in windows:
            window.wait_for_part()
        for window in windows:
            time.sleep(1.6 + secrets.randbelow(1600) / 1000)
            ended_at = window.end(signal.SIGKILL)
            kept = kept_parts(copy_of(tmp_path, window.process.pid))
            lost = [at for many, at in window.stood.items() if many > kept]
            assert kept > 0
            assert all(at > ended_at - AT_MOST_S for at in lost)
    assert len(find_copies(tmp_path).offers) == 3


def test_a_signal_ends_a_window_and_loses_nothing(tmp_path: Path) -> None:
    with ExitStack() as stack:
        windows = {number: stack.enter_context(Working(tmp_path)) for number in SIGNALS}
        for number, window in windows.items():
            window.wait_for_part()
            window.end(number)
            assert (window.process.returncode, window.errors) == (128 + number, "")
            assert kept_parts(copy_of(tmp_path, window.process.pid)) == max(window.stood)


@pytest.fixture
def working(person: Person) -> Person:
    """A new job with a wall and a door that nobody has saved."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("doo", ("0", "150", "450", "720"))
    return person


def left_copy(app: App, job: Job, path: Path | None = None, stamp: str | None = None) -> KeptCopy:
    """A copy that another window has left."""
    copy = new_copy(app.recovery.folder)
    copy.write(JobFile(job), path, stamp)
    copy.let_go()
    app.recovery.look()
    return copy


def buttons(bar: KeptJobs, words: str) -> list[QPushButton]:
    return [each for each in bar.findChildren(QPushButton) if each.text() == words and each.isVisible()]


def test_the_session_that_ends_keeps_a_copy(working: Person) -> None:
    working.app.keep_safe()

    assert read_job_file(own_copy(working)).job == working.shown.job


def own_copy(person: Person) -> Path:
    (path,) = person.app.recovery.folder.glob("not-saved-*.recoat")
    return path


def test_a_copy_of_a_window_that_lives_is_not_offered(working: Person) -> None:
    working.app.recovery.keep_now()
    folder = working.app.recovery.folder
    lock = own_copy(working).with_suffix(".lock")
    os.utime(lock, (0, 0))  # a window that has been open for days

    assert find_copies(folder).offers == ()


def test_the_end_of_the_session_is_heard(working: Person) -> None:
    # Qt alone can make the object that this signal carries, so that a test cannot send it.
    qt, heard = application(), SIGNAL("commitDataRequest(QSessionManager&)")
    before = qt.receivers(heard)
    signals = keep_work_at_the_end(qt, working.app)
    assert qt.receivers(heard) == before + 1
    signals.uninstall()


def test_a_job_that_is_saved_or_not_wanted_leaves_no_copy(working: Person) -> None:
    working.app.recovery.keep_now()
    working.app.window.close()
    working.answer(Answer.Discard, closes=True)
    working.wait_until(lambda: not working.app.window.isVisible())
    assert not any(working.app.recovery.folder.iterdir())


def test_a_copy_that_another_window_took_is_not_taken_twice(person: Person) -> None:
    copy = left_copy(person.app, drawn())
    person.wait_until(person.app.kept.isVisible)
    other = KeptCopy(copy.path)
    assert other.hold()
    person.click(buttons(person.app.kept, "Recover")[0])
    person.wait_until(lambda: person.app.window.start.trouble.text() != "")

    assert "in another window" in person.app.window.start.trouble.text()
    assert person.app.store.shown is None
    other.remove()


def test_what_killed_programs_left_half_written_is_swept_up(tmp_path: Path) -> None:
    (tmp_path / ".0a.part").touch()
    (tmp_path / ".0b.part").touch()
    os.utime(tmp_path / ".0a.part", (0, 0))
    find_copies(tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == [".0b.part"]


def test_two_copies_are_never_one_file(tmp_path: Path) -> None:
    first, second = new_copy(tmp_path), new_copy(tmp_path)
    first.write(JobFile(drawn()), None)
    second.write(JobFile(drawn()), None)
    again = KeptCopy(first.path)

    assert first.path != second.path
    assert not again.hold()


def test_unsaved_work_is_offered_at_the_start_with_what_it_holds(person: Person) -> None:
    left_copy(person.app, drawn())
    person.wait_until(person.app.kept.isVisible)

    clock = time.strftime("%H:%M")
    assert person.app.kept.lines[0] == f"Not saved: evening: kitchen, 1 face, 1 part, {clock}"
    assert person.app.window.start.isVisible()


def test_unsaved_work_is_offered_over_a_job_that_is_open_and_knows_its_file(working: Person, tmp_path: Path) -> None:
    path = tmp_path / "harbour-row.recoat"
    copy = left_copy(working.app, drawn(), path)
    working.wait_until(working.app.kept.isVisible)
    assert working.app.kept.lines[0].startswith("Not saved: harbour-row: kitchen, ")

    working.click(buttons(working.app.kept, "Recover")[0])
    working.answer(Answer.Discard)
    working.wait_until(lambda: working.shown.job == drawn())
    working.wait_until(lambda: not working.app.kept.isVisible())

    assert working.shown.path == path
    assert not working.shown.is_saved
    assert copy.path.is_file()


def test_a_recovered_job_keeps_its_copy_until_it_is_saved(person: Person, tmp_path: Path) -> None:
    copy = left_copy(person.app, drawn(), tmp_path / "harbour-row.recoat")
    person.wait_until(person.app.kept.isVisible)
    person.click(buttons(person.app.kept, "Recover")[0])
    person.wait_until(lambda: person.app.store.shown is not None)
    assert find_copies(person.app.recovery.folder).offers == ()

    person.press(Qt.Key.Key_S, Keys.ControlModifier)
    person.wait_until(lambda: not copy.path.exists())
    assert read_job_file(tmp_path / "harbour-row.recoat").job == drawn()
    person.wait_until(lambda: not any(person.app.recovery.folder.iterdir()))


def test_unsaved_work_is_discarded_once_that_is_confirmed(person: Person) -> None:
    copy = left_copy(person.app, drawn())
    person.wait_until(person.app.kept.isVisible)
    person.click(buttons(person.app.kept, "Discard")[0])
    person.answer(Answer.Cancel)
    assert copy.path.is_file()

    person.click(buttons(person.app.kept, "Discard")[0])
    person.answer(Answer.Discard)
    person.wait_until(lambda: not person.app.kept.isVisible())
    assert not any(person.app.recovery.folder.iterdir())


def test_a_damaged_copy_is_told_of_once_and_put_aside(person: Person) -> None:
    folder = person.app.recovery.folder
    (folder / "not-saved-1-ab.recoat").write_bytes(b"PK\x03\x04 cut short")
    person.app.recovery.look()
    person.wait_until(person.app.kept.isVisible)
    person.app.recovery.look()
    left_copy(person.app, drawn())
    person.wait_until(lambda: len(person.app.kept.lines) > 1)

    told = [line for line in person.app.kept.lines if "cut short or damaged" in line]
    (aside,) = folder.glob("damaged-*")
    assert len(told) == 1
    assert str(aside) in told[0]
    assert aside.read_bytes() == b"PK\x03\x04 cut short"


@pytest.mark.parametrize(
    "content", [b"{", b"\xff", b'{"name": "x", "rooms": [], "faces": 0, "parts": 0, "kept_at": 1e300}']
)
def test_a_note_that_is_damaged_costs_no_work(tmp_path: Path, content: bytes) -> None:
    copy = new_copy(tmp_path)
    copy.write(JobFile(drawn()), None)
    copy.let_go()
    copy.path.with_suffix(".json").write_bytes(content)

    (offer,) = find_copies(tmp_path).offers
    assert (offer.note.name, offer.note.parts) == ("evening", 1)


def full_disk(path: Path, _: object) -> None:
    raise FileError("the disk is full", where=str(path), do="make room or choose another place")


def test_what_becomes_due_while_a_copy_is_written_is_kept_right_after(
    working: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun: list[Job] = []
    may_go_on = Event()

    def slow(path: Path, file: JobFile) -> None:
        begun.append(file.job)
        assert may_go_on.wait(60)
        write_job_file(path, file)

    monkeypatch.setattr("desktop.state.copies.write_job_file", slow)
    working.wait_until(lambda: any(begun))
    working.draw_boxes("doo", ("500", "150", "450", "720"))
    timer = working.app.recovery.findChild(QTimer)
    assert timer is not None
    working.wait_until(lambda: not timer.isActive())
    may_go_on.set()
    working.wait_until(lambda: len(begun) > 1)
    working.wait_until(lambda: read_job_file(own_copy(working)).job == working.shown.job)


def test_a_full_disk_is_said_once_and_room_on_it_is_used(working: Person, monkeypatch: pytest.MonkeyPatch) -> None:
    told: list[str] = []
    refused: list[Path] = []

    def refuse(path: Path, file: JobFile) -> None:
        refused.append(path)
        full_disk(path, file)

    working.app.recovery.told.connect(told.append)
    with monkeypatch.context() as full:
        full.setattr("desktop.state.copies.write_job_file", refuse)
        working.wait_until(lambda: any(told))
        working.draw_boxes("doo", ("500", "150", "450", "720"))
        working.wait_until(lambda: len(refused) > 1)

    working.draw_boxes("doo", ("1000", "150", "450", "720"))
    working.wait_until(lambda: any(working.app.recovery.folder.glob("not-saved-*.recoat")))
    assert len(told) == 1
    assert "the disk is full" in told[0]
    assert working.app.kept.lines == (told[0],)


def test_a_full_disk_at_the_end_of_the_session_is_logged_in_one_line(
    working: Person, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    monkeypatch.setattr("desktop.state.copies.write_job_file", full_disk)
    working.app.keep_safe()

    (record,) = caplog.records
    assert "the disk is full" in record.getMessage()
    assert record.exc_info is None


def test_a_folder_that_cannot_be_written_is_said_in_words(working: Person, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder")
    working.app.recovery.folder = tmp_path / "file" / "copies"
    working.draw_boxes("doo", ("500", "150", "450", "720"))
    working.wait_until(working.app.kept.isVisible)
    (line,) = working.app.kept.lines
    assert line.startswith("No copy of your unsaved work can be kept, so save it often.")

    working.click(buttons(working.app.kept, "OK")[0])
    assert not working.app.kept.isVisible()


def test_what_is_undone_to_what_is_saved_has_no_copy(working: Person, tmp_path: Path) -> None:
    working.app.files.write_to(tmp_path / "x.recoat")
    working.wait_until(lambda: working.shown.path is not None)
    working.draw_boxes("doo", ("500", "150", "450", "720"))
    working.app.recovery.keep_now()
    assert own_copy(working).is_file()

    working.app.store.undo()
    working.wait_until(lambda: not any(working.app.recovery.folder.iterdir()))


def test_words_name_the_job_and_the_day() -> None:
    made = datetime(2026, 11, 30, 14, 32).astimezone()
    note = Note("kitchen", ("kitchen", "laundry"), 3, 41, made.timestamp(), "/jobs/harbour-row.recoat")
    assert kept_words(note, made.date()) == "harbour-row: kitchen, laundry, 3 faces, 41 parts, 14:32"
    later = made.date() + timedelta(days=1)
    assert kept_words(note, later) == "harbour-row: kitchen, laundry, 3 faces, 41 parts, 30 November 2026, 14:32"
