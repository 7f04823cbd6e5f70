"""Places the four marks of a photo on a face: at the corners of a known rectangle, or by known distances.

`geometry.photos.squaring` squares the photo by them.
"""

from collections.abc import Sequence

from geometry.outlines.sides import Point
from geometry.photos.squaring import PHOTO, FourPoints, check_four, check_way_round
from geometry.set_out.adjusting import Observed, adjust_distances
from geometry.set_out.lines import reading_sd_mm
from geometry.set_out.trilateration import placed
from shared.job import PhotoLength, PhotoMark, View
from shared.trade.tape import TapeClass

FourMarks = tuple[PhotoMark, PhotoMark, PhotoMark, PhotoMark]

DISTANCES = ((0, 1), (1, 2), (2, 3), (0, 3), (0, 2), (1, 3))
"""The pairs of marks whose distances are asked for, in this order: the four sides, then the two diagonals."""

FEWEST_DISTANCES = 5
"""Four sides and a diagonal: with four sides alone a figure can still lean over."""

MARK_NAMES = ("mark 1", "mark 2", "mark 3", "mark 4")


def check_marks(dots: Sequence[Point]) -> None:
    """Refuse four dots, in this order, that cannot square a photo: JobError, which says why."""
    check_four(dots, PHOTO)
    check_way_round(dots)


def rectangle_marks(
    dots: FourPoints, width_mm: float, height_mm: float, at: Point, view: View = View.ELEVATION
) -> FourMarks:
    """The marks at the corners of a rectangle, as one sees it: lower left, lower right, upper right, upper left.

    `at` is the corner nearest to the origin of the face: the lower left one on an elevation, the upper left one on a
    plan, which is seen with its wall at the top. JobError where the dots cannot square a photo.
    """
    corners = ((0.0, 0.0), (width_mm, 0.0), (width_mm, height_mm), (0.0, height_mm))
    return _placed(dots, corners, at, view)


def distance_marks(
    dots: FourPoints,
    lengths_mm: Sequence[float],
    at: Point,
    view: View = View.ELEVATION,
    tape: TapeClass = TapeClass.SECOND,
) -> FourMarks:
    """Four marks by their distances: the lower left one first, then anticlockwise; the second is level with the first.

    `lengths_mm` are the distances in `DISTANCES`, five or all six. Six are adjusted together, each by the tolerance of
    the tape. `at` is the corner of the box round the marks that is nearest to the origin of the face. JobError where
    the distances make no figure or the dots cannot square a photo. ValueError for fewer than five distances.
    """
    if len(lengths_mm) < FEWEST_DISTANCES:
        raise ValueError(lengths_mm)
    known = dict(zip(DISTANCES, lengths_mm, strict=False))
    start = placed(known, len(dots), MARK_NAMES)
    observed = [Observed(*pair, mm, reading_sd_mm(mm, tape, hooked=False)) for pair, mm in known.items()]
    one, two, three, four = adjust_distances(start, observed, names=MARK_NAMES).points
    return _placed(dots, (one, two, three, four), at, view)


def known_lengths(dots: FourPoints, lengths_mm: Sequence[float]) -> tuple[PhotoLength, ...]:
    """The lengths in `DISTANCES` with their ends on the photo; they serve to check it."""
    return tuple(
        PhotoLength(*dots[start], *dots[end], mm) for (start, end), mm in zip(DISTANCES, lengths_mm, strict=False)
    )


def _placed(dots: FourPoints, corners: FourPoints, at: Point, view: View) -> FourMarks:
    """Marks at four corners, whose y goes up as one sees them. The box round them is put at `at`."""
    check_marks(dots)
    left, low, top = min(x for x, _ in corners), min(y for _, y in corners), max(y for _, y in corners)
    seen = [(x - left, y - low if view is View.ELEVATION else top - y) for x, y in corners]
    one, two, three, four = (PhotoMark(u, v, at[0] + x, at[1] + y) for (u, v), (x, y) in zip(dots, seen, strict=True))
    return one, two, three, four
