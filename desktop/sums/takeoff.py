"""The rows of the count, as values: surfaces by finish, joints, masking, tiles, each with its sum beneath it."""

from collections.abc import Iterable, Sequence

from desktop.look.wording import (
    TIMES,
    area_number,
    counted,
    length_words,
    off_area_words,
    off_words,
    run_words,
    square_unit,
    step_words,
)
from desktop.state.shown import Shown
from desktop.sums.basket import need_rows
from desktop.sums.fronts import front_rows
from desktop.sums.row import Cells, SumRow
from shared.edits.drawn import find_face, find_part
from shared.job import Fillet, Job, Section, Unit
from takeoff.edges.sealant import CARTRIDGE_ML, metres_per_cartridge, section_area_mm2
from takeoff.faces.sureness import RULE, SUMMED, TAPE_SOURCE
from takeoff.figures.measured import Figure, Fronts, JointRow, MaskingRow, PartRow, Sureness, Term, TileRow
from takeoff.surfaces.by_finish import FinishTotal, totals_by_finish


def count_rows(shown: Shown) -> tuple[SumRow, ...]:
    """All rows of the takeoff that is shown; the groups that hold nothing are left out."""
    lines = (_joints(shown), _masking(shown))
    groups = (*_surfaces(shown), *lines, front_rows(shown), _tiles(shown), _needs(shown), _sureness(shown))
    return tuple(group for group in groups if group.children)


def headings(unit: Unit) -> Cells:
    """The heads of the columns of the surfaces."""
    square = square_unit(unit)
    return "What", f"Gross {square}", f"Net {square}", f"Coat {square}"


def section_words(section: Section, unit: Unit) -> str:
    """A bead's section as a person says it."""
    if isinstance(section, Fillet):
        return f"fillet {length_words(section.leg_mm, unit)}"
    return f"butt {length_words(section.width_mm, unit)} {TIMES} {length_words(section.depth_mm, unit)}"


def _surfaces(shown: Shown) -> Iterable[SumRow]:
    names = {finish.id: finish.name for finish in shown.now.finishes}
    off_mm2 = dict(shown.takeoff.sure.parts) if shown.takeoff.sure else {}
    for total in totals_by_finish(shown.takeoff):
        rows = tuple(_surface(row, off_mm2.get(row.id, 0.0), shown) for row in total.rows)
        yield SumRow(
            key=f"finish {total.finish}",
            cells=_areas(names.get(total.finish, total.finish), total, shown.unit),
            children=rows,
            parts=tuple(row.id for row in total.rows),
            head=True,
        )


def _areas(name: str, total: FinishTotal, unit: Unit) -> Cells:
    return (
        name,
        area_number(total.gross_mm2, unit),
        area_number(total.net_mm2, unit),
        area_number(total.coated_mm2, unit),
    )


def _surface(row: PartRow, off_mm2: float, shown: Shown) -> SumRow:
    unit = shown.unit
    key = f"part {row.id}"
    figures = (("Gross", row.gross_mm2), ("Net", row.net_mm2), ("Coat", row.coated_mm2))
    face = find_face(shown.now, row.face)
    return SumRow(
        key=key,
        cells=(
            f"{row.tag or face.name}  {find_part(shown.now, row.id)[1].called}",
            area_number(row.gross_mm2.amount, unit),
            area_number(row.net_mm2.amount, unit),
            area_number(row.coated_mm2.amount, unit),
        ),
        children=(*(_why(key, name, figure, unit, square=True) for name, figure in figures), *_off(key, off_mm2, unit)),
        parts=(row.id,),
        face=row.face,
    )


def _joints(shown: Shown) -> SumRow:
    rows = tuple(_joint(row, shown) for row in shown.takeoff.joints)
    return SumRow("joints", ("Joints", "Section", "Old bead", "New bead"), rows, head=True)


def _joint(row: JointRow, shown: Shown) -> SumRow:
    key = f"joint {row.face} {row.next_face} {' '.join(row.parts)}"
    length = run_words(row.length_mm.amount, shown.unit)
    return SumRow(
        key=key,
        cells=(
            f"{_places(shown.now, row.face, row.next_face)}  {row.name}",
            section_words(row.section, shown.unit) if row.sealed else "off",
            length if row.sealed and row.old_bead else "",
            length if row.sealed else "",
        ),
        children=(_why(key, "Length", row.length_mm, shown.unit, square=False), _bead(key, row.section, shown.unit)),
        parts=row.parts,
        face=row.face,
        edges=row.path,
        joint=row,
    )


def _bead(key: str, section: Section, unit: Unit) -> SumRow:
    """How far a cartridge goes with a bead of this section."""
    shape = "a triangle, leg\u00b2 / 2" if isinstance(section, Fillet) else f"width {TIMES} depth"
    millilitres, metres = section_area_mm2(section), metres_per_cartridge(section, CARTRIDGE_ML)
    words = f"Sealant {millilitres:g} mL a metre ({shape}); {CARTRIDGE_ML:g} mL run {run_words(1000 * metres, unit)}"
    return SumRow(f"{key} sealant", (words, "", "", ""), note=True)


