"""Where a drawing looks different from the one before it, so that only that is painted again."""

from collections.abc import Iterable

from PySide6.QtCore import QRectF
from PySide6.QtGui import QTransform

from desktop.painting.drawing import grown, touched_box
from desktop.painting.paths import line_shape
from desktop.painting.tiles import grout_of
from shared.drawing import Area, Drawing, Role
from shared.job import Vertex

Sides = set[tuple[Vertex, Vertex]]

Rail = tuple[bool, float]
"""Whether a grout line is level, and its height in mm; for an upright one, how far to the right it is."""

RAIL_DIGITS = 3
"""Places are compared to a micrometre: grout lines nearer than that lie along one another."""


def changed_boxes(old: Drawing, new: Drawing, to_device: QTransform, roles: frozenset[Role]) -> list[QRectF] | None:
    """Boxes in the painter's units, outside of which both look the same; None if everything may look different.

    `roles` are those that are shown: other changes are not seen.

    A place changes from one part to another only inside an outline that changed. So of the visible regions of other
    parts, only the sides that are new or gone count. That does not hold if parts went in front of or behind others:
    then the answer is None.
    """
    if _order_changed(old.areas, new.areas):
        return None
    areas = {area for area in set(old.areas) ^ set(new.areas) if area.role is not Role.FRONTS_OFF}  # never painted
    moved = {area.part for area in areas if area.role is Role.OUTLINE}
    boxes = [touched_box(area, to_device) for area in areas if area.role is Role.OUTLINE]
    boxes += _side_boxes((area for area in areas if area.part not in moved), to_device)
    boxes += _tiled_boxes(old, new, to_device)
    lines = set(old.lines) ^ set(new.lines)
    texts = set(old.texts) ^ set(new.texts)
    sizes = set(old.sizes) ^ set(new.sizes) if Role.SIZE in roles else ()
    boxes += [touched_box(line, to_device) for line in lines if line.role in roles - {Role.GROUT}]
    boxes += [touched_box(text, to_device) for text in texts if text.role in roles]
    return boxes + [touched_box(size, to_device) for size in sizes]


def _tiled_boxes(old: Drawing, new: Drawing, to_device: QTransform) -> list[QRectF]:
    """The boxes of parts that show tiles only now, or no longer, or other tiles.

    If the grout lines lie along the same rails as before, they differ only where a place went from part to part.
    """
    before, after = _rails(old), _rails(new)
    return [
        touched_box(area, to_device)
        for area in new.areas
        if area.role is Role.OUTLINE and before.get(area.part) != after.get(area.part)
    ]


def _rails(drawing: Drawing) -> dict[str, set[Rail]]:
    """The rails along which the grout lines of each tiled part lie."""
    rails: dict[str, set[Rail]] = {}
    for part, lines in grout_of(drawing.lines).items():
        ends = (line.path for line in lines)
        rails[part] = {
            (True, round(one.y, RAIL_DIGITS))
            if abs(one.y - other.y) < abs(one.x - other.x)
            else (False, round(one.x, RAIL_DIGITS))
            for one, other in ends
        }
    return rails


def _order_changed(old: tuple[Area, ...], new: tuple[Area, ...]) -> bool:
    before = [area.part for area in old if area.role is Role.OUTLINE]
    after = [area.part for area in new if area.role is Role.OUTLINE]
    if before == after:
        return False
    both = set(before) & set(after)
    return [part for part in before if part in both] != [part for part in after if part in both]


def _side_boxes(areas: Iterable[Area], to_device: QTransform) -> list[QRectF]:
    sides: dict[str, Sides] = {}
    for area in areas:
        sides[area.part] = sides.get(area.part, set()) ^ _sides(area)
    return [
        grown(to_device.map(line_shape(side).path).controlPointRect())
        for different in sides.values()
        for side in different
    ]


def _sides(area: Area) -> Sides:
    return {(start, ring[(number + 1) % len(ring)]) for ring in area.rings for number, start in enumerate(ring)}
