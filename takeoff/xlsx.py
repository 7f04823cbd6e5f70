"""The takeoff as a spreadsheet whose totals are live: change an area or a length and they follow."""

import io
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from shared.disk import write_atomically
from shared.job import Job
from shared.units import area_in, large_unit, run_in
from takeoff.figures import JointRow, MaskingRow, PartRow, Sureness, Takeoff, TileRow
from takeoff.finish_totals import totals_by_finish
from takeoff.naming import Names, section_words

if TYPE_CHECKING:
    from xlsxwriter import Workbook


class Live(NamedTuple):
    """A formula and the value that it has now, which is shown where nothing reckons."""

    formula: str
    value: float


Row = tuple[str | float | Live, ...]


class Sheet(NamedTuple):
    """One sheet: its name, headings, widths of columns in characters, and rows."""

    name: str
    headings: tuple[str, ...]
    widths: tuple[int, ...]
    rows: tuple[Row, ...]


def write_xlsx(takeoff: Takeoff, job: Job, path: Path) -> None:
    """Write the sheets Areas, Joints, Masking, Tiles (where there are some), Totals and How sure.

    FileError where that fails; the file is then as it was.
    """
    write_atomically(path, xlsx_bytes(takeoff, job))


def xlsx_bytes(takeoff: Takeoff, job: Job) -> bytes:
    """The spreadsheet as the content of a file. Every name is written as text, whatever it begins with."""
    import xlsxwriter  # late: it is slow to import, and most runs write no spreadsheet

    content = io.BytesIO()
    with xlsxwriter.Workbook(content, {"in_memory": True}) as book:
        for sheet in _sheets(takeoff, job):
            _write_sheet(book, sheet)
    return content.getvalue()


def _write_sheet(book: "Workbook", sheet: Sheet) -> None:
    page = book.add_worksheet(sheet.name)
    bold, figure = book.add_format({"bold": True}), book.add_format({"num_format": "0.000"})
    for column, (heading, width) in enumerate(zip(sheet.headings, sheet.widths, strict=True)):
        page.set_column(column, column, width)
        page.write_string(0, column, heading, bold)
    page.freeze_panes(1, 0)
    for number, row in enumerate(sheet.rows, 1):
        for column, cell in enumerate(row):
            if isinstance(cell, Live):
                page.write_formula(number, column, cell.formula, figure, cell.value)
            elif isinstance(cell, str):
                page.write_string(number, column, cell)
            else:
                page.write_number(number, column, cell, figure)


def _sheets(takeoff: Takeoff, job: Job) -> tuple[Sheet, ...]:
    names = Names(job)
    return (
        _areas(takeoff, job, names),
        _joints(takeoff, job, names),
        _masking(takeoff, job, names),
        *((_tiles(takeoff, job, names),) if takeoff.tiles else ()),
        _totals(takeoff, job, names),
        *((_sureness(takeoff, takeoff.sure, job, names),) if takeoff.sure else ()),
    )


def _areas(takeoff: Takeoff, job: Job, names: Names) -> Sheet:
    unit = f"{large_unit(job.unit)}2"
    labels = _finish_labels(takeoff, names)
    words = ("Room", "Face", "Tag", "Part", "Kind", "Finish", "Treatment")
    rows = tuple(_area_row(row, job, names, labels) for row in takeoff.parts)
    headings = (*words, f"Gross {unit}", f"Net {unit}", f"Coated {unit}")
    return Sheet("Areas", headings, (14, 8, 6, 28, 12, 24, 11, 10, 10, 10), rows)


def _area_row(row: PartRow, job: Job, names: Names, labels: dict[str, str]) -> Row:
    place = (names.room(row.room), names.face(row.face), row.tag, names.part(row.id))
    coating = (labels.get(row.finish, ""), row.treatment.value)
    areas = (area_in(each.amount, job.unit) for each in (row.gross_mm2, row.net_mm2, row.coated_mm2))
    return (*place, row.kind.value, *coating, *areas)


def _joints(takeoff: Takeoff, job: Job, names: Names) -> Sheet:
    words = ("Room", "Faces", "Joint", "Between", "And", "Section", "Sealant", "Sealed", "Old bead")
    rows = tuple(_joint_row(row, job, names) for row in takeoff.joints)
    headings = (*words, f"Length {large_unit(job.unit)}")
    return Sheet("Joints", headings, (14, 8, 26, 24, 24, 14, 18, 8, 9, 10), rows)


def _joint_row(row: JointRow, job: Job, names: Names) -> Row:
    place = (names.room_of(row.face), names.faces((row.face, row.next_face)), row.name)
    bead = (section_words(row.section, job.unit), row.sealant, _yes(row.sealed), _yes(row.old_bead))
    return (*place, *map(names.part, row.parts), *bead, run_in(row.length_mm.amount, job.unit))


def _masking(takeoff: Takeoff, job: Job, names: Names) -> Sheet:
    rows = tuple(_masking_row(row, job, names) for row in takeoff.masking)
    headings = ("Room", "Face", "Masking", "Between", "And", f"Length {large_unit(job.unit)}")
    return Sheet("Masking", headings, (14, 8, 36, 24, 24, 10), rows)


