"""Remembers how faces were arranged and counted, so that an edit to one face arranges and counts that face only.

Faces are told apart by identity. An edit leaves every face that it did not touch the same object
(`shared.edits.drawn`).
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from msgspec.structs import replace

from geometry.dragging.standing import Standing
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Arrangement
from shared.drawing import Line
from shared.errors import JobError
from shared.job import Face, Job, KindChoice, Part
from takeoff.faces.measuring import Context, FaceCount, count_face
from takeoff.faces.sureness import FaceSlopes, slopes_of_face
from takeoff.figures.measured import Fronts, Takeoff
from takeoff.surfaces.fronts import parts_off
from takeoff.surfaces.treatments import Treatments

Arranging = Callable[[Sequence[Part]], Arrangement]

LinesDrawn = Callable[[Takeoff, str], tuple[Line, ...]]

FEW = 0.25
"""The greatest share of a face's parts that a drag is followed with. If more move, the face is arranged anew."""

COUNTED = ("rooms", "unit", "kinds", "joints", "tape")
"""The fields of a job that its takeoff is counted from. A change of names, finishes, products or prices leaves it."""


def counts_alike(job: Job, other: Job) -> bool:
    """Whether two jobs are known to have the same takeoff: every field that is counted is the same object in both."""
    return all(getattr(job, field) is getattr(other, field) for field in COUNTED)


def job_as_counted(job: Job) -> Job:
    """The job with only the fields that are counted. A rule cannot read any other field unless `COUNTED` names it."""
    return replace(Job(""), **{field: getattr(job, field) for field in COUNTED})


class Memory:
    """Remembers the last takeoff of a job, and the last arrangements and count of each face.

    A window has one, and passes it to `take_off` and to what draws faces. `arranging` gives the arrangement of parts.
    """

    def __init__(self, arranging: Arranging = arrange) -> None:
        self._arranging = arranging
        self._faces: dict[str, _Remembered] = {}
        self._lines: dict[str, tuple[Takeoff, tuple[Line, ...]]] = {}
        self._takeoff: tuple[Job, str, Takeoff] | None = None

    def takeoff(self, job: Job, rule: str, count: Callable[[], Takeoff]) -> Takeoff:
        """The takeoff of a job by this rule. `count` is called only if the last takeoff was of another job or rule."""
        known = self._takeoff
        if known is None or known[1] != rule or not counts_alike(known[0], job):
            known = self._takeoff = (job_as_counted(job), rule, count())
        return known[2]

    def arrangement(self, job: Job, face: Face, fronts: Fronts) -> Arrangement:
        """The arrangement of a face of this job, with its fronts hung or off. OutlineError if it cannot be arranged."""
        hung, off = self._remembered(face, job.kind_choices).arrangements()
        return hung if fronts is Fronts.HUNG else off

    def count(self, face: Face, context: Context) -> FaceCount:
        """The count of one face by itself. JobError, which names the face, if it cannot be arranged."""
        try:
            return self._remembered(face, context.kinds).count(context)
        except JobError as trouble:
            raise trouble.within(f"face {face.called}") from trouble

    def slopes(self, face: Face) -> FaceSlopes:
        """How the latest count of a face changes with its readings. The face must have been counted."""
        return self._faces[face.id].slopes()

    def lines(self, takeoff: Takeoff, face_id: str, draw: LinesDrawn) -> tuple[Line, ...]:
        """The lines of a face in this takeoff. They are drawn once for all the frames of a drag that show it."""
        known = self._lines.get(face_id)
        if known is None or known[0] is not takeoff:
            known = self._lines[face_id] = (takeoff, draw(takeoff, face_id))
        return known[1]

    def keep_only(self, job: Job) -> None:
        """Forget all faces that this job does not have."""
        ids = {face.id for face in job.faces}
        self._faces = {face_id: each for face_id, each in self._faces.items() if face_id in ids}
        self._lines = {face_id: each for face_id, each in self._lines.items() if face_id in ids}

    def _remembered(self, face: Face, kinds: tuple[KindChoice, ...]) -> "_Remembered":
        known = self._faces.get(face.id)
        if known is None:
            known = self._faces[face.id] = _Remembered(self._arranging)
        known.show(face, kinds)
        return known


