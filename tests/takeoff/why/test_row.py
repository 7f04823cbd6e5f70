import pytest

from takeoff.why.row import WhyRow


@pytest.mark.parametrize(
    ("row", "line"),
    [
        (WhyRow("less outlet", "-0.008 m2"), "less outlet: -0.008 m2"),
        (WhyRow("outline", "2.160 m2", "3600 x 600"), "outline: 3600 x 600 = 2.160 m2"),
        (WhyRow("", "30", "15 fronts with 2"), "15 fronts with 2 = 30"),
        (WhyRow("Gross", "2.160 m2", note="fronts off"), "Gross: 2.160 m2, fronts off"),
        (WhyRow("shelf life once opened 365 days"), "shelf life once opened 365 days"),
    ],
)
def test_a_row_reads_as_one_line(row: WhyRow, line: str) -> None:
    assert row.line == line


def test_every_rule_and_the_source_are_said_on_their_own() -> None:
    assert list(WhyRow("", rule="one; two", source="a book").grounds) == ["one", "two", "a book"]
    assert list(WhyRow("").grounds) == []
