"""Products as values: what is bought, in which packs, at what price. Litres, metres, pieces; money in one currency."""

from enum import StrEnum

from shared.trade.value import NamedValue, Value


class Use(StrEnum):
    """What a product is for."""

    CLEANER = "cleaner"
    ABRASIVE = "abrasive"
    FILLER = "filler"
    PRIMER = "primer"
    COLOUR = "colour"
    CLEAR = "clear"
    SEALANT = "sealant"
    TAPE = "tape"
    SLEEVE = "roller sleeve"
    OTHER = "other"


class Measure(StrEnum):
    """What a product is counted in."""

    LITRES = "L"
    METRES = "m"
    PIECES = "pieces"


MEASURES = dict.fromkeys(Use, Measure.LITRES) | {
    Use.ABRASIVE: Measure.PIECES,
    Use.TAPE: Measure.METRES,
    Use.SLEEVE: Measure.PIECES,
    Use.OTHER: Measure.PIECES,
}
"""Everything is counted in litres but for these."""


class Pack(Value, frozen=True):
    """A tin, kit, cartridge, roll or box: how much is in it, in the product's measure, and its price.

    A kit of a two-part product holds base and hardener together, mixed in its ratio. None for a price that nobody has
    typed yet.
    """

    size: float
    price: float | None = None
    name: str = ""


class Product(NamedValue, frozen=True):
    """Something that is bought.

    `covers_m2` is how much a litre (or a piece) covers in one coat; where it is None it follows from `solids` (share of
    the volume, 0 to 1) and the dry film `film_um`. `ratio` is (base, hardener) by volume of a two-part product and
    `usable_h` how long its mix can be used; `keeps_days` how long what is left of an opened pack keeps. Products that
    say the same word in `stands_for` may stand in for each other; "" for nothing but itself. `on_shelf` is what there
    is already, in the product's measure.
    """

    use: Use
    packs: tuple[Pack, ...] = ()
    covers_m2: float | None = None
    solids: float | None = None
    film_um: float | None = None
    ratio: tuple[float, float] | None = None
    usable_h: float | None = None
    keeps_days: float | None = None
    stands_for: str = ""
    on_shelf: float = 0.0

    @property
    def measure(self) -> Measure:
        """What it is counted in."""
        return MEASURES[self.use]


class Money(Value, frozen=True):
    """How prices are meant: the currency as it is written, whether tax is in them, its share, and the budget.

    The budget is what may be spent in all, tax included; 0 where none is set.
    """

    currency: str = ""
    tax: float = 0.0
    tax_included: bool = True
    budget: float = 0.0


class Allowances(Value, frozen=True):
    """What is used beyond the bare sum, as shares: 0.1 is a tenth.

    A `loss` divides what is needed by what is left of one (30 % of loss is 42.9 % more); an `allowance` adds its share
    (30 % is 30 % more). `tray_l` stays in tray and sleeve each time a product is laid. `coats_a_sleeve` is how many
    coats one roller sleeve lays of one product before it is thrown away.
    """

    loss: float = 0.0
    allowance: float = 0.10
    tray_l: float = 0.05
    tape: float = 0.10
    sealant: float = 0.10
    coats_a_sleeve: int = 1
