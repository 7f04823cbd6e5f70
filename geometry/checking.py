"""Check that every outline of a job can be measured."""

from geometry.outline import check_outline
from shared.job import Job


def check_outlines(job: Job) -> None:
    """Pass a job whose outlines can all be measured. OutlineError for the first that cannot, with its face and part."""
    for face in job.faces:
        for part in face.parts:
            check_outline(part.outline, f"face {face.name}, {part.name or part.kind} ({part.id})")
