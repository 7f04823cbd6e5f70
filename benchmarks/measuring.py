"""Takes times. Pieces of work take turns, so that whatever else the machine does slows all of them alike."""

from collections.abc import Callable
from statistics import median
from time import perf_counter
from typing import NamedTuple

LEAST_TURNS = 3
RUNS_A_TURN = 5
"""How often each is done in a turn: several times, as the frames of a drag follow each other and not other work."""

LEAST_SECONDS = 0.7
"""A comparison goes on until both the turns and the seconds are reached."""


class Measured(NamedTuple):
    """One figure: what it is, its value, how it is written, and the most that it may be (None: no goal)."""

    what: str
    value: float
    form: str
    goal: float | None = None

    def __str__(self) -> str:
        """One line, which says whether the goal is met."""
        if self.goal is None:
            return f"{self.what}: {self.form.format(self.value)}"
        verdict = "met" if self.value <= self.goal else "MISSED"
        return f"{self.what}: {self.form.format(self.value)} (goal {self.form.format(self.goal)}, {verdict})"


def medians(
    *works: Callable[[], object], clock: Callable[[], float] = perf_counter, runs: int = RUNS_A_TURN
) -> tuple[float, ...]:
    """The median time of each piece of work, in milliseconds. They take turns, after each was done once uncounted.

    For work that only computes, `time.process_time` is the clock that stands still while others have the processor.
    """
    taken: tuple[list[float], ...] = tuple([] for _ in works)
    for work in works:
        work()
    begun = perf_counter()
    while len(taken[0]) < LEAST_TURNS * runs or perf_counter() - begun < LEAST_SECONDS:
        for work, times in zip(works, taken, strict=True):
            times += [_seconds(work, clock) for _ in range(runs)]
    return tuple(1000 * median(times) for times in taken)


def _seconds(work: Callable[[], object], clock: Callable[[], float]) -> float:
    start = clock()
    work()
    return clock() - start
