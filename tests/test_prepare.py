"""`.ci/prepare.py`: one at a time, and an environment that was never finished is made anew."""

import fcntl
import importlib.util
import pwd
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

SCRIPT = Path(__file__).parents[1] / ".ci" / "prepare.py"

WAIT = "import importlib.util, pathlib, sys; {load}; p.LOCK = pathlib.Path(sys.argv[1])\nwith p.only_one(): print('in')"
LOAD = (
    f"spec = importlib.util.spec_from_file_location('prepare', {str(SCRIPT)!r}); "
    "p = importlib.util.module_from_spec(spec); spec.loader.exec_module(p)"
)


@pytest.fixture
def prepare(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """The script, which prepares a folder of the test's."""
    spec = importlib.util.spec_from_file_location("prepare", SCRIPT)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    environment = tmp_path / "with spaces" / ".venv"
    for name, value in (
        ("ENVIRONMENT", environment),
        ("PYTHON", environment / "bin" / "python"),
        ("STAMP", environment / "prepared-from"),
        ("LOCK", tmp_path / "lock"),
    ):
        monkeypatch.setattr(module, name, value)
    return module


@pytest.fixture
def commands(prepare: ModuleType, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What would be run: making the environment gives one whose Python starts, installing does nothing."""
    told: list[str] = []

    def run(command: tuple[str, ...], _: str) -> None:
        told.append("venv" if "venv" in command else "install")
        if "venv" in command:
            prepare.STAMP.unlink(missing_ok=True)
            prepare.PYTHON.parent.mkdir(parents=True, exist_ok=True)
            prepare.PYTHON.unlink(missing_ok=True)
            prepare.PYTHON.symlink_to(sys.executable)

    monkeypatch.setattr(prepare, "run", run)
    return told


def test_a_finished_environment_is_left_alone(prepare: ModuleType, commands: list[str]) -> None:
    prepare.prepare_environment("test")
    assert commands == ["venv", "install", "install"]
    prepare.prepare_environment("test")
    prepare.prepare_environment("run")
    assert commands == ["venv", "install", "install"]


def test_an_environment_that_was_killed_amid_installing_is_made_anew(
    prepare: ModuleType, commands: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    prepare.prepare_environment("run")
    whole = prepare.run

    def killed(command: tuple[str, ...], failure: str) -> None:
        if "pip" in command:
            raise KeyboardInterrupt
        whole(command, failure)

    monkeypatch.setattr(prepare, "run", killed)
    with pytest.raises(KeyboardInterrupt):
        prepare.prepare_environment("test")
    monkeypatch.setattr(prepare, "run", whole)
    commands.clear()
    prepare.prepare_environment("run")
    assert commands == ["venv", "install", "install"]


def test_a_second_make_waits_for_the_first_and_says_so(tmp_path: Path) -> None:
    lock = tmp_path / "lock"
    with lock.open("w") as held:
        fcntl.flock(held, fcntl.LOCK_EX)
        second = subprocess.Popen(
            (sys.executable, "-c", WAIT.format(load=LOAD), str(lock)), stdout=subprocess.PIPE, text=True
        )
        assert second.stdout is not None
        assert "waiting" in second.stdout.readline()
        assert second.poll() is None
    assert second.communicate()[0] == "in\n"
    assert second.returncode == 0


def test_fonts_are_looked_for_though_nobody_knows_whose_home_it_is(
    prepare: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("HOME", raising=False)
    monkeypatch.setattr(pwd, "getpwuid", dict[int, str]().__getitem__)
    with pytest.raises(RuntimeError):
        Path("~").expanduser()
    assert [str(folder) for folder in prepare.font_folders()] == ["/usr/share/fonts", "/usr/local/share/fonts"]
