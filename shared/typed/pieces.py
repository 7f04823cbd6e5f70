"""Takes a typed line of lengths and words apart: `450 door, 600 drawers 3`.

`shared.typed.rows`, `shared.typed.walls` and `shared.typed.set_out` say what the pieces mean. A length and a word need
nothing between them. Commas, semicolons and new lines part two items, and so do tabs between digits; spaces do not. A
comma that is the decimal sign parts two items only where it does not stand between two digits.
"""

import re
from collections.abc import Collection, Sequence
from enum import Enum
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.length_words import Mark, in_a_length, on_a_keyboard, quoted, words_of

LONGEST_LINE = 10_000
"""Characters. Nobody types as many by intent."""

_SHORTEST_BEGINNING = 2
"""Letters of a word that are enough where no other begins with them."""

_PATTERN = re.compile(r"(?P<letters>[^\W\d_]+(?:\.(?!\d))?)|(?P<stop>[;\n\r]|(?<=\d)\t+(?=\d))|(?P<comma>,)")
_BETWEEN_DIGITS = re.compile(r"(?<=\d),(?=\d)")


class Sort(Enum):
    """What a piece is."""

    LENGTH = "length"
    WORD = "word"
    BREAK = "break"


class Piece(NamedTuple):
    """One piece: what it is and its text, in small letters."""

    sort: Sort
    text: str


def pieces_of(text: str, decimal: str) -> tuple[Piece, ...]:
    """The pieces of a line from left to right; empty for an empty line. ReadingError for more than `LONGEST_LINE`."""
    if len(text) > LONGEST_LINE:
        raise ReadingError("this is too long to be one line", where=quoted(text), do="type it in several goes")
    line = on_a_keyboard(text)
    pieces: list[Piece] = []
    begin = 0
    for match in _PATTERN.finditer(line):
        sort = _sort(match, line, decimal)
        if sort is Sort.LENGTH:
            continue
        pieces += (_length(line[begin : match.start()]), Piece(sort, match[0].removesuffix(".")))
        begin = match.end()
    pieces.append(_length(line[begin:]))
    return tuple(piece for piece in pieces if piece.text)


def _sort(match: re.Match[str], line: str, decimal: str) -> Sort:
    if match.lastgroup == "letters":
        return Sort.LENGTH if in_a_length(match[0]) else Sort.WORD
    decimal_comma = decimal == "," and _BETWEEN_DIGITS.match(line, match.start())
    return Sort.LENGTH if decimal_comma else Sort.BREAK


def _length(text: str) -> Piece:
    return Piece(Sort.LENGTH, " ".join(text.split()))


def with_units(lengths: Sequence[str], unit: Unit, decimal: str) -> tuple[str, ...]:
    """The lengths of a line as they were typed, each with its unit, so that each can be read by itself.

    A unit that is typed once counts for the whole line. When several are typed, a length without one is in the job's
    unit. When none is typed, the lengths stay as they are.
    """
    units = [units_of(text, decimal) for text in lengths]
    typed = [name for names in units for name in names]
    if not typed:
        return tuple(lengths)
    of_line = typed[0] if len(typed) == 1 else unit
    return tuple(text if names else f"{text} {of_line}" for text, names in zip(lengths, units, strict=True))


def units_of(length: str, decimal: str) -> tuple[str, ...]:
    """The units that are typed in a length, in order. ReadingError where the text is no length."""
    return tuple(word.unit for word in words_of(length, decimal) if word.mark is Mark.UNIT)


def word_meant(typed: str, words: Collection[str]) -> str:
    """The one of these words that is typed: in full, with a plural s, or cut short to two letters or more.

    A word may be cut short where no other begins in the same way. ReadingError, which names the words, where the typed
    one is none of them or could be several.
    """
    for word in words:
        if typed in (word, f"{word}s"):
            return word
    meant = [word for word in words if word.startswith(typed)] if len(typed) >= _SHORTEST_BEGINNING else []
    if len(meant) == 1:
        return meant[0]
    if meant:
        raise ReadingError("this could be meant in two ways", where=quoted(typed), do=f"type {' or '.join(meant)}")
    raise ReadingError("this word is not known here", where=quoted(typed), do=f"use {', '.join(words)}")
