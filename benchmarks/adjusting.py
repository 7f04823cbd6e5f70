"""Adjusting the readings of a face together: a chain and running readings of the same lines."""

from collections.abc import Iterator
from functools import partial
from itertools import pairwise
from time import process_time

from benchmarks.measuring import Measured, medians
from geometry.set_out.adjusting import Observed, adjust_positions

GOALS_MS = {20: None, 200: 10.0}
"""The longest that adjusting so many readings may take, in milliseconds."""

GROSS_MM = 30.0


def measured() -> Iterator[Measured]:
    """The times for readings that agree, and for as many readings of which one is wrong."""
    for count, goal in GOALS_MS.items():
        sound, wrong = medians(
            partial(adjust_positions, readings(count, 0.0), count // 2 + 1),
            partial(adjust_positions, readings(count, GROSS_MM), count // 2 + 1),
            clock=process_time,
        )
        yield Measured(f"{count} readings", sound, "{:.1f} ms", goal)
        yield Measured(f"{count} readings, one of them wrong", wrong, "{:.1f} ms", goal)


def readings(count: int, gross_mm: float) -> list[Observed]:
    """Readings: half a chain, half running, with a scatter of 1 mm. The middle of the chain is off by `gross_mm`."""
    at = [40.0 * line + (7 * line) % 3 for line in range(count // 2 + 1)]
    chain = [
        Observed(line, line + 1, end - start + line % 2 * 0.4, 0.4) for line, (start, end) in enumerate(pairwise(at))
    ]
    chain[len(chain) // 2] = chain[len(chain) // 2]._replace(length_mm=40.0 + gross_mm)
    return chain + [Observed(0, line, end, 0.7) for line, end in enumerate(at) if line]
