"""Makes plans of the benchtops of a room, with their ties, so that nothing is counted twice or not at all."""

from collections.abc import Iterable

from msgspec.structs import replace

from geometry.kitchens.along_walls import Benchtop, benchtops
from geometry.kitchens.plans import Along, Free, LaidLeg, lay_out
from geometry.outlines.measured import outline_box
from geometry.parts.extent import extent
from geometry.parts.moves import resized
from shared.edits.drawn import (
    find_face,
    find_room,
    find_room_of,
    fresh_id,
    fresh_ids,
    next_letter,
    with_changed_face,
    with_changed_parts,
    with_face,
)
from shared.errors import JobError
from shared.job import Face, Job, Part, Room, Tie, View
from shared.trade.kinds import Kind
from shared.written.units import length_words
from takeoff.edges.masking import NEAR_MM
from takeoff.edges.ties import sides_counted_on_elevation, tied_sides
from takeoff.surfaces.treatments import Treatments


def with_benchtop_plans(job: Job, room_id: str, *, mitred: bool) -> tuple[Job, tuple[str, ...]]:
    """The job with a plan for each benchtop of a room that has none yet, and the ids of the new plans.

    A benchtop goes round the corners of the room with one part for each wall (`geometry.kitchens.along_walls`,
    `geometry.kitchens.plans`). Its depth and overhang are the room's. Its backs, and its ends at a wall, are tied to
    the wall. All other sides are coated, except seams and the sides that an elevation counts as front edges. An edge
    that an elevation draws reaches over the benchtop's free end as the plan does, unless the edge is locked. A benchtop
    has its plan already if a part on a plan is tied along its stretch of wall. JobError where no base cabinets stand,
    or every benchtop has its plan.
    """
    room = find_room(job, room_id)
    found = benchtops(room)
    if not found:
        height = length_words(room.heights.kickboard_mm + room.heights.cabinet_mm, job.unit)
        raise JobError(
            f"no benchtop and no base cabinets {height} high stand along its walls",
            where=room.name,
            do="draw the base cabinets first, or correct the room's usual heights",
        )
    missing = [benchtop for benchtop in found if not _has_plan(benchtop, room)]
    if not missing:
        raise JobError("every benchtop of the room has its plan", where=room.name, do="change those, or delete them")
    plans = []
    for benchtop in missing:
        job = _with_edges_over(job, benchtop)
        job, plan_id = _with_plan(job, room_id, lay_out(benchtop, room.heights.benchtop_depth_mm, mitred=mitred))
        plans.append(plan_id)
    return job, tuple(plans)


def _with_edges_over(job: Job, benchtop: Benchtop) -> Job:
    """The job in which the edges drawn on elevations reach over the free ends of a benchtop, as its plan will."""
    room = find_room_of(job, benchtop.legs[0].face.id)
    first, last = benchtop.legs[0], benchtop.legs[-1]
    job = _with_edge_to(job, first.face.id, 0, first.start_mm, room.heights.overhang_mm)
    return _with_edge_to(job, last.face.id, 2, last.end_mm, room.heights.overhang_mm)


def _with_edge_to(job: Job, face_id: str, side: int, to_mm: float, within_mm: float) -> Job:
    """The job in which the drawn edge that ends just short of a place ends at that place.

    `side` is 0 for the left end of the edge and 2 for its right end. The edge is drawn on by `within_mm` at most, and
    never beyond the wall.
    """
    face = find_face(job, face_id)
    left, _, right, _ = extent(face)
    for part in face.parts if left <= to_mm <= right else ():
        box = list(outline_box(part.outline))
        short = (box[0] - to_mm) if side == 0 else (to_mm - box[2])
        if part.kind is Kind.BENCHTOP and not part.locked and NEAR_MM < short <= within_mm + NEAR_MM:
            box[side] = to_mm
            return with_changed_parts(job, (resized(part, (box[0], box[1], box[2], box[3])),))
    return job


def _has_plan(benchtop: Benchtop, room: Room) -> bool:
    """Whether a benchtop on a plan is tied along any of its legs."""
    tops = {part.id for face in room.faces for part in face.parts if part.kind is Kind.BENCHTOP}
    ties = [tie for face in room.faces for tie in face.ties if tie.part in tops]
    return any(
        tie.face == leg.face.id and tie.start_mm < leg.end_mm and tie.end_mm > leg.start_mm
        for leg in benchtop.legs
        for tie in ties
    )


def _with_plan(job: Job, room_id: str, legs: tuple[LaidLeg, ...]) -> tuple[Job, str]:
    ids = fresh_ids(job, "p", len(legs))
    thickness = find_room(job, room_id).heights.benchtop_mm
    parts = tuple(
        Part(part_id, Kind.BENCHTOP, leg.outline, _name(leg, len(legs)), thickness_mm=thickness)
        for part_id, leg in zip(ids, legs, strict=True)
    )
    ties = tuple(tie for part_id, leg in zip(ids, legs, strict=True) for tie in _ties(part_id, leg))
    plan = Face(fresh_id(job, "f"), next_letter(job), View.PLAN, parts, ties=ties)
    job = with_face(job, room_id, plan)
    counted = sides_counted_on_elevation(tied_sides(job), Treatments(job.kind_choices))
    coated = (
        replace(part, coated_sides=_free(leg.sides, counted.get(part.id, frozenset())))
        for part, leg in zip(parts, legs, strict=True)
    )
    return with_changed_face(job, replace(plan, parts=tuple(coated))), plan.id


def _name(leg: LaidLeg, legs: int) -> str:
    return f"benchtop along {leg.face.name}" if legs > 1 else "benchtop"


def _ties(part_id: str, leg: LaidLeg) -> Iterable[Tie]:
    for side, bounds in enumerate(leg.sides):
        if isinstance(bounds, Along):
            yield Tie(part_id, side, bounds.face.id, bounds.start_mm, bounds.end_mm)


def _free(sides: Iterable[object], counted: frozenset[int]) -> tuple[int, ...]:
    """The sides that border on nothing and that no elevation counts."""
    return tuple(side for side, bounds in enumerate(sides) if isinstance(bounds, Free) and side not in counted)
