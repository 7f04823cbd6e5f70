"""The size at which the wall of an elevation or the benchtop of a plan is drawn, as if it were one more reading.

`geometry.set_out.lines` compares it with the readings.
"""

from geometry.outlines.measured import outline_box
from shared.job import CORNERS, END, START, Face, Part, Reading, Vertex, View, Way
from shared.trade.kinds import Kind

BOX_MM = 0.5
"""A wall whose corners are this near to those of an upright box is a box. Lengths this near are the same reading."""

GROUND = {View.ELEVATION: Kind.WALL, View.PLAN: Kind.BENCHTOP}
"""What a face is begun with, and what its readings measure as a whole."""


def measured_parts(face: Face) -> tuple[Part, ...]:
    """The parts that readings of a face measure as a whole: the walls of an elevation, the benchtops of a plan."""
    return tuple(part for part in face.parts if part.kind is GROUND[face.view])


def drawn_box(face: Face) -> Part | None:
    """The part whose drawn size counts as a reading: the one wall of an elevation, or the one benchtop of a plan.

    None when there is no such part, more than one, or one that is no upright box with its lower left corner at (0, 0).
    """
    parts = measured_parts(face)
    if len(parts) != 1 or len(parts[0].outline) != len(CORNERS):
        return None
    left, bottom, right, top = outline_box(parts[0].outline)
    corners = {(left, bottom), (right, bottom), (right, top), (left, top)}
    is_box = max(abs(left), abs(bottom)) <= BOX_MM and all(
        any(_is_at(vertex, corner) for vertex in parts[0].outline) for corner in corners
    )
    return parts[0] if is_box else None


def drawn_reading(face: Face, way: Way) -> Reading | None:
    """The size at which the wall is drawn this way, as a reading of its own; None when it does not count as one.

    It counts when readings of this way name the end of the face. It does not count when one of them, from end to end,
    is equal to it: then the wall was drawn from that reading.
    """
    part = drawn_box(face)
    readings = [reading for reading in face.readings if reading.way is way]
    if way is Way.STRAIGHT or part is None or not any(reading.end == END for reading in readings):
        return None
    drawn = Reading(START, END, drawn_size_mm(part, way), way)
    overall = (reading for reading in readings if is_overall(reading, way))
    return None if any(abs(reading.length_mm - drawn.length_mm) <= BOX_MM for reading in overall) else drawn


def drawn_size_mm(part: Part, way: Way) -> float:
    """How far a part reaches from the left end of the face, or for the way up from the floor."""
    _, _, right, top = outline_box(part.outline)
    return right if way is Way.ACROSS else top


def is_overall(reading: Reading, way: Way) -> bool:
    """Whether a reading runs from end to end of the face, this way."""
    return (reading.way, reading.start, reading.end) == (way, START, END)


def _is_at(vertex: Vertex, corner: tuple[float, float]) -> bool:
    return not vertex.bulge and max(abs(vertex.x - corner[0]), abs(vertex.y - corner[1])) <= BOX_MM
