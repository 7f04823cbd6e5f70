"""The hinges, the handles and the holes of old handles of the fronts that are coated."""

import tomllib
from collections.abc import Iterable, Iterator
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec

from geometry.outlines.measured import outline_box
from shared.findings import Code, Finding
from shared.job import Face, Job, Part
from shared.trade.kinds import Treatment, usual
from takeoff.figures.measured import Figure, Fronts, Reason, Term
from takeoff.figures.to_buy import Hardware
from takeoff.surfaces.coated import PRACTICE
from takeoff.surfaces.fronts import is_front
from takeoff.surfaces.treatments import Treatments

SAME_CENTRES_MM = 1.0
"""Hole centres that differ by less are the same. "3 3/4 in", 95.25 mm, means 96 mm (common practice, no source)."""

HANDLES = "one for each front that is coated"
HOLES = "two for each handle whose hole centres differ from the new ones, one for a knob"


class Front(NamedTuple):
    """A front that is coated, its face, and how many rooms alike have it."""

    face: Face
    part: Part
    alike: int


class _Band(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    up_to_mm: float
    hinges: int


class _Chart(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The fields are explained at the head of `data/hinges.toml`."""

    source: str
    band: tuple[_Band, ...]


def coated_fronts(job: Job) -> Iterator[Front]:
    """The doors and drawer fronts that are coated, in the order of rooms, faces and parts."""
    treatments = Treatments(job.kind_choices)
    for room in job.rooms:
        for face in room.faces:
            for part in face.parts:
                if is_front(part) and treatments.of(part).treatment is not Treatment.LEFT:
                    yield Front(face, part, room.alike)


def hardware(job: Job) -> Hardware:
    """The numbers for all rooms, with every one of the rooms alike counted. Each term counts for some of the fronts."""
    fronts = tuple(coated_fronts(job))
    return Hardware(
        hinges=_counted("by the height of the door", _chart().source, _hinges(fronts)),
        handles=_counted(HANDLES, PRACTICE, _handles(fronts)),
        holes_to_fill=_counted(HOLES, PRACTICE, _holes(fronts, job.handle_centres_mm)),
    )


def look_at_fronts(job: Job) -> Iterator[Finding]:
    """Doors too tall for the hinge chart; and, if new handles go on, fronts whose old hole centres are not known."""
    for front in coated_fronts(job):
        if hinges_of(front.part) is None:
            message = f"{front.part.called} is too tall for the hinge table; type how many hinges it has."
            yield Finding(Code.HINGES, message, front.face.id, (front.part.id,))
    if job.handle_centres_mm is None:
        return
    unknown: dict[str, list[Front]] = {}
    for front in coated_fronts(job):
        if front.part.hole_centres_mm is None:
            unknown.setdefault(front.face.id, []).append(front)
    for face, fronts in unknown.items():
        many = "1 front" if len(fronts) == 1 else f"{len(fronts)} fronts"
        message = (
            f"New handles go on, but the old hole centres of {many} on face {fronts[0].face.name} are not known; "
            "measure them. Their holes to fill are not counted yet."
        )
        yield Finding(Code.HOLE_CENTRES, message, face, tuple(front.part.id for front in fronts))


def hinges_of(part: Part) -> int | None:
    """How many hinges a front has: the number set on the part, or else the number for the height of a door.

    0 for a drawer front without a number of its own. None for a door that is too tall for the chart in
    `data/hinges.toml`, which is the source of the numbers.
    """
    if part.hinges is not None:
        return part.hinges
    if not usual()[part.kind].hinged:
        return 0
    _, bottom, _, top = outline_box(part.outline)
    return next((band.hinges for band in _chart().band if top - bottom <= band.up_to_mm), None)


def holes_to_fill(part: Part, new_centres_mm: float | None) -> int:
    """How many holes of its old handle have to be filled when a front gets a new handle: 2 for a handle, 1 for a knob.

    `new_centres_mm` is None if the old handles go back on. 0 then, and if the new handle fits the old holes or the old
    hole centres are not known. A knob has hole centres of 0.
    """
    old_mm = part.hole_centres_mm
    if new_centres_mm is None or old_mm is None or abs(old_mm - new_centres_mm) < SAME_CENTRES_MM:
        return 0
    return 2 if old_mm > 0 else 1


@cache
def _chart() -> _Chart:
    text = (files("takeoff") / "data" / "hinges.toml").read_text("utf-8")
    return msgspec.convert(tomllib.loads(text), _Chart)


def _hinges(fronts: Iterable[Front]) -> Iterator[Term]:
    by_many: dict[int, list[Front]] = {}
    for front in fronts:
        many = hinges_of(front.part)
        if many:
            by_many.setdefault(many, []).append(front)
    for many, some in sorted(by_many.items()):
        yield _term(("front", "fronts"), f" with {many}", many, some)


def _handles(fronts: Iterable[Front]) -> Iterator[Term]:
    for kind in usual():
        some = [front for front in fronts if front.part.kind is kind]
        if some:
            yield _term((f"{kind}", f"{kind}s"), ", 1 each", 1, some)


def _holes(fronts: Iterable[Front], new_mm: float | None) -> Iterator[Term]:
    for many, nouns, each in (
        (2, ("handle", "handles"), " with other hole centres, 2 holes each"),
        (1, ("knob", "knobs"), ", 1 hole each"),
    ):
        some = [front for front in fronts if holes_to_fill(front.part, new_mm) == many]
        if some:
            yield _term(nouns, each, many, some)


def _term(nouns: tuple[str, str], words: str, each: int, fronts: list[Front]) -> Term:
    many = sum(front.alike for front in fronts)
    what = f"{many} {nouns[0] if many == 1 else nouns[1]}{words}"
    return Term(what, each * many, parts=tuple(front.part.id for front in fronts))


def _counted(rule: str, source: str, terms: Iterable[Term]) -> Figure:
    listed = tuple(terms)
    return Figure(sum(term.amount for term in listed), Reason(rule, source, Fronts.HUNG, listed))
