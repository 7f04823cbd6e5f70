"""Split: the picked parts into pieces, across or up, with reveals between them."""

from collections.abc import Callable

from desktop.gestures.gesture import SIZE_AWAY, Done, Gesture, Scene
from desktop.gestures.on_parts import OnParts
from desktop.gestures.pick import named
from desktop.gestures.preview import Preview
from geometry.edits.splitting import with_split
from geometry.outlines.measured import outline_box
from shared.drawing import Size
from shared.edits.drawn import find_part, find_room_of
from shared.job import Job, Part, Unit
from shared.trade.kinds import usual
from shared.typed.counts import Division, read_pieces

EXAMPLES = {Unit.MM: "as in 3, 3 reveal 4, or 600, 450", Unit.INCH: "as in 3, 3 reveal 1/8, or 24, 18"}
MOST_SIZES_SAID = 6


class Split(OnParts):
    """Splits the picked parts as one line says.

    Fronts get the room's reveal between them and other parts get none, unless the line names a reveal.
    """

    first_advice = "click the part to split"

    def __init__(self, scene: Scene, *, up: bool = False) -> None:
        super().__init__(scene)
        self._up = up

    @property
    def wants(self) -> str:
        if not self.parts:
            return ""
        how, sizes = ("one over another", "heights") if self._up else ("side by side", "widths")
        return f"how many {how}, or their {sizes}"

    @property
    def example(self) -> str:
        return EXAMPLES[self.scene.job.unit] if self.parts else super().example

    @property
    def other_way(self) -> str:
        return "side by side" if self._up else "one over another"

    def says(self, text: str) -> str:
        self._refuse_unwanted(text)
        pieces = read_pieces(text, self.scene.job.unit, decimal=self.scene.decimal)
        _, made = self._made(pieces)
        sizes = [self.words(size.length_mm) for size in map(self._size(pieces), made)]
        if len(set(sizes)) == 1:
            return f"{len(made)} pieces of {sizes[0]}"
        more = ["..."] if len(sizes) > MOST_SIZES_SAID else []
        return f"{len(made)} pieces: {', '.join(sizes[:MOST_SIZES_SAID] + more)}"

    def type(self, text: str) -> Done | None:
        if not self.parts:
            return super().type(text)
        pieces = read_pieces(text, self.scene.job.unit, decimal=self.scene.decimal)
        job, made = self._made(pieces)
        sizes = tuple(map(self._size(pieces), made))
        if len({self.words(size.length_mm) for size in sizes}) == 1:
            sizes = sizes[:1]
        preview = Preview(tuple(part.outline for part in made), sizes=sizes)
        return Done(f"Split {named(self.parts)}", job, tuple(part.id for part in made), preview)

    def turned(self) -> Gesture:
        return type(self)(self.scene, up=not self._up)

    def again(self, scene: Scene) -> Gesture:
        return type(self)(scene, up=self._up)

    def _made(self, pieces: Division) -> tuple[Job, tuple[Part, ...]]:
        """The job with the parts split, and the pieces."""
        job, ids = self.scene.job, list[str]()
        for part in self.parts:
            job, each = with_split(
                job, (part.id,), pieces.into, up=self._is_up(pieces), reveal_mm=self._reveal_mm(pieces, part)
            )
            ids += each
        return job, tuple(find_part(job, part_id)[1] for part_id in ids)

    def _is_up(self, pieces: Division) -> bool:
        return self._up if pieces.up is None else pieces.up

    def _reveal_mm(self, pieces: Division, part: Part) -> float:
        if pieces.reveal_mm is not None:
            return pieces.reveal_mm
        return find_room_of(self.scene.job, self.scene.face_id).heights.reveal_mm if usual()[part.kind].front else 0.0

    def _size(self, pieces: Division) -> Callable[[Part], Size]:
        """What gives the size of a piece: its height if the pieces stand one over another, else its width."""
        away, up = SIZE_AWAY * self.scene.reach_mm, self._is_up(pieces)

        def size(part: Part) -> Size:
            left, bottom, right, top = outline_box(part.outline)
            return Size((left, bottom), (left, top), away) if up else Size((left, bottom), (right, bottom), -away)

        return size
