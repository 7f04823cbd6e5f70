"""Another process that has a job open."""

import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

PROJECT = Path(__file__).parents[1]
HOLDING = (
    "import sys, time\nfrom pathlib import Path\nfrom shared.files.claim import claim\n"
    "print(claim(Path(sys.argv[1])) is not None, flush=True)\ntime.sleep(600)\n"
)

Hold = Callable[[Path], subprocess.Popen[str]]


@pytest.fixture
def hold() -> Iterator[Hold]:
    """Has another process claim a job and go on running; gives that process."""
    started: list[subprocess.Popen[str]] = []

    def begin(path: Path) -> subprocess.Popen[str]:
        other = subprocess.Popen(
            (sys.executable, "-c", HOLDING, str(path)), cwd=PROJECT, stdout=subprocess.PIPE, text=True
        )
        started.append(other)
        assert other.stdout is not None
        assert other.stdout.readline() == "True\n"
        return other

    yield begin
    for other in started:
        other.kill()
        other.communicate()
