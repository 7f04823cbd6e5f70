"""How far a face reaches: the box round its walls or its parts."""

from geometry.outlines.measured import joined, outline_box
from geometry.outlines.sides import Box
from shared.job import Face
from shared.trade.kinds import Kind


def extent(face: Face) -> Box:
    """Left, bottom, right and top of a face: of its walls, or of all its parts when it has no wall.

    Four zeros for an empty face.
    """
    parts = [part for part in face.parts if part.kind is Kind.WALL] or list(face.parts)
    if not parts:
        return (0.0, 0.0, 0.0, 0.0)
    return joined([outline_box(part.outline) for part in parts])
