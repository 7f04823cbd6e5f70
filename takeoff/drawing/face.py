"""Draws one face: puts the drawing together from the job, what is seen of the face, and the takeoff.

The drawing is a value (`shared.drawing`); painters and the DXF writer read it.
"""

from geometry.drawn.chaining import chained
from geometry.drawn.labels import Spot, label_spot
from geometry.outlines.measured import joined, outline_box
from geometry.parts.extent import extent
from geometry.parts.rank import rank_key
from geometry.seen.arrangement import Region
from geometry.tiles.tiling import grout_lines
from shared.drawing import Area, Drawing, Line, Role, Text
from shared.job import Face, Job, Outline, Part, Vertex, View
from shared.trade.kinds import usual
from takeoff.drawing.set_out import set_out_marks
from takeoff.drawing.sizes import face_sizes, part_sizes, step_mm
from takeoff.figures.measured import EdgeRow, Fronts, Takeoff
from takeoff.memory import Memory
from takeoff.surfaces.tiles import tiles_corner

TOLD_APART_MM2 = 1e-3
"""Areas that differ by no more than this are the same: far below what a tape reads, far above rounding."""

MOST_GROUT_LINES = 1500
LEAST_TILE_MM = 12.0
"""More grout lines, or lines nearer to each other, would fill the drawing: at 1:20 these are 0.6 mm apart (own
choice)."""

FLAT = 3.0
"""A place more than this many times wider than high has tag and name beside each other (own choice)."""


def draw_face(
    job: Job,
    face: Face,
    takeoff: Takeoff,
    memory: Memory,
    *,
    fronts: Fronts = Fronts.HUNG,
    sized: tuple[str, ...] = (),
) -> Drawing:
    """The drawing of one face, with its fronts hung or off, and with the sizes of the parts whose ids are in `sized`.

    Sealed joints and masking come from the rows of the takeoff, piece for piece, so their lengths are the takeoff's.
    Grout lines are drawn as far as tiles are seen; with the fronts off, that is what the takeoff counts. A face without
    parts gives a drawing with nothing on it and a box of four zeros.
    """
    seen = {region.part: region for region in memory.arrangement(job, face, fronts).regions}
    off = {region.part: region for region in memory.arrangement(job, face, Fronts.OFF).regions}
    rings = {part: region.rings for part, region in seen.items()}
    parts = _back_to_front(face, rings)
    box = _box(face, parts)
    set_out_lines, distances = set_out_marks(job, face, box)
    return Drawing(
        face=face.id,
        title=title(job, face),
        view=face.view,
        unit=job.unit,
        box=box,
        areas=tuple(area for part in parts for area in _areas(part, seen[part.id], off.get(part.id))),
        lines=(
            *_floor(face, box),
            *_grout(parts, seen),
            *set_out_lines,
            *memory.lines(takeoff, face.id, _joints_and_masking),
        ),
        texts=(*_texts(parts, rings, takeoff), *distances),
        sizes=(*face_sizes(face), *(s for part in parts if part.id in sized for s in part_sizes(part, step_mm(box)))),
        job=job.name,
    )


def title(job: Job, face: Face) -> str:
    """The title of a face on a sheet: its room's name and its own."""
    room = job.room_of.get(face.id)
    return f"{room.name} · {face.name}" if room and room.name else face.name


def _back_to_front(face: Face, rings: dict[str, tuple[Outline, ...]]) -> tuple[Part, ...]:
    """The parts of the arrangement from the back to the front; those that hide nothing come first."""
    ranked = sorted((rank_key(part, index), part) for index, part in enumerate(face.parts) if part.id in rings)
    return tuple(part for _, part in ranked)


def _box(face: Face, parts: tuple[Part, ...]) -> tuple[float, float, float, float]:
    return joined([extent(face), *(outline_box(part.outline) for part in parts)])