def _masking(shown: Shown) -> SumRow:
    rows = tuple(_mask(row, shown) for row in shown.takeoff.masking)
    return SumRow("masking", ("Masking", "", "", "Tape"), rows, head=True)


def _mask(row: MaskingRow, shown: Shown) -> SumRow:
    key = f"mask {row.face} {row.name} {row.parts}"
    return SumRow(
        key=key,
        cells=(
            f"{_places(shown.now, row.face)}  {row.name}",
            "",
            "",
            run_words(row.length_mm.amount, shown.unit),
        ),
        children=(_why(key, "Length", row.length_mm, shown.unit, square=False),),
        parts=tuple(part for part in row.parts if part is not None),
        face=row.face,
        edges=row.path,
    )


def _tiles(shown: Shown) -> SumRow:
    rows = tuple(_tile(row, shown) for row in shown.takeoff.tiles)
    return SumRow("tiles", ("Tiles", "Whole", "Cut", "Grout"), rows, head=True)


def _tile(row: TileRow, shown: Shown) -> SumRow:
    key = f"tiles {row.part}"
    part = find_part(shown.now, row.part)[1]
    length = run_words(row.grout_mm.amount, shown.unit)
    return SumRow(
        key=key,
        cells=(f"{_places(shown.now, row.face)}  {part.called}", f"{row.whole}", f"{row.cut}", length),
        children=(_why(key, "Grout", row.grout_mm, shown.unit, square=False),),
        parts=(row.part,),
        face=row.face,
    )


def _needs(shown: Shown) -> SumRow:
    """What is needed of each product, as it was reckoned last."""
    rows = need_rows(shown.bill, shown.takeoff, len(headings(shown.unit))) if shown.bill else ()
    return SumRow("needs", ("Needed of products", "", "", "Amount"), rows, head=True)


def _off(key: str, off_mm2: float, unit: Unit) -> tuple[SumRow, ...]:
    """How far the coated area of a part could be off."""
    words = f"Coat {off_area_words(off_mm2, unit)}, by the tape"
    return (SumRow(f"{key} sure", (words, "", "", ""), note=True),) if off_mm2 else ()


def _sureness(shown: Shown) -> SumRow:
    """How far the totals could be off; no rows while that is not reckoned, or where nothing is drawn."""
    sure = shown.takeoff.sure
    rows = _totals_off(sure, shown) if sure is not None and shown.takeoff.parts else ()
    return SumRow("sure", ("How sure", "", "", "Off by"), rows, head=True)


def _totals_off(sure: Sureness, shown: Shown) -> tuple[SumRow, ...]:
    lengths = ((name.capitalize(), off_words(length_mm, shown.unit)) for name, length_mm in sure.lengths)
    off = (("Coat", off_area_words(sure.coated_mm2, shown.unit)), *lengths)
    return tuple(SumRow(f"sure {name}", (name, "", "", words), _tape_notes(name, shown)) for name, words in off)


def _tape_notes(name: str, shown: Shown) -> tuple[SumRow, ...]:
    """The rule behind how sure a figure is, and where the tape's tolerance is from."""
    tape = f"tape of class {shown.job.tape}, read from its end hook: {TAPE_SOURCE}"
    words = (RULE, SUMMED, tape)
    return tuple(SumRow(f"sure {name} {word}", (word, "", "", ""), note=True) for word in words)


def _places(job: Job, *faces: str) -> str:
    return " ".join(find_face(job, face).name for face in faces if face)


def _why(key: str, name: str, figure: Figure, unit: Unit, *, square: bool) -> SumRow:
    """A figure's sum: its terms, then its rule and where that comes from."""
    amount = step_words(figure.amount, unit) if square else run_words(figure.amount, unit)
    reason = figure.reason
    hung = "fronts hung" if reason.fronts is Fronts.HUNG else "fronts off"
    words = tuple(word for word in (reason.rule, reason.source) if word)
    terms = tuple(
        SumRow(f"{key} {name} {place}", (_term(term, unit, square=square), "", "", ""), parts=term.parts, note=True)
        for place, term in enumerate(reason.terms)
    )
    rule = tuple(SumRow(f"{key} {name} {word}", (word, "", "", ""), note=True) for word in words)
    return SumRow(f"{key} {name}", (f"{name} {amount}, {hung}", "", "", ""), (*terms, *rule), parts=reason.parts)


def _term(term: Term, unit: Unit, *, square: bool) -> str:
    """One step of a sum: "outline  3600 x 600 = 2.160 m²"."""
    amount = step_words(term.amount, unit) if square else run_words(term.amount, unit)
    product = _product(term, unit)
    return f"{term.what}   {product} = {amount}" if product else f"{term.what}   {amount}"


def _product(term: Term, unit: Unit) -> str:
    """The factors of a step, written out; "" where it is no plain product."""
    lengths = [length_words(factor, unit) for factor in term.factors]
    factor = [f"{term.times:g}"] if lengths and term.times != 1 else []
    return f" {TIMES} ".join((*lengths, *factor))


def summary(rows: Sequence[SumRow]) -> str:
    """A word on all rows, for who cannot see them."""
    return counted(sum(len(row.children) for row in rows), "row", "rows")
