"""What the solver is asked and what it answers: offers of packs, and the choice among them, as whole numbers."""

from typing import NamedTuple


class PackOffer(NamedTuple):
    """One product that would do: how much of it is `missing` (0 or less for nothing), and its packs, alike in order.

    Sizes, greater than 0, are whole numbers of the unit that `missing` is in; prices are whole cents.
    """

    missing: int
    sizes: tuple[int, ...]
    prices: tuple[int, ...]


class PackChoice(NamedTuple):
    """The offer that is taken, by its place, and how many of each of its packs; `proved` where none costs less."""

    offer: int
    counts: tuple[int, ...]
    proved: bool = True
