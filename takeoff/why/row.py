"""A row of the tree that explains a figure."""

from collections.abc import Iterator
from typing import NamedTuple


class WhyRow(NamedTuple):
    """One row, written out: what it is about, its amount with the unit, and the factors that give the amount.

    `note` is said after the amount. `children` are the rows of its sum. `parts` are the ids of the parts that it was
    measured from. `face` is the id of the face, for a row about a single part. `rule` and `source` say how the amount
    was worked out. A row without a rule is a term of the row above it.
    """

    words: str
    amount: str = ""
    factors: str = ""
    note: str = ""
    children: tuple["WhyRow", ...] = ()
    parts: tuple[str, ...] = ()
    face: str = ""
    rule: str = ""
    source: str = ""

    @property
    def line(self) -> str:
        """The row in one line: "outline, width x height: 3600 x 600 = 2.160 m2", "15 fronts with 2 = 30"."""
        result = " = ".join(word for word in (self.factors, self.amount) if word)
        about = ": ".join(word for word in (self.words, result) if word)
        return ", ".join(word for word in (about, self.note) if word)

    @property
    def grounds(self) -> Iterator[str]:
        """The rules of the row one by one, then its source; nothing for a row without them."""
        yield from (rule for rule in self.rule.split("; ") if rule)
        if self.source:
            yield self.source