def _masking_row(row: MaskingRow, job: Job, names: Names) -> Row:
    place = (names.room_of(row.face), names.face(row.face), row.name)
    return (*place, *map(names.part, row.parts), run_in(row.length_mm.amount, job.unit))


def _tiles(takeoff: Takeoff, job: Job, names: Names) -> Sheet:
    rows = tuple(_tile_row(row, job, names) for row in takeoff.tiles)
    headings = ("Room", "Face", "Part", "Whole tiles", "Cut tiles", f"Grout {large_unit(job.unit)}")
    return Sheet("Tiles", headings, (14, 8, 28, 12, 12, 10), rows)


def _tile_row(row: TileRow, job: Job, names: Names) -> Row:
    place = (names.room(row.room), names.face(row.face), names.part(row.part))
    return (*place, float(row.whole), float(row.cut), run_in(row.grout_mm.amount, job.unit))


def _totals(takeoff: Takeoff, job: Job, names: Names) -> Sheet:
    areas, run = f"{large_unit(job.unit)}2", large_unit(job.unit)
    totals = takeoff.totals
    finishes = _finish_totals(takeoff, job, names)
    coated = Live(f"=SUM({_range('Areas', 'J', takeoff.parts)})", area_in(totals.coated_mm2, job.unit))
    sealed, old = _range("Joints", "H", takeoff.joints), _range("Joints", "I", takeoff.joints)
    lengths, taped = _range("Joints", "J", takeoff.joints), _range("Masking", "F", takeoff.masking)
    rows: tuple[Row, ...] = (
        *finishes,
        (f"All coated {areas}", "", "", coated),
        (f"Masking {run}", "", "", Live(f"=SUM({taped})", run_in(totals.masking_mm, job.unit))),
        (f"Bead {run}", "", "", Live(f'=SUMPRODUCT(({sealed}="yes")*{lengths})', run_in(totals.bead_mm, job.unit))),
        (
            f"Old bead {run}",
            *("", ""),
            Live(f'=SUMPRODUCT(({sealed}="yes")*({old}="yes")*{lengths})', run_in(totals.old_bead_mm, job.unit)),
        ),
        ("Fronts", "", "", float(totals.fronts)),
        *_grout_total(takeoff, job),
    )
    return Sheet("Totals", ("What", f"Gross {areas}", f"Net {areas}", "Total"), (32, 10, 10, 10), rows)


def _sureness(takeoff: Takeoff, sure: Sureness, job: Job, names: Names) -> Sheet:
    """How far the totals could be off because of the tape, and the coated area of each part."""
    areas, run = f"{large_unit(job.unit)}2", large_unit(job.unit)
    off_mm2 = dict(sure.parts)
    rows: tuple[Row, ...] = (
        ("", "", "all coated", areas, area_in(sure.coated_mm2, job.unit)),
        *(("", "", name, run, run_in(length_mm, job.unit)) for name, length_mm in sure.lengths),
        *(
            (names.room(row.room), names.face(row.face), names.part(row.id), areas, area_in(off_mm2[row.id], job.unit))
            for row in takeoff.parts
            if off_mm2.get(row.id)
        ),
    )
    headings = ("Room", "Face", "What", "Unit", f"Could be off by (tape class {job.tape})")
    return Sheet("How sure", headings, (14, 8, 28, 6, 32), rows)


def _grout_total(takeoff: Takeoff, job: Job) -> tuple[Row, ...]:
    if not takeoff.tiles:
        return ()
    total = Live(f"=SUM({_range('Tiles', 'F', takeoff.tiles)})", run_in(takeoff.totals.grout_mm, job.unit))
    return ((f"Grout {large_unit(job.unit)}", "", "", total),)


def _finish_totals(takeoff: Takeoff, job: Job, names: Names) -> tuple[Row, ...]:
    """A row for each finish. Names are compared as they are, so one that looks like a criterion is only a name."""
    labels = _finish_labels(takeoff, names)
    finish = _range("Areas", "F", takeoff.parts)
    rows: list[Row] = []
    for number, total in enumerate(totals_by_finish(takeoff), 2):
        sums = zip("HIJ", (total.gross_mm2, total.net_mm2, total.coated_mm2), strict=True)
        cells = (
            Live(f"=SUMPRODUCT(({finish}=A{number})*{_range('Areas', column, takeoff.parts)})", area_in(mm2, job.unit))
            for column, mm2 in sums
        )
        rows.append((labels[total.finish], *cells))
    return tuple(rows)


def _finish_labels(takeoff: Takeoff, names: Names) -> dict[str, str]:
    """By id, what each finish is called; two that a spreadsheet would take for one have their ids added."""
    called = {row.finish: names.finish(row.finish) for row in takeoff.parts if row.finish}
    alike = Counter(name.casefold() for name in called.values())
    return {key: f"{name} ({key})" if alike[name.casefold()] > 1 else name for key, name in called.items()}


def _range(sheet: str, column: str, rows: Sequence[object]) -> str:
    """The cells of a column below its heading, at least one."""
    return f"{sheet}!{column}2:{column}{max(len(rows), 1) + 1}"


def _yes(answer: bool) -> str:
    return "yes" if answer else "no"
