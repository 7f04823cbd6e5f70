"""Checks that a job holds together: its ids, references, numbers and sizes. JobError says what is wrong, and where.

`geometry.checking` checks that every outline encloses something and does not cross itself. What is only odd is a
finding of the takeoff. The check goes over the job once: 20 000 parts are checked in a blink.
"""

from collections.abc import Iterable, Iterator
from math import hypot, isfinite

from shared import limits
from shared.checks.aids import check_drawn_aids, check_heights
from shared.checks.numbers import in_words
from shared.checks.products import check_products, front_ranges
from shared.checks.texts import check_texts, quoted
from shared.errors import JobError
from shared.job import Butt, Face, Fillet, Job, JointChoice, Outline, Part, Room, Tie, Vertex, View
from shared.trade.kinds import Kind, Treatment


def check_job(job: Job) -> None:
    """Refuse a job that does not hold together: JobError for the first trouble found."""
    _check_counts(job)
    check_texts(job)
    _check_ids(job)
    _check_kinds(job)
    check_products(job)
    finishes = {finish.id for finish in job.finishes}
    for room in job.rooms:
        check_heights(room.heights, room.called)
        for face in room.faces:
            place = _Place(room, face)
            _check_face(face, place, finishes)
            check_drawn_aids(face, place)
    _check_ties(job)
    _check_joints(job)


class _Place:
    """Where in a job something is. It is put into words only when an error needs them."""

    def __init__(self, room: Room, face: Face, part: Part | None = None) -> None:
        self.room, self.face, self.part = room, face, part

    def __str__(self) -> str:
        place = f"{self.room.called}, face {self.face.called}"
        if self.part is None:
            return place
        return f"{place}, {self.part.kind} {quoted(self.part.name or self.part.id)}"


def _check_counts(job: Job) -> None:
    counts = (
        ("rooms", len(job.rooms), limits.MOST_ROOMS),
        ("faces", len(job.faces), limits.MOST_FACES),
        ("parts", sum(len(face.parts) for face in job.faces), limits.MOST_PARTS),
        ("corners", sum(len(part.outline) for face in job.faces for part in face.parts), limits.MOST_CORNERS),
        ("tape readings", sum(len(face.readings) for face in job.faces), limits.MOST_READINGS_OF_A_JOB),
        ("finishes", len(job.finishes), limits.MOST_FINISHES),
        ("joint choices", len(job.joints), limits.MOST_JOINT_CHOICES),
        ("ties", sum(len(face.ties) for face in job.faces), limits.MOST_TIES),
    )
    for what, count, most in counts:
        if count > most:
            raise JobError(
                f"the job has {count} {what}; Recoat can measure at most {most}", do="split it into several jobs"
            )


def _check_ids(job: Job) -> None:
    kinds_of_ids: tuple[tuple[str, Iterable[str]], ...] = (
        ("rooms", (room.id for room in job.rooms)),
        ("faces", (face.id for face in job.faces)),
        ("parts", (part.id for face in job.faces for part in face.parts)),
        ("finishes", (finish.id for finish in job.finishes)),
    )
    for what, ids in kinds_of_ids:
        seen: set[str] = set()
        for name in ids:
            _check_id(name, what)
            if name in seen:
                raise JobError(f"two {what} have the id {quoted(name)}", do="give one of them another id")
            seen.add(name)


def _check_id(name: str, what: str) -> None:
    if not name or len(name) > limits.LONGEST_ID or not name.isprintable():
        raise JobError(
            f"one of the {what} has the id {quoted(name)}",
            do=f"use 1 to {limits.LONGEST_ID} characters that can be printed",
        )


def _check_kinds(job: Job) -> None:
    finishes = {finish.id for finish in job.finishes}
    seen = [choice.kind for choice in job.kinds]
    for kind in Kind:
        if seen.count(kind) > 1:
            raise JobError(
                f"the kind {kind} has {seen.count(kind)} rows in the job's kinds", do="give it one row at most"
            )
    for choice in job.kinds:
        where = f"kind {choice.kind}"
        if choice.treatment is Treatment.AS_KIND:
            raise JobError(
                'a kind cannot be treated "as kind"', where=where, do='choose "in place", "taken off" or "left"'
            )
        _check_finish(choice.finish, finishes, where)


def _check_finish(finish: str, finishes: set[str], where: object) -> None:
    if finish and finish not in finishes:
        raise JobError(f"the job has no finish {quoted(finish)}", where=str(where), do="choose one that it has")


def _check_face(face: Face, place: _Place, finishes: set[str]) -> None:
    if face.ties and face.view is not View.PLAN:
        raise JobError("only plans have ties", where=str(place), do="tie the plan to this face instead")
    for part in face.parts:
        where = _Place(place.room, face, part)
        _check_outline(part.outline, where)
        _check_numbers(part, where)
        _check_sides(part, where)
        _check_finish(part.finish, finishes, where)


