"""A face while parts of it are dragged: the rest is arranged once, and a frame cuts only what the moved parts meet."""

from collections.abc import Collection, Sequence
from contextlib import suppress

from geometry.dragging.frame import frame
from geometry.dragging.ground import ground_of
from geometry.parts.rank import rank_key
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Arrangement
from geometry.seen.border import TornError
from shared.job import Part


class Standing:
    """The parts of a face, some of which are being moved or reshaped."""

    def __init__(self, parts: Sequence[Part], moving: Collection[str]) -> None:
        self._parts = tuple(parts)
        self._places = {part.id: place for place, part in enumerate(parts) if part.id in moving}
        self._ground = ground_of(self._parts, self._places.keys())

    def arranged(self, moved: Sequence[Part]) -> Arrangement:
        """The arrangement that `arrange` gives of the face with each moved part in place of the one with its id.

        Its edges come in another order. A moving part that is not among `moved` stays where it was. KeyError for a part
        that was not said to move; other errors as in `arrange`.
        """
        new = {part.id: part for part in moved}
        if not new.keys() <= self._places.keys():
            raise KeyError(min(new.keys() - self._places.keys()))
        if self._ground is not None and all(self._keeps_rank(part) for part in moved):
            changed = [new.get(part.id, part) for part in self._ground.moving]
            with suppress(TornError):
                return frame(self._ground, changed)
        return arrange([new.get(part.id, part) for part in self._parts])

    def _keeps_rank(self, part: Part) -> bool:
        place = self._places[part.id]
        return rank_key(part, place) == rank_key(self._parts[place], place)
