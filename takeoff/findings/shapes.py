"""Things to look at in how the parts of a face stand to each other; most can be mended in one step."""

from collections.abc import Iterator, Mapping

from geometry.outlines.measured import area_mm2, outline_box
from geometry.outlines.sides import Box
from geometry.parts.extent import extent, walls
from geometry.parts.within import reaches_beyond_mm
from geometry.seen.hanging import hung_fronts
from geometry.seen.near import USUAL_LIMIT_MM, near_misses
from shared.findings import Code, Finding
from shared.job import Face, Part, Unit, View
from shared.trade.kinds import Kind, usual
from shared.written.units import length_words
from takeoff.edges.masking import NEAR_MM
from takeoff.surfaces.areas import SAME_MM2

OVERHANG_MM = 20.0
"""How far a front may reach beyond what it hangs on, as for a finger pull or a scribe (common practice, no source)."""

TRIM, MOVE = Code.OUTSIDE_WALL.mends


def look_at_shapes(face: Face, unit: Unit) -> Iterator[Finding]:
    """What is odd in how the parts of a face stand to each other.

    It finds parts that nearly touch, parts beyond the wall or the benchtop, fronts larger than what they hang on, and
    parts with the same outline.
    """
    names = {part.id: part.called for part in face.parts}
    yield from _near_misses(face, unit, names)
    yield from _outside_wall(face, unit)
    yield from _off_benchtop(face, unit)
    yield from _large_fronts(face, unit, names)
    yield from _alike(face)


def wall_box(face: Face) -> Box | None:
    """The box of the walls of an elevation; None for a plan, and for an elevation without a wall."""
    if face.view is View.PLAN or not walls(face):
        return None
    return extent(face)


def way_inside(part: Part, wall: Box) -> str:
    """The words of the mend that brings a part inside the wall; "" if the part is too large to be moved inside."""
    box = outline_box(part.outline)
    kept = common_box(box, wall)
    fills = abs(area_mm2(part.outline) - (box[2] - box[0]) * (box[3] - box[1])) <= SAME_MM2
    if usual()[part.kind].cut_on_site and fills and min(kept[2] - kept[0], kept[3] - kept[1]) > USUAL_LIMIT_MM:
        return TRIM
    fits = box[2] - box[0] <= wall[2] - wall[0] and box[3] - box[1] <= wall[3] - wall[1]
    return MOVE if fits else ""


def common_box(one: Box, other: Box) -> Box:
    """The box that two boxes share. For boxes that share nothing, its right is left of its left, or its top too low."""
    return max(one[0], other[0]), max(one[1], other[1]), min(one[2], other[2]), min(one[3], other[3])


def _near_misses(face: Face, unit: Unit, names: Mapping[str, str]) -> Iterator[Finding]:
    for miss in near_misses(face.parts):
        first, second = (names[part] for part in miss.parts)
        by, along = length_words(abs(miss.gap_mm), unit), length_words(miss.length_mm, unit)
        what, code = (f"are {by} apart", Code.GAP) if miss.gap_mm > 0 else (f"overlap by {by}", Code.OVERLAP)
        message = f"{first} and {second} {what} along {along}; measure them again."
        yield Finding(code, message, face.id, miss.parts, code.mend)


def _outside_wall(face: Face, unit: Unit) -> Iterator[Finding]:
    """Parts of an elevation that reach beyond its wall."""
    wall = wall_box(face)
    if wall is None:
        return
    for part in face.parts:
        where, most = max(_beyond(outline_box(part.outline), wall).items(), key=lambda each: each[1])
        if most > NEAR_MM:
            message = (
                f"{part.called} reaches {length_words(most, unit)} beyond {where} of the wall; move or shorten it."
            )
            yield Finding(Code.OUTSIDE_WALL, message, face.id, (part.id,), way_inside(part, wall))


def _beyond(box: Box, within: Box) -> dict[str, float]:
    """How far a box reaches beyond each side of another, mm; negative for a side that it does not reach."""
    return {
        "the left end": within[0] - box[0],
        "the floor line": within[1] - box[1],
        "the right end": box[2] - within[2],
        "the top": box[3] - within[3],
    }


def _off_benchtop(face: Face, unit: Unit) -> Iterator[Finding]:
    """Parts set into the benchtops of a plan that reach beyond them. Their rim would not be sealed there."""
    tops = [part for part in face.parts if part.kind is Kind.BENCHTOP]
    if face.view is not View.PLAN or not tops:
        return
    for part in face.parts:
        most = reaches_beyond_mm(part, tops) if usual()[part.kind].set_in else 0.0
        if most > NEAR_MM:
            message = f"{part.called} reaches {length_words(most, unit)} beyond the benchtop; move it or measure again."
            yield Finding(Code.OFF_BENCHTOP, message, face.id, (part.id,))


def _large_fronts(face: Face, unit: Unit, names: Mapping[str, str]) -> Iterator[Finding]:
    """Fronts that reach too far beyond what they hang on."""
    boxes = {part.id: outline_box(part.outline) for part in face.parts}
    for hung in hung_fronts(face.parts):
        most = max(_beyond(boxes[hung.front], hung.box).values())
        if most > OVERHANG_MM:
            behind = " and ".join(dict.fromkeys(names[part] for part in hung.behind))
            message = (
                f"{names[hung.front]} reaches {length_words(most, unit)} beyond {behind}, which it hangs on; "
                "measure it again."
            )
            yield Finding(Code.FRONT_TOO_LARGE, message, face.id, (hung.front,), Code.FRONT_TOO_LARGE.mend)


def _alike(face: Face) -> Iterator[Finding]:
    """Parts of one kind with the same outline."""
    first: dict[tuple[Kind, frozenset[tuple[float, float, float]]], Part] = {}
    for part in face.parts:
        key = (part.kind, frozenset((vertex.x, vertex.y, abs(vertex.bulge)) for vertex in part.outline))
        other = first.setdefault(key, part)
        if other is not part:
            message = f"{other.called} and {part.called} have the same outline; remove one."
            yield Finding(Code.SAME_OUTLINE, message, face.id, (other.id, part.id), Code.SAME_OUTLINE.mend)
