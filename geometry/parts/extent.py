"""The walls of a face, and how far it reaches."""

from geometry.outlines.measured import joined, outline_box
from geometry.outlines.sides import Box
from shared.job import Face, Part
from shared.trade.kinds import Kind


def walls(face: Face) -> tuple[Part, ...]:
    """The parts of a face that are its wall, in drawing order; none where none is drawn."""
    return tuple(part for part in face.parts if part.kind is Kind.WALL)


def extent(face: Face) -> Box:
    """Left, bottom, right and top of a face: of its walls, or of all its parts when it has no wall.

    Four zeros for an empty face.
    """
    parts = walls(face) or face.parts
    if not parts:
        return (0.0, 0.0, 0.0, 0.0)
    return joined([outline_box(part.outline) for part in parts])
