"""Things to look at in the readings of a face: readings that disagree, and what is out of square or plumb."""

from collections.abc import Callable, Iterator, Sequence

from geometry.edits.setting_out import has_corners
from geometry.parts.drawn_size import GROUND
from geometry.set_out.adjusting import critical_value
from geometry.set_out.closing import end_words
from geometry.set_out.lines import DRAWN, ReadingDoubt, set_out
from geometry.set_out.squareness import FaceCorners
from shared.findings import Code, Finding
from shared.job import END, START, Face, Reading, Unit, View, Way
from shared.trade.tape import TapeClass
from shared.written.units import length_words, show_length

MEANT_DEGREES = 10.0
"""A corner that is farther from square was built that way, as under a sloping ceiling (common practice, no source)."""

CLOSES_MM = 0.5
"""Two sums explain a disagreement of readings if their difference is as large as the disagreement, to this."""

MOST_NAMED = 4
"""The most readings that a sentence names; more are only counted."""

_NUMBERS = ("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def look_at_readings(face: Face, unit: Unit, tape: TapeClass) -> Iterator[Finding]:
    """What is odd in the readings of a face, and which reading to measure again first.

    It finds readings that disagree by more than the tape allows, readings between lines that nothing joins to an end of
    the face, and corners that cannot be placed. It also finds corners and sides that are out of square or plumb by more
    than the readings may be off, until the face is drawn so.
    """
    found = set_out(face, tape, unit)
    for doubt in found.doubts:
        yield Finding(Code.READINGS, _Words(face, unit, doubt).sentences(), face.id)
    if found.hanging:
        lengths = ", ".join(show_length(face.readings[place].length_mm, unit) for place in found.hanging)
        message = f"On face {face.name} nothing joins {lengths} to an end; read from an end to one of its lines."
        yield Finding(Code.READINGS, message, face.id)
    if any(doubt.way is Way.STRAIGHT for doubt in found.doubts):
        return
    if found.trouble:
        yield Finding(Code.READINGS, f"The corners of face {face.name} cannot be placed: {found.trouble}", face.id)
    if found.corners is not None and not has_corners(face, found.corners):
        yield from _out_of_true(face, found.corners, unit)


def _out_of_true(face: Face, corners: FaceCorners, unit: Unit) -> Iterator[Finding]:
    """Corners out of square and sides of a wall out of plumb by more than sound readings are off one time in twenty."""
    most = critical_value(len(corners.squares) + len(corners.plumbs))
    square = [
        f"the {each.corner} corner is {length_words(_whole(abs(each.off_mm), unit), unit)} out of square over "
        f"{show_length(_whole(each.over_mm, unit), unit)}"
        for each in corners.squares
        if most * each.sd_mm < abs(each.off_mm) and abs(each.degrees) <= MEANT_DEGREES
    ]
    plumb = [
        f"the {each.side} side leans {length_words(_whole(abs(each.off_mm), unit), unit)} to the "
        f"{'right' if each.off_mm > 0 else 'left'} over {show_length(_whole(each.over_mm, unit), unit)}"
        for each in corners.plumbs
        if face.view is View.ELEVATION and abs(each.off_mm) > most * each.sd_mm
    ]
    if square:
        yield Finding(Code.OUT_OF_SQUARE, f"On face {face.name} {_listed(square)}.", face.id)
    if plumb:
        message = f"On face {face.name} {_listed(plumb)}, if its lower side is level."
        yield Finding(Code.OUT_OF_PLUMB, message, face.id)


def _listed(clauses: Sequence[str], last: str = "and") -> str:
    """Clauses in a row: "a", "a and b", "a, b and c"."""
    return f" {last} ".join(filter(None, (", ".join(clauses[:-1]), clauses[-1])))


def _whole(length_mm: float, unit: Unit) -> float:
    """A length to a whole millimetre, which is as fine as corners are known. Inches are shown coarser already."""
    return float(round(length_mm)) if unit is Unit.MM else length_mm


class _Words:
    """The words for one doubt: what disagrees, by how much, and what to measure again."""

    def __init__(self, face: Face, unit: Unit, doubt: ReadingDoubt) -> None:
        self._face, self._unit, self._doubt = face, unit, doubt
        self._drawn = GROUND[face.view]
        self._places = as_read(face, doubt.way)

    def sentences(self) -> str:
        """Two sentences or more: what disagrees, then what to do."""
        if self._doubt.way is Way.STRAIGHT:
            return f"{self._misfit()}. {self._advice(closed=True)}"
        off_mm = max(map(abs, self._doubt.off_mm))
        said = f"Readings of face {self._face.name} disagree by {length_words(off_mm, self._unit)}"
        sides = self._sides(off_mm)
        return f"{said}{f': {sides}' if sides else ''}. {self._advice(closed=bool(sides))}"

    def _misfit(self) -> str:
        """The words for sides and diagonals that disagree, with how far the longest of them is off."""
        said = f"The sides and diagonals of face {self._face.name} do not fit together"
        if not self._doubt.off_mm:
            return said
        longest = max(zip(map(self._size_mm, self._doubt.readings), self._doubt.off_mm, strict=True))
        return f"{said} by {length_words(abs(longest[1]), self._unit)}"

    def _sides(self, off_mm: float) -> str:
        """The readings that say one length and those that say another; "" if they do not explain the disagreement."""
        offs = list(zip(self._doubt.readings, self._doubt.off_mm, strict=True))
        more, less = ([place for place, off in offs if off * sign > 0] for sign in (1, -1))
        gap = abs(self._sum(more) - self._sum(less))
        if more and less:
            return f"{self._side(more)}, {self._side(less)}" if abs(gap - off_mm) <= CLOSES_MM else ""
        others = self._length(gap - off_mm if more else gap + off_mm)
        return f"{self._side(more or less)}, by the other readings it is {others}"

    def _advice(self, *, closed: bool) -> str:
        readings = self._doubt.readings
        slips = [(place, mm) for place, mm in zip(readings, self._doubt.meant_mm, strict=True) if mm is not None]
        if len(slips) == 1:
            place, meant = slips[0]
            read = self._length(self._size_mm(place))
            return f"Was {self._length(meant)} read as {read}? Measure {self._reading(place)} again first."
        if len(readings) == 1:
            return f"Measure {self._reading(readings[0])} again first."
        if closed or len(readings) > MOST_NAMED:
            number = _NUMBERS[len(readings)] if len(readings) < len(_NUMBERS) else str(len(readings))
            which = "Either" if len(readings) == len(("one", "other")) else "Any"
            return f"{which} of these {number} may be wrong. One more reading would tell which."
        named = _listed([self._reading(place) for place in readings], "or")
        return f"{named[0].upper()}{named[1:]} may be wrong. One more reading would tell which."

    def _side(self, places: list[int]) -> str:
        lengths = " + ".join(self._length(self._size_mm(place)) for place in places)
        if places == [DRAWN]:
            return f"the {self._drawn} is drawn {lengths}"
        if len(places) == 1:
            return f"one reading says {lengths}"
        return f"{lengths} sum to {self._length(self._sum(places))}"

    def _reading(self, place: int) -> str:
        """A reading, with the ends, lines or corners that it was read between."""
        if place == DRAWN:
            return f"the {self._drawn}"
        reading = self._face.readings[place]
        return f"the {self._length(reading.length_mm)} from {self._mark(reading.start)} to {self._mark(reading.end)}"

    def _mark(self, mark: str) -> str:
        """The words for an end, a corner or a line. A line is named by the length at which it was read."""
        if self._doubt.way is Way.STRAIGHT:
            return mark
        if mark in (START, END):
            return end_words(self._face.view, self._doubt.way, mark)
        return self._length(self._places[mark]) if mark in self._places else "a loose line"

    def _length(self, length_mm: float) -> str:
        return show_length(length_mm, self._unit)

    def _size_mm(self, place: int) -> float:
        return self._doubt.drawn_mm if place == DRAWN else self._face.readings[place].length_mm

    def _sum(self, places: list[int]) -> float:
        return sum(map(self._size_mm, places))


def as_read(face: Face, way: Way) -> dict[str, float]:
    """The place of each line by the first readings that reach it, as a person would add them up; mm from the start."""
    at = {START: 0.0}
    for reading in face.readings:
        if reading.way is way and reading.start in at:
            at.setdefault(reading.end, at[reading.start] + reading.length_mm)
    return at


def reading_words(face: Face, reading: Reading, words: Callable[[float], str]) -> str:
    """A reading along a face, its lengths in these words: "600 from the left end", "450 from 600 to 1050"."""
    places = as_read(face, reading.way)

    def mark_words(mark: str) -> str:
        if mark in (START, END):
            return end_words(face.view, reading.way, mark)
        return words(places[mark]) if mark in places else "a loose line"

    runs = f"{words(reading.length_mm)} from {mark_words(reading.start)}"
    is_running = reading.start == START and reading.end != END
    return runs if is_running else f"{runs} to {mark_words(reading.end)}"
