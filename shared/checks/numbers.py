"""Numbers of a job in the words of an error. A file may hold whole numbers that are too long for a float."""

from math import log10


def in_words(number: float) -> str:
    """The number as a person reads it: "0.3", "1e+50", and for the longest "a number of 310 digits"."""
    try:
        return f"{number:.15g}"
    except OverflowError:
        return f"a number of {int(log10(abs(number))) + 1} digits"
