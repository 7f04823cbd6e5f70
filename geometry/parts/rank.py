"""Which part of a face lies in front of which."""

from shared.job import Part
from shared.trade.kinds import usual


def rank_key(part: Part, index: int) -> tuple[bool, int, int, int]:
    """A key that sorts the parts of a face from the back to the front; `index` is the part's place in drawing order.

    Parts that do not hide lie behind all that do: their whole outline is shown over the face instead. Then the level
    that was set by hand decides, whatever the kinds; then the rank of the kind; then the part drawn later is in front.
    No two parts have the same key.
    """
    return (part.hides, part.level, usual()[part.kind].rank, index)
