"""A room's heights, readings, photos and tiles hold together or are refused in words that say where."""

from collections.abc import Callable

import pytest
from msgspec.structs import replace

from shared.checks.job import check_job
from shared.errors import JobError
from shared.files.job import job_from_json, job_to_json
from shared.job import (
    END,
    START,
    Face,
    Job,
    Part,
    PhotoLength,
    PhotoMark,
    PhotoPlace,
    Reading,
    Room,
    Tiles,
    Unit,
    Vertex,
    Way,
    usual_heights,
)
from shared.trade.kinds import Kind

OUTLINE = (Vertex(0, 0), Vertex(600, 0), Vertex(600, 600))
TILES = Tiles(150.0, 150.0, 2.0)
MARKS = (PhotoMark(0, 0, 0, 0), PhotoMark(9, 0, 1, 0), PhotoMark(9, 9, 1, 1), PhotoMark(0, 9, 0, 1))


def _job(face: Face) -> Job:
    return Job("Test", (Room("r1", "Kitchen", (face,)),))


@pytest.fixture
def face() -> Face:
    part = Part("p1", Kind.SPLASHBACK, OUTLINE, tiles=TILES)
    readings = (Reading(START, "1", 600.0), Reading("lower left", "upper right", 900.0, Way.STRAIGHT))
    photo = PhotoPlace(MARKS, (PhotoLength(0, 0, 9, 9, 100.0),))
    return Face("f1", "A", parts=(part,), photo="wall.jpg", photo_place=photo, readings=readings)


def test_a_face_with_all_aids_holds_together_and_is_read_back(face: Face) -> None:
    job = _job(face)
    check_job(job)
    assert job_from_json(job_to_json(job), "test") == job


@pytest.mark.parametrize(
    ("reading", "words"),
    [
        (Reading(START, "1", 0.0), "above 0"),
        (Reading(START, "1", float("nan")), "above 0"),
        (Reading("1", "1", 600.0), "begins and ends at the same place"),
        (Reading("1", START, 600.0), "runs backwards"),
        (Reading(END, "1", 600.0), "runs backwards"),
        (Reading("", "1", 600.0), "begins or ends at"),
        (Reading("1", "upper left", 600.0, Way.STRAIGHT), 'begins or ends at "1"'),
    ],
)
def test_a_reading_that_makes_no_sense_is_refused(face: Face, reading: Reading, words: str) -> None:
    with pytest.raises(JobError, match=words) as trouble:
        check_job(_job(replace(face, readings=(reading,))))
    assert "Kitchen, face A" in str(trouble.value)


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (lambda photo: replace(photo, opacity=1.5), "opacity is 1.5"),
        (lambda photo: replace(photo, marks=(*MARKS[:3], PhotoMark(float("inf"), 0, 0, 0))), "lies far outside it"),
        (lambda photo: replace(photo, lengths=(PhotoLength(0, 0, 1, 1, 0.0),)), "lies far outside it"),
    ],
)
def test_a_photo_that_cannot_lie_so_is_refused(
    face: Face, spoil: Callable[[PhotoPlace], PhotoPlace], words: str
) -> None:
    assert face.photo_place is not None
    with pytest.raises(JobError, match=words):
        check_job(_job(replace(face, photo_place=spoil(face.photo_place))))


def test_a_place_of_a_photo_that_is_not_there_is_refused(face: Face) -> None:
    with pytest.raises(JobError, match="the face has a place for a photo, but no photo"):
        check_job(_job(replace(face, photo="")))


@pytest.mark.parametrize(
    ("tiles", "words"),
    [
        (replace(TILES, width_mm=0.0), "width of a tile is 0"),
        (replace(TILES, grout_mm=-1.0), "grout line is -1"),
        (replace(TILES, start_y_mm=float("nan")), "start of the tiles"),
        (replace(TILES, course_shift=2.0), "shift of a course is 2"),
    ],
)
def test_tiles_that_cannot_be_laid_are_refused(face: Face, tiles: Tiles, words: str) -> None:
    with pytest.raises(JobError, match=words):
        check_job(_job(replace(face, parts=(replace(face.parts[0], tiles=tiles),))))


def test_heights_that_no_room_has_are_refused(face: Face) -> None:
    room = replace(_job(face).rooms[0], heights=replace(usual_heights(), cabinet_mm=0.0))
    with pytest.raises(JobError, match="Kitchen: the usual cabinet is 0 mm"):
        check_job(Job("Test", (room,)))


def test_usual_heights_are_round_numbers_of_their_unit() -> None:
    assert usual_heights(Unit.INCH).cabinet_mm == 30 * 25.4
    assert usual_heights(Unit.MM).ceiling_mm == 2400.0
