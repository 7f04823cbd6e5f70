"""Things to look at on one face: it can be measured, but something on it is odd."""

from collections.abc import Iterator, Mapping

from geometry.outlines.side_names import side_names
from geometry.seen.arrangement import Arrangement
from shared.findings import Code, Finding
from shared.job import Face, Unit, View
from shared.trade.kinds import Kind, Treatment, usual
from takeoff.findings.shapes import look_at_shapes
from takeoff.findings.sizes import look_at_sizes
from takeoff.surfaces.areas import SAME_MM2
from takeoff.surfaces.coated import coated_sides
from takeoff.surfaces.fronts import is_opening
from takeoff.surfaces.treatments import Treated


def look_at_face(
    face: Face,
    unit: Unit,
    treated: Mapping[str, Treated],
    arrangements: tuple[Arrangement, Arrangement],
    outside: Mapping[str, frozenset[int]],
) -> tuple[Finding, ...]:
    """All that is odd in the shapes, the sizes, the coating and the loose sides of a face.

    `arrangements` are those with the fronts hung and with them off. `outside` gives the sides of each part's outline
    that have nothing beyond them.
    """
    return (
        *look_at_shapes(face, unit),
        *look_at_sizes(face, unit),
        *_hidden(face, treated, arrangements),
        *_without_finish(face, treated),
        *_loose_sides(face, treated, outside),
    )


def _hidden(
    face: Face, treated: Mapping[str, Treated], arrangements: tuple[Arrangement, Arrangement]
) -> Iterator[Finding]:
    """Parts that hide others but are hidden altogether themselves, except kinds that often are, like walls."""
    hung, off = ({region.part: region.area_mm2 for region in each.regions} for each in arrangements)
    for part in face.parts:
        if not part.hides or is_opening(part) or usual()[part.kind].often_hidden:
            continue
        seen = hung if treated[part.id].treatment is Treatment.TAKEN_OFF else off
        if seen.get(part.id, hung[part.id]) <= SAME_MM2:
            message = f"Other parts hide all of {part.called}; raise it, or remove it."
            yield Finding(Code.HIDDEN, message, face.id, (part.id,))


def _without_finish(face: Face, treated: Mapping[str, Treated]) -> Iterator[Finding]:
    for part in face.parts:
        if treated[part.id].treatment is not Treatment.LEFT and not treated[part.id].finish:
            message = f"{part.called} is coated, but no finish is chosen for it; choose one."
            yield Finding(Code.NO_FINISH, message, face.id, (part.id,))


def _loose_sides(
    face: Face, treated: Mapping[str, Treated], outside: Mapping[str, frozenset[int]]
) -> Iterator[Finding]:
    """Sides of benchtops on a plan with nothing beyond them that are neither tied to a wall nor marked as coated."""
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
                f"{part.called}: its {sides} neither runs along a wall nor counts as a coated edge; "
                "say which wall it runs along, or mark the edge as coated."
            )
            yield Finding(Code.LOOSE_SIDE, message, face.id, (part.id,))
