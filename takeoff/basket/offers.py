"""What the solver is given and what it gives back: offers of packs and the choice among them, as whole numbers."""

from typing import NamedTuple


class PackOffer(NamedTuple):
    """One product that would do, how much of it is missing, and the sizes and prices of its packs, in one order.

    `missing` is 0 or less if nothing has to be bought. Sizes are whole numbers above 0, in the unit of `missing`.
    Prices are in whole cents.
    """

    missing: int
    sizes: tuple[int, ...]
    prices: tuple[int, ...]


class PackChoice(NamedTuple):
    """The place of the offer that is taken, and how many of each of its packs. `proved` says that none costs less."""

    offer: int
    counts: tuple[int, ...]
    proved: bool = True
