"""Lays a row of cabinets out along a wall, with fronts, kickboard and benchtop, at the room's usual heights.

`shared.typed.rows` reads the row. From the floor up there are the kickboard, the cabinet and the benchtop; above it the
splashback, then the wall cabinets. An end panel stands on the floor and ends the kickboard. A gap ends the kickboard
and the benchtop. A tall cabinet ends the benchtop. A front is half a reveal inside its cabinet on all four sides, so
that two fronts are a whole reveal apart, whether in one cabinet or in two (common practice, no source).
"""

from collections.abc import Callable, Iterator
from itertools import accumulate, groupby, pairwise
from typing import NamedTuple

from msgspec.structs import replace

from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box
from geometry.outlines.sides import WELD_MM, Box
from geometry.parts.extent import extent, walls
from shared.checks.job import check_job
from shared.edits.drawn import find_face, find_room_of, fresh_ids, with_parts
from shared.errors import JobError, ReadingError
from shared.job import Face, Heights, Job, Part, View
from shared.trade.kinds import Kind, usual
from shared.typed.rows import LEAST_MM, Item, Row, Stands
from shared.written.units import length_words


class LaidRow(NamedTuple):
    """A row on its wall, mm: its parts, where it begins, how long it is, and how much is left beyond its right end.

    `left_mm` reaches to the next thing that stands in the way, or else to the end of the wall. It is None when there is
    neither. `cabinets` is the number of cabinets.
    """

    parts: tuple[Part, ...]
    start_mm: float
    width_mm: float
    left_mm: float | None
    cabinets: int


class _Place(NamedTuple):
    """One item, at its place along the wall."""

    item: Item
    left: float
    right: float


class _Levels(NamedTuple):
    """Heights above the floor, mm: the bottom and the top of cabinets, the tops of benchtop, splashback and all."""

    cabinet: float
    cabinet_top: float
    benchtop_top: float
    splashback_top: float
    top: float


_FIXTURES = (Stands.OVEN, Stands.DISHWASHER, Stands.APPLIANCE)
_KINDS = {Stands.FILLER: Kind.FILLER, Stands.PANEL: Kind.END_PANEL} | dict.fromkeys(_FIXTURES, Kind.FIXTURE)
"""The kinds of parts for what is no cabinet."""


def next_start(job: Job, face_id: str, above: bool) -> float:
    """Where a row begins by itself: at the left end of the last stretch of wall that is free in its band, mm.

    The band reaches from the floor to the benchtop; with `above` it is that of the wall cabinets. On a wall that is
    full, the row begins at the wall's right end. On a face without a wall it begins at the right end of what stands
    there, or at 0 when nothing does.
    """
    face = find_face(job, face_id)
    left, right = _ends(face)
    start = left
    for begin, end in _standing(face, _band(_heights(job, face), above)):
        start = max(left, end) if right is None or end < right - WELD_MM else _before(start, begin, right)
    return start


def left_for(job: Job, face_id: str, above: bool, start_mm: float) -> float | None:
    """How much of the wall is free from `start_mm` to the right, mm; below 0 when something stands there already.

    None when the face has no wall and nothing stands further on.
    """
    face = find_face(job, face_id)
    end = _ends(face)[1]
    for left, right in _standing(face, _band(_heights(job, face), above)):
        if right > start_mm + WELD_MM:
            end = left if end is None else min(end, left)
    return None if end is None else end - start_mm


def over_mm(job: Job, face_id: str, row: Row, start_mm: float | None = None) -> float:
    """How much longer a row's widths are than the free wall, mm; 0 for a row that fits. A rest counts as 0."""
    start = next_start(job, face_id, row.above) if start_mm is None else start_mm
    free = left_for(job, face_id, row.above, start)
    return 0.0 if free is None else max(0.0, row.fixed_mm - free)


def with_row(job: Job, face_id: str, row: Row, start_mm: float | None = None) -> tuple[Job, LaidRow]:
    """The job with this row on a face, and the row as it lies. Errors as for `lay_row`."""
    laid = lay_row(job, face_id, row, start_mm)
    larger = with_parts(job, face_id, laid.parts)
    check_job(larger)
    return larger, laid


