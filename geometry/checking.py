"""Checks that every outline of a job can be measured, and every photo squared by its marks.

`shared.checks.job` checks everything else.
"""

from geometry.outlines.measured import check_outline
from geometry.photos.squaring import check_lengths
from shared.errors import JobError
from shared.job import Face, Job


def check_outlines(job: Job) -> None:
    """Refuse a job with an outline that cannot be measured: OutlineError for the first, with its face and part.

    JobError, with the face, for a photo whose marks do not square it or whose lengths are not on it.
    """
    for face in job.faces:
        _check_photo(face)
        for part in face.parts:
            check_outline(part.outline, f"face {face.name}, {part.called} ({part.id})")


def _check_photo(face: Face) -> None:
    if face.photo_place is None:
        return
    try:
        check_lengths(face.photo_place)
    except JobError as trouble:
        raise trouble.within(f"face {face.name}") from trouble
