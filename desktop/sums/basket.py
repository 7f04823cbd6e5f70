"""The rows of the basket, as values: what to buy, in groups. Beneath each row is its sum, down to parts and packs."""

from collections.abc import Iterator

from desktop.look.wording import counted, own_writing
from desktop.state.shown import Shown
from desktop.sums.row import Cells, SumRow, grounds, spanned, unfolded
from takeoff.basket.groups import BasketGroup, BasketLine, basket_groups
from takeoff.basket.words import cost_words, has_prices, left_out_head, line_notes, open_points
from takeoff.bill import Bill
from takeoff.figures.measured import Takeoff
from takeoff.why.bought import BoughtRows
from takeoff.why.needs import NeedRows
from takeoff.why.row import WhyRow

HEADS: Cells = ("What", "Needed", "Packs", "Left over", "Shelf life", "Cost")

BOUGHT = "bought"
"""The first word in the key of a row that buys a product."""


def buy_rows(bill: Bill, takeoff: Takeoff) -> tuple[SumRow, ...]:
    """All rows of a basket: first what was left out, then the groups. `takeoff` must be of the bill's job."""
    rows = _Rows(bill, takeoff, len(HEADS))
    groups = tuple(rows.group(group) for group in basket_groups(bill.basket, bill.job))
    return (*rows.left_out(), *groups)


def need_rows(bill: Bill, takeoff: Takeoff, columns: int) -> tuple[SumRow, ...]:
    """A row for each product that is bought: how much is needed, with its sum, in the order of the basket.

    Each row has `columns` cells.
    """
    rows = _Rows(bill, takeoff, columns)
    groups = basket_groups(bill.basket, bill.job)
    return tuple(rows.need(line) for group in groups for line in group.lines)


def product_of(row: SumRow) -> str:
    """The id of the product that a row buys; "" for a row that buys none."""
    kind, _, name = row.key.partition(" ")
    return name if kind == BOUGHT else ""


def headline(shown: Shown) -> str:
    """What the basket costs, in one line; or why there is no cost yet."""
    bill = shown.bill
    if bill is None:
        return "Working out what to buy."
    basket = bill.basket
    if not basket.rows:
        return "Nothing to buy yet: draw what is coated, then choose its finish on the page Finish."
    if not has_prices(basket):
        return f"{counted(len(basket.rows), 'product', 'products')} to buy, no prices yet"
    cost = cost_words(own_writing().money(basket.cost, bill.job.money.currency), basket, bill.left_out)
    budget = f" (budget {own_writing().money(basket.budget)})" if basket.budget else ""
    if open_points(basket, bill.left_out):
        return f"{cost}{budget}"
    return f"{'Cheapest that covers' if basket.proved else 'Covers'} the job: {cost}{budget}"


class _Rows:
    """Makes the rows of what is needed and bought of each product, in the job's unit."""

    def __init__(self, bill: Bill, takeoff: Takeoff, columns: int) -> None:
        self._columns = columns
        self._bill, self._writing = bill, own_writing(bill.job.unit)
        self._need_rows = NeedRows(takeoff, bill.job, self._writing)
        self._bought_rows = BoughtRows(bill, self._writing)
        self._needs = {need.product: need for need in bill.bought}

    def group(self, group: BasketGroup) -> SumRow:
        """The row of a group, with the rows of its products beneath it."""
        cost = "" if group.cost is None else self._writing.money(group.cost)
        lines = tuple(self._line(line) for line in group.lines)
        return SumRow(f"group {group.name}", (group.name, "", "", "", "", cost), lines, head=True)

    def left_out(self) -> Iterator[SumRow]:
        """One row with what could not be reckoned with beneath it; no row if nothing was left out."""
        words = self._bill.left_out
        if words:
            notes = tuple(unfolded("left out", map(WhyRow, words), self._columns))
            yield SumRow("left out", spanned(left_out_head(words), self._columns), notes, head=True)

    def need(self, line: BasketLine) -> SumRow:
        """The row of a product: its name, and in the last column how much of it is needed."""
        key, need = f"need {line.row.product}", self._need_rows.row(self._needs[line.row.product])
        notes = map(WhyRow, line_notes(line, self._writing))
        return SumRow(
            key=key,
            cells=(*spanned(need.words, self._columns)[:-1], need.amount),
            children=(*self._sum(key, need), *unfolded(f"{key} note", notes, self._columns)),
            parts=need.parts,
        )

    def _line(self, line: BasketLine) -> SumRow:
        row, measure, writing = line.row, line.product.measure, self._writing
        key, need = f"{BOUGHT} {row.product}", self._need_rows.row(self._needs[row.product])
        keeps = f"{writing.number(row.keeps_days)} d" if row.left_over and row.keeps_days is not None else ""
        return SumRow(
            key=key,
            cells=(
                need.words,
                need.amount,
                writing.packs(row.packs, measure),
                writing.amount(row.left_over, measure) if row.left_over else "",
                keeps,
                writing.cost(row.cost),
            ),
            children=(
                *self._sum(key, need),
                *unfolded(f"{key} note", self._bought_rows.rows(line), self._columns),
            ),
            parts=need.parts,
        )

    def _sum(self, key: str, need: WhyRow) -> Iterator[SumRow]:
        yield from unfolded(key, need.children, self._columns)
        yield from grounds(key, need, self._columns)
