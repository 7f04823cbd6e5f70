"""Offers ways to make a row fit that is too long for its wall: in each way one item gives up the excess."""

from collections.abc import Iterator
from math import floor

from shared.job import Unit
from shared.typed.pieces import units_of
from shared.typed.rows import LEAST_MM, Item, Row, Stands, row_text
from shared.written.units import DIVISIONS, TENTHS, show_length, size_mm

_LEAST_SHARE = 0.5
"""A cabinet that would keep less than this share of its width is not offered: it would be another cabinet."""

_FITTED = (Stands.FILLER, Stands.GAP)
"""What may be of any width, or be left out altogether."""


def shortened(row: Row, excess_mm: float) -> tuple[tuple[str, str], ...]:
    """For each item that can give up the excess: what changes, in words, and the new line.

    Widths are rounded down to what a tape shows. A rest is left out of every line, as nothing is left for it. Empty
    when no single item can give up so much.
    """
    kept = tuple(item for item in row.items if item.width_mm is not None)
    without_rest = row._replace(items=kept)
    if excess_mm <= 0:
        return ((f"leave out the {_rest(row)}", row_text(without_rest)),) if kept and len(kept) < len(row.items) else ()
    offers: dict[str, str] = {}
    for place, item in enumerate(kept):
        for words, instead in _changes(item, excess_mm, row):
            items = (*kept[:place], *instead, *kept[place + 1 :])
            if any(other.stands is not Stands.GAP for other in items):
                offers[words] = row_text(row._replace(items=items))
    return tuple(offers.items())


def _rest(row: Row) -> str:
    return next(item.words for item in row.items if item.width_mm is None)


def _changes(item: Item, excess_mm: float, row: Row) -> Iterator[tuple[str, tuple[Item, ...]]]:
    """The way in which this item gives up the excess, if any: in words, and the items that take its place."""
    width_mm = item.width_mm or 0.0
    new_mm = _tape_mm(width_mm - excess_mm / item.times, row.unit)
    least_mm = LEAST_MM if item.stands in _FITTED else max(LEAST_MM, width_mm * _LEAST_SHARE)
    if new_mm >= least_mm:
        shown = _shown(new_mm, row)
        each = " each" if item.times > 1 else ""
        yield f"{item.words} to {shown}{each}", (item._replace(width_mm=new_mm, typed=shown),)
    elif item.stands in _FITTED and item.times * width_mm >= excess_mm:
        yield f"leave out {item.words}", ()


def _shown(length_mm: float, row: Row) -> str:
    """A length as it is typed into this row: with its unit when the other widths have theirs."""
    shown = show_length(length_mm, row.unit, decimal=row.decimal)
    typed = (item.typed for item in row.items if item.width_mm is not None)
    has_units = row.unit is Unit.MM and any(units_of(width, row.decimal) for width in typed)
    return f"{shown} {row.unit}" if has_units else shown


def _tape_mm(length_mm: float, unit: Unit) -> float:
    """The longest length that is shown in full and is no longer than this one."""
    step_mm = 1 / TENTHS if unit is Unit.MM else float(size_mm("in")) / DIVISIONS
    # A millionth is the rounding of floats.
    return floor(length_mm / step_mm + 1e-6) * step_mm
