"""Files, folders, outputs and machines that fail: one clear sentence each, never a wait, and nothing is harmed."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from desktop.command_line import main
from tests.journeys.hostile import Said

RECOAT = Path(sys.executable).with_name("recoat")


@pytest.mark.parametrize("name", ["missing", "folder", "below a file", "too long", "link to itself", "pipe", "device"])
def test_a_place_without_a_file_is_told_and_never_waited_for(desk: Path, said: Said, name: str) -> None:
    (desk / "loop").symlink_to(desk / "loop")
    os.mkfifo(desk / "pipe")
    places = {
        "missing": (desk / "nowhere", "there is no such file"),
        "folder": (desk, "this is a folder"),
        "below a file": (desk / "sound.json" / "x", "is not a folder"),
        "too long": (desk / ("n" * 300), "the name is too long"),
        "link to itself": (desk / "loop", "leads back to itself"),
        "pipe": (desk / "pipe", "not a plain file"),
        "device": (Path("/dev/null"), "not a plain file"),
    }
    path, words = places[name]
    for command in ("takeoff", "check"):
        line = said(command, path)
        assert words in line
        assert str(path) in line
    assert words in said("convert", path, "-o", desk / "out.json")
    assert not (desk / "out.json").exists()


@pytest.mark.parametrize("name", ["folder", "no folder", "too long", "link to itself", "pipe nobody reads", "job"])
def test_a_place_that_cannot_be_written_to_is_told_and_harms_nothing(desk: Path, said: Said, name: str) -> None:
    job = desk / "sound.json"
    before = job.read_bytes()
    (desk / "loop").symlink_to(desk / "loop")
    (desk / "again.json").hardlink_to(job)
    os.mkfifo(desk / "pipe")
    places = {
        "folder": (desk, "this is a folder"),
        "no folder": (desk / "nowhere" / "out.json", "there is no such file or folder"),
        "too long": (desk / f"{'n' * 300}.json", "the name is too long"),
        "link to itself": (desk / "loop", "leads back to itself"),
        "pipe nobody reads": (desk / "pipe", "no program is reading from this pipe"),
        "job": (desk / "again.json", "this file is the job itself"),
    }
    path, words = places[name]
    files = set(desk.iterdir())
    for line in (said("takeoff", job, "-o", path), said("convert", job, "-o", path)):
        assert words in line
        assert str(path) in line
    assert job.read_bytes() == before
    assert set(desk.iterdir()) == files


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is forbidden to root")
def test_a_folder_that_cannot_be_written_to_is_told(desk: Path, said: Said) -> None:
    folder = desk / "locked"
    folder.mkdir(mode=0o500)
    assert "this is not permitted" in said("takeoff", desk / "sound.json", "-o", folder / "out.txt")
    assert "this is not permitted" in said("example", folder / "out.recoat")


def test_a_job_file_is_never_written_over_by_a_drawing_or_the_example(desk: Path, said: Said) -> None:
    job = desk / "sound.dxf"
    content = (desk / "sound.json").read_bytes()
    job.write_bytes(content)
    assert "this file is the job itself" in said("draw", job, "-o", job)
    assert "this file exists already" in said("example", job)
    assert job.read_bytes() == content


@pytest.mark.parametrize(
    "words",
    [("--nonsense",), ("takeoff",), ("make\noff", "x"), ("takeoff", "x", "--format", "doc"), ("schema", "\x1b[2J")],
    ids=ascii,
)
def test_a_command_line_that_makes_no_sense_is_answered_in_one_line(said: Said, words: tuple[str, ...]) -> None:
    said(*words)


def test_a_file_name_cannot_steer_the_terminal(desk: Path, said: Said) -> None:
    assert "?[31mred??.json" in said("takeoff", desk / "\x1b[31mred\n\udcff.json")


def test_a_closed_output_is_told(
    desk: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "stdout", None)
    assert main(["takeoff", str(desk / "sound.json")]) == 2
    assert "there is no output to write to" in capsys.readouterr().err


def outside(desk: Path, *words: str, **environment: str) -> subprocess.CompletedProcess[str]:
    """A command in a process and a folder of its own, without a screen."""
    bare = {name: value for name, value in os.environ.items() if name not in ("DISPLAY", "WAYLAND_DISPLAY")}
    bare.pop("QT_QPA_PLATFORM", None)
    return subprocess.run(
        (RECOAT, *words), cwd=desk, env={**bare, **environment}, capture_output=True, text=True, check=False
    )


@pytest.mark.skipif(sys.platform != "linux", reason="only there can Qt find no screen")
def test_no_screen_is_told_instead_of_ending_in_an_abort(desk: Path) -> None:
    ran = outside(desk, "open", "sound.json")
    assert (ran.returncode, len(ran.stderr.splitlines())) == (2, 1)
    assert "there is no screen to show a window on" in ran.stderr


def test_a_missing_system_library_of_qt_is_told(desk: Path) -> None:
    (desk / "PySide6").mkdir()
    (desk / "PySide6" / "__init__.py").write_text('raise ImportError("libEGL.so.1: cannot open")', "utf-8")
    ran = outside(desk, "draw", "sound.json", "-o", "out.png", PYTHONPATH=str(desk))
    assert (ran.returncode, len(ran.stderr.splitlines())) == (2, 1)
    assert "libEGL.so.1" in ran.stderr
