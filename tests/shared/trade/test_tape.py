import pytest

from shared.trade.tape import TapeClass, tape_tolerance_mm


def test_a_reading_of_nothing_is_off_by_the_fixed_part() -> None:
    assert tape_tolerance_mm(0, TapeClass.SECOND, hooked=False) == pytest.approx(0.3)


def test_every_metre_that_is_begun_counts() -> None:
    before = tape_tolerance_mm(2000, TapeClass.THIRD, hooked=False)
    assert tape_tolerance_mm(2000.1, TapeClass.THIRD, hooked=False) == pytest.approx(before + 0.4)


def test_a_negative_length_is_refused() -> None:
    with pytest.raises(ValueError, match="-1"):
        tape_tolerance_mm(-1, TapeClass.FIRST, hooked=True)
