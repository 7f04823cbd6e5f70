"""Finds what the readings of a face say together: where its set-out lines and corners are, and which readings to doubt.

`geometry.set_out.adjusting` does the sums; `geometry.set_out.squareness` does the corners.
"""

from bisect import bisect_left
from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from math import sqrt
from typing import NamedTuple

from geometry.parts.drawn_size import drawn_reading
from geometry.set_out.adjusting import Adjustment, Doubt, Observed, adjust_positions
from geometry.set_out.slips import slip_for, usual_slips
from geometry.set_out.squareness import FaceCorners, adjust_corners, face_corners
from shared.errors import JobError
from shared.job import CORNERS, START, Face, Reading, Unit, Way
from shared.trade.tape import TapeClass, tape_tolerance_mm

ALONG = (Way.ACROSS, Way.UP)
"""The ways of readings that make set-out lines."""

REMEMBERED = 64
"""How many faces' adjusted readings are remembered."""

HELD_MM = 1e-4
"""The deviation of a size that all readings give way to: far below that of any tape."""

DUST_DIGITS = 6
"""Decimals of a millimetre that are kept: far finer than a tape, far coarser than the rounding of floats."""

DRAWN = -1
"""The place, among the readings of a doubt, of the size at which the wall (or benchtop) is drawn."""


class SetOutLine(NamedTuple):
    """A set-out line: `at_mm` from the left end (across) or the floor (up). `END` is one too, when readings name it."""

    way: Way
    name: str
    at_mm: float
    sd_mm: float


class ReadingDoubt(NamedTuple):
    """Readings of which one is wrong, by their places in the face's readings or `DRAWN`.

    If there are several, nothing tells which one it is. `off_mm` is for each how much longer it is than the sound
    readings say. It is empty when readings contradict each other so much that nothing can be said. `meant_mm` is for
    each what was read, if a usual slip in that one explains everything; else None. `drawn_mm` is the size at which the
    wall is drawn, this way; 0 when it does not count.
    """

    way: Way
    readings: tuple[int, ...]
    off_mm: tuple[float, ...]
    meant_mm: tuple[float | None, ...]
    drawn_mm: float = 0.0


class SetOut(NamedTuple):
    """What the readings of a face say together.

    `lines` are the lines across and then the lines up, each by their position. `residuals_mm` are adjusted less read
    for every reading, in order; 0 for a reading that nothing checks. `hanging` are the readings between lines that no
    other reading joins to an end of the face. `corners` is None without straight readings. It is None, too, when those
    do not place the corners; then `trouble` says why.
    """

    lines: tuple[SetOutLine, ...]
    residuals_mm: tuple[float, ...]
    doubts: tuple[ReadingDoubt, ...]
    hanging: tuple[int, ...] = ()
    corners: FaceCorners | None = None
    trouble: str = ""

    def at_mm(self, way: Way, mark: str) -> float | None:
        """Where a mark is, from the left end or the floor; None when the readings do not tell."""
        if mark == START:
            return 0.0
        return next((line.at_mm for line in self.lines if (line.way, line.name) == (way, mark)), None)


def set_out(face: Face, tape: TapeClass, unit: Unit = Unit.MM, *, drawn_holds: bool = False) -> SetOut:
    """Adjust the readings of a face together. `unit` is the job's: slips are sought in numbers of that unit.

    The left end and the floor are at 0. A reading that is accepted takes part but is not doubted. A reading that
    disagrees with all that was read before places no line until the person decides, so that a slip moves nothing. With
    `drawn_holds` the readings give way to the size at which the wall is drawn. Errors of readings are taken to be
    independent, even those read from the same hook. A face without readings has nothing set out.
    """
    if not face.readings:
        return SetOut((), (), ())
    drawn = tuple(drawn_reading(face, way) for way in ALONG)
    return _adjusted(face.readings, drawn, tape, unit, drawn_holds)


