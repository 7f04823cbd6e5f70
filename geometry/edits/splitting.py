"""Splits a part into pieces, across or up, with reveals between them."""

from collections.abc import Collection, Iterator, Sequence
from itertools import accumulate
from typing import NamedTuple

from msgspec.structs import replace

from geometry.edits.hand import MOST_AT_ONCE, picked_parts, with_copies, with_hand_changes
from geometry.edits.tying import wall_place_mm
from geometry.outlines.measured import check_outline, outline_box
from geometry.outlines.sides import WELD_MM
from shared.edits.drawn import find_face, find_part, fresh_ids, with_changed_face
from shared.errors import JobError, OutlineError
from shared.job import Job, Outline, Part, Tie, Unit, Vertex
from shared.trade.kinds import usual
from shared.written.units import length_words

LEAST_PIECE_MM = 1.0
"""The least size of a piece: no tape could measure a smaller one."""

CUT = -1
"""Stands for a side of the whole when a side of a piece lies on none: it is a cut."""

Into = int | Sequence[float]
"""The number of equal pieces; or the sizes of pieces from the left or from below, and what they leave is one more."""


class _Corner(NamedTuple):
    """A corner of a piece, and the side of the whole on which the side that leaves it lies."""

    x: float
    y: float
    side: int


def with_split(
    job: Job, part_ids: Collection[str], into: Into, *, up: bool = False, reveal_mm: float = 0.0
) -> tuple[Job, tuple[str, ...]]:
    """The job with these parts split, and the ids of all pieces, part by part.

    The pieces go from left to right (`up`: from below), with `reveal_mm` left free between two. A box gives boxes; any
    other outline of straight sides is cut where it stands. The first piece keeps the part's id. All pieces are
    like the part: they have its name and finish, its tiles in the same pattern, and its ties along the same stretches
    of wall. A side is coated if it lies on a coated side of the part; a cut is coated if that is usual for the kind.

    JobError for fewer than 2 or more than 1000 pieces, for sizes that do not fit, for reveals that leave nothing, for
    round sides, and where a piece would fall apart.
    """
    made = {part.id: _pieces(part, into, up, reveal_mm, job.unit) for part in picked_parts(job, part_ids)}
    fresh = iter(fresh_ids(job, "p", sum(len(pieces) - 1 for pieces in made.values())))
    ids = {part_id: (part_id, *(next(fresh) for _ in pieces[1:])) for part_id, pieces in made.items()}
    for part_id, pieces in made.items():
        face, part = find_part(job, part_id)
        parts = [_as_part(part, piece, new) for piece, new in zip(pieces, ids[part_id], strict=True)]
        ties = tuple(new for tie in face.ties for new in _tied(tie, part, pieces, ids[part_id]))
        job = with_copies(with_hand_changes(job, parts[:1]), {part_id: parts[1:]})
        if ties != find_face(job, face.id).ties:
            job = with_changed_face(job, replace(find_face(job, face.id), ties=ties))
    return job, tuple(new for part_id in made for new in ids[part_id])


def _pieces(part: Part, into: Into, up: bool, reveal_mm: float, unit: Unit) -> list[tuple[_Corner, ...]]:
    if any(vertex.bulge for vertex in part.outline):
        raise JobError(
            "it has round sides, so it cannot be split", where=part.called, do="split a part with straight sides"
        )
    box = outline_box(part.outline)
    low, high = box[up], box[up + 2]
    whole = tuple(_Corner(vertex.x, vertex.y, side) for side, vertex in enumerate(part.outline))
    sizes = _sizes(high - low, into, reveal_mm, unit, part.called)
    starts = accumulate((size + reveal_mm for size in sizes[:-1]), initial=low)
    spans = [(start, _or_end(start + size, high)) for start, size in zip(starts, sizes, strict=True)]
    return [_checked(_between(whole, start, end, up), part.called) for start, end in spans]


def _or_end(place: float, end: float) -> float:
    """The end itself for a place that only rounding sets apart from it; else the place."""
    return end if abs(place - end) <= WELD_MM else place


def _sizes(length: float, into: Into, reveal: float, unit: Unit, where: str) -> tuple[float, ...]:
    """The size of each piece. JobError where the pieces and reveals do not fit."""
    if not 0 <= reveal <= length:
        raise JobError("the reveal does not fit", where=where, do="type 0 or more, and less than the size of the part")
    sizes = _equal(length, into, reveal) if isinstance(into, int) else _listed(length, into, reveal, unit, where)
    if not 2 <= len(sizes) <= MOST_AT_ONCE:
        raise JobError(
            f"it cannot be split into {into if isinstance(into, int) else len(sizes)}",
            where=where,
            do=f"split it into 2 to {MOST_AT_ONCE} pieces",
        )
    if not min(sizes) >= LEAST_PIECE_MM:
        raise JobError(
            f"pieces and reveals do not fit into its {length_words(length, unit)}",
            where=where,
            do="make fewer pieces, or narrower reveals",
        )
    return sizes


