"""The door to the solver: which of several products to buy, and how many of each of its packs, as whole numbers."""

from functools import lru_cache

from takeoff.basket.offers import PackChoice, PackOffer

EFFORT = 0.25
"""How long the solver may try at one aim, in its own deterministic seconds, about half a second; a kitchen's products
take a few milliseconds each (own choice)."""

REMEMBERED = 4096
"""Answers kept: an edit to one product asks the solver about that product only."""


@lru_cache(maxsize=REMEMBERED)
def cheapest(offers: tuple[PackOffer, ...], effort: float = EFFORT) -> PackChoice:
    """The choice that is enough and costs least; of those the least left over, the fewest packs, the earliest offer.

    What is left over counts what there was too much of from the start. At least one offer is asked for, and packs of it
    where something is missing. The same answer every time, by one version of the solver. Where the effort is used up
    the best found so far stands: not proved, or proved to cost least while less might be left over.
    """
    from takeoff.basket.solver import solve  # late: the solver is slow to start and a takeoff does without

    return solve(offers, effort)
