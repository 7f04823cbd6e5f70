"""The door to the solver, which chooses one of several products and how many of each of its packs to buy."""

from functools import lru_cache

from takeoff.basket.offers import PackChoice, PackOffer

EFFORT = 0.25
"""How long the solver may try at one aim, in its own deterministic seconds (own choice). That is about half a second. A
product of a kitchen takes a few milliseconds."""

REMEMBERED = 4096
"""How many choices are remembered, so that an edit to one product calls the solver for that product only."""


@lru_cache(maxsize=REMEMBERED)
def cheapest(offers: tuple[PackOffer, ...], effort: float = EFFORT) -> PackChoice:
    """The cheapest choice that covers what is missing.

    Of choices that cost the same it is the one with the least left over, then the fewest packs, then the earliest
    offer. What is left over includes what there was too much of from the start. There must be at least one offer, and
    an offer with something missing must have packs. One version of the solver gives the same choice every time. When
    the effort is used up, the best choice found so far is given. It is then not proved, or proved to cost least though
    less might be left over.
    """
    from takeoff.basket.solver import solve  # late: the solver is slow to start and a takeoff does without

    return solve(offers, effort)
