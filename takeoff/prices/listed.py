"""Reads a price list from a CSV file or a spreadsheet: the prices in it, and the lines that are not understood.

`takeoff.prices.pricing` gives the prices to the packs of a job.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from shared.errors import FileError, ReadingError
from shared.files.disk import read_bounded
from shared.job import Job
from shared.limits import LONGEST_TEXT, MOST_MONEY
from shared.typed.length_words import quoted
from shared.typed.numbers import SIGNS, possible_signs, read_number, says_one_number
from shared.typed.packs import PackSize, number_in, parsed_size
from takeoff.prices.cells import LARGEST_LIST, ListLine
from takeoff.prices.columns import PriceTable, price_parts, price_table
from takeoff.prices.headings import BRACKETED, Column, currency_in, currency_words

_CURRENCY = re.compile(r"[^\W\d_]{1,4}\.?|[^\w\s]{1,2}")
"""The words and signs beside a price that are taken for a currency; the job's own word always is."""

LONGEST_SIZE_WORDS = 4
"""The most words of a size at the end of a name: "10.1 US fl oz"."""

MOST_TOLD = 100
"""The most lines of a report: a shop's whole list has thousands that a job does not know."""

_TAX_WORDS = {"tax", "vat", "gst", "mwst", "ust", "tva", "iva", "btw"}


class Said(NamedTuple):
    """Something to tell a person about a line of the list, by its number; 0 is the list as a whole.

    `left_out` says that the line gave no price.
    """

    line: int
    message: str
    left_out: bool = False

    def __str__(self) -> str:
        """The message with the number of its line: "line 3: it gives no price"."""
        return f"line {self.line}: {self.message}" if self.line else self.message


class PriceRow(NamedTuple):
    """One line that was understood. `product` is a name or an id; `code` is the line's id, "" for none."""

    line: int
    product: str
    size: PackSize
    price: float
    pack_name: str = ""
    code: str = ""


class PriceList(NamedTuple):
    """A price list as it was read.

    `currency` is "" when the list names none. `read_as` says in words how it was read. `left_out` are the lines that
    were not understood, and why; `granted` is what was assumed.
    """

    name: str
    rows: tuple[PriceRow, ...]
    currency: str
    read_as: str
    left_out: tuple[Said, ...] = ()
    granted: tuple[Said, ...] = ()

    def report(self, also: Iterable[Said] = ()) -> tuple[str, ...]:
        """A report for a person, line by line: how the list was read, what was left out and why, what was assumed.

        `also` is what pricing the job had to say about its lines. The first line counts all that were taken and all
        that were left out. Of the lines themselves only the first `MOST_TOLD` are told.
        """
        said = sorted((*self.left_out, *self.granted, *also), key=lambda each: each.line)
        left_out = sum(each.left_out for each in said)
        taken = len(self.rows) + len(self.left_out) - left_out
        head = f"{self.name}: {self.read_as}; lines taken {taken}, left out {left_out}."
        more = len(said) - MOST_TOLD
        rest = (f"And {more} more of its lines.",) if more > 0 else ()
        return (head, *(f"{each}." for each in said[:MOST_TOLD]), *rest)


def read_price_list(source: Path | bytes, name: str, job: Job) -> PriceList:
    """The price list in this file or in these bytes. `name` is what errors and the report call it.

    The job says whose gallon "gal" is, and its own currency. A line that cannot be understood is left out and told.
    FileError where the list cannot be read, a needed column is missing, or prices are in two currencies.
    """
    content = source if isinstance(source, bytes) else read_bounded(source, LARGEST_LIST, do="choose a price list")
    if len(content) > LARGEST_LIST:
        raise FileError(f"it is larger than {LARGEST_LIST // 2**20} MB", where=name, do="choose a price list")
    return _understood(price_table(content, name, job))


def _understood(table: PriceTable) -> PriceList:
    rows: list[PriceRow] = []
    left_out: list[Said] = []
    currencies: dict[str, str] = {}
    for line in table.lines:
        try:
            row, currency = _row(table, line)
        except ReadingError as trouble:
            left_out.append(Said(line.number, str(trouble).rstrip("."), left_out=True))
            continue
        rows.append(row)
        if currency:
            currencies.setdefault(currency.casefold(), currency)
    currency = _one_currency(currencies, table)
    granted = (*_tax_said(table), *_granted(rows))
    return PriceList(table.name, tuple(rows), currency, table.read_as, tuple(left_out), granted)


def _granted(rows: Sequence[PriceRow]) -> Iterator[Said]:
    """The things that were taken for granted about sizes, each told once, at the first line that needed it."""
    first: dict[str, int] = {}
    for row in rows:
        first.setdefault(row.size.granted, row.line)
    yield from (Said(line, f"{words}, here and below") for words, line in first.items() if words)


