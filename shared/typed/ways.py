"""Reads ways as people say them: `600 right, 400 up`, `600 at 45`, `to 600, 870`, `900 right rise 120 up`.

    line = side {, side}
    side = (length [way] | to length, length) [rise length [way]]
    way  = right | up | left | down | at degrees

The first letter of a way is enough. Degrees are from level, anticlockwise. `to` names a place by its distance from the
left end and its height. A side with a rise is an arc.
"""

import math
import re
from typing import NamedTuple

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.length_words import quoted
from shared.typed.lengths import parted, read_lengths

Direction = tuple[float, float]
"""Across and up, of length 1."""

WAYS: dict[str, Direction] = {"right": (1.0, 0.0), "up": (0.0, 1.0), "left": (-1.0, 0.0), "down": (0.0, -1.0)}
"""The four ways by their words, in anticlockwise order from the right."""

_QUARTER = 90.0

_ADVICE = "say it as in 600 right, 400 up, 600 at 45, or to 600, 870"

_NO_LETTER_BEFORE, _NO_LETTER_AFTER = r"(?<![^\W\d_])", r"(?![^\W\d_])"
_WAY = re.compile(
    rf"{_NO_LETTER_BEFORE}(?:(?P<word>{'|'.join(WAYS)}|[ruld])|at{_NO_LETTER_AFTER}(?P<angle>.*))\s*$",
    re.IGNORECASE | re.DOTALL,
)
_TO = re.compile(rf"\s*to{_NO_LETTER_AFTER}", re.IGNORECASE)
_RISE = re.compile(rf"{_NO_LETTER_BEFORE}rise{_NO_LETTER_AFTER}", re.IGNORECASE)
_ANGLE = re.compile(r"\s*(?P<number>[-+]?\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees?)?)?\s*", re.IGNORECASE)


class By(NamedTuple):
    """A length in a direction, mm; `way` is None when the line does not say it."""

    length_mm: float
    way: Direction | None = None


class To(NamedTuple):
    """To a place of the face, mm."""

    x: float
    y: float


class TracedSide(NamedTuple):
    """Where a side goes, and how far its arc rises from the straight line there; `rise` is None for a straight side."""

    go: By | To
    rise: By | None = None


class _Said(NamedTuple):
    """A side as it was typed: its lengths, each with the way after it. `go` has two lengths after `to`, else one."""

    go: tuple[tuple[str, Direction | None], ...]
    rise: tuple[tuple[str, Direction | None], ...]


def names_ways(text: str) -> bool:
    """Whether a line says where its lengths go, or that they rise."""
    return bool(_RISE.search(text)) or any(_TO.match(piece) or _WAY.search(piece) for piece in parted(text))


def begins_with_place(text: str) -> bool:
    """Whether the first word of a line is `to`."""
    return bool(_TO.match(text))


def read_sides(text: str, unit: Unit, *, decimal: str = ".") -> tuple[TracedSide, ...]:
    """The sides that a line says, in order.

    Lengths may be zero or negative. A unit that is typed once counts for the whole line. ReadingError where a side
    cannot be read.
    """
    said = _said(text, decimal)
    typed = "; ".join(length for step in said for length, _ in (*step.go, *step.rise))
    lengths = iter(read_lengths(typed, unit, decimal=decimal, allow_zero=True, allow_negative=True))
    steps = []
    for step in said:
        go = [By(next(lengths), way) for _, way in step.go]
        rise = [By(next(lengths), way) for _, way in step.rise]
        place = To(go[0].length_mm, go[1].length_mm) if len(go) > 1 else go[0]
        steps.append(TracedSide(place, rise[0] if rise else None))
    return tuple(steps)


def read_moves(text: str, unit: Unit, *, decimal: str = ".") -> tuple[float, float]:
    """How far across and up a line goes in all: `35 right, 20 up` is (35, 20). ReadingError where a way is missing."""
    across = up = 0.0
    for go, rise in read_sides(text, unit, decimal=decimal):
        if isinstance(go, To) or go.way is None or rise is not None:
            raise ReadingError("this does not say which way", where=quoted(text), do="say it as in 35 right, 20 up")
        across += go.length_mm * go.way[0]
        up += go.length_mm * go.way[1]
    return across, up


def way_at(degrees: float) -> Direction:
    """The direction at an angle from level, anticlockwise. A level or upright one is exact."""
    if degrees % _QUARTER == 0:
        return tuple(WAYS.values())[round(degrees / _QUARTER) % len(WAYS)]
    return math.cos(math.radians(degrees)), math.sin(math.radians(degrees))


def _said(text: str, decimal: str) -> list[_Said]:
    pieces = iter(parted(text, decimal))
    said = []
    for piece in pieces:
        place = _TO.match(piece)
        if place is None:
            go, rise = _go_and_rise(piece)
            said.append(_Said((go,), rise))
            continue
        height, rise = _go_and_rise(next(pieces, ""))
        said.append(_Said(((_length(piece[place.end() :]), None), height), rise))
        if height[1] is not None:
            raise ReadingError("a place needs two lengths", where=quoted(text), do=_ADVICE)
    return said


def _go_and_rise(piece: str) -> tuple[tuple[str, Direction | None], tuple[tuple[str, Direction | None], ...]]:
    go, *rise = _RISE.split(piece, maxsplit=1)
    return _length_and_way(go), tuple(map(_length_and_way, rise))


def _length_and_way(piece: str) -> tuple[str, Direction | None]:
    way = _WAY.search(piece)
    if way is None:
        return _length(piece), None
    if way["word"] is None:
        return _length(piece[: way.start()]), way_at(_degrees(way["angle"], piece))
    initial = way["word"][0].lower()
    return _length(piece[: way.start()]), next(to for word, to in WAYS.items() if word[0] == initial)


def _length(text: str) -> str:
    if not text.strip():
        raise ReadingError("a length is missing", do=_ADVICE)
    return text


def _degrees(text: str, piece: str) -> float:
    angle = _ANGLE.fullmatch(text)
    if angle is None:
        raise ReadingError("this is not an angle", where=quoted(piece), do="type degrees from level, as in 600 at 45")
    return float(angle["number"].replace(",", "."))
