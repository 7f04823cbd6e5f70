"""Fronts hung and fronts off: the parts that stand on a face in either arrangement."""

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Box
from shared.job import Part
from shared.trade.kinds import Treatment, usual
from takeoff.surfaces.treatments import Treatments


def is_front(part: Part) -> bool:
    """Whether a part is a door or a drawer front."""
    return usual()[part.kind].front


def is_opening(part: Part) -> bool:
    """Whether a part is a window, an outlet or a cut-out: it has no area of its own."""
    return usual()[part.kind].hole


def parts_off(parts: tuple[Part, ...], treatments: Treatments) -> tuple[Part, ...]:
    """The parts that stand while the face is worked on: all except those taken off to be coated.

    An opening within a part that is taken off (the glass of a door) goes with it.
    """
    gone = [part for part in parts if treatments.of(part).treatment is Treatment.TAKEN_OFF]
    if not gone:
        return parts
    boxes = [outline_box(part.outline) for part in gone]
    ids = {part.id for part in gone}
    return tuple(part for part in parts if part.id not in ids and not _goes_along(part, boxes))


def _goes_along(part: Part, boxes: list[Box]) -> bool:
    if not is_opening(part):
        return False
    own = outline_box(part.outline)
    return any(encloses(box, own) for box in boxes)


def encloses(outer: Box, inner: Box) -> bool:
    """Whether a box (left, bottom, right, top) holds the whole of another."""
    return outer[0] <= inner[0] and outer[1] <= inner[1] and outer[2] >= inner[2] and outer[3] >= inner[3]
