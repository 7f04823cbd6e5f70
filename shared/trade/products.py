"""Products as values: what is bought, in which packs, at what price.

Amounts are litres, metres or pieces, and prices are in the one currency of the job.
"""

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
    HANDLE = "handle"
    HINGE = "hinge"
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
    Use.HANDLE: Measure.PIECES,
    Use.HINGE: Measure.PIECES,
    Use.OTHER: Measure.PIECES,
}
"""What the products of each use are counted in: litres, except for the uses listed."""


class Pack(Value, frozen=True):
    """A tin, kit, cartridge, roll or box: how much is in it, in the product's measure, and its price.

    A kit of a two-part product holds base and hardener, and its size is both together, mixed in their ratio. `price` is
    None while nobody has typed one.
    """

    size: float
    price: float | None = None
    name: str = ""


class Product(NamedValue, frozen=True):
    """Something that is bought.

    `covers_m2` is how much a litre or a piece covers in one coat. When it is None, it follows from `solids` (share of
    the volume, 0 to 1) and `film_um`, the dry film in micrometres. `ratio` is base and hardener of a two-part product,
    by volume. `usable_h` is how many hours its mix can be used, and `keeps_days` how many days an opened pack keeps.
    Products with the same word in `stands_for` may replace each other; "" lets nothing replace the product. `on_shelf`
    is how much of it there is already, in its measure. `anyway` is how many pieces are needed whatever is measured:
    masks, drop sheets, days of hire, loads of waste. Only what is counted in pieces has such a number.
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
    anyway: float = 0.0

    @property
    def measure(self) -> Measure:
        """The measure that the product is counted in."""
        return MEASURES[self.use]


class Money(Value, frozen=True):
    """How prices are meant: the currency as it is written, the share of tax, and whether prices include it.

    `budget` is what may be spent in all, including tax; 0 when none is set.
    """

    currency: str = ""
    tax: float = 0.0
    tax_included: bool = True
    budget: float = 0.0


class Allowances(Value, frozen=True):
    """What is used on top of the bare sum, as shares: 0.1 is a tenth.

    `loss` is the share of what is taken that is lost: the need is divided by 1 - loss, so a loss of 30 % takes 42.9 %
    more. `allowance` adds its share: 30 % takes 30 % more. `tape` and `sealant` are the allowances of those two.
    `tray_l` litres stay in tray and sleeve each time a product is applied. `coats_a_sleeve` is how many coats of one
    product a roller sleeve applies before it is thrown away.
    """

    loss: float = 0.0
    allowance: float = 0.10
    tray_l: float = 0.05
    tape: float = 0.10
    sealant: float = 0.10
    coats_a_sleeve: int = 1
