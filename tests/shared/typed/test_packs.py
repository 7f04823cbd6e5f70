from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.job import Unit
from shared.trade.products import Measure
from shared.typed.packs import number_in, parsed_size, read_size
from shared.written.packs import show_amount, show_size

LITRES, METRES, PIECES = Measure.LITRES, Measure.METRES, Measure.PIECES


# US gallon and fluid ounce, imperial gallon, foot: NIST Handbook 44 app. C, 16 CFR 500.19; exact.
@pytest.mark.parametrize(
    ("text", "measure", "size"),
    [
        ("4 L", LITRES, 4),
        ("4L", LITRES, 4),
        ("300 mL", LITRES, 0.3),
        ("10.1 fl oz", LITRES, 10.1 * 0.0295735295625),
        ("1 gal", LITRES, 3.785411784),
        ("1 U.S. gallon", LITRES, 3.785411784),
        ("2 imp gal", LITRES, 9.09218),
        ("1/2 gal", LITRES, 1.892705892),
        ("1 1/2 L", LITRES, 1.5),
        ("6 x 300 mL", LITRES, 1.8),
        ("1,000 mL", LITRES, 1),
        ("50 m", METRES, 50),
        ("60 yd", METRES, 54.864),
        ("100'", METRES, 30.48),
        ("25 sheets", PIECES, 25),
        ("pack of 25", PIECES, 25),
        ("4", LITRES, 4),
    ],
)
def test_a_size_is_read_as_its_label_writes_it(text: str, measure: Measure, size: float) -> None:
    assert read_size(text, measure, Unit.INCH) == pytest.approx(size, rel=1e-12)


def test_a_decimal_comma_is_read_where_the_person_writes_one() -> None:
    assert read_size("2,5 L", LITRES, Unit.MM, decimal=",") == 2.5
    assert read_size("1.000 mL", LITRES, Unit.MM, decimal=",") == 1


def test_the_job_says_whose_gallon_it_is_and_that_is_told() -> None:
    assert parsed_size("1 gal", Unit.INCH) == (3.785411784, LITRES, "gal is taken for US gal, 3.78541 L")
    assert parsed_size("1 gal", Unit.MM) == (4.54609, LITRES, "gal is taken for imp gal, 4.54609 L")
    assert parsed_size("1 US gal", Unit.MM).granted == ""


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "this is not a pack size"),
        ("large", "this is not a pack size"),
        ("-4 L", "this is not a pack size"),
        ("0 L", "a pack cannot be empty"),
        ("9000000 L", "no pack holds that much"),
        ("4 kg", "“kg” is not a unit for packs"),
        ("1/0 gal", "a size cannot be divided by 0"),
        ("1,5 L", "“1,5” is not a number"),
        ("50 m", "this is counted in L, not in m"),
    ],
)
def test_what_is_no_size_is_told_in_words(text: str, words: str) -> None:
    with pytest.raises(ReadingError, match=words):
        read_size(text, LITRES, Unit.MM)


@pytest.mark.parametrize(
    ("size", "measure", "unit", "words"),
    [
        (4, LITRES, Unit.MM, "4 L"),
        (0.5, LITRES, Unit.MM, "0.5 L"),
        (0.3, LITRES, Unit.MM, "300 mL"),
        (3.785411784, LITRES, Unit.MM, "1 US gal"),
        (3.785411784, LITRES, Unit.INCH, "1 gal"),
        (0.946352946, LITRES, Unit.INCH, "1 qt"),
        (4, LITRES, Unit.INCH, "4 L"),
        (1.23456, LITRES, Unit.MM, "1.235 L"),
        (54.864, METRES, Unit.INCH, "180 ft"),
        (50, METRES, Unit.INCH, "50 m"),
        (25, PIECES, Unit.MM, "25"),
    ],
)
def test_a_size_is_shown_as_its_label_writes_it(size: float, measure: Measure, unit: Unit, words: str) -> None:
    assert show_size(size, measure, unit) == words


@pytest.mark.parametrize(
    ("amount", "measure", "unit", "words"),
    [
        (1.6249, LITRES, Unit.MM, "1.62 L"),
        (0.2362, LITRES, Unit.MM, "236 mL"),
        (0.0, LITRES, Unit.MM, "0 mL"),
        (9.2137, LITRES, Unit.INCH, "2.43 gal"),
        (0.0190, LITRES, Unit.INCH, "0.64 fl oz"),
        (0.2, METRES, Unit.INCH, "0.7 ft"),
        (34.52, METRES, Unit.MM, "34.5 m"),
        (5.42, PIECES, Unit.MM, "5.4"),
    ],
)
def test_an_amount_is_rounded_for_the_eye(amount: float, measure: Measure, unit: Unit, words: str) -> None:
    assert show_amount(amount, measure, unit) == words


@given(
    number=st.integers(1, 100_000).map(lambda thousandths: thousandths / 1000),
    written=st.sampled_from(("L", "mL", "US gal", "qt", "imp pt", "fl oz", "m", "ft", "yd", "pieces")),
    unit=st.sampled_from(Unit),
    decimal=st.sampled_from((".", ",")),
)
def test_what_is_shown_is_read_back(number: float, written: str, unit: Unit, decimal: str) -> None:
    size = parsed_size(f"{number:.3f} {written}", unit)
    assert size.measure is not None
    shown = show_size(size.amount, size.measure, unit, decimal=decimal)
    assert read_size(shown, size.measure, unit, decimal=decimal) == pytest.approx(size.amount, abs=5e-4)


@given(st.text(max_size=40))
def test_any_text_is_a_size_or_is_refused_in_words(text: str) -> None:
    with suppress(ReadingError):
        assert parsed_size(text, Unit.MM).amount > 0
        assert number_in(text)
