"""The usual slips of a reading: what was meant by a number that cannot be right."""

from collections.abc import Iterator

from shared.job import Unit
from shared.written.units import size_mm

TENFOLD = 10.0

WHOLE = 1e-6
"""A length this near to a whole number of units was read as that number: inches are not exact as floats."""


def slip_for(length_mm: float, wanted_mm: float, within_mm: float, unit: Unit) -> float | None:
    """The length that was meant, mm, if a usual slip turns it into `length_mm`; None when no slip explains it.

    It must be within `within_mm` of `wanted_mm`, the length that should have been read. Of several, it is the nearest.
    """
    close = [meant for meant in usual_slips(length_mm, unit) if abs(meant - wanted_mm) <= within_mm]
    return min(close, key=lambda meant: abs(meant - wanted_mm), default=None)


def usual_slips(length_mm: float, unit: Unit) -> Iterator[float]:
    """The lengths that a reading may have been meant as, mm: ten times as long, a tenth, or with two digits swapped.

    Two neighbouring digits are swapped, and only in a whole number of the unit (common practice, no source).
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
