"""The colour that each part of a face will have, by its finish."""

from shared.job import Job
from takeoff.figures.measured import Takeoff

Colours = tuple[tuple[str, str], ...]


def colours_by_face(job: Job, takeoff: Takeoff) -> dict[str, Colours]:
    """For each face by its id, the parts that get a finish, each with the shade; "" for a finish without a shade."""
    shades = {finish.id: finish.shade for finish in job.finishes}
    gathered: dict[str, list[tuple[str, str]]] = {face.id: [] for face in job.faces}
    for row in takeoff.parts:
        if row.finish:
            gathered[row.face].append((row.id, shades.get(row.finish, "")))
    return {face: tuple(colours) for face, colours in gathered.items()}


def finish_colours(job: Job, takeoff: Takeoff, face: str) -> Colours:
    """The same for one face; empty for a face that the job does not have."""
    return colours_by_face(job, takeoff).get(face, ())
