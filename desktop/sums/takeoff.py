"""The rows of Count, as values: surfaces by finish, joints, masking, tiles. Each row has its sum beneath it."""

from collections.abc import Iterable

from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from desktop.sums.basket import need_rows
from desktop.sums.fronts import front_rows
from desktop.sums.row import Cells, SumRow, unfolded
from shared.job import Unit
from shared.written.writing import Writing
from takeoff.faces.sureness import RULE, SUMMED, TAPE_SOURCE
from takeoff.figures.measured import Figure, JointRow, MaskingRow, PartRow, Sureness, TileRow
from takeoff.figures.naming import Names
from takeoff.surfaces.by_finish import FinishTotal, totals_by_finish
from takeoff.surfaces.measuring_rules import measured_by
from takeoff.why.figures import bead_row, length_row, part_rows

COLUMNS = 4


def count_rows(shown: Shown) -> tuple[SumRow, ...]:
    """All rows of the takeoff that is shown: its groups, without those that have no rows, and its measuring rule."""
    names, writing = Names(shown.now), own_writing(shown.unit)
    lines = (_joints(shown, names, writing), _masking(shown, names, writing))
    rest = (front_rows(shown), _tiles(shown, names, writing), _needs(shown), _sureness(shown))
    groups = (*_surfaces(shown, names, writing), *lines, *rest)
    filled = tuple(group for group in groups if group.children)
    rule = SumRow("rule", (measured_by(shown.takeoff.rule), "", "", ""), note=True)
    return (*filled, rule) if filled else ()


def headings(unit: Unit) -> Cells:
    """The heads of the columns, as the surfaces use them."""
    square = own_writing(unit).square_unit
    return "What", f"Gross {square}", f"Net {square}", f"Coated {square}"


def _surfaces(shown: Shown, names: Names, writing: Writing) -> Iterable[SumRow]:
    off_mm2 = dict(shown.takeoff.sure.parts) if shown.takeoff.sure else {}
    for total in totals_by_finish(shown.takeoff):
        rows = tuple(_surface(row, off_mm2.get(row.id, 0.0), names, writing) for row in total.rows)
        yield SumRow(
            key=f"finish {total.finish}",
            cells=_areas(names.finish(total.finish), total, writing),
            children=rows,
            parts=tuple(row.id for row in total.rows),
            head=True,
        )


def _areas(name: str, total: FinishTotal, writing: Writing) -> Cells:
    areas = (total.gross_mm2, total.net_mm2, total.coated_mm2)
    return (name, *map(writing.area_number, areas))


def _surface(row: PartRow, off_mm2: float, names: Names, writing: Writing) -> SumRow:
    key = f"part {row.id}"
    return SumRow(
        key=key,
        cells=(
            f"{row.tag or names.face(row.face)}  {names.part(row.id)}",
            writing.area_number(row.gross_mm2.amount),
            writing.area_number(row.net_mm2.amount),
            writing.area_number(row.coated_mm2.amount),
        ),
        children=(*unfolded(key, part_rows(row, writing), COLUMNS), *_off(key, off_mm2, writing)),
        parts=(row.id,),
        face=row.face,
    )


def _joints(shown: Shown, names: Names, writing: Writing) -> SumRow:
    rows = tuple(_joint(row, names, writing) for row in shown.takeoff.joints)
    return SumRow("joints", ("Joints", "Section", "Old bead", "New bead"), rows, head=True)


def _joint(row: JointRow, names: Names, writing: Writing) -> SumRow:
    key = f"joint {row.face} {row.next_face} {' '.join(row.parts)}"
    length = writing.total_length(row.length_mm.amount)
    why = (length_row("Length", row.length_mm, writing), bead_row(row.section, writing))
    return SumRow(
        key=key,
        cells=(
            f"{names.faces((row.face, row.next_face))}  {row.name}",
            writing.section(row.section) if row.sealed else "off",
            length if row.sealed and row.old_bead else "",
            length if row.sealed else "",
        ),
        children=tuple(unfolded(key, why, COLUMNS)),
        parts=row.parts,
        face=row.face,
        edges=row.path,
        joint=row,
    )


