"""Why an area, a length or a count is what it is."""

from collections.abc import Callable, Iterator

from shared.job import Fillet, Section
from shared.written.units import MM_IN_A_METRE
from shared.written.writing import Writing
from takeoff.edges.sealant import CARTRIDGE_ML, metres_per_cartridge, section_area_mm2
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
    """The row that says how many metres of bead of this section a cartridge runs."""
    is_triangle = isinstance(section, Fillet)
    shape = f"a triangle, leg{writing.squared} {writing.divided} 2" if is_triangle else f"width {writing.times} depth"
    millilitres, metres = section_area_mm2(section), metres_per_cartridge(section, CARTRIDGE_ML)
    length = writing.total_length(MM_IN_A_METRE * metres)
    words = (
        f"Sealant {writing.number(millilitres)} mL a metre ({shape}); {writing.number(CARTRIDGE_ML)} mL run {length}"
    )
    return WhyRow(words)


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
