"""Fields of finishes, products and prices: what is shown can be typed back, and what makes no sense is refused."""

from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QLocale

from desktop.fields.words import (
    FieldWords,
    MoneyWords,
    NumberWords,
    RatioWords,
    ShadeWords,
    SizeWords,
    SpreadWords,
    StockWords,
)
from shared.errors import ReadingError
from shared.job import Unit
from shared.trade.products import Measure

LITRES, PIECES = SpreadWords(Measure.LITRES), SpreadWords(Measure.PIECES)
SHARE = NumberWords("loss", most=0.95, percent=True)
HOURS = NumberWords("time", most=10_000, sign="h")


@pytest.fixture
def comma() -> Iterator[None]:
    """A system that writes a decimal comma."""
    before = QLocale()
    QLocale.setDefault(QLocale(QLocale.Language.German, QLocale.Country.Germany))
    yield
    QLocale.setDefault(before)


@pytest.mark.parametrize(
    ("words", "text", "value"),
    [
        (HOURS, "6", 6.0),
        (HOURS, "1.5 h", 1.5),
        (SHARE, "30", 0.3),
        (SHARE, "12.5 %", 0.125),
        (LITRES, "12 m²/L", 12.0),
        (LITRES, "12m2/l", 12.0),
        (LITRES, "", None),
        (NumberWords("dry film", sign="µm"), "45 um", 45.0),
        (PIECES, "1.5", 1.5),
        (RatioWords(), "4:1", (4.0, 1.0)),
        (RatioWords(), "2 to 0.5", (2.0, 0.5)),
        (RatioWords(), "", None),
        (SizeWords(Measure.LITRES), "300 mL", 0.3),
        (StockWords(Measure.METRES), "", 0.0),
        (StockWords(Measure.METRES), "0", 0.0),
        (StockWords(Measure.METRES), "12 m", 12.0),
        (MoneyWords("price"), "1,118.50", 1118.5),
        (MoneyWords("price"), "", None),
        (MoneyWords("budget", 0.0), "", 0.0),
        (ShadeWords(), "a3b59b", "#A3B59B"),
        (ShadeWords(), "", ""),
    ],
)
def test_what_a_person_types_is_read(words: FieldWords, text: str, value: object) -> None:
    assert words.read(text, Unit.MM) == value


@pytest.mark.parametrize(
    ("words", "text", "trouble"),
    [
        (LITRES, "0", "the spread rate must be more than 0"),
        (LITRES, "-3", "the spread rate must be more than 0"),
        (LITRES, "much", "is not a number"),
        (SHARE, "96", "the loss must be from 0 % to 95 %"),
        (NumberWords("number of coats", least=1, most=50, whole=True), "1.5", "a whole number"),
        (NumberWords("number of coats", least=1, most=50, whole=True), "0", "from 1 to 50"),
        (RatioWords(), "0:1", "both parts of a mix ratio must be above 0"),
        (RatioWords(), "4", "this is not a mix ratio"),
        (SizeWords(Measure.LITRES), "0 L", "a pack cannot be empty"),
        (SizeWords(Measure.LITRES), "", "not a pack size"),
        (SizeWords(Measure.LITRES), "4 m", "counted in L, not in m"),
        (MoneyWords("price"), "-1", "the price must be from 0"),
        (ShadeWords(), "sage", "this is not a colour"),
    ],
)
def test_what_makes_no_sense_is_refused_in_words(words: FieldWords, text: str, trouble: str) -> None:
    with pytest.raises(ReadingError, match=trouble):
        words.read(text, Unit.MM)


def test_a_job_in_inches_says_spread_rates_in_square_feet_a_gallon() -> None:
    # 1 US gal = 3.785411784 L, 1 ft = 0.3048 m (exact, the design's table of checks, "Units").
    assert LITRES.read("400", Unit.INCH) == pytest.approx(400 * 0.3048**2 / 3.785411784)
    assert LITRES.show(LITRES.read("400", Unit.INCH), Unit.INCH) == "400 ft²/gal"
    assert PIECES.show(0.3048**2, Unit.INCH) == "1 ft² each"


@given(st.floats(0.01, 5000), st.sampled_from(Unit))
def test_a_spread_rate_that_is_shown_can_be_typed_back(rate: float, unit: Unit) -> None:
    shown = LITRES.show(rate, unit)
    assert LITRES.show(LITRES.read(shown, unit), unit) == shown


@given(st.integers(1, 9_999_999))
def test_money_that_is_shown_can_be_typed_back(cents: int) -> None:
    words = MoneyWords("price")
    assert words.read(words.show(cents / 100, Unit.MM), Unit.MM) == pytest.approx(cents / 100)


@given(st.integers(0, 950))
def test_a_share_that_is_shown_can_be_typed_back(thousandths: int) -> None:
    assert SHARE.read(SHARE.show(thousandths / 1000, Unit.MM), Unit.MM) == pytest.approx(thousandths / 1000)


@pytest.mark.usefixtures("comma")
def test_the_decimal_sign_is_the_systems() -> None:
    assert HOURS.show(1.5, Unit.MM) == "1,5 h"
    assert HOURS.read("1,5 h", Unit.MM) == 1.5
    assert MoneyWords("price").show(1118.5, Unit.MM) == "1.118,50"
    assert MoneyWords("price").read("1.118,50", Unit.MM) == 1118.5
    assert RatioWords().show((2.0, 0.5), Unit.MM) == "2:0,5"
    assert RatioWords().read("2:0,5", Unit.MM) == (2.0, 0.5)
