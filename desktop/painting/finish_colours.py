"""In which colour each part of a face will be seen."""

from shared.job import Job
from takeoff.figures.measured import Takeoff

Colours = tuple[tuple[str, str], ...]


def colours_by_face(job: Job, takeoff: Takeoff) -> dict[str, Colours]:
    """Of every face the parts that get a finish, with its shade: "" for a finish without one."""
    shades = {finish.id: finish.shade for finish in job.finishes}
    gathered: dict[str, list[tuple[str, str]]] = {face.id: [] for face in job.faces}
    for row in takeoff.parts:
        if row.finish:
            gathered[row.face].append((row.id, shades.get(row.finish, "")))
    return {face: tuple(colours) for face, colours in gathered.items()}


def finish_colours(job: Job, takeoff: Takeoff, face: str) -> Colours:
    """The same of one face; nothing for a face that the job has not got."""
    return colours_by_face(job, takeoff).get(face, ())
