"""The takeoff as JSON, for programs. Its schema is published in `data/takeoff.schema.json` and stays stable."""

from typing import Any

import msgspec

from shared.files.schema import json_schema
from shared.job import Job, Section, Unit, View
from shared.trade.kinds import Kind, Treatment
from shared.trade.tape import TapeClass
from shared.written.units import MM2_IN_A_SQUARE_METRE, MM_IN_A_METRE
from takeoff.bill import Bill
from takeoff.figures.measured import Sureness, Takeoff
from takeoff.tables.basket_json import BasketEntry, NeedsEntry, basket_entry, needs_entry

VERSION = 1
"""The version of the takeoff's schema."""


class Entry(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The common form of all entries: frozen, and written field by field."""


class RoomEntry(Entry, frozen=True):
    """A room."""

    id: str
    name: str


class FaceEntry(Entry, frozen=True):
    """A face and the id of its room. The tags of its fronts begin with its `letter`."""

    id: str
    name: str
    room: str
    view: View
    letter: str


class PartEntry(Entry, frozen=True):
    """A part. `finish` is an id, "" for a part without one. `tag` is "" for all but fronts.

    `coated_area_tolerance_mm2` is how far the coated area could be off because of the tape, null if that was not asked
    for.
    """

    id: str
    room: str
    face: str
    name: str
    kind: Kind
    treatment: Treatment
    finish: str
    tag: str
    gross_area_mm2: float
    net_area_mm2: float
    coated_area_mm2: float
    coated_area_tolerance_mm2: float | None


class EdgeEntry(Entry, frozen=True):
    """An edge of a face with the fronts off.

    The second part is null for an edge on the outside or on an opening. `opening` is the id of that opening, null for
    an edge without one.
    """

    face: str
    parts: tuple[str, str | None]
    opening: str | None
    length_mm: float


class JointEntry(Entry, frozen=True):
    """A joint. One that is not `sealed` was switched off and is in no total.

    `next_face` is the second face of a joint between two faces, null for a joint within one.
    """

    face: str
    next_face: str | None
    parts: tuple[str, str]
    name: str
    section: Section
    sealant: str
    sealed: bool
    old_bead: bool
    length_mm: float


class MaskingEntry(Entry, frozen=True):
    """Edges that are taped between two parts, or between a part and the outside (null). An opening counts as a part."""

    face: str
    parts: tuple[str, str | None]
    name: str
    length_mm: float


class TilesEntry(Entry, frozen=True):
    """The tiles of a part, with the fronts off: how many are whole, how many are cut, and their grout lines."""

    part: str
    whole: int
    cut: int
    grout_width_mm: float
    grout_length_mm: float


class TotalsEntry(Entry, frozen=True):
    """The totals, in square metres and metres."""

    coated_area_m2: float
    masking_m: float
    bead_m: float
    old_bead_m: float
    fronts: int
    grout_m: float


class TolerancesEntry(Entry, frozen=True):
    """How far the totals could be off because of a tape of this class, in square metres and metres."""

    tape: TapeClass
    coated_area_m2: float
    masking_m: float
    bead_m: float
    old_bead_m: float
    grout_m: float


class FindingEntry(Entry, frozen=True):
    """A thing to look at."""

    code: str
    message: str
    face: str
    parts: tuple[str, ...]


class TakeoffEntry(Entry, frozen=True):
    """Everything counted of a job, in the order of its rooms, faces and parts.

    Lengths are in millimetres and areas in square millimetres, unless the name of a field says metres. `needs` and
    `basket` are null if they were not asked for. `findings` also say what was left out of them.
    """

    version: int
    job: str
    unit: Unit
    measuring_rule: str
    rooms: tuple[RoomEntry, ...]
    faces: tuple[FaceEntry, ...]
    parts: tuple[PartEntry, ...]
    edges: tuple[EdgeEntry, ...]
    joints: tuple[JointEntry, ...]
    masking: tuple[MaskingEntry, ...]
    totals: TotalsEntry
    findings: tuple[FindingEntry, ...]
    tiles: tuple[TilesEntry, ...]
    tolerances: TolerancesEntry | None
    needs: NeedsEntry | None
    basket: BasketEntry | None


def takeoff_json(takeoff: Takeoff, job: Job, bill: Bill | None = None) -> bytes:
    """The takeoff of a job as JSON: UTF-8, indented, a line feed at the end."""
    return msgspec.json.format(msgspec.json.encode(_entries(takeoff, job, bill)), indent=1) + b"\n"


def takeoff_schema() -> dict[str, Any]:
    """The JSON Schema of the takeoff, which is published in `data/takeoff.schema.json`."""
    return json_schema(TakeoffEntry, f"Recoat takeoff, version {VERSION}")


def _entries(takeoff: Takeoff, job: Job, bill: Bill | None) -> TakeoffEntry:
    findings = (*takeoff.findings, *(bill.findings if bill else ()))
    return TakeoffEntry(
        version=VERSION,
        job=job.name,
        unit=job.unit,
        measuring_rule=takeoff.rule,
        rooms=tuple(RoomEntry(room.id, room.name) for room in job.rooms),
        faces=tuple(
            FaceEntry(face.id, face.name, room.id, face.view, face.tag_letter)
            for room in job.rooms
            for face in room.faces
        ),
        parts=_part_entries(takeoff),
        edges=tuple(EdgeEntry(row.face, row.parts, row.opening, row.length_mm) for row in takeoff.edges),
        joints=_joint_entries(takeoff),
        masking=tuple(MaskingEntry(row.face, row.parts, row.name, row.length_mm.amount) for row in takeoff.masking),
        totals=_totals_entry(takeoff),
        findings=tuple(FindingEntry(*finding[:4]) for finding in findings),
        tiles=_tiles_entries(takeoff),
        tolerances=_tolerances_entry(takeoff.sure, job) if takeoff.sure else None,
        needs=needs_entry(bill, job) if bill else None,
        basket=basket_entry(bill, job) if bill else None,
    )


def _part_entries(takeoff: Takeoff) -> tuple[PartEntry, ...]:
    off_mm2 = dict(takeoff.sure.parts) if takeoff.sure else {}
    return tuple(
        PartEntry(*row[:8], row.gross_mm2.amount, row.net_mm2.amount, row.coated_mm2.amount, off_mm2.get(row.id))
        for row in takeoff.parts
    )


def _joint_entries(takeoff: Takeoff) -> tuple[JointEntry, ...]:
    return tuple(
        JointEntry(
            face=row.face,
            next_face=row.next_face or None,
            parts=row.parts,
            name=row.name,
            section=row.section,
            sealant=row.sealant,
            sealed=row.sealed,
            old_bead=row.old_bead,
            length_mm=row.length_mm.amount,
        )
        for row in takeoff.joints
    )


def _tolerances_entry(sure: Sureness, job: Job) -> TolerancesEntry:
    return TolerancesEntry(
        tape=job.tape,
        coated_area_m2=sure.coated_mm2 / MM2_IN_A_SQUARE_METRE,
        masking_m=sure.masking_mm / MM_IN_A_METRE,
        bead_m=sure.bead_mm / MM_IN_A_METRE,
        old_bead_m=sure.old_bead_mm / MM_IN_A_METRE,
        grout_m=sure.grout_mm / MM_IN_A_METRE,
    )


def _tiles_entries(takeoff: Takeoff) -> tuple[TilesEntry, ...]:
    return tuple(
        TilesEntry(row.part, row.whole, row.cut, row.grout_width_mm, row.grout_mm.amount) for row in takeoff.tiles
    )


def _totals_entry(takeoff: Takeoff) -> TotalsEntry:
    totals = takeoff.totals
    return TotalsEntry(
        coated_area_m2=totals.coated_mm2 / MM2_IN_A_SQUARE_METRE,
        masking_m=totals.masking_mm / MM_IN_A_METRE,
        bead_m=totals.bead_mm / MM_IN_A_METRE,
        old_bead_m=totals.old_bead_mm / MM_IN_A_METRE,
        fronts=totals.fronts,
        grout_m=totals.grout_mm / MM_IN_A_METRE,
    )
