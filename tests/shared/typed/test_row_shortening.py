import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from shared.job import Unit
from shared.typed.row_shortening import shortened
from shared.typed.rows import read_row

ROW = "450 door, 600 drawers 3, 900+300 pair, 50 filler"


def test_each_item_that_can_give_up_the_excess_is_offered() -> None:
    assert shortened(read_row(ROW, Unit.MM), 20) == (
        ("450 door to 430", "430 door, 600 drawers 3, 900+300 pair, 50 filler"),
        ("600 drawers 3 to 580", "450 door, 580 drawers 3, 900+300 pair, 50 filler"),
        ("900+300 pair to 1180", "450 door, 600 drawers 3, 1180 pair, 50 filler"),
        ("50 filler to 30", "450 door, 600 drawers 3, 900+300 pair, 30 filler"),
    )


def test_a_filler_may_go_altogether_and_a_cabinet_keeps_half_its_width() -> None:
    assert shortened(read_row("450 door, 1000 pair, 300 filler", Unit.MM), 300) == (
        ("1000 pair to 700", "450 door, 700 pair, 300 filler"),
        ("leave out 300 filler", "450 door, 1000 pair"),
    )
    assert shortened(read_row("450 door", Unit.MM), 300) == ()


def test_alike_items_share_the_excess() -> None:
    assert shortened(read_row("above 3 of 450 door", Unit.MM), 60) == (
        ("3 of 450 door to 430 each", "above 3 of 430 door"),
    )


def test_the_rest_goes_when_nothing_is_left_for_it() -> None:
    row = read_row("600 door, rest filler, splashback", Unit.MM)
    assert shortened(row, 0) == (("leave out the rest filler", "600 door, splashback"),)
    assert shortened(row, 50) == (("600 door to 550", "550 door, splashback"),)
    assert shortened(read_row("600 door", Unit.MM), 0) == ()


def test_widths_are_offered_as_a_tape_in_inches_shows_them() -> None:
    assert shortened(read_row("18 door, 24 drawers 3", Unit.INCH), 25.4 / 50) == (
        ('18 door to 17 31/32"', '17 31/32" door, 24 drawers 3'),
        ('24 drawers 3 to 23 31/32"', '18 door, 23 31/32" drawers 3'),
    )


def test_a_line_with_units_is_offered_with_units() -> None:
    row = read_row('20" door, 24 drawers 3, 40 filler', Unit.MM)
    offers = shortened(row, 8)
    assert offers[0] == ('20" door to 500 mm', "500 mm door, 24 in drawers 3, 40 in filler")
    assert [read_row(text, Unit.MM).fixed_mm for _, text in offers] == pytest.approx([row.fixed_mm - 8] * 3)


@pytest.mark.parametrize(("unit", "decimal"), [(Unit.MM, "."), (Unit.MM, ","), (Unit.INCH, ".")])
@given(st.data())
def test_every_offer_gives_up_the_excess(unit: Unit, decimal: str, data: st.DataObject) -> None:
    widths = data.draw(st.lists(st.integers(20, 90), min_size=1, max_size=6))
    words = st.sampled_from(["door", "drawers 3", "filler", "gap", "pair"])
    ahead = st.sampled_from(["", "", "3 of "])
    units = st.sampled_from(["", "", "", " in", " cm"])
    line = ", ".join(f"{data.draw(ahead)}{width}{data.draw(units)} {data.draw(words)}" for width in widths)
    assume(line.count("gap") < len(widths))
    row = read_row(line, unit, decimal=decimal)
    excess_mm = data.draw(st.floats(0.01, 60))
    for _, text in shortened(row, excess_mm):
        assert read_row(text, unit, decimal=decimal).fixed_mm <= row.fixed_mm - excess_mm + 1e-5
