"""What lies in front of what."""

from shared.job import Part
from shared.trade.kinds import usual


def rank_key(part: Part, index: int) -> tuple[bool, int, int, int]:
    """A key that sorts the parts of a face from the back to the front; `index` is the part's place in drawing order.

    A strict order: parts that do not hide lie behind all that do (their whole outline is shown over the face instead);
    then the level set by hand decides, over parts of any kind, then the kind's rank, then which was drawn later.
    """
    return (part.hides, part.level, usual()[part.kind].rank, index)
