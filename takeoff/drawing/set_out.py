"""Draws the set-out lines of a face where readings put them, each with its distance written at its end."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from geometry.outlines.sides import Box
from geometry.set_out.lines import SetOutLine, set_out
from shared.drawing import Line, Role, Text
from shared.job import Face, Job, Vertex, Way
from shared.written.units import show_length
from takeoff.drawing.sizes import step_mm

BEYOND = 0.3
"""How far a line reaches beyond the face, as a share of the distance between rows of sizes (own choice)."""

LETTERING = 0.5
"""How high the letters of a distance are, as a share of the distance between rows of sizes (own choice)."""


def set_out_marks(job: Job, face: Face, box: Box) -> tuple[tuple[Line, ...], tuple[Text, ...]]:
    """The set-out lines across the whole face, and their distances; both empty for a face without readings.

    `box` is the face's: left, bottom, right, top. Distances are written above upright lines and to the right of level
    ones.
    """
    if not face.readings:
        return (), ()
    found = set_out(face, job.tape, job.unit).lines
    return tuple(_line(line, box) for line in found), tuple(_texts(found, job, box))


def _line(line: SetOutLine, box: Box) -> Line:
    left, bottom, right, top = box
    beyond = BEYOND * step_mm(box)
    if line.way is Way.ACROSS:
        return Line(Role.SET_OUT, (Vertex(line.at_mm, bottom), Vertex(line.at_mm, top + beyond)))
    return Line(Role.SET_OUT, (Vertex(left, line.at_mm), Vertex(right + beyond, line.at_mm)))


def _texts(found: Sequence[SetOutLine], job: Job, box: Box) -> Iterator[Text]:
    step = step_mm(box)
    for way in (Way.ACROSS, Way.UP):
        lines = [line for line in found if line.way is way]
        places = [line.at_mm for line in lines]
        for line, room in zip(lines, _room(places, 2 * step), strict=True):
            words = show_length(line.at_mm, job.unit)
            high = LETTERING * step
            if way is Way.ACROSS:
                yield Text(Role.SET_OUT, line.at_mm, box[3] + BEYOND * step + high / 2, words, room, high)
            else:
                beside = box[2] + BEYOND * step + step
                yield Text(Role.SET_OUT, beside, line.at_mm, words, 2 * step, min(room, high))


def _room(places: Sequence[float], most: float) -> list[float]:
    """For each place, the room that its words may take without touching its neighbours' words; `most` at most."""
    if not places:
        return []
    gaps = [most, *(after - before for before, after in pairwise(places)), most]
    return [min(before, after, most) for before, after in pairwise(gaps)]
