"""Why every figure is what it is, as text for a terminal: its sum down to parts and readings, its rule and source."""

from collections.abc import Iterator

from shared.job import Face, Job
from shared.plain_text import one_line
from shared.written.writing import Writing
from takeoff.bill import Bill
from takeoff.figures.measured import PartRow, Takeoff
from takeoff.figures.naming import Names
from takeoff.tables.basket_why import row_lines, why_of_bill
from takeoff.why.figures import bead_row, length_row, part_rows

INDENT = "  "


def why_text(takeoff: Takeoff, job: Job, bill: Bill) -> str:
    """All figures, each with its sum beneath it, and a line feed at the end. An empty job has its name only."""
    names = Names(job)
    sections = (
        [one_line(job.name)],
        *(list(_face(face, takeoff, job, names)) for face in job.faces),
        list(_joints(takeoff, job, names)),
        list(_masking(takeoff, job, names)),
        list(_tiles(takeoff, job, names)),
        list(_totals(takeoff, job)),
        *why_of_bill(takeoff, job, bill),
    )
    return "\n\n".join("\n".join(map(one_line, lines)) for lines in sections if lines) + "\n"


def _face(face: Face, takeoff: Takeoff, job: Job, names: Names) -> Iterator[str]:
    rows = [row for row in takeoff.parts if row.face == face.id]
    if rows or face.readings:
        yield f"{names.room_of(face.id)}  {names.face(face.id)}"
    for reading in face.readings:
        length = Writing(job.unit).length_with_unit(reading.length_mm)
        yield f"{INDENT}read {reading.way}, {reading.start} to {reading.end}: {length}"
    for row in rows:
        yield from _part(row, job, names)


def _part(row: PartRow, job: Job, names: Names) -> Iterator[str]:
    yield f"{INDENT}{f'{row.tag} ' if row.tag else ''}{names.part(row.id)}"
    for each in part_rows(row, Writing(job.unit)):
        yield from row_lines(each, 2)


def _joints(takeoff: Takeoff, job: Job, names: Names) -> Iterator[str]:
    writing = Writing(job.unit)
    if takeoff.joints:
        yield "Joints"
    for row in takeoff.joints:
        section = writing.section(row.section) if row.sealed else "switched off"
        old = ", old bead cut out" if row.sealed and row.old_bead else ""
        where = f"{names.room_of(row.face)} {names.faces((row.face, row.next_face))}"
        length = length_row(f"{where}: {row.name}, {section}{old}", row.length_mm, writing)
        yield from row_lines(length._replace(children=(*length.children, bead_row(row.section, writing))))


def _masking(takeoff: Takeoff, job: Job, names: Names) -> Iterator[str]:
    if takeoff.masking:
        yield "Masking"
    for row in takeoff.masking:
        where = f"{names.room_of(row.face)} {names.face(row.face)}"
        yield from row_lines(length_row(f"{where}: {row.name}", row.length_mm, Writing(job.unit)))


def _tiles(takeoff: Takeoff, job: Job, names: Names) -> Iterator[str]:
    if takeoff.tiles:
        yield "Tiles"
    for row in takeoff.tiles:
        where = f"{names.room_of(row.face)} {names.face(row.face)}: {names.part(row.part)}"
        words = f"{where}, {row.whole} whole, {row.cut} cut, grout"
        yield from row_lines(length_row(words, row.grout_mm, Writing(job.unit)))


def _totals(takeoff: Takeoff, job: Job) -> Iterator[str]:
    """The totals, each the sum of figures above."""
    if not takeoff.parts:
        return
    sealed = [row for row in takeoff.joints if row.sealed]
    totals, writing = takeoff.totals, Writing(job.unit)
    yield "Totals, of one of each of the rooms alike"
    yield f"{INDENT}coat {writing.area_in_sum(totals.coated_mm2)}: the sum of the coat of {len(takeoff.parts)} parts"
    masked = writing.total_length(totals.masking_mm)
    yield f"{INDENT}mask {masked}: the sum of {len(takeoff.masking)} lengths of masking"
    yield f"{INDENT}bead {writing.total_length(totals.bead_mm)}: the sum of {len(sealed)} joints that are sealed"
    old = sum(row.old_bead for row in sealed)
    yield f"{INDENT}old bead {writing.total_length(totals.old_bead_mm)}: the sum of {old} joints with an old bead"
    yield f"{INDENT}grout {writing.total_length(totals.grout_mm)}: the sum of {len(takeoff.tiles)} tiled parts"
    yield f"{INDENT}fronts {totals.fronts}: the doors and drawer fronts that are coated"
