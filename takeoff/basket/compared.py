"""How a basket changes when something in its job is changed."""

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

from takeoff.figures.to_buy import Basket, BasketRow


class Difference(NamedTuple):
    """One row of a basket before and after a change. `before` is None for a new row, `after` for one that is gone."""

    wanted: str
    before: BasketRow | None
    after: BasketRow | None

    @property
    def packs(self) -> int:
        """How many more packs are bought; negative for fewer."""
        return _packs(self.after) - _packs(self.before)

    @property
    def cost(self) -> float | None:
        """How much more the row costs; negative for less. None if one of the two costs is not known."""
        before, after = _cost(self.before), _cost(self.after)
        return None if before is None or after is None else _to_the_cent(after - before)


class Compared(NamedTuple):
    """The rows that differ, in the order of the basket after the change, then those that are gone; and the sums.

    `packs` and `cost` say how many more packs are bought and how much more the basket costs.
    """

    rows: tuple[Difference, ...]
    packs: int
    cost: float


def compare(before: Basket, after: Basket) -> Compared:
    """The differences between two baskets of a job. Rows for the same work belong together. Equal baskets have none."""
    old, new = _by_name(before.rows), _by_name(after.rows)
    rows = tuple(
        Difference(key[0], old.get(key), new.get(key)) for key in {**new, **old} if old.get(key) != new.get(key)
    )
    return Compared(rows, sum(row.packs for row in rows), _to_the_cent(after.cost - before.cost))


def _by_name(rows: Iterable[BasketRow]) -> dict[tuple[str, int], BasketRow]:
    """Rows by the name of their work and, as two may have one name, by their number among those of that name."""
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
