"""How everything looks, light and dark: colours and patterns, read from `data/look.toml`."""

import tomllib
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from shared.trade.kinds import Kind

LEAST_MARK_CONTRAST = 3.0
"""The least contrast ratio of a pattern's lines to the fill under them (guidelines 2.1, 1.4.11)."""

BLENDS = 20
"""How many blends of two colours are tried on the way to a contrast."""

LINEAR_UP_TO = 0.04045
"""Up to this share of a channel the sRGB curve is straight (guidelines 2.1, "relative luminance"; sRGB's threshold)."""

Mix = tuple[str, str, float]
"""A colour's name, the name of the colour mixed into it, and the share of the second, 0 to 1."""

BLACK, WHITE = "#000000", "#FFFFFF"


class Family(NamedTuple):
    """Parallel lines of a pattern: angle in degrees, anticlockwise from the horizontal, and spacing in 1/96 inch."""

    angle: float
    spacing: float


class KindLook(NamedTuple):
    """How a kind of part is painted: the fill, and the colour and lines of its pattern."""

    fill: str
    pattern: str
    families: tuple[Family, ...]


class Look(NamedTuple):
    """All colours, as "#RRGGBB". Drawings are painted on `paper`; `ground` and `bar` are for panels and bars.

    `ink` and `quiet` are for texts, `outline` is for the lines round parts. `uncoated` is for parts that get no finish
    while finishes are shown. The others are named after what they show.
    """

    dark: bool
    paper: str
    ground: str
    bar: str
    field: str
    border: str
    ink: str
    quiet: str
    outline: str
    accent: str
    on_accent: str
    lit: str
    uncoated: str
    joint: str
    masking: str
    set_out: str
    good: str
    warning: str
    warning_ground: str
    kinds: dict[Kind, KindLook]


class _Scheme(msgspec.Struct, forbid_unknown_fields=True):
    neutral: dict[str, str]
    mix: dict[str, Mix]


class _KindRow(msgspec.Struct, forbid_unknown_fields=True):
    tint: str
    share: float
    lines: tuple[Family, ...]


PLAIN = _KindRow("black", 0.0, ())
"""How a kind is painted that has no row yet: as bare paper."""


class _Table(msgspec.Struct, forbid_unknown_fields=True):
    set: dict[str, str]
    shades: dict[str, tuple[str, float]]
    light: _Scheme
    dark: _Scheme
    kinds: dict[Kind, _KindRow]


def light() -> Look:
    """The look on a light ground; sheets and pictures are painted in it too."""
    return _look(dark=False)


def dark() -> Look:
    """The look on a dark ground."""
    return _look(dark=True)


def system_look() -> Look:
    """The look that the person's system asks for."""
    return _look(dark=QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark)


def shades() -> dict[str, str]:
    """Colours that a finish may be shown in, by their names."""
    table = _table()
    return {name: mixed(table.set[tint], WHITE, share) for name, (tint, share) in table.shades.items()}


def text_on(colour: str) -> str:
    """Black or white, whichever is read better on this colour. On any it has at least 4.58:1, the root of 21."""
    return max((BLACK, WHITE), key=lambda ink: contrast(ink, colour))


def mixed(colour: str, other: str, share: float) -> str:
    """`colour` with `share` (0 to 1) of `other` mixed in; all colours are "#RRGGBB"."""
    pairs = zip(_channels(colour), _channels(other), strict=True)
    return "#" + "".join(f"{round(one + (two - one) * share):02X}" for one, two in pairs)


def contrast(colour: str, other: str) -> float:
    """The contrast ratio of two colours, 1 to 21 (Web Content Accessibility Guidelines 2.1, "contrast ratio")."""
    low, high = sorted((_luminance(colour), _luminance(other)))
    return (high + 0.05) / (low + 0.05)


def _channels(colour: str) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def _luminance(colour: str) -> float:
    """Relative luminance as the guidelines define it."""
    red, green, blue = (
        part / 12.92 if part <= LINEAR_UP_TO else ((part + 0.055) / 1.055) ** 2.4
        for part in (channel / 255 for channel in _channels(colour))
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@cache
def _table() -> _Table:
    text = (files("desktop") / "data" / "look.toml").read_text("utf-8")
    return msgspec.convert(tomllib.loads(text), _Table)


@cache
def _look(*, dark: bool) -> Look:
    table = _table()
    scheme = table.dark if dark else table.light
    named = table.set | scheme.neutral
    colours = scheme.neutral | {
        name: mixed(named[one], named[two], share) for name, (one, two, share) in scheme.mix.items()
    }
    paper = scheme.neutral["paper"]
    kinds = {kind: _kind_look(table.kinds.get(kind, PLAIN), named, paper, colours["ink"]) for kind in Kind}
    return Look(dark=dark, kinds=kinds, **colours)


def _kind_look(row: _KindRow, named: dict[str, str], paper: str, ink: str) -> KindLook:
    """The look of a kind: the fill is paper with a share of the tint.

    The pattern's colour goes from the fill to the tint and on to ink, just so far that its lines are seen.
    """
    tint = ink if row.tint == "black" else named[row.tint]
    fill = mixed(paper, tint, row.share)
    ways = ((start, end, blend / BLENDS) for start, end in ((fill, tint), (tint, ink)) for blend in range(BLENDS + 1))
    pattern = next(colour for way in ways if contrast(colour := mixed(*way), fill) >= LEAST_MARK_CONTRAST)
    return KindLook(fill, pattern, row.lines)