def _check_outline(outline: Outline, where: _Place) -> None:
    if len(outline) > limits.MOST_VERTICES:
        raise JobError(
            f"the outline has {len(outline)} corners",
            where=str(where),
            do=f"use at most {limits.MOST_VERTICES}, with arcs for round sides",
        )
    most = limits.LONGEST_MM
    for vertex in outline:
        # NaN fails every comparison, so this one line finds it too.
        if not (-most <= vertex.x <= most and -most <= vertex.y <= most and isfinite(vertex.bulge)):
            raise _misplaced(vertex, where)
    for start, end in _arcs(outline):
        if abs(start.bulge) * hypot(end.x - start.x, end.y - start.y) > 2 * most:
            raise JobError(
                f"a round side at {_point(start)} reaches beyond {_metres(most)}",
                where=str(where),
                do="check its bulge",
            )


def _arcs(outline: Outline) -> Iterator[tuple[Vertex, Vertex]]:
    """Start and end of every round side."""
    for index, vertex in enumerate(outline):
        if vertex.bulge:
            yield vertex, outline[(index + 1) % len(outline)]


def _misplaced(vertex: Vertex, where: _Place) -> JobError:
    if all(map(isfinite, (vertex.x, vertex.y, vertex.bulge))):
        what = f"a corner at {_point(vertex)} is more than {_metres(limits.LONGEST_MM)} away"
        return JobError(what, where=str(where), do="check the reading and its unit")
    return JobError("a corner has a value that is not a number", where=str(where), do="draw the part again")


def _point(vertex: Vertex) -> str:
    return f"({vertex.x:g}, {vertex.y:g})"


def _metres(length_mm: float) -> str:
    return f"{length_mm / 1000:g} m"


def _check_numbers(part: Part, where: _Place) -> None:
    ranges = (
        ("profile factor", part.profile_factor, limits.SMALLEST_PROFILE_FACTOR, limits.GREATEST_PROFILE_FACTOR),
        ("thickness in mm", part.thickness_mm, 0.0, limits.THICKEST_MM),
        ("level", part.level, -limits.HIGHEST_LEVEL, limits.HIGHEST_LEVEL),
        *front_ranges(part),
    )
    for what, number, least, most in ranges:
        if number is not None and not least <= number <= most:
            do = f"set it from {least:g} to {most:g}"
            raise JobError(f"the {what} is {in_words(number)}", where=str(where), do=do)


def _check_sides(part: Part, where: _Place) -> None:
    sides = part.coated_sides or ()
    if len(set(sides)) < len(sides) or any(not 0 <= side < len(part.outline) for side in sides):
        raise JobError(
            "its coated sides include a wrong or repeated number",
            where=str(where),
            do=f"use numbers from 0 to {len(part.outline) - 1}, each once",
        )


def _check_ties(job: Job) -> None:
    elevations = {face.id for face in job.faces if face.view is View.ELEVATION}
    for room in job.rooms:
        for face in room.faces:
            sides = {part.id: len(part.outline) for part in face.parts} if face.ties else {}
            for tie in face.ties:
                _check_tie(tie, sides, elevations, _Place(room, face))


def _check_tie(tie: Tie, sides: dict[str, int], elevations: set[str], place: _Place) -> None:
    if tie.part not in sides:
        raise JobError(
            f"a tie names the part {quoted(tie.part)}, which is not here", where=str(place), do="remove the tie"
        )
    if not 0 <= tie.side < sides[tie.part]:
        what = f"a tie names side {in_words(tie.side)} of {quoted(tie.part)}"
        raise JobError(what, where=str(place), do=f"it has sides 0 to {sides[tie.part] - 1}: tie one of them")
    if tie.face not in elevations:
        what = f"a tie names the face {quoted(tie.face)}, which is not an elevation of this job"
        raise JobError(what, where=str(place), do="tie it to one that is, or remove the tie")
    if not -limits.LONGEST_MM <= tie.start_mm < tie.end_mm <= limits.LONGEST_MM:
        what = f"a tie runs from {tie.start_mm:g} to {tie.end_mm:g} mm"
        raise JobError(what, where=str(place), do="it must begin before it ends, within 100 m")


def _check_joints(job: Job) -> None:
    parts_of = {face.id: {part.id for part in face.parts} for face in job.faces}
    for choice in job.joints:
        _check_joint(choice, parts_of)


def _check_joint(choice: JointChoice, parts_of: dict[str, set[str]]) -> None:
    first, second = choice.parts
    where = f"joint of {quoted(first)} and {quoted(second)}"
    for face, part in ((choice.face, first), (choice.next_face or choice.face, second)):
        if face not in parts_of:
            raise JobError(f"the job has no face {quoted(face)}", where=where, do="remove the choice about this joint")
        if part not in parts_of[face]:
            what = f"face {quoted(face)} has no part {quoted(part)}"
            raise JobError(what, where=where, do="remove the choice about this joint")
    least, most = limits.THINNEST_BEAD_MM, limits.THICKEST_MM
    if choice.section is not None and not all(least <= size <= most for size in _sizes(choice.section)):
        raise JobError("its bead has no usable size", where=where, do=f"give it a size from {least:g} mm to 1 m")


def _sizes(section: Fillet | Butt) -> tuple[float, ...]:
    return (section.leg_mm,) if isinstance(section, Fillet) else (section.width_mm, section.depth_mm)
