"""What is told of readings while they are typed: the set-out line that each ends at, how well it fits, what is left."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from itertools import count
from typing import NamedTuple

from geometry.outlines.measured import joined, outline_box
from geometry.parts.drawn_size import measured_parts
from geometry.set_out.lines import SetOut, set_out
from shared.edits.drawn import find_face
from shared.errors import JobError
from shared.job import END, START, Face, Job, View, Way

JOIN_MM = 50.0
"""A reading that ends this near to a line is one more reading of that line: slips of the tape are smaller than this,
and parts are larger (common practice, no source)."""


class Closing(NamedTuple):
    """A reading from mark to mark, and where it ends: `at_mm` from the left end or the floor.

    `joins` says that `end` is a line that stands already. The reading is then `off_mm` longer than that line says.
    """

    start: str
    end: str
    length_mm: float
    at_mm: float
    joins: bool
    off_mm: float


class Closings(NamedTuple):
    """Readings in the order they were typed, and the length left from the farthest of them to the end of the face.

    `left_mm` is negative when they go beyond the end, and None when no end is known.
    """

    readings: tuple[Closing, ...]
    left_mm: float | None


def closures(
    job: Job, face_id: str, way: Way, lengths: Sequence[float], chain_from: str | None = None, *, fresh: bool = False
) -> Closings:
    """The set-out lines that readings join, and how well they close on them.

    With `chain_from` the readings are a chain: the first begins at that line, each other one at the end of the one
    before. Without it they are running readings, all from the left end or the floor. A reading joins the nearest line
    within `JOIN_MM` that no other of them has joined. When there is none, or `fresh` is true, it makes a line with a
    new name. JobError where nothing tells where the chain starts.
    """
    face = find_face(job, face_id)
    found = set_out(face, job.tape, job.unit)
    start = START if chain_from is None else chain_from
    begin = None if start == END else found.at_mm(way, start)
    if begin is None:
        raise JobError(f'no chain can start from "{start}"', do="start from the left end, the floor or a line")
    end = end_mm(face, found, way)
    standing = {} if fresh else standing_lines(found, way, end)
    standing.pop(start, None)
    follow = _from_one if chain_from is None else _chained
    readings = tuple(follow(start, begin, lengths, standing, _fresh_names(face, way)))
    farthest = max((reading.at_mm for reading in readings), default=begin)
    return Closings(readings, None if end is None else end - farthest)


def end_mm(face: Face, found: SetOut, way: Way) -> float | None:
    """Where the right end or the top of a face is, by its readings or else as drawn; None when nothing tells."""
    read = found.at_mm(way, END)
    parts = measured_parts(face)
    if read is not None or not parts:
        return read
    _, _, right, top = joined([outline_box(part.outline) for part in parts])
    return right if way is Way.ACROSS else top


def end_words(view: View, way: Way, mark: str) -> str:
    """The words for `START` or `END` on an elevation or a plan."""
    if way is Way.ACROSS:
        return "the left end" if mark == START else "the right end"
    if view is View.ELEVATION:
        return "the floor" if mark == START else "the top"
    return "the wall" if mark == START else "the front"


def standing_lines(found: SetOut, way: Way, end: float | None) -> dict[str, float]:
    """The lines that a reading can join, by name, and where they stand; with `END` if the end is known."""
    lines = {line.name: line.at_mm for line in found.lines if line.way is way}
    return lines if end is None else {**lines, END: end}


def _chained(
    start: str, begin: float, lengths: Sequence[float], standing: Mapping[str, float], names: Iterator[str]
) -> Iterator[Closing]:
    """Closes a chain: each reading begins at the line at which the one before ended, or where that one ended."""
    mark, at, taken = start, begin, {start}
    for length in lengths:
        near = _near(at + length, standing, taken)
        name = near[0] if near else next(names)
        yield _closing(mark, name, length, at + length, standing)
        mark, at = name, standing.get(name, at + length)
        taken.add(name)


def _from_one(
    start: str, begin: float, lengths: Sequence[float], standing: Mapping[str, float], names: Iterator[str]
) -> Iterator[Closing]:
    """Closes running readings, all from one line. Of two readings that could join the same line the nearer one does."""
    pairs = [
        (off, place, name) for place, length in enumerate(lengths) for name, off in _all_near(begin + length, standing)
    ]
    comes_to: dict[int, str] = {}
    for _, place, name in sorted(pairs):
        if place not in comes_to and name not in comes_to.values():
            comes_to[place] = name
    for place, length in enumerate(lengths):
        name = comes_to.get(place) or next(names)
        yield _closing(start, name, length, begin + length, standing)


def _closing(start: str, end: str, length: float, at: float, standing: Mapping[str, float]) -> Closing:
    return Closing(start, end, length, at, end in standing, at - standing.get(end, at))


def _near(at: float, standing: Mapping[str, float], taken: Collection[str]) -> tuple[str, float] | None:
    free = [each for each in _all_near(at, standing) if each[0] not in taken]
    return min(free, key=lambda each: each[1], default=None)


def _all_near(at: float, standing: Mapping[str, float]) -> list[tuple[str, float]]:
    """The lines within reach of a position, and how far off each is."""
    return [(name, abs(at - line)) for name, line in standing.items() if abs(at - line) <= JOIN_MM]


def _fresh_names(face: Face, way: Way) -> Iterator[str]:
    """Names that no line of this way has: numbers, counted on from the highest."""
    used = {mark for reading in face.readings if reading.way is way for mark in (reading.start, reading.end)}
    highest = max((int(mark) for mark in used if mark.isdecimal()), default=0)
    return map(str, count(highest + 1))
