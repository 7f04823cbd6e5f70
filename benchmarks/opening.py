"""The program from its start to the takeoff of the example, compared with importing what it cannot do without."""

import subprocess
import sys
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from benchmarks.kitchens import kitchen_wall
from benchmarks.measuring import Measured, medians
from geometry.parts.moves import moved
from shared.edits.drawn import with_changed_parts
from shared.job import Face, Job, Room
from shared.trade.kinds import Kind
from takeoff.figures.measured import Fronts
from takeoff.take_off import Memory, take_off

EXAMPLE = Path(__file__).parents[1] / "examples" / "harbour-row.json"

GOAL = 2.5
"""The greatest ratio of the time for `recoat takeoff` to that for importing shapely and msgspec alone."""

GOAL_BEYOND_MS = 15.0
"""The longest that counting a face of 300 parts may take beyond arranging it, in milliseconds."""


def measured() -> Iterator[Measured]:
    """The ratio of the two processes, then the times of counting a large face, anew and with one part moved."""
    bare = partial(_run, "-c", "import shapely, msgspec")
    whole = partial(_run, "-c", "from desktop.command_line import main; main()", "takeoff", str(EXAMPLE))
    bare_ms, whole_ms = medians(bare, whole)
    yield Measured("takeoff of the example", whole_ms, "{:.0f} ms")
    yield Measured("takeoff of the example, of bare imports", whole_ms / bare_ms, "{:.2f}", GOAL)
    yield from _large_face()


def _large_face() -> Iterator[Measured]:
    face = Face("a", "A", parts=tuple(kitchen_wall(300)))
    job = Job("300 parts", rooms=(Room("r", "Kitchen", (face,)),))
    figures, sure = partial(take_off, job, sure=False), partial(take_off, job)
    arranged, counted, whole = medians(partial(_arranged, job, face), figures, sure)
    yield Measured("counting 300 parts, beyond arranging them", counted - arranged, "{:.1f} ms", GOAL_BEYOND_MS)
    yield Measured("how sure the count of 300 parts is, beyond counting them", whole - counted, "{:.1f} ms")
    memory = Memory()
    frames = _frames(job)
    (frame,) = medians(lambda: take_off(next(frames), memory, sure=False))
    yield Measured("counting 300 parts again while one is dragged", frame, "{:.1f} ms")


def _arranged(job: Job, face: Face) -> None:
    Memory().arrangement(job, face, Fronts.HUNG)


def _frames(job: Job) -> Iterator[Job]:
    dragged = next(part for part in job.faces[0].parts[150:] if part.kind is Kind.CABINET)
    step = 0
    while True:
        step = (step + 1) % 50
        yield with_changed_parts(job, [moved(dragged, step, 0)])


def _run(*arguments: str) -> None:
    subprocess.run((sys.executable, *arguments), check=True, stdout=subprocess.DEVNULL, cwd=EXAMPLE.parents[1])
