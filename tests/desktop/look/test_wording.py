"""Numbers as the person's system writes them."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale

from desktop.look.wording import own_writing


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
