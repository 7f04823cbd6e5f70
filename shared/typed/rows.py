"""Reads a row of cabinets in one line of widths and words: `450 door, 3 of 600 drawers 3, 900 pair, rest filler`.

    row   = [above] item { [,] item }
    item  = [count of] width word [fronts] | splashback      3 of 450 door   600 drawers 3
    width = reading | rest                                   600+450   23 5/8"   rest

A width is any length that `shared.typed.lengths` reads. A unit that is typed once counts for the whole line. The count
right after `drawers` is the number of drawer fronts. Commas may be left out. `above` makes a row of wall cabinets.
`rest` takes what is left of the wall. `splashback` goes over the whole row. An `open` cabinet has no front. A `tall`
one reaches up to the tops of the wall cabinets and has one door. `geometry.kitchens.rows` draws a row.
"""

import re
from collections.abc import Iterator
from enum import StrEnum
from itertools import zip_longest
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.length_words import quoted
from shared.typed.lengths import read_length
from shared.typed.pieces import Piece, Sort, pieces_of, with_units, word_meant


class Stands(StrEnum):
    """What stands at a place of a row. The values are the words that are typed."""

    DOOR = "door"
    PAIR = "pair"
    DRAWERS = "drawers"
    OVEN = "oven"
    DISHWASHER = "dishwasher"
    APPLIANCE = "appliance"
    OPEN = "open"
    TALL = "tall"
    FILLER = "filler"
    PANEL = "panel"
    GAP = "gap"


ABOVE, OF, REST, SPLASHBACK = "above", "of", "rest", "splashback"

SAID_FOR = {"fridge": Stands.GAP, "sink": Stands.PAIR}
"""Other words for what stands in a row: a fridge stands in a gap, on the floor; a sink is over a pair of doors."""

WORDS = (*(str(stands) for stands in Stands), *SAID_FOR, REST, SPLASHBACK, OF, ABOVE)
"""All words that may be typed in a row."""

_ADVICE = "type a width and a word, as in 450 door, 600 drawers 3"

MOST_OF_ONE = 50
"""The greatest count of drawer fronts of one cabinet, and of repeats of one item."""

MOST_ITEMS = 200
"""Items of one row, repeats counted."""

LEAST_MM = 1.0
"""The least width of an item or a front, and the least length of a wall: anything below is a slip."""

_COUNT = re.compile(r"(\d+)(?:\s+(?=[\d.])|$)")
_COUNT_OR_WIDTH = re.compile(r"\d+(?: \d+/|,)\d+")


_FRONTS = {Stands.DOOR: 1, Stands.PAIR: 2, Stands.TALL: 1}
_END = Piece(Sort.WORD, "end")


class Item(NamedTuple):
    """One or more alike that stand side by side.

    `width_mm` is the width of each; None is an equal share of the rest. `typed` is that width as it was typed. `fronts`
    is how many fronts each has: 1 for a door or a tall cabinet, 2 for a pair, the typed count for drawers, else 0.
    """

    stands: Stands
    width_mm: float | None
    typed: str
    fronts: int = 0
    times: int = 1

    @property
    def words(self) -> str:
        """The item as one would type it."""
        count = f"{self.times} {OF} " if self.times > 1 else ""
        fronts = f" {self.fronts}" if self.stands is Stands.DRAWERS else ""
        return f"{count}{self.typed} {self.stands}{fronts}"


class Row(NamedTuple):
    """A row from left to right. Its widths were read in this unit, with this decimal sign."""

    items: tuple[Item, ...]
    above: bool
    splashback: bool
    unit: Unit
    decimal: str

    @property
    def fixed_mm(self) -> float:
        """The widths added up, without the rest."""
        return sum(item.times * item.width_mm for item in self.items if item.width_mm is not None)


def read_row(text: str, unit: Unit, *, decimal: str = ".") -> Row:
    """The row that this line says.

    `decimal` is the decimal sign. ReadingError, in words that name the item, where the line says no row: a word is not
    known, a width or a word is missing, a count is beyond `MOST_OF_ONE`, there are two rests, or nothing but gaps.
    """
    unread = _Reader(pieces_of(text, decimal), unit, decimal).row()
    row = unread._replace(items=tuple(_measured(unread)))
    if sum(item.times for item in row.items) > MOST_ITEMS:
        raise ReadingError("this is too long for one row", where=quoted(text), do=f"use at most {MOST_ITEMS} items")
    if all(item.stands is Stands.GAP for item in row.items):
        raise ReadingError("this row has nothing in it", where=quoted(text), do=_ADVICE)
    if sum(item.width_mm is None for item in row.items) > 1:
        raise ReadingError("rest can be used only once", where=quoted(text), do="give the others a width")
    return row


def row_text(row: Row) -> str:
    """The line that `read_row` reads as this row."""
    ends = (SPLASHBACK,) if row.splashback else ()
    return (f"{ABOVE} " if row.above else "") + ", ".join((*(item.words for item in row.items), *ends))


