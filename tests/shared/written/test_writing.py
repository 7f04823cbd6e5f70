"""What a length, a pack, a rate and a price look like in two persons' writing."""

import pytest

from shared.job import Butt, Fillet, Section, Unit
from shared.trade.products import Measure, Pack
from shared.written.writing import Writing

TERMINAL = Writing()
INCHES = Writing(Unit.INCH)
ABROAD = Writing(
    decimal=",", thousands=".", grouped_from=5, times="\u00d7", divided="\u00f7", minus="\u2212", squared="\u00b2"
)


@pytest.mark.parametrize(
    ("writing", "words"),
    [(TERMINAL, ["600.5", "600.5 mm"]), (ABROAD, ["600,5", "600,5 mm"]), (INCHES, ['23 21/32"', '23 21/32"'])],
)
def test_a_length_has_its_unit_where_one_asks(writing: Writing, words: list[str]) -> None:
    assert [writing.length(600.5), writing.length_with_unit(600.5)] == words


@pytest.mark.parametrize(
    ("writing", "words"),
    [
        (TERMINAL, ["-2.14 m2", "-2.140 m2", "-2.14", "m2", "± 2.140 m2"]),
        (ABROAD, ["\u22122,14 m\u00b2", "\u22122,140 m\u00b2", "\u22122,14", "m\u00b2", "± 2,140 m\u00b2"]),
    ],
)
def test_an_area_has_the_minus_and_the_square_of_the_writing(writing: Writing, words: list[str]) -> None:
    area = -2.14e6
    shown = [writing.area(area), writing.area_in_sum(area), writing.area_number(area), writing.square_unit]
    assert [*shown, writing.off_area(-area)] == words


@pytest.mark.parametrize(
    ("section", "words"), [(Fillet(6.5), "fillet 6,5"), (Butt(5, 7.5), "butt 5 \u00d7 7,5")], ids=["fillet", "butt"]
)
def test_a_section_is_said_with_the_signs_of_the_writing(section: Section, words: str) -> None:
    assert ABROAD.section(section) == words


def test_packs_are_counted_with_the_sign_of_multiplication() -> None:
    tin, box = Pack(0.5, name="tin"), Pack(25)
    assert TERMINAL.packs([(tin, 2), (Pack(1.0), 1)], Measure.LITRES) == "2 x 0.5 L tin, 1 x 1 L"
    assert ABROAD.packs([(tin, 2)], Measure.LITRES) == "2 \u00d7 0,5 L tin"
    assert TERMINAL.packs([(box, 1)], Measure.PIECES) == "1 x pack of 25"
    assert TERMINAL.packs([], Measure.PIECES) == "none"


@pytest.mark.parametrize(
    ("writing", "measure", "words"),
    [
        (TERMINAL, Measure.LITRES, "12.5 m2/L"),
        (ABROAD, Measure.LITRES, "12,5 m\u00b2/L"),
        (INCHES, Measure.LITRES, "509.3 ft2/gal"),  # 12.5 x 10.76391 ft2 x 3.785412 L
        (TERMINAL, Measure.PIECES, "12.5 m2 each"),
    ],
)
def test_a_spread_rate_is_said_as_tins_say_it(writing: Writing, measure: Measure, words: str) -> None:
    assert writing.spread_rate(12.5, measure) == words


@pytest.mark.parametrize(
    ("amount", "words"),
    [(24.9, "24,90"), (-0.001, "0,00"), (1234.5, "1234,50"), (12345.678, "12.345,68"), (-1e6, "\u22121.000.000,00")],
)
def test_money_is_to_the_cent_and_grouped_where_it_is_long(amount: float, words: str) -> None:
    assert ABROAD.money(amount) == words


def test_money_has_its_currency_and_no_price_is_said() -> None:
    assert TERMINAL.money(1234.5, "crowns") == "1234.50 crowns"
    assert [TERMINAL.cost(None), TERMINAL.cost(2.0)] == ["no price", "2.00"]


def test_a_single_piece_goes_by_its_name() -> None:
    day, mask, box = Pack(1.0, None, "day"), Pack(1.0), Pack(25.0, None, "box")
    assert TERMINAL.packs(((day, 3), (mask, 1), (box, 2)), Measure.PIECES) == "3 x day, 1 x pack of 1, 2 x box of 25"


def test_an_amount_in_a_sum_keeps_to_one_unit() -> None:
    assert [TERMINAL.amount(0.236, Measure.LITRES), ABROAD.amount_in_sum(0.236, Measure.LITRES)] == [
        "236 mL",
        "0,236 L",
    ]


def test_a_share_is_said_in_percent() -> None:
    assert ABROAD.percent(0.125) == "12,5 %"


def test_a_sentence_keeps_its_full_stops_and_names_of_numbers() -> None:
    said = "Bead 5 x 5: 2.5 m2 at 12 m2/L. Measure 3 doors x 2 again."
    assert TERMINAL.sentence(said) == said
    assert ABROAD.sentence(said) == ("Bead 5 \u00d7 5: 2,5 m\u00b2 at 12 m\u00b2/L. Measure 3 doors x 2 again.")
