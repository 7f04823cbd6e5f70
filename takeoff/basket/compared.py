"""What becomes of a basket when something is changed: what if."""

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

from takeoff.figures.to_buy import Basket, BasketRow


class Difference(NamedTuple):
    """One row of a basket that is not what it was; None where it was not there, or is no longer."""

    wanted: str
    before: BasketRow | None
    after: BasketRow | None

    @property
    def packs(self) -> int:
        """How many more packs it takes; negative for fewer."""
        return _packs(self.after) - _packs(self.before)

    @property
    def cost(self) -> float | None:
        """How much more it costs; negative for less, None where one of the two is not known."""
        before, after = _cost(self.before), _cost(self.after)
        return None if before is None or after is None else _to_the_cent(after - before)


class Compared(NamedTuple):
    """The rows that differ, in the order of the basket after, what is no longer bought last; and all in all."""

    rows: tuple[Difference, ...]
    packs: int
    cost: float


def compare(before: Basket, after: Basket) -> Compared:
    """What differs between two baskets of a job; no rows where nothing does. Rows belong together by what is wanted."""
    old, new = _by_name(before.rows), _by_name(after.rows)
    rows = tuple(
        Difference(key[0], old.get(key), new.get(key)) for key in {**new, **old} if old.get(key) != new.get(key)
    )
    return Compared(rows, sum(row.packs for row in rows), _to_the_cent(after.cost - before.cost))


def _by_name(rows: Iterable[BasketRow]) -> dict[tuple[str, int], BasketRow]:
    """Rows by what is wanted and, as two products may have one name, the how manieth of that name it is."""
    seen: Counter[str] = Counter()
    named: dict[tuple[str, int], BasketRow] = {}
    for row in rows:
        named[row.wanted, seen[row.wanted]] = row
        seen[row.wanted] += 1
    return named


def _packs(row: BasketRow | None) -> int:
    return sum(bought.many for bought in row.packs) if row else 0


def _cost(row: BasketRow | None) -> float | None:
    return row.cost if row else 0.0


def _to_the_cent(cost: float) -> float:
    return round(cost, 2)
