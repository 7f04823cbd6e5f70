"""In which colour each part of a face will be seen."""

from shared.job import Job
from takeoff.figures import Takeoff

Colours = tuple[tuple[str, str], ...]


def finish_colours(job: Job, takeoff: Takeoff, face: str) -> Colours:
    """The parts of a face that get a finish, with its shade: "" for a finish without one."""
    shades = {finish.id: finish.shade for finish in job.finishes}
    rows = (row for row in takeoff.parts if row.face == face and row.finish)
    return tuple((row.id, shades.get(row.finish, "")) for row in rows)