def _masking(shown: Shown, names: Names, writing: Writing) -> SumRow:
    rows = tuple(_mask(row, names, writing) for row in shown.takeoff.masking)
    return SumRow("masking", ("Masking", "", "", "Tape"), rows, head=True)


def _mask(row: MaskingRow, names: Names, writing: Writing) -> SumRow:
    key = f"mask {row.face} {row.name} {row.parts}"
    return SumRow(
        key=key,
        cells=(
            f"{names.face(row.face)}  {row.name}",
            "",
            "",
            writing.total_length(row.length_mm.amount),
        ),
        children=_length(key, "Length", row.length_mm, writing),
        parts=tuple(part for part in row.parts if part is not None),
        face=row.face,
        edges=row.path,
    )


def _tiles(shown: Shown, names: Names, writing: Writing) -> SumRow:
    rows = tuple(_tile(row, names, writing) for row in shown.takeoff.tiles)
    return SumRow("tiles", ("Tiles", "Whole", "Cut", "Grout"), rows, head=True)


def _tile(row: TileRow, names: Names, writing: Writing) -> SumRow:
    key = f"tiles {row.part}"
    length = writing.total_length(row.grout_mm.amount)
    return SumRow(
        key=key,
        cells=(f"{names.face(row.face)}  {names.part(row.part)}", f"{row.whole}", f"{row.cut}", length),
        children=_length(key, "Grout", row.grout_mm, writing),
        parts=(row.part,),
        face=row.face,
    )


def _needs(shown: Shown) -> SumRow:
    """How much of each product is needed, by the bill that was reckoned last."""
    rows = need_rows(shown.bill, shown.takeoff, COLUMNS) if shown.bill else ()
    return SumRow("needs", ("Needed of products", "", "", "Amount"), rows, head=True)


def _off(key: str, off_mm2: float, writing: Writing) -> tuple[SumRow, ...]:
    """A row with how far the coated area of a part could be off; no row for 0."""
    words = f"Tolerance of the tape: coated {writing.off_area(off_mm2)}"
    return (SumRow(f"{key} sure", (words, "", "", ""), note=True),) if off_mm2 else ()


def _sureness(shown: Shown) -> SumRow:
    """How far the totals could be off. The group has no rows while that is not reckoned, or if nothing is drawn."""
    sure = shown.takeoff.sure
    rows = _totals_off(sure, shown) if sure is not None and shown.takeoff.parts else ()
    return SumRow("sure", (f"Tolerance (class {shown.job.tape} tape)", "", "", "Off by"), rows, head=True)


def _totals_off(sure: Sureness, shown: Shown) -> tuple[SumRow, ...]:
    writing = own_writing(shown.unit)
    lengths = ((name.capitalize(), writing.off_length(length_mm)) for name, length_mm in sure.lengths)
    off = (("Coated", writing.off_area(sure.coated_mm2)), *lengths)
    return tuple(SumRow(f"sure {name}", (name, "", "", words), _tape_notes(name, shown)) for name, words in off)


def _tape_notes(name: str, shown: Shown) -> tuple[SumRow, ...]:
    """The rules by which the tolerance of a figure is reckoned, and the source of the tape's own tolerance."""
    tape = f"tape of class {shown.job.tape}, read from its end hook: {TAPE_SOURCE}"
    words = (RULE, SUMMED, tape)
    return tuple(SumRow(f"sure {name} {word}", (word, "", "", ""), note=True) for word in words)


def _length(key: str, words: str, figure: Figure, writing: Writing) -> tuple[SumRow, ...]:
    return tuple(unfolded(key, (length_row(words, figure, writing),), COLUMNS))
