"""Why an area, a length or a count is what it is."""

from shared.job import Butt, Fillet
from shared.written.writing import Writing
from takeoff.figures.measured import Figure, Fronts, Reason, Term
from takeoff.figures.to_buy import Hardware
from takeoff.why.figures import bead_row, hardware_rows, length_row

WRITING = Writing()
NONE = Figure(0.0, Reason("", "", Fronts.HUNG, ()))


def test_a_length_unfolds_into_its_terms_with_whom_they_come_from() -> None:
    terms = (Term("straight", 1500.0, parts=("a",)), Term("profile", 500.0, (250.0,), ("b", "a"), 2.0))
    row = length_row("Length", Figure(2000.0, Reason("a rule", "a book", Fronts.OFF, terms)), WRITING)
    assert row.line == "Length: 2.00 m, fronts off"
    assert [child.line for child in row.children] == ["straight: 1.50 m", "profile: 250 x 2 = 0.50 m"]
    assert [child.parts for child in row.children] == [("a",), ("b", "a")]
    assert (row.parts, row.rule, row.source) == (("a", "b"), "a rule", "a book")


def test_a_bead_says_how_far_a_cartridge_goes() -> None:
    # 6 x 6 / 2 = 18 mm2 is 18 mL a metre, and 300 / 18 = 16.67 m; 5 x 5 = 25 and 300 / 25 = 12.
    assert bead_row(Fillet(6), WRITING).line == "Sealant 18 mL a metre (a triangle, leg2 / 2); 300 mL run 16.67 m"
    assert bead_row(Butt(5, 5), WRITING).line == "Sealant 25 mL a metre (width x depth); 300 mL run 12.00 m"


def test_what_there_is_none_of_has_no_row() -> None:
    hinges = Figure(30.0, Reason("by height", "", Fronts.HUNG, (Term("15 fronts with 2", 30.0, parts=("a",)),)))
    (row,) = hardware_rows(Hardware(hinges, NONE, NONE), WRITING)
    assert (row.line, [child.line for child in row.children]) == ("Hinges: 30", ["15 fronts with 2 = 30"])
