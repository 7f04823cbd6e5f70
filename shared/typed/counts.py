"""Reads how to split a part or copy it along: `3 up reveal 4` or `600, 450, rest`; `4 at 450 left`.

split  = (number | length {, length}) [across | up] [reveal length]
copies = number [at length] [right | up | left | down]
"""

import re
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.length_words import quoted
from shared.typed.lengths import parted, read_length, read_lengths
from shared.typed.ways import WAYS, Direction

_SPLIT_ADVICE = "say it as in 3, 3 up, 3 reveal 4, or 600, 450"
_COPIES_ADVICE = "say it as in 4, 4 at 450, or 4 at 450 up"

_NUMBER = re.compile(r"\s*\d{1,9}\s*")
_SHARE = re.compile(r"\s*\d[.,]\d+\s*")
_ACROSS_OR_UP = re.compile(r"(?<![^\W\d_])(?P<word>across|up)\b", re.IGNORECASE)
_REVEAL = re.compile(r"(?<![^\W\d_])reveals?\b", re.IGNORECASE)
_COPIES = re.compile(
    rf"\s*(?P<count>\d{{1,9}})\s*(?:at\b(?P<pitch>.*?))?(?<![^\W\d_])(?P<way>{'|'.join(WAYS)}|[ruld])?\s*",
    re.IGNORECASE | re.DOTALL,
)


class Division(NamedTuple):
    """How to split: into a number of equal pieces, or into pieces of these sizes (mm) and one more for the rest.

    `up` is true for pieces above each other and false for pieces beside each other. `up` and `reveal_mm` are None when
    the line does not say them.
    """

    into: int | tuple[float, ...]
    up: bool | None = None
    reveal_mm: float | None = None


class Copies(NamedTuple):
    """How to copy along: how many copies, how far apart, and which way.

    `pitch_mm` is measured from an edge to the same edge of the next copy. It and `way` are None when the line does not
    say them.
    """

    many: int
    pitch_mm: float | None = None
    way: Direction | None = None


def read_pieces(text: str, unit: Unit, *, decimal: str = ".") -> Division:
    """The split that a line says. A whole number alone is a number of pieces. ReadingError where it says none."""
    said = [match["word"].lower() for match in _ACROSS_OR_UP.finditer(text)]
    head, *reveals = _REVEAL.split(_ACROSS_OR_UP.sub(" ", text))
    if len(said) > 1 or len(reveals) > 1 or not head.strip():
        raise ReadingError("this does not say how to split", where=quoted(text), do=_SPLIT_ADVICE)
    reveal = read_length(reveals[0], unit, decimal=decimal, allow_zero=True) if reveals else None
    up = said[0] == "up" if said else None
    if _NUMBER.fullmatch(head):
        return Division(int(head), up, reveal)
    if unit is Unit.MM and _SHARE.fullmatch(head):
        raise ReadingError("the number of pieces must be a whole number", where=quoted(text), do=_SPLIT_ADVICE)
    sizes = "; ".join(piece for piece in parted(head, decimal) if piece.strip().lower() != "rest")
    return Division(read_lengths(sizes, unit, decimal=decimal), up, reveal)


def read_copies(text: str, unit: Unit, *, decimal: str = ".") -> Copies:
    """The copies that a line says. ReadingError where it says none."""
    said = _COPIES.fullmatch(text)
    if said is None:
        raise ReadingError("this does not say how many", where=quoted(text), do=_COPIES_ADVICE)
    pitch = said["pitch"]
    length = None if pitch is None else read_length(pitch, unit, decimal=decimal, allow_zero=True, allow_negative=True)
    way = next((to for word, to in WAYS.items() if said["way"] and word[0] == said["way"][0].lower()), None)
    return Copies(int(said["count"]), length, way)
