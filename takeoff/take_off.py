"""The takeoff of a job: every face is counted by itself and remembered, then what two faces share is added."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import chain
from typing import NamedTuple

from shared.findings import Finding
from shared.job import Face, Job, JointChoice, Room
from shared.trade.kinds import Treatment
from takeoff.edges.corners import Meeting, corner_joints, corner_masking, meetings_round
from takeoff.edges.joints import Choices, FoundJoint, joint_rows
from takeoff.edges.sealant import rows_as_labelled
from takeoff.edges.ties import Tied, sides_counted_on_elevation, tied_sides, unclaimed
from takeoff.faces.measuring import Context, FaceCount
from takeoff.faces.sureness import slopes_between, sureness
from takeoff.figures.measured import JointRow, MaskingRow, PartRow, Sureness, Takeoff, TileRow, Totals
from takeoff.findings.between_faces import look_at_choices, look_at_names, look_at_ties
from takeoff.memory import Memory, job_as_counted
from takeoff.surfaces.fronts import is_front
from takeoff.surfaces.measuring_rules import NET
from takeoff.surfaces.treatments import Treatments

__all__ = ["Memory", "take_off"]


class _Between(NamedTuple):
    """What faces of a job have to do with each other. `choices` are those about joints within a face, by its id."""

    corners: tuple[Meeting, ...]
    ties: tuple[Tied, ...]
    on_elevations: Mapping[str, frozenset[int]]
    choices: Mapping[str, Sequence[JointChoice]]


class _Counted(NamedTuple):
    """The rows of a takeoff that totals are made of."""

    parts: tuple[PartRow, ...]
    joints: tuple[JointRow, ...]
    masking: tuple[MaskingRow, ...]
    tiles: tuple[TileRow, ...]


def take_off(job: Job, memory: Memory | None = None, rule: str = NET, *, sure: bool = True) -> Takeoff:
    """Everything counted of a job. An empty job gives empty tables and totals of 0.

    With a memory, only the faces that changed since it last saw them are measured. If nothing that is counted has
    changed, it gives the last takeoff, the same object. `rule` names the measuring rule for what is coated in place.
    `sure` is False if nobody asks for tolerances, as while a part is dragged. OutlineError if an outline cannot be
    measured.
    """
    memory = memory or Memory()
    if not sure:
        return _count(job_as_counted(job), memory, rule, sure=False)
    return memory.takeoff(job, rule, lambda: _count(job_as_counted(job), memory, rule, sure=True))


def _count(job: Job, memory: Memory, rule: str, *, sure: bool) -> Takeoff:
    between = _between(job)
    counts = {
        face.id: memory.count(face, _context(job, room, face, between, rule))
        for room in job.rooms
        for face in room.faces
    }
    memory.keep_only(job)
    rows = tuple(chain.from_iterable(counts[face.id].parts for face in job.faces))
    shared = rows_as_labelled(joint_rows(_found_between(between, counts), Choices(job.joints)), job.unit)
    corners = tuple(_masked_corners(between, counts))
    tiles = tuple(chain.from_iterable(count.tiles for count in counts.values()))
    joints = (*chain.from_iterable(count.joints for count in counts.values()), *shared)
    masking = (*chain.from_iterable(count.masking for count in counts.values()), *corners)
    return Takeoff(
        parts=rows,
        edges=tuple(chain.from_iterable(count.edges for count in counts.values())),
        joints=joints,
        masking=masking,
        totals=_totals(_Counted(rows, joints, masking, tiles), _fronts(job)),
        findings=tuple(_findings(job, between, counts, joints)),
        rule=rule,
        tiles=tiles,
        sure=_sureness(job, memory, corners, shared) if sure else None,
    )


def _sureness(job: Job, memory: Memory, masking: tuple[MaskingRow, ...], joints: tuple[JointRow, ...]) -> Sureness:
    """The tolerances of the totals. `masking` and `joints` are those that two faces share."""
    return sureness(((memory.slopes(face), slopes_between(face.id, masking, joints)) for face in job.faces), job.tape)


def _between(job: Job) -> _Between:
    ties = tied_sides(job)
    corners = tuple(chain.from_iterable(map(meetings_round, job.rooms)))
    choices: dict[str, list[JointChoice]] = {}
    for choice in job.joints:
        if not choice.next_face:
            choices.setdefault(choice.face, []).append(choice)
    return _Between(corners, ties, sides_counted_on_elevation(ties, Treatments(job.kind_choices)), choices)


def _context(job: Job, room: Room, face: Face, between: _Between, rule: str) -> Context:
    return Context(
        room=room.id,
        unit=job.unit,
        kinds=job.kind_choices,
        choices=tuple(between.choices.get(face.id, ())),
        at_corners=(
            any(meeting.next_face is face for meeting in between.corners),
            any(meeting.face is face for meeting in between.corners),
        ),
        elsewhere=frozenset((part.id, side) for part in face.parts for side in between.on_elevations.get(part.id, ())),
        rule=rule,
        tape=job.tape,
    )


def _found_between(between: _Between, counts: Mapping[str, FaceCount]) -> Iterator[FoundJoint]:
    for meeting in between.corners:
        yield from corner_joints(meeting, counts[meeting.face.id].right, counts[meeting.next_face.id].left)
    for tied in between.ties:
        yield from unclaimed(tied, counts[tied.elevation.id].edges)


def _masked_corners(between: _Between, counts: Mapping[str, FaceCount]) -> Iterator[MaskingRow]:
    for meeting in between.corners:
        yield from corner_masking(meeting, counts[meeting.face.id].right, counts[meeting.next_face.id].left)


def _fronts(job: Job) -> int:
    treatments = Treatments(job.kind_choices)
    return sum(
        is_front(part) and treatments.of(part).treatment is not Treatment.LEFT
        for face in job.faces
        for part in face.parts
    )


def _totals(counted: _Counted, fronts: int) -> Totals:
    sealed = [row for row in counted.joints if row.sealed]
    return Totals(
        coated_mm2=sum(row.coated_mm2.amount for row in counted.parts),
        masking_mm=sum(row.length_mm.amount for row in counted.masking),
        bead_mm=sum(row.length_mm.amount for row in sealed),
        old_bead_mm=sum(row.length_mm.amount for row in sealed if row.old_bead),
        fronts=fronts,
        grout_mm=sum(row.grout_mm.amount for row in counted.tiles),
    )


def _findings(
    job: Job, between: _Between, counts: Mapping[str, FaceCount], joints: tuple[JointRow, ...]
) -> Iterator[Finding]:
    for count in counts.values():
        yield from count.findings
    yield from look_at_ties(between.ties, job.unit, between.on_elevations)
    yield from look_at_names(job)
    yield from look_at_choices(job, joints)
