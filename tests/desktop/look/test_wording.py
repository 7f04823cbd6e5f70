"""Numbers as the person's system writes them."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale

from desktop.look.wording import decimal_sign, own_writing
from shared.job import Unit
from shared.typed.numbers import read_number


@pytest.fixture
def as_found() -> Iterator[None]:
    """The system as it was before."""
    before = QLocale()
    yield
    QLocale.setDefault(before)


@pytest.fixture
def comma() -> Iterator[None]:
    """A system that writes a decimal comma."""
    before = QLocale()
    QLocale.setDefault(QLocale(QLocale.Language.German))
    yield
    QLocale.setDefault(before)


@pytest.mark.usefixtures("comma")
def test_a_sentence_gets_the_decimal_sign_of_the_system_and_keeps_its_full_stops() -> None:
    assert own_writing().sentence("It is 3.5 mm off over 2400. Measure the 1.25 again.") == (
        "It is 3,5 mm off over 2400. Measure the 1,25 again."
    )


def test_where_the_system_writes_a_point_a_sentence_stays_as_it_is() -> None:
    assert own_writing().sentence("3.5 mm") == "3.5 mm"


@pytest.mark.usefixtures("as_found")
@pytest.mark.parametrize("amount", [0.0, 24.9, 1234.5, 12345.678, 1234567.5])
@pytest.mark.parametrize("name", ["en_GB", "de_DE", "de_CH", "fr_FR", "es_ES", "pl_PL", "nb_NO", "C"])
def test_money_is_written_as_the_system_writes_it(name: str, amount: float) -> None:
    QLocale.setDefault(QLocale(name))
    assert own_writing().money(amount) == QLocale().toString(amount, "f", 2)


@pytest.mark.usefixtures("as_found")
@pytest.mark.parametrize("name", ["en_GB", "de_CH", "fr_FR", "es_ES", "nb_NO", "en_IN", "ar_EG", "C"])
def test_money_that_is_shown_can_be_typed_back(name: str) -> None:
    QLocale.setDefault(QLocale(name))
    assert float(read_number(own_writing().money(1234567.5), decimal_sign())) == 1234567.5


@pytest.mark.usefixtures("comma")
def test_an_area_has_the_sign_of_the_system_and_a_raised_square() -> None:
    assert own_writing(Unit.MM).area(2.14e6) == "2,14 m²"
