"""Tiles and grout lines of every tiled part, with the fronts off. `geometry.tiles.tiling` counts them."""

import tomllib
from collections.abc import Iterator
from functools import cache
from importlib.resources import files

import msgspec
from msgspec.structs import replace

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Point
from geometry.seen.arrangement import Arrangement, Region
from geometry.tiles.tiling import Tiling, tiling
from shared.errors import JobError
from shared.findings import Code, Finding
from shared.job import Face, Part, Tiles, Unit
from shared.trade.kinds import usual
from shared.written.units import length_words
from takeoff.figures.measured import Figure, Fronts, Reason, Term, TileRow

RULE = "grout lines: along their middles, as far as the tiles are seen with the fronts off"
SOURCE = "exact: straight lines cut off by straight sides and arcs"


SIZES = ("width_mm", "height_mm")
"""The fields that make a part tiled."""


class _Usual(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """What is usual for tiles; the fields are explained at the head of `data/tiles.toml`."""

    least_grout_mm: float
    source: str
    new_grout_mm: dict[Unit, float]


def tile_rows(face: Face, room: str, off: Arrangement) -> tuple[TileRow, ...]:
    """A row for every tiled part of a face that stands with the fronts off; empty when no part is tiled."""
    tiled = {part.id: (part, part.tiles) for part in face.parts if part.tiles is not None}
    return tuple(_row(face, room, *tiled[region.part], region) for region in off.regions if region.part in tiled)


def tiles_corner(part: Part) -> Point:
    """The lower left corner of a part's box, from which the start of its tiles is counted."""
    left, bottom, _, _ = outline_box(part.outline)
    return (left, bottom)


def may_be_tiled(part: Part) -> bool:
    """Whether a part is tiled, or parts of its kind usually are."""
    return part.tiles is not None or usual()[part.kind].can_be_tiled


def with_tiles(part: Part, field: str, value: float, unit: Unit) -> Part:
    """The part with one field of its tiles set; `field` is a name in `Tiles`.

    A part without tiles gets square tiles of this size with the usual grout line. It stays as it is if the field is not
    a tile's size.
    """
    if part.tiles is not None:
        return replace(part, tiles=replace(part.tiles, **{field: value}))
    if field not in SIZES or not may_be_tiled(part):
        return part
    return replace(part, tiles=Tiles(value, value, _usual().new_grout_mm[unit]))


def without_tiles(part: Part) -> Part:
    """The part without tiles."""
    return replace(part, tiles=None)


def look_at_tiles(face: Face, unit: Unit) -> Iterator[Finding]:
    """Grout lines narrower than tiles are laid with."""
    known = _usual()
    for part in face.parts:
        if part.tiles is not None and part.tiles.grout_mm < known.least_grout_mm:
            message = (
                f"The grout line of {part.called} is {length_words(part.tiles.grout_mm, unit)} wide; "
                f"at least {length_words(known.least_grout_mm, unit)} is usual ({known.source}). Measure it again."
            )
            yield Finding(Code.THIN_GROUT, message, face.id, (part.id,))


def _row(face: Face, room: str, part: Part, tiles: Tiles, region: Region) -> TileRow:
    counted = _counted(part, tiles, region)
    lines = (("level grout lines", counted.level_mm), ("upright grout lines", counted.upright_mm))
    terms = tuple(Term(what, length_mm, (), (part.id,)) for what, length_mm in lines)
    grout = Figure(counted.grout_mm, Reason(RULE, SOURCE, Fronts.OFF, terms))
    return TileRow(part.id, room, face.id, part.name, counted.whole, counted.cut, tiles.grout_mm, grout)


def _counted(part: Part, tiles: Tiles, region: Region) -> Tiling:
    """The tiles of a part, counted. JobError, naming the part, where there are too many cut ones to be counted."""
    try:
        return tiling(region, tiles, tiles_corner(part))
    except JobError as trouble:
        raise trouble.within(part.called) from trouble


@cache
def _usual() -> _Usual:
    return msgspec.convert(tomllib.loads((files("takeoff") / "data" / "tiles.toml").read_text("utf-8")), _Usual)
