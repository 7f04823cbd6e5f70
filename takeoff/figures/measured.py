"""The takeoff: measured quantities, each with the parts, the rule and the sum behind it.

Millimetres and square millimetres; a reader turns them into what a person sees (`shared.written.units`).
"""

from enum import StrEnum
from typing import NamedTuple

from shared.findings import Finding
from shared.job import Section
from shared.trade.kinds import Kind, Treatment


class Fronts(StrEnum):
    """The two arrangements of a face: as shown, with fronts hung; as worked on, without what is taken off."""

    HUNG = "hung"
    OFF = "off"


class Term(NamedTuple):
    """One step of a sum: `amount` (signed) is what it adds.

    `factors` are lengths (mm) that multiply, `times` over (a profile factor), to its size, or are empty where it is no
    plain product. `what` says what it is ("width x height",
    "less outlet", "edges, length x thickness") and `parts` whom it comes from.
    """

    what: str
    amount: float
    factors: tuple[float, ...] = ()
    parts: tuple[str, ...] = ()
    times: float = 1.0


class Reason(NamedTuple):
    """Why a figure is what it is: the rule and its source, the arrangement it was measured in, the terms of its sum."""

    rule: str
    source: str
    fronts: Fronts
    terms: tuple[Term, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The ids of all parts in the sum, each once, in order."""
        return tuple(dict.fromkeys(part for term in self.terms for part in term.parts))


class Figure(NamedTuple):
    """A quantity (mm for lengths, mm2 for areas) and its reason; the terms of the reason sum to the amount."""

    amount: float
    reason: Reason


class PartRow(NamedTuple):
    """One part, counted. `room`, `face` and `finish` are ids, "" for no finish; `tag` is that of a front, else ""."""

    id: str
    room: str
    face: str
    name: str
    kind: Kind
    treatment: Treatment
    finish: str
    tag: str
    gross_mm2: Figure
    net_mm2: Figure
    coated_mm2: Figure


class EdgeRow(NamedTuple):
    """One edge with the fronts off: a piece of boundary between two parts, or between one and no part (None).

    Where there is no part there is the outside of the face, or an `opening` (window, outlet, cut-out), named by its id.
    From `start` to `end`, with a bulge.
    """

    face: str
    parts: tuple[str, str | None]
    start: tuple[float, float]
    end: tuple[float, float]
    bulge: float
    length_mm: float
    opening: str | None = None


class JointRow(NamedTuple):
    """All that is sealed between two parts of a face, or between parts of two faces (`next_face`, else "").

    Two faces meet up an inside corner, or along a tied side of a plan whose elevation does not show the joint. An
    opening counts as a part here. `sealed` is False where a person switched it off; its length counts for nothing
    then. `path` are its pieces, as on `face`.
    """

    face: str
    next_face: str
    parts: tuple[str, str]
    name: str
    section: Section
    sealant: str
    sealed: bool
    old_bead: bool
    length_mm: Figure
    path: tuple[EdgeRow, ...]


class MaskingRow(NamedTuple):
    """All that is taped between two parts of a face (an opening counts as one), or a part and the outside (None)."""

    face: str
    parts: tuple[str, str | None]
    name: str
    length_mm: Figure
    path: tuple[EdgeRow, ...]


class TileRow(NamedTuple):
    """The tiles of one part: how many are whole and how many cut, and its grout lines, `grout_width_mm` wide."""

    part: str
    room: str
    face: str
    name: str
    whole: int
    cut: int
    grout_width_mm: float
    grout_mm: Figure


class Totals(NamedTuple):
    """The running totals: mm2, mm, and how many doors and drawer fronts are coated, in place or taken off.

    `grout_mm` are the grout lines of all tiled parts.
    """

    coated_mm2: float
    masking_mm: float
    bead_mm: float
    old_bead_mm: float
    fronts: int
    grout_mm: float = 0.0


class Sureness(NamedTuple):
    """How far the totals, mm2 and mm, could be off because of the tape, and the coated area of each part, by its id."""

    coated_mm2: float = 0.0
    masking_mm: float = 0.0
    bead_mm: float = 0.0
    old_bead_mm: float = 0.0
    grout_mm: float = 0.0
    parts: tuple[tuple[str, float], ...] = ()

    @property
    def lengths(self) -> tuple[tuple[str, float], ...]:
        """How far the totals that are lengths could be off, by their names; grout only where there is some."""
        known = (("masking", self.masking_mm), ("bead", self.bead_mm), ("old bead", self.old_bead_mm))
        return (*known, ("grout", self.grout_mm)) if self.grout_mm else known


class Takeoff(NamedTuple):
    """Everything counted of a job, in the order of its rooms, faces and parts; `rule` names the measuring rule.

    `sure` says how far that could be off, where it was asked for.
    """

    parts: tuple[PartRow, ...]
    edges: tuple[EdgeRow, ...]
    joints: tuple[JointRow, ...]
    masking: tuple[MaskingRow, ...]
    totals: Totals
    findings: tuple[Finding, ...]
    rule: str = "net"
    tiles: tuple[TileRow, ...] = ()
    sure: Sureness | None = None