def _areas(part: Part, seen: Region, off: Region | None) -> tuple[Area, ...]:
    """The areas drawn of a part: its region, its outline, and its region with the fronts off if that is larger."""
    what = (part.id, part.kind)
    region = Area(Role.REGION, *what, seen.rings, part.hides, part.name)
    outline = Area(Role.OUTLINE, *what, (part.outline,), part.hides, part.name)
    if off is None or off.area_mm2 - seen.area_mm2 <= TOLD_APART_MM2:
        return (region, outline)
    return (region, outline, Area(Role.FRONTS_OFF, *what, off.rings, part.hides, part.name))


def _floor(face: Face, box: tuple[float, float, float, float]) -> tuple[Line, ...]:
    """The line of the floor under an elevation, drawn a little beyond its ends; empty for a plan."""
    left, _, right, _ = box
    if face.view is View.PLAN or right <= left:
        return ()
    beyond = step_mm(box) / 4
    return (Line(Role.FLOOR, (Vertex(left - beyond, 0.0), Vertex(right + beyond, 0.0))),)


def _grout(parts: tuple[Part, ...], seen: dict[str, Region]) -> tuple[Line, ...]:
    """The grout lines of every tiled part, as far as the part is seen. A mosaic too fine to be drawn has none."""
    tiled = ((part, part.tiles) for part in parts if part.tiles is not None)
    return tuple(
        Line(Role.GROUT, path, (part.id,))
        for part, tiles in tiled
        if min(tiles.width_mm, tiles.height_mm) >= LEAST_TILE_MM
        for path in grout_lines(seen[part.id], tiles, tiles_corner(part), MOST_GROUT_LINES)
    )


def _joints_and_masking(takeoff: Takeoff, face_id: str) -> tuple[Line, ...]:
    sealed = [row for row in takeoff.joints if row.face == face_id and row.sealed]
    taped = [row for row in takeoff.masking if row.face == face_id]
    return (
        *(Line(Role.JOINT, path, row.parts) for row in sealed for path in _paths(row.path)),
        *(Line(Role.MASKING, path, _known(row.parts)) for row in taped for path in _paths(row.path)),
    )


def _known(parts: tuple[str, str | None]) -> tuple[str, ...]:
    return tuple(part for part in parts if part is not None)


def _paths(rows: tuple[EdgeRow, ...]) -> tuple[tuple[Vertex, ...], ...]:
    return chained((row.start, row.end, row.bulge) for row in rows)


def _texts(parts: tuple[Part, ...], rings: dict[str, tuple[Outline, ...]], takeoff: Takeoff) -> tuple[Text, ...]:
    """The tag of each front and the name of each part, where they can be seen; its kind for a part with neither."""
    tags = {row.id: row.tag for row in takeoff.parts}
    texts: list[Text] = []
    for part in parts:
        spot = label_spot(_shown(part, rings[part.id]))
        if spot is not None:
            texts.extend(_labels(part, tags.get(part.id, ""), spot))
    return tuple(texts)


def _shown(part: Part, rings: tuple[Outline, ...]) -> tuple[Outline, ...]:
    """The outlines of a part as a person sees it. A hole, and a part that hides nothing, are shown whole."""
    whole = usual()[part.kind].hole or not part.hides
    return (part.outline,) if whole else rings


def _labels(part: Part, tag: str, spot: Spot) -> tuple[Text, ...]:
    x, y, width, height = spot
    if not part.hides:  # what lies behind has its own name in the middle
        return (Text(Role.NAME, x, y + height / 4, part.called, width, height / 2, part.id),)
    if not tag:
        return (Text(Role.NAME, x, y, part.called, width, height, part.id),)
    whole = Text(Role.TAG, x, y, tag, width, height, part.id)
    return _side_by_side(whole, part.name) if part.name else (whole,)


def _side_by_side(tag: Text, name: str) -> tuple[Text, Text]:
    """A tag and a name in one place: the tag above the name, or left of it if the place is low and wide."""
    _, x, y, _, width, height, part = tag
    if width > FLAT * height:
        return (
            tag._replace(x=x - width / 3, width_mm=width / 3),
            Text(Role.NAME, x + width / 6, y, name, width * 2 / 3, height, part),
        )
    return (
        tag._replace(y=y + height / 4, height_mm=height / 2),
        Text(Role.NAME, x, y - height / 4, name, width, height / 2, part),
    )
