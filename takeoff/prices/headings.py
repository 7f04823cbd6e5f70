"""Finds the columns of a price list by the words of its headings, which are in `data/price_headings.toml`."""

import re
import tomllib
from collections.abc import Sequence
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec


class Column(StrEnum):
    """What a column of a price list holds."""

    LEFT_ALONE = ""
    PRODUCT = "product"
    ID = "id"
    SIZE = "size"
    UNIT = "unit"
    PRICE = "price"
    CURRENCY = "currency"
    PACK_NAME = "pack name"


class _Heading(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A column and the words that may head it."""

    column: Column
    said: tuple[str, ...]


class _Headings(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """All of the data file."""

    currencies: dict[str, str]
    heading: tuple[_Heading, ...]


class FoundColumn(NamedTuple):
    """The place of a column, counted from 0, and its heading."""

    place: int
    heading: str


Columns = dict[Column, FoundColumn]

BRACKETED = re.compile(r"[(\[]([^)\]]+)[)\]]")


def columns_of(cells: Sequence[str]) -> Columns:
    """The columns that these headings name; the first if two name the same. Empty for cells that are no headings."""
    found: Columns = {}
    for place, cell in enumerate(cells):
        column = _column_of(cell)
        if column:
            found.setdefault(column, FoundColumn(place, cell))
    return found


def currency_words(text: str) -> str:
    """A currency as it is compared and shown: the usual code for a sign such as "€", else the text itself."""
    plain = text.strip()
    return _headings().currencies.get(plain, plain)


def currency_in(heading: str) -> str:
    """The currency that a heading names, as in "Price (EUR)" or "Price €"; "" when it names none."""
    signs = [word for word in heading.split() if word in _headings().currencies]
    codes = [word for word in BRACKETED.findall(heading) if re.fullmatch("[A-Z]{3}|[€£$]", word)]
    return currency_words((signs + codes + [""])[0])


@cache
def _headings() -> _Headings:
    text = (files("takeoff") / "data" / "price_headings.toml").read_text("utf-8")
    return msgspec.convert(tomllib.loads(text), _Headings)


def _column_of(cell: str) -> Column:
    words = set(re.findall(r"\w+", cell.casefold()))
    for heading in _headings().heading:
        if any(words.issuperset(said.split()) for said in heading.said):
            return heading.column
    return Column.LEFT_ALONE
