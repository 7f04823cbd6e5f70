"""Layers and lines of a DXF file, from `data/layers.toml`."""

import tomllib
from functools import cache
from importlib.resources import files

import msgspec
from ezdxf.document import Drawing as Document

from shared.trade.kinds import Kind

PATTERNS_MM = {"dashed": (60.0, -30.0), "double dots": (120.0, -20.0, 0.0, -20.0, 0.0, -20.0)}
"""Dashes, gaps (negative) and dots (0) at true size, mm: 3 mm dashes on a sheet at 1:20 (own choice)."""


class Layer(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The layer for one use; the fields are explained at the head of `data/layers.toml`."""

    layer: str
    colour: int
    width: float
    of_kind: bool = False
    true_colour: tuple[int, int, int] | None = None
    line: str = "continuous"
    plotted: bool = True


@cache
def uses() -> dict[str, Layer]:
    """The layer for every use, by the name of the use."""
    return msgspec.convert(
        tomllib.loads((files("geometry") / "data" / "layers.toml").read_text("utf-8")), dict[str, Layer]
    )


def add_lines(document: Document, unit_mm: float) -> None:
    """Add the line patterns at true size to a document whose unit is `unit_mm` long."""
    for name, pattern in PATTERNS_MM.items():
        lengths = [length / unit_mm for length in pattern]
        document.linetypes.add(_line_name(name), [sum(map(abs, lengths)), *lengths], description=name)


def layer(document: Document, use: str, kind: Kind | None = None) -> str:
    """The name of the layer for a use, of a kind if one is given. The layer is added if the document lacks it."""
    row = uses()[use]
    name = layer_name(use, kind)
    if name not in document.layers:
        added = document.layers.add(
            name,
            color=row.colour,
            linetype=_line_name(row.line),
            lineweight=round(row.width * 100),
            plot=row.plotted,
        )
        if row.true_colour:
            added.rgb = row.true_colour
    return name


def layer_name(use: str, kind: Kind | None = None) -> str:
    """The name of the layer for a use, of a kind if one is given: "SPLASHBACK-VISIBLE", "JOINT"."""
    row = uses()[use]
    return f"{kind.replace(' ', '-').upper()}-{row.layer}" if kind and row.of_kind else row.layer


def _line_name(line: str) -> str:
    return line.replace(" ", "-").upper()
