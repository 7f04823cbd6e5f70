import errno
import os
import resource
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest

from shared.errors import FileError
from shared.files.disk import file_error, read_bounded, write_atomically


@pytest.fixture
def small_files() -> Iterator[int]:
    """The most bytes that a file may grow to, as the system holds it for this test."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (10_000, hard))
    yield 10_000
    resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def test_a_file_is_written_and_replaced(tmp_path: Path) -> None:
    path = tmp_path / "kitchen.recoat"
    for content in (b"one", b"another"):
        write_atomically(path, content)
        assert path.read_bytes() == content
    assert list(tmp_path.iterdir()) == [path]


def test_a_replaced_file_keeps_its_permissions(tmp_path: Path) -> None:
    path = tmp_path / "kitchen.recoat"
    path.write_bytes(b"")
    path.chmod(0o640)
    write_atomically(path, b"new")
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_a_read_only_file_is_not_replaced(tmp_path: Path) -> None:
    path = tmp_path / "kitchen.recoat"
    path.write_bytes(b"old")
    path.chmod(0o444)
    with pytest.raises(FileError, match=r"kitchen\.recoat: this file is read-only; choose another name"):
        write_atomically(path, b"new")
    assert path.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [path]


def test_a_new_file_has_the_permissions_that_the_person_usually_gives(tmp_path: Path) -> None:
    usual, path = tmp_path / "usual", tmp_path / "new"
    usual.touch()
    write_atomically(path, b"new")
    assert path.stat().st_mode == usual.stat().st_mode


def test_a_link_is_followed(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    target, link = tmp_path / "elsewhere" / "kitchen.recoat", tmp_path / "link"
    target.write_bytes(b"old")
    link.symlink_to(target)
    write_atomically(link, b"new")
    assert link.is_symlink()
    assert target.read_bytes() == b"new"


def test_what_is_no_plain_file_is_not_replaced() -> None:
    write_atomically(Path(os.devnull), b"gone")
    assert not Path(os.devnull).is_file()


def test_a_write_that_fails_leaves_the_old_file_and_nothing_else(tmp_path: Path, small_files: int) -> None:
    path = tmp_path / "kitchen.recoat"
    path.write_bytes(b"old")
    with pytest.raises(FileError, match="the file would be larger than this place allows; choose another place"):
        write_atomically(path, bytes(small_files + 1))
    assert path.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
def test_a_full_disk_is_said_in_words() -> None:
    with pytest.raises(FileError, match="/dev/full: the disk is full; make room or choose another place"):
        write_atomically(Path("/dev/full"), b"x" * 100_000)


def test_a_folder_cannot_be_written_over(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="this is a folder; name a file"):
        write_atomically(tmp_path, b"new")


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(FileError, match=r"nowhere.*there is no such file or folder"):
        write_atomically(tmp_path / "nowhere" / "kitchen.recoat", b"new")


def test_a_link_to_itself_is_refused(tmp_path: Path) -> None:
    link = tmp_path / "link"
    link.symlink_to(link)
    with pytest.raises(FileError, match="the link leads back to itself"):
        write_atomically(link, b"new")
    with pytest.raises(FileError, match="the link leads back to itself"):
        read_bounded(link, 100)


def test_never_more_than_the_bound_is_read(tmp_path: Path) -> None:
    path = tmp_path / "kitchen.recoat"
    path.write_bytes(bytes(2**20))
    assert len(read_bounded(path, 2**20)) == 2**20
    with path.open("ab") as file:
        file.truncate(2**40)  # a file with a hole: a terabyte that takes no room
    with pytest.raises(FileError, match="it is larger than 1 MB"):
        read_bounded(path, 2**20)


def test_a_folder_and_a_device_are_no_files_to_read(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="this is a folder"):
        read_bounded(tmp_path, 100)
    with pytest.raises(FileError, match="this is not a plain file"):
        read_bounded(Path("/dev/zero"), 100)
    with pytest.raises(FileError, match="there is no such file"):
        read_bounded(tmp_path / "nothing", 100)


@pytest.mark.parametrize("number", [errno.EACCES, errno.EROFS, errno.ENOSPC, errno.EIO, 0])
def test_what_the_system_says_becomes_one_sentence_with_advice(number: int) -> None:
    error = file_error(Path("kitchen.recoat"), OSError(number, os.strerror(number)))
    assert str(error).startswith("kitchen.recoat: ")
    assert error.what
    assert error.do
