"""Why an area, a length or a count is what it is."""

from collections.abc import Callable, Iterator

from shared.job import Fillet, Section, Unit
from shared.trade.products import Measure
from shared.written.packs import amount_in, amount_unit
from shared.written.units import ML_IN_A_LITRE, MM_IN_A_METRE, large_unit, length_in
from shared.written.writing import RATE_DIGITS, Writing
from takeoff.edges.sealant import CARTRIDGE_L, metres_per_cartridge, section_area_mm2
from takeoff.figures.measured import Figure, Fronts, PartRow, Reason, Term
from takeoff.figures.to_buy import Hardware
from takeoff.why.row import WhyRow

Show = Callable[[float], str]
"""Writes an amount with its unit."""


def part_rows(row: PartRow, writing: Writing) -> Iterator[WhyRow]:
    """The areas of a part: gross, net and coated."""
    for words, figure in (("Gross", row.gross_mm2), ("Net", row.net_mm2), ("Coated", row.coated_mm2)):
        yield _figure_row(words, figure, writing, writing.area_in_sum)


def length_row(words: str, figure: Figure, writing: Writing) -> WhyRow:
    """The row of a length that was added up. `words` say what has this length."""
    return _figure_row(words, figure, writing, writing.total_length)


def bead_row(section: Section, writing: Writing) -> WhyRow:
    """The row that says how much sealant a bead of this section takes, and how long a bead a cartridge runs.

    A job in inches says it in feet per gallon.
    """
    is_triangle = isinstance(section, Fillet)
    shape = f"a triangle, leg{writing.squared} {writing.divided} 2" if is_triangle else f"width {writing.times} depth"
    cartridge_l = CARTRIDGE_L[writing.unit]
    length = writing.total_length(MM_IN_A_METRE * metres_per_cartridge(section, ML_IN_A_LITRE * cartridge_l))
    label = writing.pack_size(cartridge_l, Measure.LITRES)
    return WhyRow(f"Sealant {_taken(section, writing)} ({shape}); {label} run {length}")


def _taken(section: Section, writing: Writing) -> str:
    """How much sealant a bead takes: "18 mL a metre", "616 ft a US gal"."""
    millilitres = section_area_mm2(section)
    if writing.unit is Unit.MM:
        return f"{writing.number(millilitres)} mL a metre"
    of_a_litre = length_in(MM_IN_A_METRE * ML_IN_A_LITRE / millilitres, writing.unit)
    length = float(f"{of_a_litre / amount_in(1.0, Measure.LITRES, writing.unit):.{RATE_DIGITS}g}")
    return f"{writing.number(length)} {large_unit(writing.unit)} a {amount_unit(Measure.LITRES, writing.unit)}"


def hardware_rows(hardware: Hardware, writing: Writing) -> Iterator[WhyRow]:
    """The rows of hinges, handles and holes to fill, without those that have no terms."""
    for words, figure in (
        ("Hinges", hardware.hinges),
        ("Handles", hardware.handles),
        ("Holes to fill", hardware.holes_to_fill),
    ):
        if figure.reason.terms:
            terms = tuple(_count_row(term, writing) for term in figure.reason.terms)
            yield _reasoned(WhyRow(words, writing.number(figure.amount), children=terms), figure.reason, writing)


def _figure_row(words: str, figure: Figure, writing: Writing, show: Show) -> WhyRow:
    reason = figure.reason
    hung = "fronts hung" if reason.fronts is Fronts.HUNG else "fronts off"
    terms = tuple(_term_row(term, writing, show) for term in reason.terms)
    return _reasoned(WhyRow(words, show(figure.amount), note=hung, children=terms), reason, writing)


def _reasoned(row: WhyRow, reason: Reason, writing: Writing) -> WhyRow:
    return row._replace(parts=reason.parts, rule=writing.sentence(reason.rule), source=writing.squares(reason.source))


def _term_row(term: Term, writing: Writing, show: Show) -> WhyRow:
    lengths = [writing.length(factor) for factor in term.factors]
    times = [writing.number(term.times)] if lengths and term.times != 1 else []
    factors = f" {writing.times} ".join((*lengths, *times))
    return WhyRow(writing.sentence(term.what), show(term.amount), factors, parts=term.parts)


def _count_row(term: Term, writing: Writing) -> WhyRow:
    return WhyRow("", writing.number(term.amount), term.what, parts=term.parts)
