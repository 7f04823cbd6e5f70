"""What a person may have meant by a number that cannot be right."""

from collections.abc import Iterator

from shared.job import Unit
from shared.written.units import size_mm

TENFOLD = 10.0

WHOLE = 1e-6
"""A length this near to a whole number of units was read as one; inches are not exact as floats."""


def slip_for(length_mm: float, wanted_mm: float, within_mm: float, unit: Unit) -> float | None:
    """What was read, mm, if a usual slip explains a reading of `length_mm` where `wanted_mm` should stand; else None.

    The nearest is given, of those within `within_mm` of what is wanted.
    """
    close = [meant for meant in usual_slips(length_mm, unit) if abs(meant - wanted_mm) <= within_mm]
    return min(close, key=lambda meant: abs(meant - wanted_mm), default=None)


def usual_slips(length_mm: float, unit: Unit) -> Iterator[float]:
    """What a reading may have been meant as, mm: ten times as much, or as little, or with two digits swapped.

    Neighbouring digits, of a whole number of the unit (common practice, no source).
    """
    unit_mm = float(size_mm(unit))
    count = length_mm / unit_mm
    whole = abs(count - round(count)) <= WHOLE
    swapped = (unit_mm * number for number in _swapped(str(round(count)))) if whole else ()
    for meant in (length_mm * TENFOLD, length_mm / TENFOLD, *swapped):
        if meant > 0 and abs(meant - length_mm) > WHOLE:
            yield meant


def _swapped(digits: str) -> Iterator[int]:
    """The number with each two neighbouring digits swapped."""
    for place in range(len(digits) - 1):
        yield int(digits[:place] + digits[place + 1] + digits[place] + digits[place + 2 :])
