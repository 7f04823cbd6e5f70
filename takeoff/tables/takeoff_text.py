"""The takeoff as text for a terminal: areas by finish, joints by section, masking, tiles, tolerances and totals."""

from collections.abc import Iterable, Iterator, Sequence

from shared.job import Job
from shared.plain_text import one_line
from shared.written.writing import Writing
from takeoff.figures.measured import JointRow, MaskingRow, PartRow, Takeoff
from takeoff.figures.naming import Names
from takeoff.surfaces.by_finish import FinishTotal, totals_by_finish
from takeoff.surfaces.measuring_rules import measured_by

WORDS_WIDTH = 52
FIGURE_WIDTH = 12


def takeoff_text(takeoff: Takeoff, job: Job) -> str:
    """The takeoff in lines of at most 100 characters, with a line feed at the end. Names that are too long are cut."""
    sections = (
        _areas(takeoff, job),
        _joints(takeoff, job),
        _masking(takeoff, job),
        _tiles(takeoff, job),
        _sureness(takeoff, job),
        _totals(takeoff, job),
    )
    return "\n\n".join("\n".join(lines) for lines in sections if lines) + "\n"


def _areas(takeoff: Takeoff, job: Job) -> list[str]:
    names = Names(job)
    lines = [_line(one_line(job.name), "gross", "net", "coated")]
    for total in totals_by_finish(takeoff):
        lines += _finish_lines(total, job, names)
    return [*lines, measured_by(takeoff.rule)]


def _finish_lines(total: FinishTotal, job: Job, names: Names) -> Iterator[str]:
    writing = Writing(job.unit)
    sums = (total.gross_mm2, total.net_mm2, total.coated_mm2)
    yield _line(names.finish(total.finish), *(writing.area(amount) for amount in sums))
    for row in total.rows:
        amounts = (row.gross_mm2.amount, row.net_mm2.amount, row.coated_mm2.amount)
        yield _line(f"  {_part_words(row, names)}", *(writing.area(amount) for amount in amounts))


def _part_words(row: PartRow, names: Names) -> str:
    """The words for a part: its room, its face or tag, and its name."""
    place = row.tag or names.face(row.face)
    return f"{names.room(row.room)}  {place}  {names.part(row.id)}"


def _joints(takeoff: Takeoff, job: Job) -> list[str]:
    writing = Writing(job.unit)
    gathered: dict[tuple[str, str], list[JointRow]] = {}
    for row in takeoff.joints:
        if row.sealed:
            gathered.setdefault((row.name, writing.section(row.section)), []).append(row)
    if not gathered:
        return []
    lines = [_line("Joints", "section", "old bead", "new bead")]
    for (name, section), rows in gathered.items():
        old = writing.total_length(_sum(row for row in rows if row.old_bead))
        lines.append(_line(f"  {name}", section, old, writing.total_length(_sum(rows))))
    totals = takeoff.totals
    return [
        *lines,
        _line("All beads", "", writing.total_length(totals.old_bead_mm), writing.total_length(totals.bead_mm)),
    ]


def _masking(takeoff: Takeoff, job: Job) -> list[str]:
    writing = Writing(job.unit)
    if not takeoff.masking:
        return []
    names = Names(job)
    gathered: dict[str, list[MaskingRow]] = {}
    for row in takeoff.masking:
        gathered.setdefault(row.face, []).append(row)
    lines = [_line("Masking", "", "", "length")]
    for face, rows in gathered.items():
        where = f"  {names.room_of(face)}  {names.face(face)}"
        lines.append(_line(where, "", "", writing.total_length(_sum(rows))))
    return [*lines, _line("All masking", "", "", writing.total_length(takeoff.totals.masking_mm))]


def _tiles(takeoff: Takeoff, job: Job) -> list[str]:
    writing = Writing(job.unit)
    if not takeoff.tiles:
        return []
    names = Names(job)
    lines = [_line("Tiles", "whole", "cut", "grout")]
    for row in takeoff.tiles:
        where = f"  {names.room(row.room)}  {names.face(row.face)}  {names.part(row.part)}"
        lines.append(_line(where, str(row.whole), str(row.cut), writing.total_length(row.grout_mm.amount)))
    return [*lines, _line("All grout", "", "", writing.total_length(takeoff.totals.grout_mm))]


def _sureness(takeoff: Takeoff, job: Job) -> list[str]:
    writing = Writing(job.unit)
    if takeoff.sure is None:
        return []
    lengths = (f"{name} {writing.off_length(length_mm)}" for name, length_mm in takeoff.sure.lengths)
    area = f"coated {writing.off_area(takeoff.sure.coated_mm2)}"
    return [f"Tolerance (class {job.tape} tape):", "  " + "   ".join((area, *lengths))]


def _totals(takeoff: Takeoff, job: Job) -> list[str]:
    writing = Writing(job.unit)
    totals = takeoff.totals
    count = len(takeoff.findings)
    figures = (
        f"Coated {writing.area(totals.coated_mm2)}",
        f"masked {writing.total_length(totals.masking_mm)}",
        f"bead {writing.total_length(totals.bead_mm)}",
        f"old bead {writing.total_length(totals.old_bead_mm)}",
        f"fronts {totals.fronts}",
        f"things to look at {count}",
    )
    return ["   ".join(figures)]


def _sum(rows: Iterable[JointRow | MaskingRow]) -> float:
    return sum(row.length_mm.amount for row in rows)


def _line(words: str, *figures: str) -> str:
    words = one_line(words)
    cut = words if len(words) <= WORDS_WIDTH else words[: WORDS_WIDTH - 1] + "…"
    return (cut.ljust(WORDS_WIDTH) + _columns(figures)).rstrip()


def _columns(figures: Sequence[str]) -> str:
    return "".join(figure.rjust(FIGURE_WIDTH) for figure in figures)
