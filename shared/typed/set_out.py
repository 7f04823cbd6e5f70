"""Reads typed lines that set out a face: `600, 1050, 1950`, `chain 600, 450`, `up 150, 870`, `wall 3600`.

    line  = group {[,] group}
    group = {word} length {, length}
    word  = running | chain | across | up | wall | left | right | floor | top | back | front | diagonal | new | from

Running readings are all taken from one end; in a chain each reading begins where the one before ended. `wall` is the
whole length, or with `up` the height. `left`, `right`, `floor` and `top` (on a plan `back` and `front`) are sides from
corner to corner. The first diagonal rises to the right, the second falls. `new` makes new set-out lines even where
others are near. `from` and a length begin a chain at that place. `geometry.edits.setting_out` puts them on the face.
"""

from enum import StrEnum
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import CORNERS, Unit, Way
from shared.typed.length_words import ADVICE, quoted
from shared.typed.lengths import read_length
from shared.typed.pieces import Sort, pieces_of, with_units, word_meant

LOWER_LEFT, LOWER_RIGHT, UPPER_RIGHT, UPPER_LEFT = CORNERS

SIDES = {
    "left": (LOWER_LEFT, UPPER_LEFT),
    "right": (LOWER_RIGHT, UPPER_RIGHT),
    "floor": (LOWER_LEFT, LOWER_RIGHT),
    "back": (LOWER_LEFT, LOWER_RIGHT),
    "top": (UPPER_LEFT, UPPER_RIGHT),
    "front": (UPPER_LEFT, UPPER_RIGHT),
}
"""The sides of a face, from corner to corner."""

DIAGONALS = ((LOWER_LEFT, UPPER_RIGHT), (LOWER_RIGHT, UPPER_LEFT))
"""The diagonals, from corner to corner: first the one that rises to the right, then the one that falls."""


class How(StrEnum):
    """What the readings of a group measure, and how they follow each other."""

    RUNNING = "running"
    CHAIN = "chain"
    WALL = "wall"
    SIDE = "side"
    DIAGONAL = "diagonal"


WAYS = {"across": Way.ACROSS, "up": Way.UP}
NEW, FROM = "new", "from"
WORDS = (How.RUNNING, How.CHAIN, *WAYS, How.WALL, *SIDES, How.DIAGONAL, NEW, FROM)


class Group(NamedTuple):
    """Readings that are meant in one way; lengths in mm.

    `how` and `way` are None when no word says them. `side` is the word for the side that a SIDE measures. `from_mm` is
    where a chain begins, None when the line does not say it. `fresh` says that new set-out lines are to be made.
    """

    lengths: tuple[float, ...]
    how: How | None = None
    way: Way | None = None
    side: str = ""
    fresh: bool = False
    from_mm: float | None = None


class _Open:
    """A group while its words and readings come in."""

    def __init__(self) -> None:
        self.how: How | None = None
        self.way: Way | None = None
        self.side = ""
        self.fresh = False
        self.is_from = False
        self.readings: list[str] = []

    def take(self, word: str) -> None:
        if word in WAYS:
            self.way = WAYS[word]
        elif word in SIDES:
            self.how, self.side = How.SIDE, word
        elif word == NEW:
            self.fresh = True
        elif word == FROM:
            self.is_from = True
        else:
            self.how = How(word)

    def closed(self, text: str, lengths: list[float]) -> Group:
        """The group with its lengths read. ReadingError where it has too few of them, or too many."""
        start = lengths.pop(0) if self.is_from and lengths else None
        most = {How.WALL: 1, How.SIDE: 1, How.DIAGONAL: 2}.get(self.how or How.RUNNING)
        if not lengths:
            raise ReadingError("there is no length after the last word", where=quoted(text), do=ADVICE)
        if most is not None and len(lengths) > most:
            what = self.side or str(self.how)
            raise ReadingError(
                f"there are {len(lengths)} readings for {what}", where=quoted(text), do="type one of them"
            )
        how = How.CHAIN if self.is_from and self.how is None else self.how
        return Group(tuple(lengths), how, self.way, self.side, self.fresh, start)


def read_set_out(text: str, unit: Unit, *, decimal: str = ".") -> tuple[Group, ...]:
    """The groups of readings of a line; a unit typed once counts for all of it. ReadingError where it says none."""
    groups = [_Open()]
    for piece in pieces_of(text, decimal):
        if piece.sort is Sort.WORD:
            if groups[-1].readings:
                groups.append(_Open())
            groups[-1].take(word_meant(piece.text, WORDS))
        elif piece.sort is Sort.LENGTH:
            groups[-1].readings.append(piece.text)
    typed = with_units([reading for group in groups for reading in group.readings], unit, decimal)
    lengths = iter([read_length(reading, unit, decimal=decimal, allow_zero=True) for reading in typed])
    return tuple(group.closed(text, [next(lengths) for _ in group.readings]) for group in groups)
