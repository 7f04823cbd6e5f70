import pytest

from geometry.set_out.slips import slip_for, usual_slips
from shared.job import Unit


@pytest.mark.parametrize(
    ("read", "wanted", "meant"), [(195, 1950, 1950), (3600, 361, 360), (540, 452, 450), (1356, 1534, 1536)]
)
def test_a_usual_slip_explains_a_reading(read: float, wanted: float, meant: float) -> None:
    assert slip_for(read, wanted, 3, Unit.MM) == meant


def test_what_no_usual_slip_explains_stays_open() -> None:
    assert slip_for(600, 606, 3, Unit.MM) is None


def test_digits_are_those_of_the_unit() -> None:
    assert slip_for(45 * 25.4, 54 * 25.4, 3, Unit.INCH) == pytest.approx(54 * 25.4)
    assert slip_for(45 * 25.4, 54 * 25.4, 3, Unit.MM) is None


def test_equal_digits_and_zeros_give_no_slip() -> None:
    assert list(usual_slips(55, Unit.MM)) == [550, 5.5]
    assert list(usual_slips(600.5, Unit.MM)) == [6005, 60.05]
