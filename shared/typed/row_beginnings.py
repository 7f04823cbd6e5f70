"""The part of a row that is whole already while its line is still being typed. `shared.typed.rows` reads whole rows."""

from collections.abc import Sequence

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.pieces import Piece, Sort, pieces_of
from shared.typed.rows import ABOVE, REST, SPLASHBACK, WORDS, read_row

_LONGEST_ITEM = 6
"""More pieces than one item ever has: `3 of 600 drawers 4` has five."""

_FIRST = (ABOVE, REST, SPLASHBACK)
"""What may stand without a reading before it."""

_BREAKS = " ,;\n\r"


def row_so_far(text: str, unit: Unit, *, decimal: str = ".") -> str:
    """The whole items of a line whose last item is only begun: `450 door` of `450 door, 600 dr`.

    Empty while no item is whole. The whole line when it is a row already, or when its end cannot become an item.
    ReadingError where the text is too long to be a line.
    """
    pieces = pieces_of(text, decimal)
    for end in range(len(pieces), max(len(pieces) - _LONGEST_ITEM, 0) - 1, -1):
        beginning, rest = " ".join(piece.text for piece in pieces[:end]), pieces[end:]
        if not beginning or _is_row(beginning, unit, decimal):
            return beginning.rstrip(_BREAKS) if rest and _may_become_item(rest) else text
    return text


def _may_become_item(pieces: Sequence[Piece]) -> bool:
    """Whether these pieces can be the beginning of an item."""
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
