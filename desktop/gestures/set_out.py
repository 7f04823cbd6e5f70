"""Set-out: readings along a face make the lines that drawing snaps to. As they are typed, how they close is shown."""

from itertools import cycle
from typing import NamedTuple

from desktop.gestures.aiming import aimed
from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene, snapped
from desktop.gestures.preview import Preview
from geometry.edits.setting_out import with_chain, with_overall, with_running, with_straight
from geometry.outlines.sides import Point
from geometry.parts.extent import extent
from geometry.set_out.closing import JOIN_MM, Closing, closures
from geometry.set_out.lines import set_out
from geometry.snapping.snap import Snap
from shared.edits.drawn import find_face
from shared.errors import ReadingError
from shared.job import END, START, Job, Vertex, View, Way
from shared.typed.set_out import DIAGONALS, NEW, SIDES, Group, How, read_set_out


class _Turn(NamedTuple):
    """How readings are taken if the line does not say it: running or as a chain, across or up."""

    how: How
    way: Way


TURNS = (
    _Turn(How.RUNNING, Way.ACROSS),
    _Turn(How.CHAIN, Way.ACROSS),
    _Turn(How.RUNNING, Way.UP),
    _Turn(How.CHAIN, Way.UP),
)


class SetOut(Gesture):
    """Takes a whole line of readings at once. A press on the face says where a chain begins.

    The variants follow one another: running readings across, a chain across, running readings up, a chain up.
    """

    first_advice = "choose a face first"

    def __init__(self, scene: Scene, turn: _Turn = TURNS[0]) -> None:
        super().__init__(scene)
        self._turn = turn
        self._targets = aimed(scene)
        self._here: Snap | None = None
        self._from_mm: float | None = None

    @property
    def wants(self) -> str:
        if self._turn.how is How.CHAIN:
            begins = self._begins_words()
            return f"a chain {self._turn.way.value} from {begins}, as in 600, 450, 900"
        end = "the left end" if self._turn.way is Way.ACROSS else self._foot()
        return f"running readings from {end}, as in 600, 1050, 1950"

    @property
    def other_way(self) -> str:
        after = self._next()
        return f"{after.how.value} {after.way.value}"

    @property
    def is_begun(self) -> bool:
        return self._from_mm is not None

    @property
    def preview(self) -> Preview:
        here = self._here
        guides = (self._begin_line(),) if self._from_mm is not None else ()
        if here is None:
            return Preview(guides=guides)
        spot = (here.x, here.y) if here.words else None
        return Preview(guides=(*guides, *here.guides), spot=spot, words=here.words)

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        self._here = snapped(at, self._targets, self.scene, held)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        """Begin a chain here."""
        self.point(at, held)
        if self._here is not None:
            self._from_mm = self._here.x if self._turn.way is Way.ACROSS else self._here.y
            self._turn = self._turn._replace(how=How.CHAIN)
        return None

    def says(self, text: str) -> str:
        """For each reading, the set-out line that it joins and how it closes there. Then what is left of the face."""
        job, said = self.scene.job, []
        for group in self._groups(text):
            said.append(self._group_words(job, group))
            job = self._with_group(job, group)
        return " · ".join(said)

    def type(self, text: str) -> Done | None:
        groups = self._groups(text)
        job = self.scene.job
        for group in groups:
            job = self._with_group(job, group)
        many = sum(len(group.lengths) for group in groups)
        name = self.scene.face.name
        label = f"Set out {name}: {many} reading{'s' if many > 1 else ''}"
        return Done(label, job, (), self._shown(job))

    def turned(self) -> Gesture:
        return SetOut(self.scene, self._next())

    def again(self, scene: Scene) -> Gesture:
        return SetOut(scene, self._turn)

    def back(self) -> None:
        self._from_mm = None

    def cancel(self) -> None:
        self._from_mm = None

    def _next(self) -> _Turn:
        turns = cycle(TURNS)
        while next(turns) != self._turn:
            pass
        return next(turns)

    def _groups(self, text: str) -> tuple[Group, ...]:
        """The groups of readings in a line. What a group does not say it takes from the one before, or the gesture."""
        scene, (how, way) = self.scene, self._turn
        groups = []
        for group in read_set_out(text, scene.job.unit, decimal=scene.decimal):
            along = group.how in (None, How.RUNNING, How.CHAIN)
            how, way = (group.how or how, group.way or way) if along else (how, way)
            groups.append(group._replace(how=group.how or how, way=group.way or (way if along else Way.ACROSS)))
        return tuple(groups)

    def _with_group(self, job: Job, group: Group) -> Job:
        face, way, lengths = self.scene.face_id, group.way or Way.ACROSS, group.lengths
        if group.how is How.WALL:
            return with_overall(job, face, way, lengths[0])
        if group.how is How.SIDE:
            return with_straight(job, face, *SIDES[group.side], lengths[0])
        if group.how is How.DIAGONAL:
            for length, (start, end) in zip(lengths, self._diagonals(job), strict=False):
                job = with_straight(job, face, start, end, length)
            return job
        if group.how is How.CHAIN:
            return with_chain(job, face, way, lengths, self._begins(job, group), fresh=group.fresh)
        return with_running(job, face, way, lengths, fresh=group.fresh)

    def _diagonals(self, job: Job) -> tuple[tuple[str, str], ...]:
        """The diagonals in the order in which they are wanted: one that was not read yet comes first."""
        read = {(reading.start, reading.end) for reading in find_face(job, self.scene.face_id).readings}
        return tuple(sorted(DIAGONALS, key=lambda corners: corners in read))

    def _begins(self, job: Job, group: Group) -> str:
        """The mark that a chain begins from: the set-out line nearest to the typed or pressed place, else the start.

        ReadingError if no set-out line is there.
        """
        place = self._from_mm if group.from_mm is None else group.from_mm
        way = group.way or Way.ACROSS
        if not place or (group.from_mm is None and way is not self._turn.way):
            return START
        lines = [
            line
            for line in set_out(find_face(job, self.scene.face_id), job.tape, job.unit).lines
            if line.way is way and line.name != END
        ]
        nearest = min(lines, key=lambda line: abs(line.at_mm - place), default=None)
        if nearest is None or abs(nearest.at_mm - place) > JOIN_MM:
            what = f"no set-out line is at {self._words(place)}"
            raise ReadingError(what, do="begin the chain at one of the lines, or at the left end")
        return nearest.name

    def _group_words(self, job: Job, group: Group) -> str:
        if group.how not in (How.RUNNING, How.CHAIN):
            what = group.side or str(group.how)
            return f"{what} {' and '.join(map(self._words, group.lengths))}"
        way = group.way or Way.ACROSS
        start = self._begins(job, group) if group.how is How.CHAIN else None
        found = closures(job, self.scene.face_id, way, group.lengths, start, fresh=group.fresh)
        words = [self._closing_words(each) for each in found.readings]
        if found.left_mm is not None and found.left_mm >= 0:
            words.append(f"{self._words(found.left_mm)} left")
        if any(each.joins and self._is_off(each) for each in found.readings):
            words.append(f"type {NEW} before them to make new lines")
        return " · ".join(words)

    def _closing_words(self, each: Closing) -> str:
        at = self._words(each.at_mm)
        if not each.joins:
            return at
        end = "the end" if each.end == END else ""
        if not self._is_off(each):
            return f"{at} closes on {end}" if end else f"{at} closes"
        line = end or self._words(each.at_mm - each.off_mm)
        return f"{at} is {self._words(abs(each.off_mm))} {'beyond' if each.off_mm > 0 else 'short of'} {line}"

    def _is_off(self, each: Closing) -> bool:
        """Whether a reading misses its line by enough to be seen in the job's units."""
        return self._words(abs(each.off_mm)) != self._words(0.0)

    def _shown(self, job: Job) -> Preview:
        """The four corners of the face, once the readings place them; nothing before."""
        corners = set_out(find_face(job, self.scene.face_id), job.tape, job.unit).corners
        return Preview(outlines=(tuple(Vertex(x, y) for x, y in corners.points),)) if corners else Preview()

    def _begin_line(self) -> tuple[Point, Point]:
        left, bottom, right, top = extent(self.scene.face)
        at = self._from_mm or 0.0
        return ((at, bottom), (at, top)) if self._turn.way is Way.ACROSS else ((left, at), (right, at))

    def _begins_words(self) -> str:
        if self._from_mm is not None:
            return self._words(self._from_mm)
        return "the left end" if self._turn.way is Way.ACROSS else self._foot()

    def _foot(self) -> str:
        return "the floor" if self.scene.face.view is View.ELEVATION else "the wall"

    def _words(self, length_mm: float) -> str:
        return self.scene.writing.length(length_mm)