@lru_cache(maxsize=REMEMBERED)
def _adjusted(
    readings: tuple[Reading, ...], drawn: tuple[Reading | None, ...], tape: TapeClass, unit: Unit, drawn_holds: bool
) -> SetOut:
    """The set-out of these readings. It is remembered, as every frame of a drag asks for it."""
    seen = [_along(readings, way, size, tape, unit, drawn_holds) for way, size in zip(ALONG, drawn, strict=True)]
    straight = _straight(readings, tape, unit)
    residuals = {place: mm for part in (*seen, straight) for place, mm in part.residuals}
    doubts = [doubt for part in (*seen, straight) for doubt in part.doubts]
    return SetOut(
        lines=tuple(line for part in seen for line in part.lines),
        residuals_mm=tuple(residuals.get(place, 0.0) for place in range(len(readings))),
        doubts=tuple(left for doubt in doubts if (left := _not_accepted(readings, doubt)) is not None),
        hanging=tuple(sorted(place for part in seen for place in part.hanging)),
        corners=straight.corners,
        trouble=straight.trouble,
    )


def reading_sd_mm(length_mm: float, tape: TapeClass, *, hooked: bool) -> float:
    """The standard deviation of a reading: the greatest error of the tape, divided by the root of three.

    All errors up to the greatest are taken to be equally likely: the rectangular distribution of the Guide to the
    expression of uncertainty in measurement (from memory).
    """
    return tape_tolerance_mm(length_mm, tape, hooked=hooked) / sqrt(3)


class _Seen(NamedTuple):
    """What the readings of one way say together; the fields are as in `SetOut`, `residuals` by the readings' places."""

    lines: tuple[SetOutLine, ...] = ()
    residuals: tuple[tuple[int, float], ...] = ()
    doubts: tuple[ReadingDoubt, ...] = ()
    hanging: tuple[int, ...] = ()
    corners: FaceCorners | None = None
    trouble: str = ""


def _along(
    read: Sequence[Reading], way: Way, drawn: Reading | None, tape: TapeClass, unit: Unit, drawn_holds: bool
) -> _Seen:
    places = [place for place, reading in enumerate(read) if reading.way is way]
    readings = [read[place] for place in places]
    marks = list(dict.fromkeys((START, *(mark for reading in readings for mark in (reading.start, reading.end)))))
    if drawn is not None:
        places, readings = [*places, DRAWN], [*readings, drawn]
    number = {mark: count for count, mark in enumerate(marks)}
    observed = [_observed(reading, number, tape) for reading in readings]
    if drawn is not None and drawn_holds:
        observed[-1] = observed[-1]._replace(sd_mm=HELD_MM)
    found = adjust_positions(observed, len(marks))
    placed = found
    if not drawn_holds and _has_open_doubt(found, places, read):
        sound = _sound(observed, places, read, len(marks))
        placed = adjust_positions([observed[count] for count in sound], len(marks))
    standing = [mark for mark in marks[1:] if number[mark] not in placed.hanging]
    lines = [SetOutLine(way, mark, _plain(placed.values[number[mark]]), placed.sds[number[mark]]) for mark in standing]
    return _Seen(
        lines=tuple(sorted(lines, key=lambda line: line.at_mm)),
        residuals=tuple(
            (place, _plain(placed.values[each.end] - placed.values[each.start] - each.length_mm))
            for place, each in zip(places, observed, strict=True)
        ),
        doubts=tuple(
            _doubt(doubt, way, places, observed, found, unit)._replace(drawn_mm=drawn.length_mm if drawn else 0.0)
            for doubt in found.doubts
        ),
        hanging=tuple(
            place for place, each in zip(places, observed, strict=True) if each.end in found.hanging and place != DRAWN
        ),
    )


def _sound(observed: Sequence[Observed], places: Sequence[int], read: Sequence[Reading], marks: int) -> list[int]:
    """The readings that place lines while some are in doubt, by their numbers: what was there first stays.

    A reading that brings doubt to those before it is left out until the person decides. The drawn size comes first,
    then the readings that the person has accepted, then all others as they were taken.
    """

    def rank(count: int) -> tuple[bool, bool, int]:
        place = places[count]
        return place != DRAWN and not read[place].accepted, place != DRAWN, place

    def agree(counts: Sequence[int]) -> bool:
        found = adjust_positions([observed[count] for count in counts], marks)
        return not _has_open_doubt(found, [places[count] for count in counts], read)

    kept: list[int] = []
    waiting = sorted(range(len(observed)), key=rank)
    while waiting:
        many = _most(kept, waiting, agree)
        kept += waiting[:many]
        waiting = waiting[many + 1 :]
    return kept


