"""Products, amounts of them and packs as the window words them, in the person's own decimal sign."""

from collections.abc import Iterable, Iterator

from desktop.fields.words import plain
from desktop.look.wording import TIMES, counted, decimal_sign
from shared.job import Unit
from shared.trade.products import Measure, Pack, Product
from shared.typed.packs import amount_in, amount_unit, show_amount, show_size
from takeoff.basket.groups import BasketLine
from takeoff.figures.to_buy import Bought

DECIMALS = {Measure.LITRES: 3, Measure.METRES: 2}
"""Of a step of a sum, so that the steps add up as they are read."""

NO_PACKS = "none"


def amount_words(amount: float, measure: Measure, unit: Unit) -> str:
    """So much of a product, as a person says it."""
    return show_amount(amount, measure, unit, decimal=decimal_sign())


def step_amount_words(amount: float, measure: Measure, unit: Unit) -> str:
    """So much of a product as a step of a sum, in the one unit that all its steps are in."""
    if measure is Measure.PIECES:
        return plain(amount)
    number = f"{amount_in(amount, measure, unit):.{DECIMALS[measure]}f}".replace(".", decimal_sign())
    return f"{number} {amount_unit(measure, unit)}"


def pack_words(pack: Pack, measure: Measure, unit: Unit) -> str:
    """One pack: "1 L kit", "box of 25"."""
    size = show_size(pack.size, measure, unit, decimal=decimal_sign())
    return f"{pack.name or 'pack'} of {size}" if measure is Measure.PIECES else f"{size} {pack.name}".strip()


def packs_words(packs: Iterable[Bought], product: Product, unit: Unit) -> str:
    """The packs to buy: "2 x 1 L kit, 1 x 0.5 L tin", with the sign of multiplication."""
    each = (f"{many} {TIMES} {pack_words(pack, product.measure, unit)}" for pack, many in packs)
    return ", ".join(each) or NO_PACKS


def keeping_notes(line: BasketLine, unit: Unit) -> Iterator[str]:
    """How long what is mixed or opened can be used."""
    product, row = line.product, line.row
    if product.ratio is not None and product.usable_h is not None:
        yield f"Mixed, it can be used for {plain(product.usable_h)} h."
    if row.left_over and row.keeps_days is not None:
        left = amount_words(row.left_over, product.measure, unit)
        yield f"What is left over, {left}, keeps {counted(round(row.keeps_days), 'day', 'days')} once it is opened."
