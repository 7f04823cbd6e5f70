"""The shopping list as one HTML file that fits a phone: boxes to tick, nothing loaded from anywhere, no script."""

from collections.abc import Iterator, Sequence
from html import escape
from importlib.resources import files

from shared.job import Job
from shared.written.writing import Writing
from takeoff.basket.cheapest import price_with_tax
from takeoff.basket.groups import BasketGroup, BasketLine, basket_groups
from takeoff.basket.words import left_out_head, open_points, total_lines, verdict
from takeoff.figures.to_buy import Basket, Bought


def basket_html(basket: Basket, job: Job, left_out: Sequence[str] = ()) -> bytes:
    """The shopping list as the content of an HTML file in UTF-8, with a box to tick for every pack to buy.

    A product that the shelf has enough of has no box. The sentences of `left_out`, which say what is in no total, stand
    above all else, so that the person who shops sees them.
    """
    style = (files("takeoff") / "data" / "shopping_list.css").read_text("utf-8")
    body = "".join((*_left_out(left_out), *_body(basket, job, left_out)))
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(job.name)}: shopping list</title>\n<style>\n{style}</style></head>\n"
        f"<body><main>\n<h1>{escape(job.name)}</h1>\n{body}</main></body></html>\n"
    ).encode()


def _left_out(left_out: Sequence[str]) -> Iterator[str]:
    if left_out:
        items = "".join(f"<li>{escape(words)}</li>\n" for words in left_out)
        yield f"<p><b>{left_out_head(left_out)}</b></p>\n<ul>\n{items}</ul>\n"


def _body(basket: Basket, job: Job, left_out: Sequence[str]) -> Iterator[str]:
    if not basket.rows:
        yield "<p>Nothing to buy.</p>\n"
        return
    for group in basket_groups(basket, job):
        yield _group(group, job)
    writing = Writing(job.unit)
    yield "<table>\n"
    for name, amount in total_lines(basket, job, writing, left_out):
        yield f"<tr><th>{escape(name)}</th><td>{writing.money(amount)}</td></tr>\n"
    yield "</table>\n"
    if open_points(basket, left_out):
        yield f"<p>{escape(verdict(basket, job, writing, left_out))}</p>\n"


def _group(group: BasketGroup, job: Job) -> str:
    lines = "".join(_product(line, job) for line in group.lines)
    return f"<h2><b>{escape(group.name)}</b> <span>{Writing(job.unit).cost(group.cost)}</span></h2>\n{lines}"


def _product(line: BasketLine, job: Job) -> str:
    packs = "".join(_pack(each, line, job) for each in line.row.packs)
    head = f"<h3>{escape(line.product.called)} <small>{escape(_need(line, job))}</small></h3>"
    return f"<section>{head}\n{packs}</section>\n"


def _need(line: BasketLine, job: Job) -> str:
    """The words for how much is needed of a product, and how much of that is on the shelf."""
    writing, measure = Writing(job.unit), line.product.measure
    shelf = f", {writing.amount(line.row.from_shelf, measure)} on the shelf" if line.row.from_shelf else ""
    return f"needed {writing.amount(line.row.need, measure)}{shelf}"


def _pack(bought: Bought, line: BasketLine, job: Job) -> str:
    price = bought.pack.price
    cost = None if price is None else bought.many * price_with_tax(price, job.money)
    writing = Writing(job.unit)
    words = escape(writing.packs((bought,), line.product.measure))
    return f'<label><input type="checkbox"> <b>{words}</b> <span>{writing.cost(cost)}</span></label>\n'
