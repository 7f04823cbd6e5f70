"""Reads the walls of a room in one line: `2400, 3000 out, 1800`.

After each length a word may say how the wall's right end meets the next wall: `inside` (as usual), `outside`, or `end`
when it meets none.
"""

import re
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import Corner, Unit
from shared.typed.length_words import quoted
from shared.typed.lengths import read_length
from shared.typed.pieces import Sort, pieces_of, units_of, with_units, word_meant
from shared.typed.rows import LEAST_MM

MOST_WALLS = 100

_CORNERS = {"inside": Corner.INSIDE, "outside": Corner.OUTSIDE, "end": Corner.NONE, "none": Corner.NONE}

_ADVICE = "type lengths such as 2400, 3000, 1800"

_IN = re.compile(r"(?<![a-z])in\.?$")


class WallLength(NamedTuple):
    """The length of a wall, mm, and how its right end meets the next one."""

    length_mm: float
    corner: Corner


def read_walls(text: str, unit: Unit, *, decimal: str = ".") -> tuple[WallLength, ...]:
    """The walls that this line says, from left to right as one turns round in the room.

    Without a word, a wall meets the next one at an inside corner, and the last wall meets none. `decimal` is the
    decimal sign. A unit that is typed once counts for the whole line. ReadingError where an item is no length, a word
    is not known, or there is no wall at all.
    """
    walls = _said(text, unit, decimal)
    if not walls:
        raise ReadingError("no wall was typed", do=_ADVICE)
    if len(walls) > MOST_WALLS:
        raise ReadingError(f"{len(walls)} walls are too many for one room", do=f"use at most {MOST_WALLS}")
    lengths = with_units([typed for typed, _ in walls], unit, decimal)
    usual = (*[Corner.INSIDE] * (len(walls) - 1), Corner.NONE)
    return tuple(
        WallLength(_length(typed, unit, decimal), corner or otherwise)
        for typed, (_, corner), otherwise in zip(lengths, walls, usual, strict=True)
    )


def _said(text: str, unit: Unit, decimal: str) -> list[tuple[str, Corner | None]]:
    """Each wall's length as it was typed, and its corner; None when no word says one."""
    walls: list[tuple[str, Corner | None]] = []
    corner_may_follow = False
    for sort, typed in pieces_of(text, decimal):
        if sort is Sort.LENGTH:
            walls.append(_without_in(typed, unit, decimal))
        elif sort is Sort.WORD:
            corner = _CORNERS[word_meant(typed, _CORNERS)]
            if not corner_may_follow:
                raise ReadingError("type a corner after the length of its wall", where=quoted(typed), do=_ADVICE)
            walls[-1] = (walls[-1][0], corner)
        corner_may_follow = sort is Sort.LENGTH
    return walls


def _without_in(typed: str, unit: Unit, decimal: str) -> tuple[str, Corner | None]:
    """A length, and an inside corner if the `in` behind it cannot be inches. ReadingError where it could be either."""
    short = _IN.sub("", typed).strip()
    if short == typed:
        return typed, None
    if unit is Unit.MM and not units_of(short, decimal):
        do = f'type {short} inside or {short}"'
        raise ReadingError("this could be inches or an inside corner", where=quoted(typed), do=do)
    try:
        read_length(typed, unit, decimal=decimal)
    except ReadingError:
        return short, Corner.INSIDE
    return typed, None


def _length(typed: str, unit: Unit, decimal: str) -> float:
    length_mm = read_length(typed, unit, decimal=decimal)
    if length_mm < LEAST_MM:
        raise ReadingError("a wall cannot be as short as this", where=quoted(typed), do="check the length")
    return length_mm
