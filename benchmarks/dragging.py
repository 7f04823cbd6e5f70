"""One frame of a drag, compared with arranging the whole face anew."""

from collections.abc import Iterator
from functools import partial
from itertools import cycle
from time import process_time

from benchmarks.kitchens import kitchen_wall
from benchmarks.measuring import Measured, medians
from geometry.dragging.standing import Standing
from geometry.parts.moves import moved
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Arrangement
from shared.job import Part
from shared.trade.kinds import Kind

GOALS = {30: None, 100: None, 300: 1 / 6, 1000: 1 / 15, 3000: None}
"""The greatest share that a frame may take of the time for arranging a face of so many parts."""


FRAMES_A_TURN = 30
"""The frames of half a second of a drag. In turns of 5 frames the ratio at 300 parts is about a tenth higher."""


def measured() -> Iterator[Measured]:
    """The times and ratios for each number of parts. A cabinet in the middle of the wall moves at each frame."""
    for count, goal in GOALS.items():
        parts = kitchen_wall(count)
        dragged = next(part for part in parts[count // 2 :] if part.kind is Kind.CABINET)
        frames = cycle([[moved(dragged, step % 50, step % 37)] for step in range(100)])
        whole, one = medians(
            partial(arrange, parts),
            partial(_frame, Standing(parts, [dragged.id]), frames),
            clock=process_time,
            runs=FRAMES_A_TURN,
        )
        yield Measured(f"{count} parts", one, "{:.2f} ms")
        yield Measured(f"{count} parts, of arranging anew", one / whole, "{:.3f}", goal)


def _frame(standing: Standing, frames: Iterator[list[Part]]) -> Arrangement:
    return standing.arranged(next(frames))
