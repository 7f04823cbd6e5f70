"""The walls of a room in one line: `2400, 3000 out, 1800`.

Each length is a reading, and may be followed by how the wall's right end meets the next wall: `inside` (as usual),
`outside`, or `end` where it meets none.
"""

import re
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import Corner, Unit
from shared.line_pieces import Piece, Sort, pieces_of, word_meant
from shared.reading import read_length
from shared.reading_words import quoted
from shared.row_words import LEAST_MM

MOST_WALLS = 100

_CORNERS = {"inside": Corner.INSIDE, "outside": Corner.OUTSIDE, "end": Corner.NONE, "none": Corner.NONE}

_ADVICE = "type lengths such as 2400, 3000, 1800"

_IN = re.compile(r"(?<![a-z])in\.?$")
_UNIT = re.compile(r"[a-wyz'\"]")


class WallLength(NamedTuple):
    """The length of a wall, mm, and how its right end meets the next one."""

    length_mm: float
    corner: Corner


def read_walls(text: str, unit: Unit, *, decimal: str = ".") -> tuple[WallLength, ...]:
    """The walls that this line says, from left to right as one turns round in the room.

    Nothing said, a wall meets the next at an inside corner and the last meets none. `decimal` is the decimal sign.
    ReadingError where one of them is no length, a word is not known, or there are none.
    """
    reader = _Reader(pieces_of(text, decimal), unit, decimal)
    walls = reader.walls()
    if not walls:
        raise ReadingError("no wall was typed", do=_ADVICE)
    if len(walls) > MOST_WALLS:
        raise ReadingError(f"{len(walls)} walls are too many for one room", do=f"use at most {MOST_WALLS}")
    *others, (length_mm, corner) = walls
    last = WallLength(length_mm, corner or Corner.NONE)
    return (*(WallLength(length, said or Corner.INSIDE) for length, said in others), last)


class _Reader:
    """Goes through the pieces of a line once, from left to right."""

    def __init__(self, pieces: tuple[Piece, ...], unit: Unit, decimal: str) -> None:
        self.pieces = pieces
        self.unit = unit
        self.decimal = decimal

    def walls(self) -> list[tuple[float, Corner | None]]:
        """Each wall's length, and its corner where one was said."""
        walls: list[tuple[float, Corner | None]] = []
        corner_may_follow = False
        for sort, text in self.pieces:
            if sort is Sort.READING:
                walls.append(self.wall(text))
            elif sort is Sort.WORD:
                corner = _CORNERS[word_meant(text, _CORNERS)]
                if not corner_may_follow:
                    raise ReadingError("a corner belongs after the length of its wall", where=quoted(text), do=_ADVICE)
                walls[-1] = (walls[-1][0], corner)
            corner_may_follow = sort is Sort.READING
        return walls

    def wall(self, text: str) -> tuple[float, Corner | None]:
        """A length; where an `in` behind it cannot be inches, it says that the corner is an inside one."""
        short = _IN.sub("", text).strip()
        if short == text:
            return self.length(text), None
        try:
            length_mm = self.length(text)
        except ReadingError:
            return self.length(short), Corner.INSIDE
        if self.unit is Unit.MM and not _UNIT.search(short):
            do = f'type {short} inside or {short}"'
            raise ReadingError("this could be inches or an inside corner", where=quoted(text), do=do)
        return length_mm, None

    def length(self, text: str) -> float:
        """The length of a wall, in mm."""
        length_mm = read_length(text, self.unit, decimal=self.decimal)
        if length_mm < LEAST_MM:
            raise ReadingError("a wall cannot be as short as this", where=quoted(text), do="check the length")
        return length_mm
