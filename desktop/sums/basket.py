"""The rows of the basket, as values: what to buy by groups, each with its sum beneath it, down to parts and packs."""

from collections.abc import Iterable, Iterator

from desktop.fields.words import plain
from desktop.look.wording import TIMES, counted, money_words, raised, run_words, step_words
from desktop.state.shown import Shown
from desktop.sums.product_words import amount_words, keeping_notes, pack_words, packs_words, step_amount_words
from desktop.sums.row import Cells, SumRow
from shared.trade.products import Product, Use
from shared.typed.packs import amount_in
from shared.written.units import area_in, run_in
from takeoff.basket.cheapest import price_with_tax
from takeoff.basket.groups import BasketGroup, BasketLine, basket_groups
from takeoff.bill import Bill
from takeoff.figures.measured import PartRow, Takeoff, Term
from takeoff.figures.naming import Names
from takeoff.figures.to_buy import BasketRow, Need, Used

HEADS: Cells = ("What", "Needed", "Packs", "Left over", "Keeps", "Cost")

BOUGHT = "bought"
"""The first word of the key of a row that buys something."""

NO_PRICE = "no price"
DIVIDED = "\N{DIVISION SIGN}"

MOST_OTHERS = 3
"""Ways to buy it that cost more; farther ones tell nothing."""

MOST_PARTS = 200
"""Listed of one use; the sums name no more in a whole building."""

MM_IN_A_METRE = 1000.0
MM2_IN_A_SQUARE_METRE = 1_000_000.0


def buy_rows(bill: Bill, takeoff: Takeoff) -> tuple[SumRow, ...]:
    """All rows of a basket; `takeoff` is that of the job of the bill."""
    rows = _Rows(bill, takeoff, len(HEADS))
    groups = tuple(rows.group(group) for group in basket_groups(bill.basket, bill.job))
    return (*rows.left_out(), *groups)


def need_rows(bill: Bill, takeoff: Takeoff, columns: int) -> tuple[SumRow, ...]:
    """What is needed of each product that is bought, in so many columns, with its sum; in the order of the basket."""
    rows = _Rows(bill, takeoff, columns)
    groups = basket_groups(bill.basket, bill.job)
    return tuple(rows.need(line) for group in groups for line in group.lines)


def product_of(row: SumRow) -> str:
    """The id of the product that a row buys; "" for other rows."""
    kind, _, name = row.key.partition(" ")
    return name if kind == BOUGHT else ""


def headline(shown: Shown) -> str:
    """What the basket costs, in one line."""
    bill = shown.bill
    if bill is None:
        return "Reckoning what to buy."
    basket = bill.basket
    if not basket.rows:
        return "Nothing to buy yet: draw what is coated, and say in Finish what it gets."
    if all(row.cost is None for row in basket.rows):
        return f"{counted(len(basket.rows), 'product', 'products')} to buy, no prices yet"
    budget = f" of {money_words(basket.budget)}" if basket.budget else ""
    cost = f"{money_words(basket.cost)}{budget} {bill.job.money.currency}".rstrip()
    if bill.left_out:
        return f"{cost}, without {counted(len(bill.left_out), 'thing', 'things')} left out"
    proved = ", proved" if basket.proved else ", not proved"
    return f"The cheapest set that is enough{proved}: {cost}"