class _Reader:
    """Goes through the pieces of a line once, from left to right."""

    def __init__(self, pieces: tuple[Piece, ...], unit: Unit, decimal: str) -> None:
        # The trade's own name for a panel is two words, of which the second says it.
        pairs = zip_longest(pieces, pieces[1:], fillvalue=Piece(Sort.BREAK, ""))
        self.pieces = [piece for piece, after in pairs if not (piece == _END and after.text[:2] == Stands.PANEL[:2])]
        self.at = 0
        self.unit = unit
        self.decimal = decimal

    def row(self) -> Row:
        """The whole row, its widths not read yet."""
        self.skip_breaks()
        above = self.takes(ABOVE)
        items: list[Item] = []
        splashback = False
        while self.skip_breaks():
            if self.takes(SPLASHBACK):
                self.refuse_second_splashback(above, splashback)
                splashback = True
            else:
                items.append(self.item())
        if not items:
            raise ReadingError("no cabinet was typed", do=_ADVICE)
        return Row(tuple(items), above, splashback, self.unit, self.decimal)

    def refuse_second_splashback(self, above: bool, second: bool) -> None:
        """ReadingError for a splashback in a row above, or for a second one in a row."""
        if above:
            raise ReadingError("a splashback stands under wall cabinets", do="type it with the row below")
        if second:
            raise ReadingError("the splashback is there twice", do="type it once: it goes over the whole row")

    def item(self) -> Item:
        """The item that comes next."""
        times = self.times()
        typed = self.width()
        stands = self.stands(typed)
        return Item(stands, None, typed, self.fronts(stands), times)

    def times(self) -> int:
        """How many are alike: the count before `of`; 1 where none was typed."""
        piece = self.next()
        if piece is None or self.next(1) != Piece(Sort.WORD, OF):
            return 1
        self.at += 2
        return _count(piece.text, "cabinets")

    def width(self) -> str:
        """The width that comes next, as it was typed."""
        if self.takes(REST):
            return REST
        piece = self.next()
        if piece is None or piece.sort is not Sort.LENGTH:
            what = f"how wide is the {self.meant()}?" if piece else "a width is missing at the end"
            raise ReadingError(what, where=quoted(piece.text) if piece else "", do=_ADVICE)
        self.at += 1
        return piece.text

    def stands(self, typed: str) -> Stands:
        """What stands there, by the word that comes next. `typed` is its width, for the error."""
        piece = self.next()
        if piece is None or piece.sort is not Sort.WORD:
            raise ReadingError("this does not say what stands here", where=quoted(typed), do=_ADVICE)
        word = self.meant()
        if word not in tuple(Stands) and word not in SAID_FOR:
            raise ReadingError(f"“{word}” does not fit here", where=quoted(typed), do=_ADVICE)
        self.at += 1
        return SAID_FOR.get(word) or Stands(word)

    def fronts(self, stands: Stands) -> int:
        """How many fronts: the count right after `drawers`; 1 where none was typed."""
        piece = self.next()
        if stands is not Stands.DRAWERS:
            return _FRONTS.get(stands, 0)
        if piece is None or piece.sort is not Sort.LENGTH:
            return 1
        if _COUNT_OR_WIDTH.match(piece.text):
            do = "put a comma and a space before the width"
            raise ReadingError("this could be a count or a width", where=quoted(piece.text), do=do)
        match = _COUNT.match(piece.text)
        after = self.next(1)
        if not match or (match[0] == piece.text and after is not None and after.sort is Sort.WORD):
            return 1
        self.pieces[self.at] = Piece(Sort.LENGTH, piece.text[match.end() :])
        self.at += not self.pieces[self.at].text
        return _count(match[1], "drawer fronts")

    def meant(self) -> str:
        """The next word, in full; "" where no word comes next."""
        piece = self.next()
        return word_meant(piece.text, WORDS) if piece and piece.sort is Sort.WORD else ""

    def takes(self, word: str) -> bool:
        """Whether this word comes next. If so, it is passed."""
        found = self.meant() == word
        self.at += found
        return found

    def skip_breaks(self) -> bool:
        """Pass commas and new lines. True where anything follows them."""
        while (piece := self.next()) and piece.sort is Sort.BREAK:
            self.at += 1
        return piece is not None

    def next(self, ahead: int = 0) -> Piece | None:
        """The next piece, or the one `ahead` pieces after it; None beyond the end."""
        return self.pieces[self.at + ahead] if self.at + ahead < len(self.pieces) else None


def _measured(row: Row) -> Iterator[Item]:
    """The items with their widths read."""
    typed = [item.typed for item in row.items if item.typed != REST]
    widths = iter(with_units(typed, row.unit, row.decimal))
    for item in row.items:
        if item.typed == REST:
            yield item
            continue
        width = next(widths)
        width_mm = read_length(width, row.unit, decimal=row.decimal)
        if width_mm < LEAST_MM:
            raise ReadingError(
                f"a {item.stands} cannot be as narrow as this", where=quoted(width), do="check the width"
            )
        yield item._replace(typed=width, width_mm=width_mm)


def _count(typed: str, what: str) -> int:
    # A number with more digits than the greatest count is too many in any case, and Python refuses endless ones.
    count = int(typed) if typed.isdecimal() and len(typed) <= len(str(MOST_OF_ONE)) else 0
    if not 1 <= count <= MOST_OF_ONE:
        do = f"use a whole number from 1 to {MOST_OF_ONE}"
        raise ReadingError(f"{quoted(typed)} is not a number of {what}", do=do)
    return count
