"""Checks that every outline of a job can be measured, and every photo squared by its marks.

`shared.checks.job` checks everything else.
"""

from geometry.outlines.measured import check_outline, crowding, perimeter_mm
from geometry.photos.squaring import check_lengths
from shared.errors import JobError, OutlineError
from shared.job import Face, Job, Part

MOST_CROWDED = 200_000
"""Pairs of sides of one outline that are looked at, in all outlines of a job together: two seconds of them (measured).

An outline of 2000 corners round a wall has some 6000, a zigzag of 2000 long teeth two million.
"""

MOST_CUT = 1_000_000
"""Tiles that the outlines of all tiled parts cut, reckoned from their lengths: a second of counting (measured).

Round 100 m by 100 m of the smallest mosaic some 80 000 are cut.
"""

FEWEST_CROWDED = 5
"""An outline of fewer corners has too few pairs of sides to be counted."""


def check_outlines(job: Job) -> None:
    """Refuse a job with an outline that cannot be measured: OutlineError for the first, with its face and part.

    JobError, with the face, for a photo whose marks do not square it or whose lengths are not on it.
    """
    crowded, cut = 0, 0.0
    for face in job.faces:
        _check_photo(face)
        for part in face.parts:
            where = f"face {face.name}, {part.called} ({part.id})"
            crowded += crowding(part.outline) if len(part.outline) >= FEWEST_CROWDED else 0
            if crowded > MOST_CROWDED:
                raise OutlineError(
                    "too many sides of its outline pass each other to check that none cross",
                    where=where,
                    do="draw it with fewer corners, or as several parts",
                )
            check_outline(part.outline, where)
            cut += _tiles_cut(part)
            if cut > MOST_CUT:
                raise JobError(
                    "its outline, with those of the tiled parts before it, runs through too many tiles to count them",
                    where=where,
                    do="check the size of the tiles, or split the job into several",
                )


def _tiles_cut(part: Part) -> float:
    """About how many tiles the outline of a part cuts; 0 for a part without tiles."""
    return perimeter_mm(part.outline) / min(part.tiles.width_mm, part.tiles.height_mm) if part.tiles else 0.0


def _check_photo(face: Face) -> None:
    if face.photo_place is None:
        return
    try:
        check_lengths(face.photo_place)
    except JobError as trouble:
        raise trouble.within(f"face {face.name}") from trouble