def _row(table: PriceTable, line: ListLine) -> tuple[PriceRow, str]:
    """The row that a line says, and its currency, "" for none. ReadingError for a line that is not understood."""
    code = table.text(line, Column.ID)
    product = table.text(line, Column.PRODUCT) or code
    if not product:
        raise ReadingError("it has no product", do="name one")
    if len(product) > LONGEST_TEXT:
        raise ReadingError("the name of the product is too long", where=quoted(product), do="shorten it")
    price, currency = _price(table, line)
    if Column.SIZE in table.columns:
        size = _size(table, line)
    else:
        product, size = _name_and_size(product, table)
    pack_name = table.text(line, Column.PACK_NAME)[:LONGEST_TEXT]
    return PriceRow(line.number, product, size, price, pack_name, code), currency


def _name_and_size(product: str, table: PriceTable) -> tuple[str, PackSize]:
    """A name and the size that ends it: "Satin, sage 2.5 L". ReadingError for a name without a size."""
    words = product.split()
    for many in range(min(LONGEST_SIZE_WORDS, len(words) - 1), 0, -1):
        text = " ".join(words[-many:])
        with suppress(ReadingError):
            size = parsed_size(text, table.job.unit, decimal=_sign_for(number_in(text), table.decimal))
            if size.measure is not None:
                return " ".join(words[:-many]).rstrip(" ,;-"), size
    raise _no_size()


def _no_size() -> ReadingError:
    return ReadingError("it has no size", do="write one such as 4 L")


def _size(table: PriceTable, line: ListLine) -> PackSize:
    text, unit = table.text(line, Column.SIZE), table.text(line, Column.UNIT)
    if not text:
        raise _no_size()
    if not unit and possible_signs(text):
        unit = _unit_in_heading(table)
    written = f"{text} {unit}" if possible_signs(text) else text
    decimal = "." if isinstance(table.cell(line, Column.SIZE), float) else _sign_for(number_in(text), table.decimal)
    return parsed_size(written, table.job.unit, decimal=decimal)


def _unit_in_heading(table: PriceTable) -> str:
    """The unit in brackets in the heading of the sizes; "" for none."""
    found = BRACKETED.findall(table.columns[Column.SIZE].heading)
    return str(found[0]) if found else ""


def _price(table: PriceTable, line: ListLine) -> tuple[float, str]:
    """A line's price and its currency; "" when the list names no currency for it."""
    cell, text = table.cell(line, Column.PRICE), table.text(line, Column.PRICE)
    if not text:
        raise ReadingError("it has no price", do="write one such as 24.90")
    number, beside = price_parts(text)
    own = beside.casefold() == table.job.money.currency.casefold()
    if not possible_signs(number) or not (not beside or own or _CURRENCY.fullmatch(beside)):
        raise ReadingError("this is not a price", where=quoted(text), do="write one such as 24.90")
    price = cell if isinstance(cell, float) else float(read_number(number, _sign_for(number, table.decimal)))
    if not 0 < price <= MOST_MONEY:
        what = "a price must be above 0" if price <= 0 else "this price is far too high"
        raise ReadingError(what, where=quoted(text), do="write what the pack costs")
    in_column = table.text(line, Column.CURRENCY)
    return price, currency_words(in_column or beside or currency_in(table.columns[Column.PRICE].heading))


def _sign_for(number: str, decimal: str) -> str:
    """The decimal sign by which to read a number. ReadingError where it could be two numbers and nothing decides."""
    signs = possible_signs(number)
    if decimal in signs:
        return decimal
    if len(signs) > 1 and not says_one_number(number):
        what = "this could be meant in two ways, as the list does not show its decimal sign"
        raise ReadingError(what, where=quoted(number), do="write it with nothing between thousands")
    return next(iter(sorted(signs)), SIGNS[0])


def _one_currency(currencies: dict[str, str], table: PriceTable) -> str:
    names = tuple(currencies.values())
    if len(names) > 1:
        both = " and ".join(names[:2])
        raise FileError(f"it has prices in two currencies, {both}", where=table.name, do="keep those in one of them")
    return names[0] if names else ""


def _tax_said(table: PriceTable) -> Iterator[Said]:
    """A word to the person if the heading of the prices speaks of tax: the job decides whether prices include it."""
    heading = table.columns[Column.PRICE].heading
    if _TAX_WORDS & set(re.findall(r"\w+", heading.casefold())):
        meant = "with" if table.job.money.tax_included else "without"
        yield Said(
            0, f"the prices are headed {quoted(heading)}, and the job takes prices {meant} tax: check that they agree"
        )
