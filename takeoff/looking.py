"""Things to look at on one face: what is odd in it though it can be measured."""

from collections.abc import Iterator, Mapping

from geometry.arrangement import Arrangement
from geometry.extent import extent
from geometry.near import near_misses
from geometry.outline import outline_box
from geometry.side_names import side_names
from shared.findings import Finding
from shared.job import Face, Part, Unit, View
from shared.kinds import Kind, Treatment
from shared.units import show_length
from takeoff.areas import SAME_MM2
from takeoff.coated import coated_sides
from takeoff.fronts import is_opening
from takeoff.masking import NEAR_MM
from takeoff.naming import called
from takeoff.treatments import Treated


def length_words(length_mm: float, unit: Unit) -> str:
    """A length with its unit, for a sentence."""
    return show_length(length_mm, unit) + (" mm" if unit is Unit.MM else "")


def look_at_face(
    face: Face,
    unit: Unit,
    treated: Mapping[str, Treated],
    arrangements: tuple[Arrangement, Arrangement],
    outside: Mapping[str, frozenset[int]],
) -> tuple[Finding, ...]:
    """What is odd on a face by itself.

    `arrangements` are those with the fronts hung and off; `outside` gives, by part, the sides of its outline at which
    it ends with nothing beyond.
    """
    return (
        *_near_misses(face, unit),
        *_outside_wall(face, unit),
        *_hidden(face, treated, arrangements),
        *_alike(face),
        *_without_finish(face, treated),
        *_loose_sides(face, treated, outside),
    )


def _near_misses(face: Face, unit: Unit) -> Iterator[Finding]:
    names = {part.id: called(part) for part in face.parts}
    for miss in near_misses(face.parts):
        first, second = (names[part] for part in miss.parts)
        verb, code = ("miss each other", "gap") if miss.gap_mm > 0 else ("overlap", "overlap")
        by, along = length_words(abs(miss.gap_mm), unit), length_words(miss.length_mm, unit)
        yield Finding(
            code, f"{first} and {second} {verb} by {by} along {along}; measure them again.", face.id, miss.parts
        )


def _outside_wall(face: Face, unit: Unit) -> Iterator[Finding]:
    """Parts of an elevation that reach beyond its wall."""
    if face.view is View.PLAN or not any(part.kind is Kind.WALL for part in face.parts):
        return
    left, bottom, right, top = extent(face)
    for part in face.parts:
        box = outline_box(part.outline)
        beyond = {
            "the left end": left - box[0],
            "the floor line": bottom - box[1],
            "the right end": box[2] - right,
            "the top": box[3] - top,
        }
        where, most = max(beyond.items(), key=lambda each: each[1])
        if most > NEAR_MM:
            message = (
                f"{called(part)} reaches {length_words(most, unit)} beyond {where} of the wall; move or shorten it."
            )
            yield Finding("outside-wall", message, face.id, (part.id,))


def _hidden(
    face: Face, treated: Mapping[str, Treated], arrangements: tuple[Arrangement, Arrangement]
) -> Iterator[Finding]:
    """Parts of which nothing is seen, though they hide what is behind them; walls and carcasses are often covered."""
    hung, off = ({region.part: region.area_mm2 for region in each.regions} for each in arrangements)
    for part in face.parts:
        if not part.hides or is_opening(part) or part.kind in (Kind.WALL, Kind.BULKHEAD, Kind.CABINET):
            continue
        seen = hung if treated[part.id].treatment is Treatment.TAKEN_OFF else off
        if seen.get(part.id, hung[part.id]) <= SAME_MM2:
            message = f"Nothing is seen of {called(part)}: other parts hide it; raise it, or take it away."
            yield Finding("hidden", message, face.id, (part.id,))


def _alike(face: Face) -> Iterator[Finding]:
    """Parts of one kind with the same outline."""
    first: dict[tuple[Kind, frozenset[tuple[float, float, float]]], Part] = {}
    for part in face.parts:
        key = (part.kind, frozenset((vertex.x, vertex.y, abs(vertex.bulge)) for vertex in part.outline))
        other = first.setdefault(key, part)
        if other is not part:
            message = f"{called(other)} and {called(part)} have the same outline; take one away."
            yield Finding("same-outline", message, face.id, (other.id, part.id))


def _without_finish(face: Face, treated: Mapping[str, Treated]) -> Iterator[Finding]:
    for part in face.parts:
        if treated[part.id].treatment is not Treatment.LEFT and not treated[part.id].finish:
            message = f"{called(part)} is coated, but no finish is chosen for it; choose one."
            yield Finding("no-finish", message, face.id, (part.id,))


def _loose_sides(
    face: Face, treated: Mapping[str, Treated], outside: Mapping[str, frozenset[int]]
) -> Iterator[Finding]:
    """Sides of benchtops on a plan that end with nothing beyond, tied to no wall and not coated as a free edge."""
    if face.view is not View.PLAN:
        return
    for part in face.parts:
        if part.kind is not Kind.BENCHTOP or treated[part.id].treatment is Treatment.LEFT:
            continue
        tied = {tie.side for tie in face.ties if tie.part == part.id}
        loose = sorted(outside.get(part.id, frozenset()) - tied - set(coated_sides(part)))
        if loose:
            names = side_names(part.outline, face.view)
            sides = ", ".join(dict.fromkeys(names[side] for side in loose))
            message = (
                f"{called(part)}: its {sides} neither runs along a wall nor counts as a coated edge; "
                "say which wall it runs along, or mark the edge as coated."
            )
            yield Finding("loose-side", message, face.id, (part.id,))
