import os
from datetime import datetime
from pathlib import Path

import pytest

from shared.errors import FileError
from shared.files.claim import HeldError
from shared.files.held import Held, read_held, write_held
from shared.files.job import JobFile, read_job_file
from shared.files.stamp import ChangedError
from shared.job import Job
from tests.holding import Hold, hold

__all__ = ["hold"]

OURS, THEIRS = JobFile(Job(name="Ours")), JobFile(Job(name="Theirs"))


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "kitchen.recoat"


@pytest.fixture
def held(path: Path) -> Held:
    """What is held of a job that was saved."""
    return write_held(path, OURS, Held())


def test_a_file_that_nobody_changed_is_saved_over(path: Path, held: Held) -> None:
    os.utime(path, (0, 0))  # touched, but what is in it is the same
    after = write_held(path, THEIRS, held)
    assert write_held(path, OURS, after) == held
    assert read_job_file(path) == OURS


def test_a_file_that_somebody_changed_is_not_saved_over_and_when_it_changed_is_said(path: Path, held: Held) -> None:
    write_held(path, THEIRS, held)
    changed = datetime(2026, 3, 9, 14, 32).astimezone().timestamp()
    os.utime(path, (changed, changed))
    with pytest.raises(ChangedError, match="this file was changed at 14:32 on 2026-03-09, after it was opened or"):
        write_held(path, OURS, held)
    assert read_job_file(path) == THEIRS


def test_a_file_that_is_gone_is_saved_anew(path: Path, held: Held) -> None:
    path.unlink()
    write_held(path, OURS, held)
    assert read_job_file(path) == OURS


def test_a_change_while_the_file_is_read_is_one_since(path: Path, held: Held) -> None:
    def read(path: Path) -> JobFile:
        job_file = read_job_file(path)
        write_held(path, THEIRS, held)
        return job_file

    read_file, now = read_held(path, held, read)
    assert read_file == OURS
    with pytest.raises(ChangedError):
        write_held(path, OURS, now)


def test_a_job_that_is_open_elsewhere_is_neither_read_nor_written(path: Path, hold: Hold) -> None:
    path.write_bytes(b"theirs")
    hold(path)
    with pytest.raises(HeldError):
        read_held(path, Held(), read_job_file)
    with pytest.raises(HeldError):
        write_held(path, OURS, Held())
    assert path.read_bytes() == b"theirs"


def test_what_is_not_written_or_read_is_not_claimed(path: Path) -> None:
    path.write_bytes(b"no job")
    path.chmod(0o444)
    with pytest.raises(FileError, match="read-only"):
        write_held(path, OURS, Held())
    with pytest.raises(FileError, match="this is not a job file"):
        read_held(path, Held(), read_job_file)
    assert list(path.parent.iterdir()) == [path]
