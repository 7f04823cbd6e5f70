"""Why so much of every product is needed and why it is bought so, as lines of text."""

import textwrap
from collections.abc import Iterator

from shared.job import Job
from shared.trade.products import Product
from shared.typed.packs import amount_in, amount_unit, show_amount
from shared.written.money import show_money
from takeoff.basket.cheapest import price_with_tax
from takeoff.basket.groups import BasketLine
from takeoff.basket.words import cost_words, line_notes, pack_words, total_lines, verdict
from takeoff.bill import Bill
from takeoff.figures.measured import Figure, Takeoff
from takeoff.figures.naming import Names
from takeoff.figures.to_buy import Need, Used, Wanted
from takeoff.tables.need_sources import Sources

INDENT = "  "

WIDTH = 100


def why_of_bill(takeoff: Takeoff, job: Job, bill: Bill) -> tuple[list[str], ...]:
    """Sections of lines: what is needed, what is counted of fronts, what is bought; empty ones for an empty job."""
    return (
        list(_Needed(takeoff, job).lines(bill)),
        list(_hardware(bill)),
        list(_basket(bill, job)),
        [f"Left out: {each.message}" for each in bill.findings],
    )


class _Needed:
    """Says what is needed, in the job's unit."""

    def __init__(self, takeoff: Takeoff, job: Job) -> None:
        self._job, self._names, self._sources = job, Names(job), Sources(takeoff, job)
        self._products = {product.id: product for product in job.products}

    def lines(self, bill: Bill) -> Iterator[str]:
        """All that is needed, in order."""
        if bill.needs.wanted:
            yield "Needed"
        for wanted in bill.needs.wanted:
            for need in wanted.options:
                yield from self._need(need, wanted)

    def _need(self, need: Need, wanted: Wanted) -> Iterator[str]:
        product = self._products[need.product]
        of_several = f", one of {len(wanted.options)} for {wanted.name}" if len(wanted.options) > 1 else ""
        amount = show_amount(need.amount.amount, product.measure, self._job.unit)
        yield f"{INDENT}{product.called} {amount}{of_several}"
        for used in need.used:
            yield f"{2 * INDENT}{used.what}"
            yield f"{3 * INDENT}{self._sum(used, product, wanted.name)}"
            yield from _wrapped("of", ", ".join(dict.fromkeys(map(self._names.part, used.parts))))
        if need.mixed is not None:
            base, hardener = (show_amount(litres, product.measure, self._job.unit) for litres in need.mixed)
            yield f"{2 * INDENT}base {base}, hardener {hardener}"
        yield from _wrapped("rule:", need.amount.reason.rule, 2)
        yield f"{2 * INDENT}source: {need.amount.reason.source}"

    def _sum(self, used: Used, product: Product, word: str) -> str:
        """The sum of a use, written out: "6.767 m2 x 2 / 9 / (1 - 0.1) x (1 + 0.05) + 0.1 = 1.854 L"."""
        unit, measure = self._job.unit, product.measure
        source = self._sources.of(used, product, word, 0)
        one, sign = (source.one, f" {source.unit}") if source else (1.0, "")
        per = used.per * one / amount_in(1.0, measure, unit)
        beyond = (
            f" / (1 - {used.loss:g})" if used.loss else "",
            f" x (1 + {used.allowance:g})" if used.allowance else "",
            f" + {amount_in(used.left_behind, measure, unit):.3g}" if used.left_behind else "",
        )
        amount = f"{amount_in(used.amount, measure, unit):.3f} {amount_unit(measure, unit)}"
        return f"{used.size * one:.3f}{sign} x {used.times:g} / {per:.4g}{''.join(beyond)} = {amount}"


def _hardware(bill: Bill) -> Iterator[str]:
    counted = bill.needs.hardware
    named = (("hinges", counted.hinges), ("handles", counted.handles), ("holes to fill", counted.holes_to_fill))
    shown = [(name, figure) for name, figure in named if figure.amount]
    if shown:
        yield "Fronts"
    for name, figure in shown:
        yield from _counted(name, figure)


def _counted(name: str, figure: Figure) -> Iterator[str]:
    yield f"{INDENT}{name} {figure.amount:g}"
    for term in figure.reason.terms:
        yield f"{2 * INDENT}{term.what}: {term.amount:g}"
    yield f"{2 * INDENT}rule: {figure.reason.rule} ({figure.reason.source})"


def _basket(bill: Bill, job: Job) -> Iterator[str]:
    if not bill.basket.rows:
        return
    products = {product.id: product for product in job.products}
    yield "Basket"
    for row in bill.basket.rows:
        line = BasketLine(products[row.product], row)
        need, left = (show_amount(amount, line.product.measure, job.unit) for amount in (row.need, row.left_over))
        yield f"{INDENT}{line.product.called}, needed {need}, left over {left}: {cost_words(row.cost)}"
        for bought in row.packs:
            price = None if bought.pack.price is None else price_with_tax(bought.pack.price, job.money)
            yield f"{2 * INDENT}{bought.many} x {pack_words(bought, line.product, job)} at {cost_words(price)}"
        yield from (f"{2 * INDENT}{note}" for note in line_notes(line, job))
    yield from (f"{INDENT}{name} {show_money(amount)}" for name, amount in total_lines(bill.basket, job))
    yield from (f"{INDENT}{sentence}" for sentence in verdict(bill.basket))
    yield from (f"{INDENT}Left out: {sentence}" for sentence in bill.left_out)


def _wrapped(name: str, words: str, deep: int = 3) -> Iterator[str]:
    if words:
        yield from textwrap.wrap(
            f"{name} {words}", WIDTH, initial_indent=deep * INDENT, subsequent_indent=(deep + 1) * INDENT
        )
