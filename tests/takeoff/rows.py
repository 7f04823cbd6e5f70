"""Finding rows of a takeoff."""

from shared.job import Face, Job, Part, Room
from takeoff.figures.measured import JointRow, PartRow, Takeoff


def job_of(*faces: Face) -> Job:
    return Job("Quince Lane 2", rooms=(Room("r", "Kitchen", faces),))


def face_of(*parts: Part) -> Face:
    return Face("a", "A", parts=parts)


def part_row(takeoff: Takeoff, part: str) -> PartRow:
    return next(row for row in takeoff.parts if row.id == part)


def joint_row(takeoff: Takeoff, *parts: str) -> JointRow:
    return next(row for row in takeoff.joints if set(row.parts) == set(parts))


def bead_mm(takeoff: Takeoff, *parts: str) -> float:
    return sum(row.length_mm.amount for row in takeoff.joints if set(row.parts) == set(parts) and row.sealed)


def masked_mm(takeoff: Takeoff, *parts: str | None) -> float:
    return sum(row.length_mm.amount for row in takeoff.masking if set(row.parts) == set(parts))


def codes(takeoff: Takeoff) -> list[str]:
    return [finding.code for finding in takeoff.findings]
