"""Checking a length on a squared photo: the photo and the tape side by side."""

import pytest
from msgspec.structs import replace

from desktop.gestures.check_photo import CheckPhoto, off_words
from desktop.gestures.gesture import Scene
from desktop.gestures.pick import Pick
from geometry.photos.marks import rectangle_marks
from geometry.photos.squaring import LengthCheck, check_lengths
from shared.edits.drawn import find_face, with_changed_face
from shared.errors import JobError, ReadingError
from shared.job import PhotoPlace, Unit
from shared.written.writing import Writing
from tests.desktop.gestures.scenes import JOB, SCENE, ended

MARKS = rectangle_marks(((200.0, 1000.0), (1450.0, 1100.0), (1300.0, 150.0), (350.0, 250.0)), 3600, 2400, (0, 0))


@pytest.fixture
def squared() -> Scene:
    face = replace(find_face(JOB, "f1"), photo="wall.jpg", photo_place=PhotoPlace(MARKS))
    return SCENE._replace(job=with_changed_face(JOB, face))


@pytest.fixture
def check(squared: Scene) -> CheckPhoto:
    """Two ends 1200 apart are pointed at."""
    gesture = CheckPhoto(squared)
    gesture.press((600.0, 900.0))
    gesture.press((1800.0, 900.0))
    return gesture


def test_the_line_says_how_far_the_photo_is_off(check: CheckPhoto) -> None:
    assert check.wants == "its length by the tape"
    assert check.says("1204") == "= 1204 mm · the photo says 1200, 4 less"


def test_the_length_is_kept_where_it_lies_on_the_photo(check: CheckPhoto) -> None:
    place = find_face(ended(check.type("1204")).job, "f1").photo_place
    assert place is not None
    (kept,) = check_lengths(place)
    assert (kept.measured_mm, kept.read_mm) == pytest.approx((1204.0, 1200.0))


def test_both_ends_stay_in_sight_while_the_length_is_typed(check: CheckPhoto) -> None:
    assert ended(check.type("1204")).preview.marks == ((600.0, 900.0), (1800.0, 900.0))


def test_ends_are_typed_too(squared: Scene) -> None:
    gesture = CheckPhoto(squared)
    gesture.type("600, 900, 1800, 900")
    assert gesture.says("1200") == "= 1200 mm · the photo says 1200, the same"


def test_its_size_is_shown_while_the_other_end_is_sought(squared: Scene) -> None:
    gesture = CheckPhoto(squared)
    gesture.press((600.0, 900.0))
    gesture.point((1000.0, 900.0))
    assert [size.length_mm for size in gesture.preview.sizes] == [400.0]


def test_two_ends_on_one_point_are_refused(squared: Scene) -> None:
    gesture = CheckPhoto(squared)
    gesture.type("600, 900, 600, 900")
    with pytest.raises(ReadingError, match="at the same point"):
        gesture.type("1200")


def test_a_photo_that_is_not_squared_cannot_be_checked() -> None:
    gesture = CheckPhoto(SCENE)
    gesture.type("600, 900, 1800, 900")
    with pytest.raises(JobError, match="not straightened yet"):
        gesture.type("1200")


def test_ends_are_taken_back_and_dropped(check: CheckPhoto) -> None:
    check.back()
    assert check.wants == "its other end"
    check.cancel()
    assert not check.is_begun
    assert isinstance(check.again(SCENE), Pick)


@pytest.mark.parametrize(
    ("read_mm", "unit", "words"),
    [
        (1196.0, Unit.MM, "the photo says 1196, 4 less"),
        (1203.5, Unit.MM, "the photo says 1203.5, 3.5 more"),
        (1200.01, Unit.MM, "the photo says 1200, the same"),
        (1225.4, Unit.INCH, 'the photo says 48 1/4", 1" more'),
    ],
)
def test_more_and_less_are_said_in_the_unit_of_the_job(read_mm: float, unit: Unit, words: str) -> None:
    assert off_words(LengthCheck(1200.0, read_mm), Writing(unit)) == words
