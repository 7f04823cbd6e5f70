"""A row of the tree behind a figure, as a value."""

from collections.abc import Iterator
from typing import NamedTuple


class WhyRow(NamedTuple):
    """What a row is about in `words`, its `amount`, with its unit, and the `factors` that come to it, all written.

    `note` is said after the amount. `children` are what it is the sum of, `parts` the ids of those that it was measured
    from, and `face` the id of the one that a row about a single part is on. `rule` and `source` say how it was
    reckoned; a row without a rule is a step of the sum of the row above it.
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
        """The rules and the source, those that are said."""
        yield from (rule for rule in self.rule.split("; ") if rule)
        if self.source:
            yield self.source
