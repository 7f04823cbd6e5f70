"""The takeoff as a spreadsheet with live totals: they follow when a person changes an area or a length."""

from pathlib import Path

from msgspec.structs import replace

from shared.files.disk import write_atomically
from shared.job import Job
from shared.written.units import area_in, large_unit, length_in
from shared.written.writing import Writing
from takeoff.bill import Bill
from takeoff.figures.measured import JointRow, MaskingRow, PartRow, Sureness, Takeoff, TileRow
from takeoff.figures.naming import Names
from takeoff.surfaces.by_finish import totals_by_finish
from takeoff.surfaces.materials import material_of
from takeoff.surfaces.measuring_rules import measured_by
from takeoff.tables.basket_xlsx import bill_worksheets
from takeoff.tables.worksheets import Live, Row, Worksheet, book_bytes, cells_of, told_apart

ALIKE = "Rooms alike"


def write_xlsx(takeoff: Takeoff, job: Job, path: Path, bill: Bill | None = None) -> None:
    """Write the takeoff, and the bill if there is one, to a spreadsheet file.

    Its worksheets are Areas, Joints, Masking, Tiles (if there are some), Totals, Tolerance (if it was asked for), and
    those of the bill. FileError if writing fails; the file is then as it was.
    """
    write_atomically(path, xlsx_bytes(takeoff, job, bill))


def xlsx_bytes(takeoff: Takeoff, job: Job, bill: Bill | None = None) -> bytes:
    """The spreadsheet as the content of a file. Every name is written as text, whatever it begins with."""
    return book_bytes(_worksheets(takeoff, with_names_told_apart(job), bill))


def with_names_told_apart(job: Job) -> Job:
    """The job with its rooms and finishes named so that a spreadsheet can tell them apart."""
    rooms = told_apart({room.id: room.name for room in job.rooms})
    finishes = told_apart({finish.id: finish.name for finish in job.finishes})
    return replace(
        job,
        rooms=tuple(replace(room, name=rooms[room.id]) for room in job.rooms),
        finishes=tuple(replace(finish, name=finishes[finish.id]) for finish in job.finishes),
    )


def _worksheets(takeoff: Takeoff, job: Job, bill: Bill | None) -> tuple[Worksheet, ...]:
    names = Names(job)
    return (
        _areas(takeoff, job, names),
        _joints(takeoff, job, names),
        _masking(takeoff, job, names),
        *((_tiles(takeoff, job, names),) if takeoff.tiles else ()),
        _totals(takeoff, job, names),
        *((_sureness(takeoff, takeoff.sure, job, names),) if takeoff.sure else ()),
        *(bill_worksheets(takeoff, job, bill) if bill and bill.needs.wanted else ()),
    )


def _areas(takeoff: Takeoff, job: Job, names: Names) -> Worksheet:
    unit = f"{large_unit(job.unit)}2"
    made_of = {part.id: material_of(part) or "" for face in job.faces for part in face.parts}
    words = ("Room", "Face", "Tag", "Part", "Kind", "Finish", "Treatment")
    rows = tuple(_area_row(row, job, names, made_of[row.id]) for row in takeoff.parts)
    headings = (*words, f"Gross {unit}", f"Net {unit}", f"Coated {unit}", "Made of", ALIKE)
    return Worksheet("Areas", headings, (14, 8, 6, 28, 12, 24, 11, 10, 10, 10, 10, 12), rows)


def _area_row(row: PartRow, job: Job, names: Names, made_of: str) -> Row:
    place = (names.room(row.room), names.face(row.face), row.tag, names.part(row.id))
    coating = (names.finish(row.finish) if row.finish else "", row.treatment.words)
    areas = (area_in(each.amount, job.unit) for each in (row.gross_mm2, row.net_mm2, row.coated_mm2))
    return (*place, row.kind.value, *coating, *areas, made_of, float(names.alike(row.face)))


def _joints(takeoff: Takeoff, job: Job, names: Names) -> Worksheet:
    words = ("Room", "Faces", "Joint", "Between", "And", "Section", "Sealant", "Sealed", "Old bead")
    rows = tuple(_joint_row(row, job, names) for row in takeoff.joints)
    headings = (*words, f"Length {large_unit(job.unit)}", ALIKE)
    return Worksheet("Joints", headings, (14, 8, 26, 24, 24, 14, 18, 8, 9, 10, 12), rows)


def _joint_row(row: JointRow, job: Job, names: Names) -> Row:
    place = (names.room_of(row.face), names.faces((row.face, row.next_face)), row.name)
    bead = (Writing(job.unit).section(row.section), row.sealant, _yes(row.sealed), _yes(row.old_bead))
    length = length_in(row.length_mm.amount, job.unit)
    return (*place, *map(names.part, row.parts), *bead, length, float(names.alike(row.face)))


