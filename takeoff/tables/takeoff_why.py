"""Why every figure is what it is, as text for a terminal: its sum down to parts and readings, its rule and source."""

from collections.abc import Callable, Iterator

from shared.job import Face, Job, Unit
from shared.written.units import length_words, show_area, show_run
from takeoff.bill import Bill
from takeoff.figures.measured import Figure, Fronts, PartRow, Takeoff, Term
from takeoff.figures.naming import Names, section_words
from takeoff.tables.basket_why import why_of_bill
from takeoff.tables.takeoff_text import one_line

INDENT = "  "

Show = Callable[[float, Unit], str]
"""How an amount is shown, with its unit."""


def why_text(takeoff: Takeoff, job: Job, bill: Bill) -> str:
    """All figures, each with its sum beneath it, a line feed at the end; an empty job has its name only."""
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


def figure_lines(name: str, figure: Figure, unit: Unit, show: Show, deep: int = 1) -> Iterator[str]:
    """A figure, the terms of its sum beneath it, then its rule and where that comes from."""
    reason, inside = figure.reason, INDENT * (deep + 1)
    hung = "fronts hung" if reason.fronts is Fronts.HUNG else "fronts off"
    yield f"{INDENT * deep}{name} {show(figure.amount, unit)}, {hung}"
    for term in reason.terms:
        yield f"{inside}{_term(term, unit, show)}"
    yield f"{inside}rule: {reason.rule}{f' ({reason.source})' if reason.source else ''}"


def fine_area(area_mm2: float, unit: Unit) -> str:
    """An area as a step of a sum, so that the steps add up as they are read."""
    return show_area(area_mm2, unit, fine=True)


def run(length_mm: float, unit: Unit) -> str:
    """A length that was added up."""
    return show_run(length_mm, unit)


def _term(term: Term, unit: Unit, show: Show) -> str:
    """One step of a sum: "outline, width x height: 3600 x 600 = 2.160 m2"."""
    lengths = [length_words(factor, unit) for factor in term.factors]
    factors = [*lengths, *([f"{term.times:g}"] if lengths and term.times != 1 else [])]
    product = f"{' x '.join(factors)} = " if factors else ""
    return f"{term.what}: {product}{show(term.amount, unit)}"


def _face(face: Face, takeoff: Takeoff, job: Job, names: Names) -> Iterator[str]:
    rows = [row for row in takeoff.parts if row.face == face.id]
    if rows or face.readings:
        yield f"{names.room_of(face.id)}  {names.face(face.id)}"
    for reading in face.readings:
        length = length_words(reading.length_mm, job.unit)
        yield f"{INDENT}read {reading.way}, {reading.start} to {reading.end}: {length}"
    for row in rows:
        yield from _part(row, job, names)


def _part(row: PartRow, job: Job, names: Names) -> Iterator[str]:
    yield f"{INDENT}{f'{row.tag} ' if row.tag else ''}{names.part(row.id)}"
    for name, figure in (("gross", row.gross_mm2), ("net", row.net_mm2), ("coat", row.coated_mm2)):
        yield from figure_lines(name, figure, job.unit, fine_area, 2)


def _joints(takeoff: Takeoff, job: Job, names: Names) -> Iterator[str]:
    if takeoff.joints:
        yield "Joints"
    for row in takeoff.joints:
        section = section_words(row.section, job.unit) if row.sealed else "switched off"
        old = ", old bead cut out" if row.sealed and row.old_bead else ""
        where = f"{names.room_of(row.face)} {names.faces((row.face, row.next_face))}"
        yield from figure_lines(f"{where}: {row.name}, {section}{old},", row.length_mm, job.unit, run)


def _masking(takeoff: Takeoff, job: Job, names: Names) -> Iterator[str]:
    if takeoff.masking:
        yield "Masking"
    for row in takeoff.masking:
        where = f"{names.room_of(row.face)} {names.face(row.face)}"
        yield from figure_lines(f"{where}: {row.name},", row.length_mm, job.unit, run)


def _tiles(takeoff: Takeoff, job: Job, names: Names) -> Iterator[str]:
    if takeoff.tiles:
        yield "Tiles"
    for row in takeoff.tiles:
        where = f"{names.room_of(row.face)} {names.face(row.face)}: {names.part(row.part)}"
        yield from figure_lines(f"{where}, {row.whole} whole, {row.cut} cut, grout", row.grout_mm, job.unit, run)


def _totals(takeoff: Takeoff, job: Job) -> Iterator[str]:
    """The totals, each the sum of figures above."""
    if not takeoff.parts:
        return
    sealed = [row for row in takeoff.joints if row.sealed]
    totals, unit = takeoff.totals, job.unit
    yield "Totals, of one of each of the rooms alike"
    yield f"{INDENT}coat {fine_area(totals.coated_mm2, unit)}: the sum of the coat of {len(takeoff.parts)} parts"
    yield f"{INDENT}mask {run(totals.masking_mm, unit)}: the sum of {len(takeoff.masking)} lengths of masking"
    yield f"{INDENT}bead {run(totals.bead_mm, unit)}: the sum of {len(sealed)} joints that are sealed"
    old = sum(row.old_bead for row in sealed)
    yield f"{INDENT}old bead {run(totals.old_bead_mm, unit)}: the sum of {old} joints with an old bead"
    yield f"{INDENT}grout {run(totals.grout_mm, unit)}: the sum of {len(takeoff.tiles)} tiled parts"
    yield f"{INDENT}fronts {totals.fronts}: the doors and drawer fronts that are coated"
