"""Counts one face by itself: its parts, edges, joints and masking, and what is seen at its two ends.

`takeoff.take_off` puts the faces together.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from geometry.parts.extent import walls
from geometry.seen.arrangement import Arrangement, Edge
from geometry.seen.ends import End, end_line, end_profile
from shared.findings import Finding
from shared.job import Face, JointChoice, KindChoice, Part, Unit, View
from shared.trade.kinds import Treatment
from shared.trade.tape import TapeClass
from takeoff.edges.corners import FaceEnd
from takeoff.edges.joints import Choices, joint_rows, meetings
from takeoff.edges.masking import Finishes, guard_of, masking_rows
from takeoff.edges.of_face import edge_rows, in_order, seen_edges, sides_seen
from takeoff.edges.sealant import rows_as_labelled
from takeoff.figures.measured import EdgeRow, Fronts, JointRow, MaskingRow, PartRow, TileRow
from takeoff.findings.on_face import look_at_face
from takeoff.findings.readings import look_at_readings
from takeoff.surfaces.areas import PlacedPart, gross, net, standings
from takeoff.surfaces.coated import CoatedPart, coated
from takeoff.surfaces.fronts import is_opening
from takeoff.surfaces.measuring_rules import NET, MeasuringRule, measuring_rules
from takeoff.surfaces.tags import tags
from takeoff.surfaces.tiles import look_at_tiles, tile_rows
from takeoff.surfaces.treatments import Treated, Treatments
from takeoff.surfaces.voids import left_in


class Context(NamedTuple):
    """All that the count of a face depends on besides the face itself.

    `choices` are the choices about joints within the face. `at_corners` says for its left and its right end whether it
    meets another face there. `elsewhere` are the sides (part, side) whose edge is counted on another face. `rule` is
    the name of the measuring rule, and `tape` the class of the tape.
    """

    room: str
    unit: Unit
    kinds: tuple[KindChoice, ...]
    choices: tuple[JointChoice, ...] = ()
    at_corners: tuple[bool, bool] = (False, False)
    elsewhere: frozenset[tuple[str, int]] = frozenset()
    rule: str = NET
    tape: TapeClass = TapeClass.SECOND


class FaceCount(NamedTuple):
    """All that is counted of a face, and its left and right end; `surfaces` are its parts as they were measured."""

    parts: tuple[PartRow, ...]
    edges: tuple[EdgeRow, ...]
    joints: tuple[JointRow, ...]
    masking: tuple[MaskingRow, ...]
    left: FaceEnd
    right: FaceEnd
    findings: tuple[Finding, ...]
    tiles: tuple[TileRow, ...]
    surfaces: tuple[CoatedPart, ...]


def count_face(face: Face, context: Context, hung: Arrangement, off: Arrangement) -> FaceCount:
    """Count one face. `hung` and `off` are its arrangements with the fronts hung and off. Empty for an empty face."""
    treatments = Treatments(context.kinds)
    treated = {part.id: treatments.of(part) for part in face.parts}
    finishes = {part_id: each.finish_in_place for part_id, each in treated.items()}
    by_id = {part.id: part for part in face.parts}
    standing = _standing(by_id, off)
    ordered = in_order(standing, off.edges)
    edges = edge_rows(face.id, standing, ordered)
    outer = _outer(ordered, edges)
    left, right = _ends(face, by_id, finishes, outer)
    surfaces, tagged = _surfaces(face, context, treated, hung, off), tags(face)
    return FaceCount(
        parts=tuple(_part_row(each, face, context, tagged.get(each.standing.part.id, "")) for each in surfaces),
        edges=edges,
        joints=rows_as_labelled(joint_rows(meetings(face, edges), Choices(context.choices)), context.unit),
        masking=masking_rows(face.id, by_id, edges, finishes, guard_of(face, context.at_corners)),
        left=left,
        right=right,
        findings=(
            *look_at_face(face, context.unit, treated, (hung, off), _free_sides(outer, context)),
            *look_at_tiles(face, context.unit),
            *look_at_readings(face, context.unit, context.tape),
        ),
        tiles=tile_rows(face, context.room, off),
        surfaces=surfaces,
    )


def _standing(by_id: Mapping[str, Part], arrangement: Arrangement) -> tuple[Part, ...]:
    return tuple(by_id[region.part] for region in arrangement.regions)


def _outer(edges: Sequence[Edge], rows: Sequence[EdgeRow]) -> list[Edge]:
    """The edges at the outside: on one side there is no part and no opening."""
    return [edge for edge, row in zip(edges, rows, strict=True) if row.parts[1] is None and row.opening is None]


def _free_sides(outer: Sequence[Edge], context: Context) -> dict[str, frozenset[int]]:
    """For each part, the sides at the outside, except those whose edge is counted on another face."""
    return {
        part: frozenset(side for side in seen if (part, side) not in context.elsewhere)
        for part, seen in sides_seen(outer).items()
    }


def _ends(face: Face, parts: Mapping[str, Part], finishes: Finishes, outer: Sequence[Edge]) -> tuple[FaceEnd, FaceEnd]:
    has_wall = bool(walls(face))

    def end(which: End) -> FaceEnd:
        line = end_line(face, which)
        return FaceEnd(line, has_wall, parts, finishes, end_profile(outer, line, which))

    return end(End.LEFT), end(End.RIGHT)


def _worked_on(hung: Sequence[PlacedPart], off: Arrangement) -> dict[str, PlacedPart]:
    """The parts that stand with the fronts off, by id, each with its region in that arrangement."""
    by_id = {each.part.id: each for each in hung}
    return {region.part: by_id[region.part]._replace(region=region) for region in off.regions}


def _surfaces(
    face: Face, context: Context, treated: Mapping[str, Treated], hung: Arrangement, off: Arrangement
) -> tuple[CoatedPart, ...]:
    """Every part as it is measured: a part that is taken off as it hangs, any other as it stands without the fronts."""
    all_hung = standings(face.parts, hung.regions)
    worked_on = _worked_on(all_hung, off)
    all_off = tuple(worked_on.values())
    openings = tuple(each for each in all_hung if is_opening(each.part))
    rule, edges = _rule(face, context), seen_edges(off.edges)
    surfaces = []
    for each in all_hung:
        part_id = each.part.id
        is_off = treated[part_id].treatment is Treatment.TAKEN_OFF or part_id not in worked_on
        stands, beside, fronts = (each, all_hung, Fronts.HUNG) if is_off else (worked_on[part_id], all_off, Fronts.OFF)
        own = edges.get(part_id, {}).items()
        seen = {side: pieces for side, pieces in own if (part_id, side) not in context.elsewhere}
        measured = net(stands, beside, fronts)
        left = left_in(stands, beside, rule)
        surfaces.append(CoatedPart(stands, treated[part_id], measured, seen, openings, rule, left))
    return tuple(surfaces)


def _rule(face: Face, context: Context) -> MeasuringRule:
    """The measuring rule for a face. Rules are about the openings of walls: the holes of a plan are always deducted."""
    return measuring_rules()[context.rule if face.view is View.ELEVATION else NET]


def _part_row(surface: CoatedPart, face: Face, context: Context, tag: str) -> PartRow:
    part, treated = surface.standing.part, surface.treated
    return PartRow(
        id=part.id,
        room=context.room,
        face=face.id,
        name=part.name,
        kind=part.kind,
        treatment=treated.treatment,
        finish=treated.finish,
        tag=tag,
        gross_mm2=gross(surface.standing, surface.net.reason.fronts),
        net_mm2=surface.net,
        coated_mm2=coated(surface),
    )