def lay_row(job: Job, face_id: str, row: Row, start_mm: float | None = None) -> LaidRow:
    """The row laid out, beginning at `start_mm` from the face's left end; None is at `next_start`.

    ReadingError where the row does not fit (`over_mm` and `shared.typed.row_shortening` say what would), an item is too
    narrow for its fronts, or a word does not go with the row. JobError where the face is a plan.
    """
    face = find_face(job, face_id)
    if face.view is View.PLAN:
        raise JobError("a row of cabinets stands on a wall", where=f"face {face.name}", do="choose a wall")
    heights = _heights(job, face)
    start = next_start(job, face_id, row.above) if start_mm is None else start_mm
    free = left_for(job, face_id, row.above, start)
    _refuse_over(row, free)
    places = _places(row, start, free)
    _refuse_odd(row, places, heights)
    drawn = tuple(_drawn(places, heights, row))
    parts = tuple(replace(part, id=name) for part, name in zip(drawn, fresh_ids(job, "p", len(drawn)), strict=True))
    width = places[-1].right - start
    cabinets = sum(part.kind is Kind.CABINET for part in parts)
    return LaidRow(parts, start, width, None if free is None else max(0.0, free - width), cabinets)


def _before(start: float, begin: float, right: float) -> float:
    """The start of a row before what reaches to the wall's right end; that end itself if no room is left before it."""
    return start if begin > start + WELD_MM else right


def _heights(job: Job, face: Face) -> Heights:
    return find_room_of(job, face.id).heights


def _levels(heights: Heights) -> _Levels:
    sizes = (heights.kickboard_mm, heights.cabinet_mm, heights.benchtop_mm, heights.splashback_mm)
    return _Levels(*accumulate((*sizes, heights.wall_cabinet_mm)))


def _band(heights: Heights, above: bool) -> tuple[float, float]:
    """The bottom and the top of the band in which a row stands."""
    levels = _levels(heights)
    return (levels.splashback_top, levels.top) if above else (0.0, levels.cabinet_top)


def _ends(face: Face) -> tuple[float, float | None]:
    """The left and the right end of the wall; 0 and None for a face without a wall."""
    if not walls(face):
        return 0.0, None
    left, _, right, _ = extent(face)
    return left, right


def _standing(face: Face, band: tuple[float, float]) -> Iterator[tuple[float, float]]:
    """The stretches of a band that are taken, from left to right; stretches that touch are one."""
    boxes = (outline_box(part.outline) for part in face.parts if not usual()[part.kind].behind_row)
    taken = sorted((left, right) for left, low, right, high in boxes if _meet((low, high), band))
    while taken:
        left, right = taken.pop(0)
        while taken and taken[0][0] <= right + WELD_MM:
            right = max(right, taken.pop(0)[1])
        yield left, right


