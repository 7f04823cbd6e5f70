"""What the window shows, as one frozen value: the job with its history, and where the person is in it.

`store` holds the current one.
"""

from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from shared.edits.drawn import find_face
from shared.files.job import JobFile, Photo
from shared.findings import Finding
from shared.history import History
from shared.job import Face, Job, Part, Room, Unit
from takeoff.bill import Bill
from takeoff.figures.measured import EdgeRow, Fronts, Takeoff


@dataclass(frozen=True, slots=True)
class Page:
    """A page of the window by its name, and how the job is shown while it is open.

    `fronts` says how the fronts are when one turns to it, `in_finish_colours` that faces are painted in the colours of
    their finishes, `has_strip` that the faces round the room stand above it.
    """

    name: str
    fronts: Fronts = Fronts.HUNG
    in_finish_colours: bool = False
    has_strip: bool = True


class Overlay(StrEnum):
    """What can be shown on a face or left out."""

    NAMES = "names"
    SIZES = "sizes"
    JOINTS = "joints"
    MASKING = "masking"
    SET_OUT = "set-out"
    PHOTO = "photo"


@dataclass(frozen=True, slots=True)
class Shown:
    """An open job and what is shown of it.

    `photos` are all photos that were read or brought in, so that what is undone can be redone. `saved` is the job as it
    is in its file. `tried` is a job that is only tried out and is no edit yet; if there is one, `takeoff` is counted
    from it, a moment later. `bill` is the latest that was counted, perhaps of the job as it was a moment ago. `lit` are
    parts and `lit_edges` edges that a row of the page Count points at. `face` and `picked` are ids; `face` is "" in a
    job without faces.
    """

    history: History[Job]
    takeoff: Takeoff
    page: Page
    bill: Bill | None = None
    photos: tuple[Photo, ...] = ()
    path: Path | None = None
    saved: Job | None = None
    tried: Job | None = None
    face: str = ""
    picked: tuple[str, ...] = ()
    lit: tuple[str, ...] = ()
    lit_edges: tuple[EdgeRow, ...] = ()
    fronts: Fronts = Fronts.HUNG
    overlays: frozenset[Overlay] = frozenset({Overlay.NAMES, Overlay.SET_OUT, Overlay.PHOTO})

    @property
    def job(self) -> Job:
        """The job as its history has it, without what is only tried out."""
        return self.history.present

    @property
    def now(self) -> Job:
        """The job that is being tried out, if there is one; else the job."""
        return self.tried or self.history.present

    @property
    def unit(self) -> Unit:
        """The unit lengths are shown in."""
        return self.job.unit

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All things to look at: those in the drawing, then those in what is needed and bought for it.

        The bill may be of a moment ago, so its findings count only if their faces are still there.
        """
        faces = {"", *(face.id for face in self.now.faces)}
        bought = self.bill.findings if self.bill else ()
        return (*self.takeoff.findings, *(finding for finding in bought if finding.face in faces))

    @property
    def is_saved(self) -> bool:
        """Whether the file holds all that was done."""
        return self.saved is not None and (self.job is self.saved or self.job == self.saved)

    @property
    def file(self) -> JobFile:
        """The job as it is written, with the photos that its faces name; others are kept only while it is open."""
        named = {face.photo for face in self.job.faces}
        return JobFile(self.job, tuple(photo for photo in self.photos if photo.name in named))

    def photo(self, name: str) -> Photo | None:
        """The photo with this name; None if there is no such photo."""
        return next((photo for photo in self.photos if photo.name == name), None)

    @property
    def shown_face(self) -> Face | None:
        """The face on the canvas; None in a job without faces."""
        return find_face(self.now, self.face) if self.face else None

    @property
    def picked_parts(self) -> tuple[Part, ...]:
        """The picked parts of the face on the canvas, back to front."""
        face = self.shown_face
        picked = frozenset(self.picked)
        return tuple(part for part in face.parts if part.id in picked) if face else ()


def room_shown(shown: Shown) -> Room:
    """The room of the face that is shown; the last room if no face is. IndexError in a job without rooms."""
    return shown.job.room_of.get(shown.face) or shown.job.rooms[-1]


def first_face(job: Job) -> str:
    """The id of the job's first face; "" if it has none."""
    return job.faces[0].id if job.faces else ""


def kept_face(job: Job, face: str) -> str:
    """The id of this face if the job has it, else of the first face; "" if it has none."""
    return face if any(face == other.id for other in job.faces) else first_face(job)


def kept_parts(job: Job, face: str, ids: tuple[str, ...]) -> tuple[str, ...]:
    """Those of the ids that are parts of this face."""
    if not face or not ids:
        return ()
    present = frozenset(part.id for part in find_face(job, face).parts)
    return tuple(part for part in ids if part in present)
