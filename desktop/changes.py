"""Where a drawing looks other than the one before it, so that only there it is painted again."""

from collections.abc import Iterable

from PySide6.QtCore import QRectF
from PySide6.QtGui import QTransform

from desktop.paint import grown, touched_box
from desktop.paint_tiles import grout_of
from desktop.paths import line_shape
from shared.drawing import Area, Drawing, Role
from shared.job import Vertex

Sides = set[tuple[Vertex, Vertex]]


def changed_boxes(old: Drawing, new: Drawing, to_device: QTransform) -> list[QRectF] | None:
    """Boxes, in the painter's units, outside of which both look the same; None where everything may look other.

    A place changes hands only inside an outline that changed, so of other parts' visible regions only the sides count
    that are new or gone. That does not hold where parts went in front of or behind others: then the answer is None.
    """
    if _order_changed(old.areas, new.areas):
        return None
    areas = {area for area in set(old.areas) ^ set(new.areas) if area.role is not Role.FRONTS_OFF}  # never painted
    moved = {area.part for area in areas if area.role is Role.OUTLINE}
    boxes = [touched_box(area, to_device) for area in areas if area.role is Role.OUTLINE]
    boxes += _side_boxes((area for area in areas if area.part not in moved), to_device)
    boxes += _tiled_boxes(old, new, to_device)
    boxes += [touched_box(line, to_device) for line in set(old.lines) ^ set(new.lines)]
    boxes += [touched_box(text, to_device) for text in set(old.texts) ^ set(new.texts)]
    return boxes + [touched_box(size, to_device) for size in set(old.sizes) ^ set(new.sizes)]


def _tiled_boxes(old: Drawing, new: Drawing, to_device: QTransform) -> list[QRectF]:
    """The parts that show their tiles now, or no longer: the pattern of their kind went or came."""
    other = grout_of(old.lines).keys() ^ grout_of(new.lines).keys()
    return [touched_box(area, to_device) for area in new.areas if area.role is Role.OUTLINE and area.part in other]


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
