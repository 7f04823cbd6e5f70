"""Arranging a face, compared with bare noding of the same lines by the geometry library."""

from collections.abc import Iterator
from functools import partial
from time import process_time

import shapely

from benchmarks.kitchens import kitchen_wall, linework
from benchmarks.measuring import Measured, medians
from geometry.seen.arrange import arrange

GOALS = {30: None, 100: None, 300: 2.0, 1000: 1.6, 3000: None}
"""The greatest ratio of the time for arranging so many parts to that for noding their lines."""

GROWTH = 11.0
"""The greatest ratio of the time for ten times as many parts (3000 for 300)."""


def measured() -> Iterator[Measured]:
    """The times and ratios for each number of parts, then the growth."""
    for count, goal in GOALS.items():
        parts = kitchen_wall(count)
        whole, noded = medians(partial(arrange, parts), partial(shapely.node, linework(parts)), clock=process_time)
        yield Measured(f"{count} parts", whole, "{:.1f} ms")
        yield Measured(f"{count} parts, over noding", whole / noded, "{:.2f}", goal)
    few, many = medians(partial(arrange, kitchen_wall(300)), partial(arrange, kitchen_wall(3000)), clock=process_time)
    yield Measured("3000 parts over 300", many / few, "{:.1f}", GROWTH)
