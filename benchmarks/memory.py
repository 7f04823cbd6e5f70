"""The memory that a face of 1000 parts takes beyond the bare program, measured in a process of its own."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from benchmarks.kitchens import kitchen_wall
from benchmarks.measuring import Measured
from geometry.dragging.standing import Standing
from geometry.seen.arrange import arrange

GOAL_MB = 100.0


def measured() -> Iterator[Measured]:
    """How much the peak grows while a face is arranged, dragged, and arranged again."""
    process = subprocess.run([sys.executable, "-m", __name__], capture_output=True, text=True, check=True)
    yield Measured("1000 parts, arranged and dragged", float(process.stdout), "{:.0f} MB", GOAL_MB)


def _peak_mb() -> float:
    """The largest resident size so far in MB, as the kernel reports it. This works on Linux only."""
    status = Path("/proc/self/status").read_text("utf-8")
    (line,) = (line for line in status.splitlines() if line.startswith("VmHWM"))
    return int(line.split()[1]) / 1024


def _grown_mb() -> float:
    arrange(kitchen_wall(2))
    bare = _peak_mb()
    parts = kitchen_wall(1000)
    kept = [arrange(parts)]
    standing = Standing(parts, [parts[500].id])
    kept += [standing.arranged([parts[500]]), arrange(parts)]
    return _peak_mb() - bare


if __name__ == "__main__":
    print(_grown_mb())