def _masking(takeoff: Takeoff, job: Job, names: Names) -> Worksheet:
    rows = tuple(_masking_row(row, job, names) for row in takeoff.masking)
    headings = ("Room", "Face", "Masking", "Between", "And", f"Length {large_unit(job.unit)}", ALIKE)
    return Worksheet("Masking", headings, (14, 8, 36, 24, 24, 10, 12), rows)


def _masking_row(row: MaskingRow, job: Job, names: Names) -> Row:
    place = (names.room_of(row.face), names.face(row.face), row.name)
    length = length_in(row.length_mm.amount, job.unit)
    return (*place, *map(names.part, row.parts), length, float(names.alike(row.face)))


def _tiles(takeoff: Takeoff, job: Job, names: Names) -> Worksheet:
    rows = tuple(_tile_row(row, job, names) for row in takeoff.tiles)
    headings = ("Room", "Face", "Part", "Whole tiles", "Cut tiles", f"Grout {large_unit(job.unit)}")
    return Worksheet("Tiles", headings, (14, 8, 28, 12, 12, 10), rows)


def _tile_row(row: TileRow, job: Job, names: Names) -> Row:
    place = (names.room(row.room), names.face(row.face), names.part(row.part))
    return (*place, float(row.whole), float(row.cut), length_in(row.grout_mm.amount, job.unit))


def _totals(takeoff: Takeoff, job: Job, names: Names) -> Worksheet:
    areas, unit = f"{large_unit(job.unit)}2", large_unit(job.unit)
    totals = takeoff.totals
    finishes = _finish_totals(takeoff, job, names)
    coated = Live(f"=SUM({cells_of('Areas', 'J', takeoff.parts)})", area_in(totals.coated_mm2, job.unit))
    sealed, old = cells_of("Joints", "H", takeoff.joints), cells_of("Joints", "I", takeoff.joints)
    lengths, taped = cells_of("Joints", "J", takeoff.joints), cells_of("Masking", "F", takeoff.masking)
    rows: tuple[Row, ...] = (
        *finishes,
        (f"All coated {areas}", "", "", coated),
        (f"Masking {unit}", "", "", Live(f"=SUM({taped})", length_in(totals.masking_mm, job.unit))),
        (f"Bead {unit}", "", "", Live(f'=SUMPRODUCT(({sealed}="yes")*{lengths})', length_in(totals.bead_mm, job.unit))),
        (
            f"Old bead {unit}",
            *("", ""),
            Live(f'=SUMPRODUCT(({sealed}="yes")*({old}="yes")*{lengths})', length_in(totals.old_bead_mm, job.unit)),
        ),
        ("Fronts", "", "", float(totals.fronts)),
        *_grout_total(takeoff, job),
        (measured_by(takeoff.rule),),
    )
    return Worksheet("Totals", ("What", f"Gross {areas}", f"Net {areas}", "Total"), (32, 10, 10, 10), rows)


def _sureness(takeoff: Takeoff, sure: Sureness, job: Job, names: Names) -> Worksheet:
    """The worksheet of how far the totals, and the coated area of each part, could be off because of the tape."""
    areas, unit = f"{large_unit(job.unit)}2", large_unit(job.unit)
    off_mm2 = dict(sure.parts)
    rows: tuple[Row, ...] = (
        ("", "", "all coated", areas, area_in(sure.coated_mm2, job.unit)),
        *(("", "", name, unit, length_in(length_mm, job.unit)) for name, length_mm in sure.lengths),
        *(
            (names.room(row.room), names.face(row.face), names.part(row.id), areas, area_in(off_mm2[row.id], job.unit))
            for row in takeoff.parts
            if off_mm2.get(row.id)
        ),
    )
    headings = ("Room", "Face", "What", "Unit", f"Tolerance (class {job.tape} tape)")
    return Worksheet("Tolerance", headings, (14, 8, 28, 6, 32), rows)


def _grout_total(takeoff: Takeoff, job: Job) -> tuple[Row, ...]:
    if not takeoff.tiles:
        return ()
    total = Live(f"=SUM({cells_of('Tiles', 'F', takeoff.tiles)})", length_in(takeoff.totals.grout_mm, job.unit))
    return ((f"Grout {large_unit(job.unit)}", "", "", total),)


def _finish_totals(takeoff: Takeoff, job: Job, names: Names) -> tuple[Row, ...]:
    """A row of totals for each finish. Its formulas compare whole names, so a name like ">5" is no condition."""
    finish = cells_of("Areas", "F", takeoff.parts)
    rows: list[Row] = []
    for number, total in enumerate(totals_by_finish(takeoff), 2):
        sums = zip("HIJ", (total.gross_mm2, total.net_mm2, total.coated_mm2), strict=True)
        cells = (
            Live(
                f"=SUMPRODUCT(({finish}=A{number})*{cells_of('Areas', column, takeoff.parts)})", area_in(mm2, job.unit)
            )
            for column, mm2 in sums
        )
        rows.append((names.finish(total.finish), *cells))
    return tuple(rows)


def _yes(answer: bool) -> str:
    return "yes" if answer else "no"
