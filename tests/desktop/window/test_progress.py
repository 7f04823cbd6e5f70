"""A file that takes long to open says so, and can be stopped."""

from collections.abc import Iterator
from concurrent.futures import CancelledError
from pathlib import Path
from threading import Event

import pytest
from PySide6.QtTest import QTest

import desktop.files.job
from desktop.state.store import counted_file
from desktop.window.progress import SOON_MS
from geometry.outlines.shapes import box
from shared.files.job import JobFile, write_job_file
from shared.job import Face, Job, Part, Room
from shared.trade.kinds import Kind
from takeoff.opening import open_job
from tests.window import Person


@pytest.fixture
def gate(monkeypatch: pytest.MonkeyPatch) -> Iterator[Event]:
    """Every file takes to open until this is set."""
    may_end = Event()

    def slowly(path: Path) -> JobFile:
        file = open_job(path)
        may_end.wait(60)
        return file

    monkeypatch.setattr(desktop.files.job, "open_job", slowly)
    yield may_end
    may_end.set()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "Hill <b>Street.json"
    write_job_file(path, JobFile(Job("Hill Street")))
    return path


def test_a_file_that_takes_long_to_open_says_so_until_it_is_open(person: Person, gate: Event, path: Path) -> None:
    progress = person.app.window.progress
    person.app.files.open_path(path)
    assert not progress.isVisible()
    person.wait_until(progress.isVisible)
    assert progress.words.text() == f"Opening {path.name} ..."

    gate.set()
    person.wait_until(lambda: person.app.store.shown is not None)
    assert not progress.isVisible()


def test_a_file_that_opens_at_once_says_nothing(person: Person, gate: Event, path: Path) -> None:
    gate.set()
    person.app.files.open_path(path)
    person.wait_until(lambda: person.app.store.shown is not None)
    QTest.qWait(2 * SOON_MS)

    assert not person.app.window.progress.isVisible()


def test_what_is_stopped_gives_the_hands_back_at_once_and_never_opens(person: Person, gate: Event, path: Path) -> None:
    person.begin_wall("3600", "2400")
    job, app = person.shown.job, person.app
    app.files.open_path(path)
    person.wait_until(app.window.progress.isVisible)
    person.click(app.window.progress.stop)

    assert not app.window.progress.isVisible()
    person.draw_boxes("doo", ("0", "150", "450", "720"))
    drawn = person.shown.job
    assert drawn is not job
    _let_all_end(person, gate)
    assert person.shown.job is drawn
    assert not app.files.recent


def test_a_job_whose_opening_was_stopped_counts_no_face_more() -> None:
    wall = Face("a", "A", parts=(Part("w", Kind.WALL, box(0, 0, 3600, 2400)),))
    stopped = Event()
    stopped.set()
    with pytest.raises(CancelledError):
        counted_file(JobFile(Job("Job", (Room("r", "Kitchen", (wall,)),))), stopped)


def test_of_two_files_the_one_that_was_asked_for_last_opens(person: Person, gate: Event, path: Path) -> None:
    other = path.with_name("other.json")
    write_job_file(other, JobFile(Job("Other")))
    person.app.files.open_path(path)
    person.app.files.open_path(other)
    gate.set()
    person.wait_until(lambda: person.app.store.shown is not None)

    assert person.shown.job.name == "Other"
    assert not person.app.window.progress.isVisible()


def _let_all_end(person: Person, gate: Event) -> None:
    """Until what is done in the background has been heard."""
    ended: list[object] = []
    gate.set()
    person.app.background.start("", lambda: None, ended.append, ended.append)
    person.wait_until(lambda: bool(ended))
