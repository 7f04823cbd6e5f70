"""Why this much of every product is needed, and why it is bought in these packs, as lines of text."""

import textwrap
from collections.abc import Iterator

from shared.job import Job
from shared.written.writing import Writing
from takeoff.basket.groups import BasketLine
from takeoff.basket.words import total_lines, verdict
from takeoff.bill import Bill
from takeoff.figures.measured import Takeoff
from takeoff.figures.naming import Names
from takeoff.why.bought import BoughtRows
from takeoff.why.figures import hardware_rows
from takeoff.why.needs import NeedRows
from takeoff.why.row import WhyRow

INDENT = "  "

WIDTH = 100


def why_of_bill(takeoff: Takeoff, job: Job, bill: Bill) -> tuple[list[str], ...]:
    """Three sections of lines: the needs, the hardware of fronts, and the basket. All are empty for an empty job."""
    return (
        list(_needs(takeoff, job, bill)),
        list(_hardware(bill, Writing(job.unit))),
        list(_basket(bill, job)),
        [f"Left out: {each.message}" for each in bill.findings],
    )


def row_lines(row: WhyRow, deep: int = 1) -> Iterator[str]:
    """The lines of a row: the row itself, its sum beneath it, then its rule and source."""
    yield f"{INDENT * deep}{row.line}"
    for child in row.children:
        yield from row_lines(child, deep + 1)
    yield from _grounds(row, deep + 1)


def _grounds(row: WhyRow, deep: int) -> Iterator[str]:
    yield from _wrapped("rule:", row.rule, deep)
    yield from _wrapped("source:", row.source, deep)


def _needs(takeoff: Takeoff, job: Job, bill: Bill) -> Iterator[str]:
    names, rows = Names(job), NeedRows(takeoff, job, Writing(job.unit))
    if bill.needs.wanted:
        yield "Needed"
    for wanted in bill.needs.wanted:
        of_several = f"one of {len(wanted.options)} for {wanted.name}" if len(wanted.options) > 1 else ""
        for need in wanted.options:
            yield from _need_lines(rows.row(need)._replace(note=of_several), names)


def _need_lines(row: WhyRow, names: Names) -> Iterator[str]:
    """The lines of a need and its uses. The parts of each use are named in one paragraph, not in a row each."""
    yield f"{INDENT}{row.line}"
    for child in row.children:
        yield f"{2 * INDENT}{child.line}"
        yield from _wrapped("of", ", ".join(dict.fromkeys(map(names.part, child.parts))), 3)
    yield from _grounds(row, 2)


def _hardware(bill: Bill, writing: Writing) -> Iterator[str]:
    rows = tuple(hardware_rows(bill.needs.hardware, writing))
    if rows:
        yield "Fronts"
    for row in rows:
        yield from row_lines(row)


def _basket(bill: Bill, job: Job) -> Iterator[str]:
    if not bill.basket.rows:
        return
    writing, rows = Writing(job.unit), BoughtRows(bill, Writing(job.unit))
    products = {product.id: product for product in job.products}
    yield "Basket"
    for row in bill.basket.rows:
        line = BasketLine(products[row.product], row)
        need, left = (writing.amount(amount, line.product.measure) for amount in (row.need, row.left_over))
        yield f"{INDENT}{line.product.called}, needed {need}, left over {left}: {writing.cost(row.cost)}"
        for each in rows.rows(line):
            yield from row_lines(each, 2)
    totals = total_lines(bill.basket, job, writing, bill.left_out)
    yield from (f"{INDENT}{name} {writing.money(amount)}" for name, amount in totals)
    yield f"{INDENT}{verdict(bill.basket, job, writing, bill.left_out)}"
    yield from (f"{INDENT}Left out: {sentence}" for sentence in bill.left_out)


def _wrapped(name: str, words: str, deep: int) -> Iterator[str]:
    if words:
        yield from textwrap.wrap(
            f"{name} {words}", WIDTH, initial_indent=deep * INDENT, subsequent_indent=(deep + 1) * INDENT
        )
