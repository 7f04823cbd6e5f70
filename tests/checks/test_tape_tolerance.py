"""Tape tolerances against the published rule: UK SI 2016/1153 schedule 1I = EU directive 2014/32 annex X (seen).

OIML R 35-1 has the same a and b (from memory).
"""

import pytest

from shared.trade.tape import TapeClass, tape_tolerance_mm


@pytest.mark.parametrize(("length_m", "tolerance_mm"), [(2, 0.7), (3, 0.9), (5, 1.3), (8, 1.9), (10, 2.3), (2.4, 0.9)])
def test_class_two_tapes(length_m: float, tolerance_mm: float) -> None:
    assert tape_tolerance_mm(length_m * 1000, TapeClass.SECOND, hooked=False) == pytest.approx(tolerance_mm)


def test_a_class_two_tape_read_from_its_hook() -> None:
    assert tape_tolerance_mm(2400, TapeClass.SECOND, hooked=True) == pytest.approx(1.1)


@pytest.mark.parametrize(
    ("tape_class", "a", "b", "hook"),
    [(TapeClass.FIRST, 0.1, 0.1, 0.1), (TapeClass.SECOND, 0.3, 0.2, 0.2), (TapeClass.THIRD, 0.6, 0.4, 0.3)],
)
def test_the_rule_a_plus_b_l_and_the_hook(tape_class: TapeClass, a: float, b: float, hook: float) -> None:
    assert tape_tolerance_mm(3001, tape_class, hooked=False) == pytest.approx(a + 4 * b)
    assert tape_tolerance_mm(3001, tape_class, hooked=True) == pytest.approx(a + 4 * b + hook)