class _Remembered:
    """Remembers one face: its latest state, both its arrangements, and its count."""

    def __init__(self, arranging: Arranging) -> None:
        self._hung, self._off = _Following(arranging), _Following(arranging)
        self._face: Face | None = None
        self._kinds: tuple[KindChoice, ...] = ()
        self._arrangements: tuple[Arrangement, Arrangement] | None = None
        self._count: tuple[Context, FaceCount] | None = None
        self._slopes: tuple[FaceCount, FaceSlopes] | None = None

    def show(self, face: Face, kinds: tuple[KindChoice, ...]) -> None:
        """Turn to this state of the face, and forget what was known of an earlier one."""
        if face is not self._face or kinds != self._kinds:
            self._face, self._kinds = face, kinds
            self._arrangements, self._count = None, None

    def arrangements(self) -> tuple[Arrangement, Arrangement]:
        """The arrangements with the fronts hung and with them off: one object twice if no front is taken off."""
        if self._arrangements is None:
            parts = self._face.parts if self._face else ()
            standing = parts_off(parts, Treatments(self._kinds))
            off = self._off.arranged(standing)
            self._arrangements = (off if len(standing) == len(parts) else self._hung.arranged(parts), off)
        return self._arrangements

    def count(self, context: Context) -> FaceCount:
        """The count of the face in this context. LookupError before a face was shown."""
        if self._face is None:
            raise LookupError("no face was shown")
        if self._count is None or self._count[0] != context:
            hung, off = self.arrangements()
            self._count = (context, count_face(self._face, context, hung, off))
        return self._count[1]

    def slopes(self) -> FaceSlopes:
        """The slopes of the latest count. LookupError before the face was counted."""
        if self._count is None:
            raise LookupError("the face was not counted")
        count = self._count[1]
        if self._slopes is None or self._slopes[0] is not count:
            self._slopes = (count, slopes_of_face(count.surfaces, count.masking, count.joints))
        return self._slopes[1]


class _Following:
    """Arranges the parts of one face. Parts that change again and again, as in a drag, are followed by `Standing`.

    The arrangement from before such changes is remembered, as a person often comes back to it: a drag is dropped, or a
    typed line makes no sense yet.
    """

    def __init__(self, arranging: Arranging) -> None:
        self._arranging = arranging
        self._last = self._base = _Arranged()
        self._changed: frozenset[str] = frozenset()
        self._drag: tuple[tuple[Part, ...], Standing] | None = None

    def arranged(self, parts: tuple[Part, ...]) -> Arrangement:
        """The arrangement of these parts. It is remembered for the parts of the last time and those before a change."""
        for known in (self._last, self._base):
            if known.arrangement is not None and _are_same(known.parts, parts):
                self._last = known
                return known.arrangement
        changed = _changed(self._last.parts, parts)
        self._follow(parts, changed)
        arrangement = self._anew(parts)
        self._last, self._changed = _Arranged(parts, arrangement), changed
        if not changed:
            self._base = self._last
        return arrangement

    def _follow(self, parts: tuple[Part, ...], changed: frozenset[str]) -> None:
        """Begin to follow parts when they change a second time in a row, and stop when other parts change."""
        if not changed or changed != self._changed:
            self._drag = None
        elif self._drag is None or not _fit(self._drag[0], parts, changed):
            self._drag = (parts, Standing(parts, changed))

    def _anew(self, parts: tuple[Part, ...]) -> Arrangement:
        if self._drag is None:
            return self._arranging(parts)
        ground, standing = self._drag
        return standing.arranged([part for part, old in zip(parts, ground, strict=True) if part is not old])


class _Arranged(NamedTuple):
    """Parts and their arrangement; None before any were arranged."""

    parts: tuple[Part, ...] = ()
    arrangement: Arrangement | None = None


def _are_same(old: tuple[Part, ...], new: tuple[Part, ...]) -> bool:
    return len(old) == len(new) and all(a is b for a, b in zip(old, new, strict=True))


def _changed(old: tuple[Part, ...], new: tuple[Part, ...]) -> frozenset[str]:
    """The ids of the parts that are new or changed; none if they are more than a few."""
    known = frozenset(map(id, old))
    changed = [part.id for part in new if id(part) not in known]
    return frozenset(changed if len(changed) <= FEW * len(new) else ())


def _fit(ground: tuple[Part, ...], parts: tuple[Part, ...], changed: frozenset[str]) -> bool:
    """Whether these parts are those of the ground, in its order, with no others changed than these ids."""
    return len(ground) == len(parts) and all(
        part is old or (part.id == old.id and part.id in changed) for part, old in zip(parts, ground, strict=True)
    )
