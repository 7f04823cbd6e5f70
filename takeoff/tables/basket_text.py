"""The basket as text for a terminal."""

from collections.abc import Iterator, Sequence
from textwrap import wrap

from shared.job import Job
from shared.plain_text import one_line
from shared.written.writing import Writing
from takeoff.basket.groups import BasketGroup, BasketLine, basket_groups
from takeoff.basket.words import (
    left_out_head,
    line_notes,
    total_lines,
    verdict,
)
from takeoff.figures.to_buy import Basket

WIDTHS = (38, 10, 30, 10, 11)
"""The widths of the columns for product, need, packs, left over and cost: 99 characters in all."""


def basket_text(basket: Basket, job: Job, left_out: Sequence[str] = ()) -> str:
    """The basket in lines of at most 99 characters, with a line feed at the end.

    A name that is too long is cut; packs are not. The sentences of `left_out`, which say what is in no total, come
    last.
    """
    writing = Writing(job.unit)
    missing = ["", *_left_out_lines(left_out)] if left_out else []
    if not basket.rows:
        return "\n".join([one_line(job.name), "Nothing to buy.", *missing]) + "\n"
    lines = [_line(job.name, "needed", "packs", "left over", "cost")]
    for group in basket_groups(basket, job):
        lines += _group_lines(group, writing)
    totals = total_lines(basket, job, writing, left_out)
    totals_lines = [_line(name, "", "", "", writing.money(amount)) for name, amount in totals]
    lines += ["", *totals_lines] if totals_lines else []
    return "\n".join([*lines, "", verdict(basket, job, writing, left_out), *missing]) + "\n"


def _left_out_lines(left_out: Sequence[str]) -> Iterator[str]:
    yield left_out_head(left_out)
    for words in left_out:
        yield from wrap(one_line(words), sum(WIDTHS), initial_indent="  ", subsequent_indent="      ")


def _group_lines(group: BasketGroup, writing: Writing) -> Iterator[str]:
    yield ""
    yield _line(group.name, "", "", "", writing.cost(group.cost))
    for line in group.lines:
        yield from _product_lines(line, writing)


def _product_lines(line: BasketLine, writing: Writing) -> Iterator[str]:
    row, measure = line.row, line.product.measure
    need, left_over = (writing.amount(amount, measure) for amount in (row.need, row.left_over))
    packs = writing.packs(row.packs, measure)
    long = len(packs) > WIDTHS[2] - 2
    yield _line(f"  {line.product.called}", need, "" if long else packs, left_over, writing.cost(row.cost))
    if long:
        yield f"      {one_line(packs)}"
    yield from (f"      {one_line(note)}" for note in line_notes(line, writing))


def _line(words: str, *cells: str) -> str:
    """A line of the table. Names and packs begin at the left of their column, figures end at its right."""
    name, wide = one_line(words), WIDTHS[0] - 1
    cut = name if len(name) <= wide else name[: wide - 1] + "…"
    need, packs, *rest = cells
    middle = f"  {one_line(packs)}".ljust(WIDTHS[2])
    figures = "".join(cell.rjust(width) for cell, width in zip(rest, WIDTHS[3:], strict=True))
    return f"{cut.ljust(WIDTHS[0])}{need.rjust(WIDTHS[1])}{middle}{figures}".rstrip()
