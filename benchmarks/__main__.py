"""Do all benchmarks, or those that are named."""

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
"""The benchmarks by name. To add one, write a module with such a function, and name it here."""


def main(names: list[str]) -> int:
    """Print each figure as it is measured. Returns the exit code: 2 if a name is not that of a benchmark."""
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
