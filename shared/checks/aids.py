"""Checks what helps to draw: a room's heights, readings, photos and tiles. Part of `shared.checks.job`."""

from collections.abc import Iterable
from math import isfinite

from msgspec.structs import asdict, astuple

from shared import limits
from shared.errors import JobError
from shared.job import CORNERS, END, START, Face, Heights, PhotoPlace, Reading, Tiles, Way

_NAMES = {
    "ceiling_mm": "ceiling",
    "kickboard_mm": "kickboard",
    "cabinet_mm": "cabinet",
    "benchtop_mm": "benchtop",
    "splashback_mm": "splashback",
    "wall_cabinet_mm": "wall cabinet",
    "benchtop_depth_mm": "depth of the benchtop",
    "overhang_mm": "overhang",
    "reveal_mm": "reveal",
}
_MAY_BE_NOTHING = ("kickboard_mm", "benchtop_mm", "splashback_mm", "overhang_mm", "reveal_mm")


def check_heights(heights: Heights, where: str) -> None:
    """Refuse heights that no room can have: JobError for the first."""
    for field, size in asdict(heights).items():
        least = 0.0 if field in _MAY_BE_NOTHING else 1.0
        if not least <= size <= limits.LONGEST_MM:
            raise JobError(
                f"the usual {_NAMES[field]} is {size:g} mm", where=where, do=f"set it from {least:g} mm to 100 m"
            )


def check_drawn_aids(face: Face, place: object) -> None:
    """Refuse readings, a photo or tiles that contradict themselves: JobError for the first. `place` names the face."""
    if len(face.readings) > limits.MOST_READINGS:
        what = f"the face has {len(face.readings)} readings"
        raise JobError(what, where=str(place), do=f"keep at most {limits.MOST_READINGS}")
    for reading in face.readings:
        _check_reading(reading, place)
    if face.photo_place is not None:
        _check_photo(face, face.photo_place, place)
    for part in face.parts:
        if part.tiles is not None:
            _check_tiles(part.tiles, place)


def _check_reading(reading: Reading, place: object) -> None:
    where = f"{place}, reading {reading.length_mm:g}"
    straight = reading.way is Way.STRAIGHT
    for mark in (reading.start, reading.end):
        known = mark in CORNERS if straight else 0 < len(mark) <= limits.LONGEST_ID and mark.isprintable()
        if not known:
            raise JobError(
                f'it begins or ends at "{mark[: limits.LONGEST_QUOTED]}", which is not a line or a corner',
                where=where,
                do="measure it again",
            )
    if reading.start == reading.end:
        raise JobError("it begins and ends at the same place", where=where, do="measure it again")
    if not straight and (reading.end == START or reading.start == END):
        raise JobError("it runs backwards", where=where, do="measure from left to right, or upwards")
    if not 0 < reading.length_mm <= limits.LONGEST_MM:
        raise JobError("a reading must be above 0 and at most 100 m", where=where, do="measure it again")


def _check_photo(face: Face, photo: PhotoPlace, place: object) -> None:
    if not face.photo:
        raise JobError("the face has a place for a photo, but no photo", where=str(place), do="add the photo again")
    if not 0 <= photo.opacity <= 1:
        raise JobError(f"the photo's opacity is {photo.opacity:g}", where=str(place), do="set it from 0 to 1")
    dots = [dot for mark in photo.marks for dot in (mark.u, mark.v)]
    dots += [dot for known in photo.lengths for dot in astuple(known)[:4]]
    lengths = [known.length_mm for known in photo.lengths]
    sizes = [size for mark in photo.marks for size in (mark.x, mark.y)]
    if not (
        _within(dots, limits.MOST_PHOTO_DOTS)
        and _within(sizes + lengths, limits.LONGEST_MM)
        and all(length > 0 for length in lengths)
    ):
        raise JobError("a mark of the photo lies far outside it", where=str(place), do="mark the photo again")


def _within(numbers: Iterable[float], most: float) -> bool:
    return all(isfinite(number) and -most <= number <= most for number in numbers)


def _check_tiles(tiles: Tiles, place: object) -> None:
    ranges = (
        ("width of a tile", tiles.width_mm, limits.SMALLEST_TILE_MM, limits.LONGEST_MM),
        ("height of a tile", tiles.height_mm, limits.SMALLEST_TILE_MM, limits.LONGEST_MM),
        ("grout line", tiles.grout_mm, 0.0, limits.THICKEST_GROUT_MM),
        ("start of the tiles", tiles.start_x_mm, -limits.LONGEST_MM, limits.LONGEST_MM),
        ("start of the tiles", tiles.start_y_mm, -limits.LONGEST_MM, limits.LONGEST_MM),
        ("shift of a course", tiles.course_shift, 0.0, 1.0),
    )
    for what, size, least, most in ranges:
        if not least <= size <= most:
            raise JobError(f"the {what} is {size:g}", where=str(place), do=f"set it from {least:g} to {most:g}")