def _most(kept: list[int], waiting: list[int], agree: Callable[[Sequence[int]], bool]) -> int:
    """How many of those waiting, from the first on, agree with those kept.

    Few are tried first, which is quick when nearly all disagree.
    """
    tried = 1
    while tried <= len(waiting) and agree(kept + waiting[:tried]):
        tried *= 2
    least = tried // 2
    unknown = range(least + 1, min(tried, len(waiting) + 1))
    return least + bisect_left(unknown, True, key=lambda most: not agree(kept + waiting[:most]))


def _has_open_doubt(found: Adjustment, places: Sequence[int], read: Sequence[Reading]) -> bool:
    """Whether any doubt is about a reading that the person has not accepted."""
    doubted = (places[count] for doubt in found.doubts for count in doubt.observed)
    return any(place != DRAWN and not read[place].accepted for place in doubted)


def _plain(length_mm: float) -> float:
    """A length without the rounding errors of the sums."""
    return round(length_mm, DUST_DIGITS) + 0.0


def _observed(reading: Reading, number: dict[str, int], tape: TapeClass) -> Observed:
    sd = reading_sd_mm(reading.length_mm, tape, hooked=reading.hooked)
    return Observed(number[reading.start], number[reading.end], reading.length_mm, sd)


def _doubt(
    doubt: Doubt, way: Way, places: Sequence[int], observed: Sequence[Observed], found: Adjustment, unit: Unit
) -> ReadingDoubt:
    return ReadingDoubt(
        way=way,
        readings=tuple(places[each] for each in doubt.observed),
        off_mm=doubt.off_mm,
        meant_mm=tuple(
            slip_for(
                observed[each].length_mm,
                observed[each].length_mm - off,
                found.critical * observed[each].sd_mm / sqrt(found.redundancies[each]),
                unit,
            )
            for each, off in zip(doubt.observed, doubt.off_mm, strict=True)
        ),
    )


def _not_accepted(readings: Sequence[Reading], doubt: ReadingDoubt) -> ReadingDoubt | None:
    """The part of a doubt that the person has not decided: without accepted readings; None when no reading is left."""
    kept = [count for count, place in enumerate(doubt.readings) if place == DRAWN or not readings[place].accepted]
    if len(kept) < len(doubt.readings) and all(doubt.readings[count] == DRAWN for count in kept):
        return None
    return doubt._replace(
        readings=tuple(doubt.readings[count] for count in kept),
        off_mm=tuple(doubt.off_mm[count] for count in kept) if doubt.off_mm else (),
        meant_mm=tuple(doubt.meant_mm[count] for count in kept),
    )


def _straight(readings: Sequence[Reading], tape: TapeClass, unit: Unit) -> _Seen:
    places = [place for place, reading in enumerate(readings) if reading.way is Way.STRAIGHT]
    if not places:
        return _Seen()
    number = {corner: count for count, corner in enumerate(CORNERS)}
    observed = [_observed(readings[place], number, tape) for place in places]
    try:
        found = adjust_corners(observed)
        corners = face_corners(observed, found)
    except JobError as trouble:
        return _Seen(doubts=tuple(_slipped(places, observed, unit)), trouble=str(trouble))
    return _Seen(
        residuals=tuple((place, _plain(mm)) for place, mm in zip(places, found.residuals, strict=True)),
        doubts=tuple(_doubt(doubt, Way.STRAIGHT, places, observed, found, unit) for doubt in found.doubts),
        corners=corners._replace(points=tuple((_plain(x), _plain(y)) for x, y in corners.points)),
    )


def _slipped(places: Sequence[int], observed: Sequence[Observed], unit: Unit) -> Iterator[ReadingDoubt]:
    """The doubt about straight readings that place no corners: each one whose usual slip would make all agree."""
    meant = {
        place: length
        for count, place in enumerate(places)
        for length in usual_slips(observed[count].length_mm, unit)
        if _agree([*observed[:count], observed[count]._replace(length_mm=length), *observed[count + 1 :]])
    }
    if meant:
        yield ReadingDoubt(Way.STRAIGHT, tuple(meant), (), tuple(meant.values()))


def _agree(observed: Sequence[Observed]) -> bool:
    """Whether there are surplus readings and they place the corners without a doubt."""
    try:
        found = adjust_corners(observed)
    except JobError:
        return False
    return found.freedom > 0 and not found.doubts
