"""The takeoff: measured quantities, each with the parts, the rule and the sum behind it.

Lengths are in millimetres and areas in square millimetres. `shared.written.units` writes them for a person.
"""

from enum import StrEnum
from typing import NamedTuple

from shared.findings import Finding
from shared.job import Section
from shared.trade.kinds import Kind, Treatment


class Fronts(StrEnum):
    """The two arrangements of a face: as it is shown, with its fronts hung, and as it is worked on, with them off."""

    HUNG = "hung"
    OFF = "off"


class Term(NamedTuple):
    """One term of a sum: it adds its `amount`, or deducts it where the amount is negative.

    `what` says what the term is: "width x height", "less outlet", "edges, length x thickness". `factors` are the
    lengths, in mm, whose product, multiplied by `times` (a profile factor), is the size of the amount. A term that is
    no plain product has no factors. `parts` are the ids of the parts that the term was measured from.
    """

    what: str
    amount: float
    factors: tuple[float, ...] = ()
    parts: tuple[str, ...] = ()
    times: float = 1.0


class Reason(NamedTuple):
    """Why a figure is what it is: its rule and source, the arrangement it was measured in, and the terms of its sum."""

    rule: str
    source: str
    fronts: Fronts
    terms: tuple[Term, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The ids of all parts in the sum, each once, in the order of the terms."""
        return tuple(dict.fromkeys(part for term in self.terms for part in term.parts))


class Figure(NamedTuple):
    """An amount and the reason whose terms sum to it: a length in mm, an area in mm2, or a number."""

    amount: float
    reason: Reason


class PartRow(NamedTuple):
    """The areas of one part.

    `room`, `face` and `finish` are ids. `finish` is "" for a part without one, and `tag` is "" for all but fronts.
    """

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
    """One edge of a face with the fronts off: a piece of boundary between two parts, or between a part and no part.

    The second of `parts` is None if the edge borders on the outside of the face or on an opening (window, outlet,
    cut-out). `opening` is the id of that opening, None for an edge without one. The edge runs from `start` to `end`, in
    mm on the face; `bulge` is that of its arc, 0 for a straight edge.
    """

    face: str
    parts: tuple[str, str | None]
    start: tuple[float, float]
    end: tuple[float, float]
    bulge: float
    length_mm: float
    opening: str | None = None


class JointRow(NamedTuple):
    """The joint between two parts of one face, or between parts of two faces. An opening counts as a part here.

    Two faces meet up an inside corner, or along a tied side of a plan whose elevation does not show the joint.
    `next_face` is the second face, "" for a joint within one face. `sealed` is False for a joint that a person switched
    off; its length is in no total. `path` holds the pieces of the joint as they lie on `face`.
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
    """The masking between two parts of a face, or between a part and the outside (None).

    An opening counts as a part here.
    """

    face: str
    parts: tuple[str, str | None]
    name: str
    length_mm: Figure
    path: tuple[EdgeRow, ...]


class TileRow(NamedTuple):
    """The tiles of one part: how many are whole, how many are cut, and the length and width of the grout lines."""

    part: str
    room: str
    face: str
    name: str
    whole: int
    cut: int
    grout_width_mm: float
    grout_mm: Figure


class Totals(NamedTuple):
    """The totals of a takeoff: areas in mm2, lengths in mm.

    `fronts` is how many doors and drawer fronts are coated, whether in place or taken off. `grout_mm` is the length of
    the grout lines of all tiled parts.
    """

    coated_mm2: float
    masking_mm: float
    bead_mm: float
    old_bead_mm: float
    fronts: int
    grout_mm: float = 0.0


class Sureness(NamedTuple):
    """The tolerance of the totals: how far each could be off because of the tape, in mm2 or mm.

    `parts` gives the tolerance of the coated area of each part, in mm2, with the part's id.
    """

    coated_mm2: float = 0.0
    masking_mm: float = 0.0
    bead_mm: float = 0.0
    old_bead_mm: float = 0.0
    grout_mm: float = 0.0
    parts: tuple[tuple[str, float], ...] = ()

    @property
    def lengths(self) -> tuple[tuple[str, float], ...]:
        """The tolerances of the totals that are lengths, with their names. Grout is left out if its tolerance is 0."""
        known = (("masking", self.masking_mm), ("bead", self.bead_mm), ("old bead", self.old_bead_mm))
        return (*known, ("grout", self.grout_mm)) if self.grout_mm else known


class Takeoff(NamedTuple):
    """Everything counted of a job, in the order of its rooms, faces and parts.

    `rule` names the measuring rule. `sure` holds the tolerances; None if nobody asked for them.
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