class _Rows:
    """Says what is needed and bought of each product, in the job's unit."""

    def __init__(self, bill: Bill, takeoff: Takeoff, columns: int) -> None:
        self._columns = columns
        self._bill, self._unit, self._names = bill, bill.job.unit, Names(bill.job)
        self._works = {need.product: work for work, each in enumerate(bill.needs.wanted) for need in each.options}
        self._needs = {need.product: need for need in bill.bought}
        self._parts = {row.id: row for row in takeoff.parts}
        self._products = {product.id: product for product in bill.job.products}

    def group(self, group: BasketGroup) -> SumRow:
        """A group and the lines in it."""
        cost = money_words(group.cost) if any(line.row.cost is not None for line in group.lines) else ""
        lines = tuple(self._line(line) for line in group.lines)
        return SumRow(f"group {group.name}", (group.name, "", "", "", "", cost), lines, head=True)

    def left_out(self) -> Iterator[SumRow]:
        """What could not be reckoned with, above all that is bought."""
        words = self._bill.left_out
        if words:
            head = f"Left out, and in no total: {len(words)}"
            yield SumRow("left out", self._spanned(head), tuple(self._notes("left out", words)), head=True)

    def need(self, line: BasketLine) -> SumRow:
        """What is needed of a product, at the right end of the columns."""
        key, need = f"need {line.row.product}", self._needs[line.row.product]
        amount = amount_words(line.row.need, line.product.measure, self._unit)
        return SumRow(
            key=key,
            cells=(*self._spanned(line.product.called)[:-1], amount),
            children=(*self._uses(key, need, line.product), *self._notes(key, self._about(line, need))),
            parts=need.amount.reason.parts,
        )

    def _spanned(self, words: str) -> Cells:
        return (words, *("",) * (self._columns - 1))

    def _notes(self, key: str, words: Iterable[str]) -> Iterator[SumRow]:
        for place, each in enumerate(words):
            yield SumRow(f"{key} note {place}", self._spanned(each), note=True)

    def _line(self, line: BasketLine) -> SumRow:
        row, measure = line.row, line.product.measure
        key, need = f"{BOUGHT} {row.product}", self._needs[row.product]
        keeps = f"{plain(row.keeps_days)} d" if row.left_over and row.keeps_days is not None else ""
        return SumRow(
            key=key,
            cells=(
                line.product.called,
                amount_words(row.need, measure, self._unit),
                packs_words(row.packs, line.product, self._unit),
                amount_words(row.left_over, measure, self._unit) if row.left_over else "",
                keeps,
                NO_PRICE if row.cost is None else money_words(row.cost),
            ),
            children=(
                *self._uses(key, need, line.product),
                *self._notes(key, (*self._about(line, need), *self._packs(line), *keeping_notes(line, self._unit))),
            ),
            parts=need.amount.reason.parts,
        )

    def _uses(self, key: str, need: Need, product: Product) -> Iterator[SumRow]:
        """The terms of the need, those that are uses down to the parts that they are of."""
        terms = need.amount.reason.terms
        for place, term in enumerate(terms):
            used = need.used[place] if place < len(need.used) else None
            amount = step_amount_words(term.amount, product.measure, self._unit)
            factors = self._factors(used, product) if used else ""
            total = f"{factors} = {amount}" if factors else amount
            yield SumRow(
                key=f"{key} {place}",
                cells=self._spanned(f"{raised(term.what)}   {total}"),
                children=tuple(self._coated(f"{key} {place}", term)) if used and used.finish else (),
                parts=term.parts,
                note=True,
            )

    def _factors(self, used: Used, product: Product) -> str:
        """The sum of a use, written out: "6.767 m2 x 2 / 9"; "" where it is no more than its size."""
        size, one = self._size(used, product)
        times = f" {TIMES} {plain(used.times)}" if used.times != 1 else ""
        per = used.per * one / amount_in(1.0, product.measure, self._unit)
        divided = f" {DIVIDED} {plain(per)}" if per != 1 else ""
        return f"{size}{times}{divided}" if times or divided else ""

    def _size(self, used: Used, product: Product) -> tuple[str, float]:
        """What is worked on in words, and how many of its unit a square metre, a metre or a piece is."""
        if product.use in (Use.SEALANT, Use.TAPE):
            return run_words(used.size * MM_IN_A_METRE, self._unit), run_in(MM_IN_A_METRE, self._unit)
        if used.finish and product.use is not Use.SLEEVE:
            size_mm2 = used.size * MM2_IN_A_SQUARE_METRE
            return step_words(size_mm2, self._unit), area_in(MM2_IN_A_SQUARE_METRE, self._unit)
        return plain(used.size), 1.0

    def _coated(self, key: str, term: Term) -> Iterator[SumRow]:
        """The parts of a use that is laid on surfaces."""
        known = [self._parts[part] for part in term.parts if part in self._parts]
        yield from (self._part(key, row) for row in known[:MOST_PARTS])
        if len(known) > MOST_PARTS:
            yield SumRow(f"{key} more", self._spanned(f"and {len(known) - MOST_PARTS} parts more"), note=True)

    def _part(self, key: str, row: PartRow) -> SumRow:
        alike = self._names.alike(row.face)
        area = step_words(row.coated_mm2.amount * alike, self._unit)
        times = f", {alike} rooms alike" if alike > 1 else ""
        words = f"{row.tag or self._names.face(row.face)}  {self._names.part(row.id)}   {area}{times}"
        return SumRow(f"{key} {row.id}", self._spanned(words), parts=(row.id,), face=row.face, note=True)

    def _about(self, line: BasketLine, need: Need) -> Iterator[str]:
        reason, measure = need.amount.reason, line.product.measure
        yield from raised(reason.rule).split("; ")
        yield raised(reason.source)
        if need.mixed is not None:
            base, hardener = (amount_words(litres, measure, self._unit) for litres in need.mixed)
            yield f"Base {base}, hardener {hardener}."
        if line.row.from_shelf:
            yield f"{amount_words(line.row.from_shelf, measure, self._unit)} of it from the shelf."

    def _packs(self, line: BasketLine) -> Iterator[str]:
        """Which packs, what else would cost more, and what one more costs."""
        row, measure = line.row, line.product.measure
        for pack, many in row.packs:
            if pack.price is not None:
                price = price_with_tax(pack.price, self._bill.job.money)
                words = pack_words(pack, measure, self._unit)
                yield f"{many} {TIMES} {words} at {money_words(price)} = {money_words(many * price)}"
        others = [other for other in self._bill.instead if self._works[other.product] == self._works[row.product]]
        yield from (self._other(other, row) for other in others[:MOST_OTHERS])
        if row.one_more is not None:
            yield f"One pack more would cost {money_words(row.one_more)}."

    def _other(self, other: BasketRow, row: BasketRow) -> str:
        product = self._products[other.product]
        packs = packs_words(other.packs, product, self._unit)
        name = f"{product.name}, " if other.product != row.product else ""
        cost = other.cost or 0.0
        more = "as much" if row.cost is None or cost == row.cost else f"{money_words(cost - row.cost)} more"
        return f"{name}{packs} would cost {money_words(cost)}, {more}."
