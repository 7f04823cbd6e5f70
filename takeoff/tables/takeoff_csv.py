"""The takeoff as one flat table of comma-separated values, for any spreadsheet or program."""

import csv
import io
from collections.abc import Iterable, Iterator, Sequence

from shared.job import Job
from shared.written.units import area_in, large_unit, length_in
from shared.written.writing import Writing
from takeoff.figures.measured import JointRow, MaskingRow, PartRow, Sureness, Takeoff, TileRow
from takeoff.figures.naming import Names
from takeoff.surfaces.measuring_rules import measured_by

Cell = str | float

FORMULA_STARTS = ("=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""A spreadsheet takes text that begins with one of these for a formula (OWASP, CSV injection).

The second four are the full-width forms of the first; some spreadsheets take them for the same.
"""

ENDS = ("\t", "\r", "\n")
"""A spreadsheet may take these for the end of a cell or line, and begin anew behind them (OWASP, CSV injection)."""

DIGITS = 6
"""Decimals of areas and lengths: in metres they show a square millimetre and a thousandth of a millimetre."""


def takeoff_csv(takeoff: Takeoff, job: Job) -> bytes:
    """The takeoff as the content of a CSV file, as `csv_bytes` writes it.

    The first column says what a row is. There is a row for each part, joint, masking and tiled part, then for each
    total, then for the tolerance of each coated area and of each total. The last row names the measuring rule.
    """
    area, unit = f"{large_unit(job.unit)}2", large_unit(job.unit)
    areas = (f"gross {area}", f"net {area}", f"coated {area}")
    return csv_bytes((*HEADINGS, *areas, f"length {unit}", "whole tiles", "cut tiles"), _rows(takeoff, job))


def csv_bytes(headings: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """A table as the content of a CSV file by RFC 4180: UTF-8, CRLF, doubled quotes. Text is quoted, numbers are not.

    Short rows are filled up with empty cells. An apostrophe is put before text that a spreadsheet would take for a
    formula.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n", quoting=csv.QUOTE_NONNUMERIC)
    writer.writerow(headings)
    for row in rows:
        writer.writerow([_safe(cell) for cell in row] + [""] * (len(headings) - len(row)))
    return text.getvalue().encode("utf-8")


HEADINGS = (
    "row",
    "room",
    "face",
    "tag",
    "id",
    "name",
    "kind",
    "finish",
    "treatment",
    "other id",
    "section",
    "sealant",
    "sealed",
    "old bead",
)


def _rows(takeoff: Takeoff, job: Job) -> Iterator[tuple[Cell, ...]]:
    names = Names(job)
    for part in takeoff.parts:
        yield _part_cells(part, job, names)
    for joint in takeoff.joints:
        yield _joint_cells(joint, job, names)
    for masking in takeoff.masking:
        yield _masking_cells(masking, job, names)
    for tiles in takeoff.tiles:
        yield _tile_cells(tiles, job, names)
    yield from _total_cells(takeoff, job)
    if takeoff.sure is not None:
        yield from _sure_cells(takeoff, takeoff.sure, job, names)
    yield ("rule", *[""] * 4, measured_by(takeoff.rule), *[""] * 12)


def _part_cells(row: PartRow, job: Job, names: Names) -> tuple[Cell, ...]:
    areas = (round(area_in(figure.amount, job.unit), DIGITS) for figure in (row.gross_mm2, row.net_mm2, row.coated_mm2))
    finish = names.finish(row.finish) if row.finish else ""
    words = (names.part(row.id), row.kind.value, finish, row.treatment.words)
    return ("part", names.room(row.room), names.face(row.face), row.tag, row.id, *words, *[""] * 5, *areas, "")


def _joint_cells(row: JointRow, job: Job, names: Names) -> tuple[Cell, ...]:
    bead = (Writing(job.unit).section(row.section), row.sealant, _yes(row.sealed), _yes(row.old_bead))
    place = (names.room_of(row.face), names.faces((row.face, row.next_face)), "")
    return ("joint", *place, row.parts[0], row.name, "", "", "", row.parts[1], *bead, "", "", "", _length(row, job))


def _masking_cells(row: MaskingRow, job: Job, names: Names) -> tuple[Cell, ...]:
    place = (names.room_of(row.face), names.face(row.face), "")
    return ("masking", *place, row.parts[0], row.name, "", "", "", row.parts[1] or "", *[""] * 7, _length(row, job))


def _tile_cells(row: TileRow, job: Job, names: Names) -> tuple[Cell, ...]:
    place = (names.room(row.room), names.face(row.face), "")
    length = round(length_in(row.grout_mm.amount, job.unit), DIGITS)
    return ("tiles", *place, row.part, names.part(row.part), *[""] * 11, length, row.whole, row.cut)


def _total_cells(takeoff: Takeoff, job: Job) -> Iterator[tuple[Cell, ...]]:
    totals = takeoff.totals
    coated = round(area_in(totals.coated_mm2, job.unit), DIGITS)
    yield ("total", *[""] * 4, "coated", *[""] * 8, "", "", coated, "")
    lengths = {"masking": totals.masking_mm, "bead": totals.bead_mm, "old bead": totals.old_bead_mm}
    if takeoff.tiles:
        lengths["grout"] = totals.grout_mm
    for name, length_mm in lengths.items():
        yield ("total", *[""] * 4, name, *[""] * 8, "", "", "", round(length_in(length_mm, job.unit), DIGITS))


def _sure_cells(takeoff: Takeoff, sure: Sureness, job: Job, names: Names) -> Iterator[tuple[Cell, ...]]:
    off_mm2 = dict(sure.parts)
    for row in takeoff.parts:
        if off_mm2.get(row.id):
            words = (names.room(row.room), names.face(row.face), row.tag, row.id, names.part(row.id))
            yield ("tolerance", *words, *[""] * 8, "", "", round(area_in(off_mm2[row.id], job.unit), DIGITS), "")
    yield ("tolerance", *[""] * 4, "coated", *[""] * 8, "", "", round(area_in(sure.coated_mm2, job.unit), DIGITS), "")
    for name, length_mm in sure.lengths:
        yield ("tolerance", *[""] * 4, name, *[""] * 8, "", "", "", round(length_in(length_mm, job.unit), DIGITS))


def _length(row: JointRow | MaskingRow, job: Job) -> float:
    return round(length_in(row.length_mm.amount, job.unit), DIGITS)


def _yes(answer: bool) -> str:
    return "yes" if answer else "no"


def _safe(cell: Cell) -> Cell:
    """The cell, led by an apostrophe where a spreadsheet would reckon it; blanks before the sign hide nothing."""
    if not isinstance(cell, str):
        return cell
    return f"'{cell}" if cell.startswith(ENDS) or cell.lstrip().startswith(FORMULA_STARTS) else cell
