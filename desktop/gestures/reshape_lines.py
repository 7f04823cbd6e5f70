"""Typed lines that change a corner or a side: a new place or length, `round 50`, `cut 50`, `rise 60`, `radius 300`."""

import math
import re
from collections.abc import Callable
from typing import NamedTuple

from desktop.gestures.gesture import Scene
from desktop.gestures.shaping import positive
from geometry.edits.reshaping import (
    Reshaped,
    corner_cut,
    corner_moved,
    corner_rounded,
    side_bent,
    side_lengthened,
    side_of_radius,
    side_turned,
)
from shared.errors import ReadingError
from shared.job import Outline
from shared.typed.length_words import quoted
from shared.typed.lengths import read_length, read_lengths
from shared.typed.ways import By, begins_with_place, names_ways, read_moves, read_sides

_WORD = re.compile(r"\s*(?P<word>round|cut|rise|radius)(?![^\W\d_])(?P<length>.*)", re.IGNORECASE | re.DOTALL)

_OF_CORNERS: dict[str, tuple[Callable[[Outline, int, float], Reshaped], str]] = {
    "round": (corner_rounded, "rounded to a radius of"),
    "cut": (corner_cut, "cut off by"),
}
_OF_SIDES: dict[str, tuple[Callable[[Outline, int, float], Reshaped], str]] = {
    "rise": (side_bent, "an arc that rises"),
    "radius": (side_of_radius, "an arc of radius"),
}


class Chosen(NamedTuple):
    """A corner by its number in the outline, or the side that leaves that corner."""

    number: int
    is_side: bool = False


class OutlineChange(NamedTuple):
    """The change that a line makes, and the same in words."""

    reshaped: Reshaped
    words: str


def read_change(outline: Outline, chosen: Chosen, text: str, scene: Scene) -> OutlineChange:
    """What a line does to a corner or a side.

    ReadingError if the line cannot be read, OutlineError if the outline cannot be made so.
    """
    word = _WORD.match(text)
    if word is not None:
        return _named(outline, chosen, word["word"].lower(), word["length"], scene)
    return (
        _side(outline, chosen.number, text, scene) if chosen.is_side else _corner(outline, chosen.number, text, scene)
    )


def _named(outline: Outline, chosen: Chosen, word: str, text: str, scene: Scene) -> OutlineChange:
    known = _OF_SIDES if chosen.is_side else _OF_CORNERS
    if word not in known:
        what = "only a corner can be rounded or cut off" if chosen.is_side else "only a side can become an arc"
        raise ReadingError(what, where=quoted(word), do=f"choose a {'corner' if chosen.is_side else 'side'} first")
    length = read_length(
        text, scene.job.unit, decimal=scene.decimal, allow_zero=chosen.is_side, allow_negative=chosen.is_side
    )
    make, words = known[word]
    return OutlineChange(make(outline, chosen.number, length), f"{words} {_shown(length, scene)}")


def _corner(outline: Outline, number: int, text: str, scene: Scene) -> OutlineChange:
    unit, decimal = scene.job.unit, scene.decimal
    corner = outline[number]
    if names_ways(text) and not begins_with_place(text):
        across, up = read_moves(text, unit, decimal=decimal)
        x, y = corner.x + across, corner.y + up
    else:
        place = re.sub(r"^\s*to\b", "", text, flags=re.IGNORECASE)
        lengths = read_lengths(place, unit, decimal=decimal, allow_zero=True, allow_negative=True)
        if len(lengths) != len(("x", "y")):
            raise ReadingError(
                "a corner needs two readings",
                where=quoted(text),
                do="type its distance from the left end and its height, as in 600, 870",
            )
        x, y = lengths
    return OutlineChange(
        corner_moved(outline, number, (x, y)), f"the corner at {_shown(x, scene)} · {_shown(y, scene)}"
    )


def _side(outline: Outline, number: int, text: str, scene: Scene) -> OutlineChange:
    sides = read_sides(text, scene.job.unit, decimal=scene.decimal)
    go, rise = sides[0]
    if len(sides) > 1 or rise is not None or not isinstance(go, By):
        raise ReadingError("a side needs one length", where=quoted(text), do="say it as in 600, or 600 at 45")
    length = positive(go.length_mm, "length of the side")
    if go.way is None:
        return OutlineChange(side_lengthened(outline, number, length), f"{_shown(length, scene)} long")
    degrees = round(math.degrees(math.atan2(go.way[1], go.way[0])), 1)
    return OutlineChange(side_turned(outline, number, length, go.way), f"{_shown(length, scene)} long at {degrees:g}°")


def _shown(length_mm: float, scene: Scene) -> str:
    return scene.writing.length(length_mm)
