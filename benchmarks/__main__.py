"""Run all benchmarks, or those named."""

import sys
from collections.abc import Callable, Iterable

from benchmarks import (
    adjusting,
    arranging,
    basket,
    closing,
    dragging,
    handling,
    memory,
    needs,
    opening,
    painting,
    squaring,
    tiling,
    window,
)
from benchmarks.measuring import Measured

BENCHMARKS: dict[str, Callable[[], Iterable[Measured]]] = {
    "adjusting": adjusting.measured,
    "arranging": arranging.measured,
    "basket": basket.measured,
    "dragging": dragging.measured,
    "handling": handling.measured,
    "memory": memory.measured,
    "needs": needs.measured,
    "closing": closing.measured,
    "opening": opening.measured,
    "painting": painting.measured,
    "squaring": squaring.measured,
    "tiling": tiling.measured,
    "window": window.measured,
}
"""Each benchmark by its name; a new one is a module with a function like these, and a row."""


def main(names: list[str]) -> int:
    """Print what is measured, line by line; 2 for a name that is none."""
    unknown = [name for name in names if name not in BENCHMARKS]
    if unknown:
        print(f"There is no benchmark {unknown[0]}; there are {', '.join(BENCHMARKS)}.", file=sys.stderr)
        return 2
    for name in names or BENCHMARKS:
        print(name)
        for measured in BENCHMARKS[name]():
            print(f"  {measured}", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
