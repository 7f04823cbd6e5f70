"""Tells packs that are far from the others of their product, by what they cost for what is in them or by size."""

from collections.abc import Iterator

from shared.findings import NOWHERE, Code, Finding
from shared.job import Unit
from shared.trade.products import Pack, Product
from shared.written.writing import Writing
from takeoff.basket.stock import filled_packs
from takeoff.needs.unusual import is_far, times, times_words

FAR_SIZE_TIMES = 10.0
"""A pack this many times as large as the next one, or this part of it, is far from it (own choice): tins of 1 L and of
4 L, or of half a pint and of a quart, are usual side by side."""


def look_at_unusual_packs(product: Product, unit: Unit) -> Iterator[Finding]:
    """A pack whose price is far from that of the other packs, and sizes that no price confirms and are far from others.

    Of two packs that differ nobody can say which is wrong: the dearer one is named.
    """
    packs = filled_packs(product)
    priced = [pack for pack in packs if pack.price]
    yield from _far_price(product, priced, unit)
    sized = sorted({pack.size for pack in packs})
    confirmed = {pack.size for pack in priced} if len(priced) > 1 else set()
    for size, neighbour in _ends(sized):
        if size not in confirmed and is_far(size / neighbour, FAR_SIZE_TIMES):
            yield _far_size(product, size, neighbour, unit)


def _far_price(product: Product, priced: list[Pack], unit: Unit) -> Iterator[Finding]:
    per = [(pack.price or 0.0) / pack.size for pack in priced]
    many = [times(each, (*per[:place], *per[place + 1 :])) for place, each in enumerate(per)]
    farthest = max(range(len(priced)), key=lambda place: max(many[place], 1 / many[place]), default=None)
    if farthest is None or not is_far(many[farthest]):
        return
    pack = priced[farthest]
    message = (
        f"{product.called}: for what is in it, the {Writing(unit).pack(pack, product.measure)} at "
        f"{Writing().money(pack.price or 0.0)} costs {times_words(many[farthest])} what the other packs cost; "
        "check what they hold and cost."
    )
    yield Finding(Code.UNUSUAL_PRICE, message, NOWHERE)


def _ends(sizes: list[float]) -> Iterator[tuple[float, float]]:
    """The largest and the smallest of these sizes, which are in order, each with the next one."""
    if len(sizes) > 1:
        yield sizes[-1], sizes[-2]
    if len(sizes) > 2:
        yield sizes[0], sizes[1]


def _far_size(product: Product, size: float, neighbour: float, unit: Unit) -> Finding:
    holds, other = (Writing(unit).pack_size(each, product.measure) for each in (size, neighbour))
    message = (
        f"{product.called}: a pack holds {holds}, {times_words(size / neighbour)} the next one, {other}; check it."
    )
    return Finding(Code.UNUSUAL_PACK, message, NOWHERE)
