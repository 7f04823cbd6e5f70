"""How much of a row is there already while its line is still being typed."""

from collections.abc import Sequence

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.pieces import Piece, Sort, pieces_of
from shared.typed.rows import ABOVE, REST, SPLASHBACK, WORDS, read_row

_LONGEST_ITEM = 6
"""Pieces of one item, generously: `3 of 600 drawers 4` has five."""

_FIRST = (ABOVE, REST, SPLASHBACK)
"""What may stand without a reading before it."""

_BREAKS = " ,;\n\r"


def row_so_far(text: str, unit: Unit, *, decimal: str = ".") -> str:
    """The items of a line that are whole, where the last one is only begun: of `450 door, 600 dr` it is `450 door`.

    Empty where none is whole yet. All of the line where it is a row, or where its end cannot become one. ReadingError
    where it is too long to be a line.
    """
    pieces = pieces_of(text, decimal)
    for end in range(len(pieces), max(len(pieces) - _LONGEST_ITEM, 0) - 1, -1):
        beginning, rest = " ".join(piece.text for piece in pieces[:end]), pieces[end:]
        if not beginning or _is_row(beginning, unit, decimal):
            return beginning.rstrip(_BREAKS) if rest and _may_become_item(rest) else text
    return text


def _may_become_item(pieces: Sequence[Piece]) -> bool:
    """Whether words may follow with which these pieces are an item."""
    if any(piece.sort is Sort.BREAK for piece in pieces):
        return False
    words = [piece.text for piece in pieces if piece.sort is Sort.WORD]
    can_begin = WORDS if len(words) < len(pieces) else _FIRST
    return all(any(word.startswith(typed) for word in can_begin) for typed in words)


def _is_row(text: str, unit: Unit, decimal: str) -> bool:
    try:
        read_row(text, unit, decimal=decimal)
    except ReadingError:
        return False
    return True