def _meet(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return one[0] < other[1] - WELD_MM and other[0] < one[1] - WELD_MM


def _refuse_over(row: Row, free: float | None) -> None:
    if free is None:
        if any(item.width_mm is None for item in row.items):
            raise ReadingError("the face has no wall, so rest has no width", do="give every item a width")
        return
    if free <= WELD_MM:
        raise ReadingError(
            "there is no room for a row here", do="begin the row further on, or remove what stands there"
        )
    over = row.fixed_mm - free
    if over > WELD_MM:
        what = f"the row is {length_words(over, row.unit)} longer than the {length_words(free, row.unit)} there are"
        raise ReadingError(what, do="make something narrower or leave something out")


def _places(row: Row, start: float, free: float | None) -> tuple[_Place, ...]:
    rest = (free or 0.0) - row.fixed_mm
    singles = [
        (item, rest / item.times if item.width_mm is None else item.width_mm)
        for item in row.items
        for _ in range(item.times)
    ]
    for item, width in singles:
        if width < LEAST_MM:
            raise ReadingError(f"nothing is left for “{item.words}”", do="leave it out or make something narrower")
    ends = tuple(accumulate((width for _, width in singles), initial=start))
    return tuple(_Place(item, *pair) for (item, _), pair in zip(singles, pairwise(ends), strict=True))


def _refuse_odd(row: Row, places: tuple[_Place, ...], heights: Heights) -> None:
    if row.above and any(place.item.stands is Stands.TALL for place in places):
        raise ReadingError("a tall cabinet stands on the floor", do="type it with the row below")
    if row.splashback and heights.splashback_mm <= WELD_MM:
        raise ReadingError("the room's usual splashback has no height", do="set it first")
    for item, left, right in places:
        tall = heights.wall_cabinet_mm if row.above else heights.cabinet_mm
        across, up = _grid(item)
        if item.fronts and min((right - left) / across, tall / up) - heights.reveal_mm < LEAST_MM:
            raise ReadingError(
                f"“{item.words}” is too small for its fronts and the reveals between them", do="check its width"
            )


def _grid(item: Item) -> tuple[int, int]:
    """How many fronts an item has side by side, and how many over each other."""
    return (1, item.fronts) if item.stands is Stands.DRAWERS else (item.fronts, 1)


def _drawn(places: tuple[_Place, ...], heights: Heights, row: Row) -> Iterator[Part]:
    """The parts of the row, without ids, from the back to the front."""
    levels = _levels(heights)
    start, end = places[0].left, places[-1].right
    if row.above:
        for place in places:
            yield from _standing_at(place, (levels.splashback_top, levels.top), heights.reveal_mm)
        return
    if row.splashback:
        yield _part(Kind.SPLASHBACK, (start, levels.benchtop_top, end, levels.splashback_top))
    yield from _strips(Kind.KICKBOARD, places, _on_kickboard, (0.0, levels.cabinet))
    for place in places:
        low = 0.0 if place.item.stands is Stands.PANEL else levels.cabinet
        high = levels.top if place.item.stands is Stands.TALL else levels.cabinet_top
        yield from _standing_at(place, (low, high), heights.reveal_mm)
    yield from _strips(Kind.BENCHTOP, places, _under_benchtop, (levels.cabinet_top, levels.benchtop_top))


def _on_kickboard(item: Item) -> bool:
    return item.stands not in (Stands.GAP, Stands.PANEL)


def _under_benchtop(item: Item) -> bool:
    return item.stands not in (Stands.GAP, Stands.TALL)


def _strips(
    kind: Kind, places: tuple[_Place, ...], goes_on: Callable[[Item], bool], band: tuple[float, float]
) -> Iterator[Part]:
    """A strip of this kind over each unbroken stretch of items on which it `goes_on`; none for a band of no height."""
    if band[1] - band[0] <= WELD_MM:
        return
    for there, group in groupby(places, lambda place: goes_on(place.item)):
        stretch = tuple(group)
        if there:
            yield _part(kind, (stretch[0].left, band[0], stretch[-1].right, band[1]))


def _standing_at(place: _Place, band: tuple[float, float], reveal_mm: float) -> Iterator[Part]:
    """The part that stands at one place, and its fronts; nothing for a gap."""
    item, left, right = place
    if item.stands is Stands.GAP:
        return
    name = str(item.stands) if item.stands in _FIXTURES else ""
    yield _part(_KINDS.get(item.stands, Kind.CABINET), (left, band[0], right, band[1]), name)
    across, up = _grid(item)
    kind = Kind.DRAWER_FRONT if item.stands is Stands.DRAWERS else Kind.DOOR
    for number in range(item.fronts):
        column, level = (0, number) if up > 1 else (number, 0)
        wide, tall = (right - left) / across, (band[1] - band[0]) / up
        x, y, inset = left + column * wide, band[0] + level * tall, reveal_mm / 2
        yield _part(kind, (x + inset, y + inset, x + wide - inset, y + tall - inset))


def _part(kind: Kind, sides: Box, name: str = "") -> Part:
    left, bottom, right, top = sides
    return Part("", kind, box(left, bottom, right - left, top - bottom), name)
