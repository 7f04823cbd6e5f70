"""What the tests of bad input share: jobs as files hold them, and what a command that fails says."""

import json
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import pytest

from desktop.command_line import main

Corners = Sequence[Sequence[float]]
Said = Callable[..., str]


def rectangle(x: float, y: float, width: float, height: float) -> Corners:
    return ((x, y), (x + width, y), (x + width, y + height), (x, y + height))


def job_of(*parts: dict[str, Any], **fields: Any) -> dict[str, Any]:
    """A job as a file holds it: one wall with these parts."""
    wall = {"id": "w", "kind": "wall", "outline": rectangle(0, 0, 3600, 2400)}
    face = {"id": "f", "name": "A", "parts": [wall, *parts]}
    return {"name": "Job", "rooms": [{"id": "r", "name": "Kitchen", "faces": [face]}], **fields}


def door(outline: Corners = ((0, 150), (450, 150), (450, 850), (0, 850)), **fields: Any) -> dict[str, Any]:
    return {"id": "p", "kind": "door", "outline": outline, **fields}


@pytest.fixture
def desk(tmp_path: Path) -> Path:
    """A folder with a sound job in it."""
    (tmp_path / "sound.json").write_text(json.dumps(job_of(door())), "utf-8")
    return tmp_path


@pytest.fixture
def said(capsys: pytest.CaptureFixture[str]) -> Said:
    """What a command that fails says: one line on standard error alone, and what to do."""

    def run(*words: str | Path) -> str:
        assert main([str(word) for word in words]) == 2
        out, error = capsys.readouterr()
        assert out == ""
        (line,) = error.splitlines()
        assert line.startswith("recoat: ")
        assert line.isprintable()
        assert line.endswith(".")
        return line

    return run


def written(folder: Path, content: bytes | dict[str, Any]) -> Path:
    path = folder / "hostile.json"
    path.write_bytes(content if isinstance(content, bytes) else json.dumps(content).encode())
    return path