def _equal(length: float, count: int, reveal: float) -> tuple[float, ...]:
    if not 2 <= count <= MOST_AT_ONCE:
        return ()
    return ((length - (count - 1) * reveal) / count,) * count


def _listed(length: float, sizes: Sequence[float], reveal: float, unit: Unit, where: str) -> tuple[float, ...]:
    """The sizes as listed, and one more for what they leave."""
    rest = length - sum(sizes) - reveal * (len(sizes) - 1)
    if rest < -WELD_MM:
        raise JobError(
            f"the pieces and their reveals are {length_words(-rest, unit)} longer than it is",
            where=where,
            do="make one of them smaller",
        )
    return tuple(sizes) if rest <= WELD_MM else (*sizes, rest - reveal)


def _between(whole: tuple[_Corner, ...], low: float, high: float, up: bool) -> tuple[_Corner, ...]:
    """The part of an outline between two places, `low` and `high`, across or with `up` upwards."""
    return _tidied(_beyond(_beyond(whole, low, 1, up), high, -1, up))


def _beyond(corners: tuple[_Corner, ...], limit: float, sign: int, up: bool) -> tuple[_Corner, ...]:
    """The part of an outline on one side of a line: above or right of it for `sign` 1, below or left of it for -1.

    It is cut side by side, as in the clipping of Sutherland and Hodgman (1974, from memory).
    """
    depths = [sign * (corner[up] - limit) for corner in corners]
    kept: list[_Corner] = []
    for place, corner in enumerate(corners):
        after = (place + 1) % len(corners)
        here, there = depths[place], depths[after]
        if here >= 0:
            kept.append(corner)
        if (here >= 0) != (there >= 0):
            share = here / (here - there)
            x = corner.x + share * (corners[after].x - corner.x)
            y = corner.y + share * (corners[after].y - corner.y)
            # The corner is put on the line itself, so that rounding leaves no hair of a piece.
            x, y = (x, limit) if up else (limit, y)
            kept.append(_Corner(x, y, CUT if here >= 0 else corner.side))
    return tuple(kept)


def _tidied(corners: tuple[_Corner, ...]) -> tuple[_Corner, ...]:
    """The corners from the lowest, leftmost one on, without sides of no length or going to and fro along a cut."""
    left = list(corners)
    place = 0
    while len(left) > 2 and place < len(left):
        before, here, after = left[place - 1], left[place], left[(place + 1) % len(left)]
        ax, ay, bx, by = here.x - before.x, here.y - before.y, after.x - here.x, after.y - here.y
        back = abs(ax * by - ay * bx) <= WELD_MM * max(abs(ax) + abs(ay), abs(bx) + abs(by))
        if abs(bx) <= WELD_MM and abs(by) <= WELD_MM:
            del left[place]
        elif back and ax * bx + ay * by < 0:
            longer = before if ax * ax + ay * ay >= bx * bx + by * by else here
            left[place - 1] = before._replace(side=longer.side)
            del left[place]
        else:
            place += 1
            continue
        place = 0
    first = min(range(len(left)), key=lambda place: (left[place].y, left[place].x), default=0)
    return (*left[first:], *left[:first])


def _checked(piece: tuple[_Corner, ...], where: str) -> tuple[_Corner, ...]:
    try:
        check_outline(_outline(piece), where)
    except OutlineError as trouble:
        raise JobError(
            "a piece would fall apart", where=where, do="split it the other way, or into other sizes"
        ) from trouble
    return piece


def _outline(piece: Sequence[_Corner]) -> Outline:
    return tuple(Vertex(corner.x, corner.y) for corner in piece)


def _as_part(part: Part, piece: Sequence[_Corner], part_id: str) -> Part:
    """This piece as a part like the whole."""
    outline = _outline(piece)
    coated, tiles = part.coated_sides, part.tiles
    if coated is not None:
        also = {CUT} if usual()[part.kind].sides else set()
        coated = tuple(side for side, corner in enumerate(piece) if corner.side in {*coated, *also})
    if tiles is not None:
        old, new = outline_box(part.outline), outline_box(outline)
        tiles = replace(
            tiles, start_x_mm=tiles.start_x_mm + old[0] - new[0], start_y_mm=tiles.start_y_mm + old[1] - new[1]
        )
    return replace(part, id=part_id, outline=outline, coated_sides=coated, tiles=tiles)


def _tied(tie: Tie, part: Part, pieces: Sequence[Sequence[_Corner]], ids: Sequence[str]) -> Iterator[Tie]:
    """The ties of the pieces' sides that lie on the tied side of the whole; another part's tie stays as it is."""
    if tie.part != part.id:
        yield tie
        return
    for piece, part_id in zip(pieces, ids, strict=True):
        for side, corner in enumerate(piece):
            if corner.side == tie.side:
                after = piece[(side + 1) % len(piece)]
                ends = sorted(wall_place_mm(part, tie, each.x, each.y) for each in (corner, after))
                yield replace(tie, part=part_id, side=side, start_mm=ends[0], end_mm=ends[1])
