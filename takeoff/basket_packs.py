"""The door to the solver: which of several products to buy, and how many of each of its packs, as whole numbers."""

from functools import lru_cache
from typing import NamedTuple

EFFORT = 2.0
"""How long the solver may try at one question, in its own deterministic seconds; a kitchen's take a few thousandths."""

REMEMBERED = 4096
"""Answers kept: an edit to one product asks the solver about that product only."""


class Offer(NamedTuple):
    """One product that would do: how much of it is `missing` (0 or less for nothing), and its packs, alike in order.

    Sizes, greater than 0, are whole numbers of the unit that `missing` is in; prices are whole cents.
    """

    missing: int
    sizes: tuple[int, ...]
    prices: tuple[int, ...]


class Choice(NamedTuple):
    """The offer that is taken, by its place, and how many of each of its packs; `proved` where none is better."""

    offer: int
    counts: tuple[int, ...]
    proved: bool = True


@lru_cache(maxsize=REMEMBERED)
def cheapest(offers: tuple[Offer, ...], effort: float = EFFORT) -> Choice:
    """The choice that is enough and costs least; of those the least left over, the fewest packs, the earliest offer.

    What is left over counts what there was too much of from the start. At least one offer is asked for, and packs of it
    where something is missing. The same answer every time, on every machine, by one version of the solver.
    """
    from takeoff.basket_solver import solve  # late: the solver is slow to start and a takeoff does without

    return solve(offers, effort)
