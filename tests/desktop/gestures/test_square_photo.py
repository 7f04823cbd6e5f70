"""Squaring a photo by hand: four marks, what they are, and where it is."""

import copy

import pytest
from msgspec.structs import replace

from desktop.gestures.gesture import Scene
from desktop.gestures.pick import Pick
from desktop.gestures.square_photo import SquarePhoto
from desktop.painting.photo import fitted_layer
from geometry.photos.squaring import check_lengths
from shared.edits.drawn import find_face, with_changed_face
from shared.errors import JobError, ReadingError
from shared.job import PhotoPlace, View
from tests.desktop.gestures.scenes import JOB, SCENE, ended
from tests.desktop.photographed import plain

DOTS = ((200.0, 1000.0), (1450.0, 1100.0), (1300.0, 150.0), (350.0, 250.0))
"""Lower left, lower right, upper right, upper left, on a photo of 1600 x 1200 dots."""

BOX = (0.0, 0.0, 3600.0, 2400.0)


def with_photo(view: View = View.ELEVATION) -> Scene:
    face = replace(find_face(JOB, "f1"), photo="wall.jpg", view=view)
    return SCENE._replace(job=with_changed_face(JOB, face))


@pytest.fixture
def square() -> SquarePhoto:
    """The photo lies over the wall, nothing marked."""
    return SquarePhoto(with_photo(), fitted_layer(plain(1600, 1200), BOX, View.ELEVATION))


@pytest.fixture
def marked(square: SquarePhoto) -> SquarePhoto:
    """The four marks are set by the hand."""
    layer = fitted_layer(plain(1600, 1200), BOX, View.ELEVATION)
    for dot in DOTS:
        assert square.press(layer.place(*dot)) is None
    return square


def place_of(gesture: SquarePhoto, text: str = "", *, enter: bool = False) -> PhotoPlace:
    """What the gesture ends in, by a typed line or by Return on an empty one."""
    done = ended(gesture.enter() if enter else gesture.type(text))
    place = find_face(done.job, "f1").photo_place
    assert place is not None
    return place


def places(place: PhotoPlace) -> list[tuple[float, float]]:
    return [(mark.x, mark.y) for mark in place.marks]


def test_each_corner_is_asked_for(square: SquarePhoto) -> None:
    layer = fitted_layer(plain(1600, 1200), BOX, View.ELEVATION)
    asked = []
    for dot in DOTS:
        asked.append(square.wants)
        square.press(layer.place(*dot))
    assert asked == [
        "its lower left corner",
        "its lower right corner",
        "its upper right corner",
        "its upper left corner",
    ]
    assert square.wants == "width of the rectangle"


def test_a_rectangle_in_the_corner_of_the_wall_is_two_readings_and_return(marked: SquarePhoto) -> None:
    assert marked.type("3600, 2400") is None
    place = place_of(marked, enter=True)
    assert places(place) == [(0, 0), (3600, 0), (3600, 2400), (0, 2400)]
    for mark, dot in zip(place.marks, DOTS, strict=True):
        assert (mark.u, mark.v) == pytest.approx(dot)


def test_a_rectangle_elsewhere_is_four_readings_in_a_line(marked: SquarePhoto) -> None:
    place = place_of(marked, "900, 700, 600, 0")
    assert places(place) == [(600, 0), (1500, 0), (1500, 700), (600, 700)]


def test_on_a_plan_the_rectangle_is_placed_from_the_wall() -> None:
    layer = fitted_layer(plain(1600, 1200), BOX, View.PLAN)
    gesture = SquarePhoto(with_photo(View.PLAN), layer)
    for dot in DOTS:
        gesture.press(layer.place(*dot))
    gesture.type("900, 700, 100")
    assert gesture.wants == "distance from the wall, or ⏎ for 0"
    assert places(place_of(gesture, "50")) == [(100, 750), (1000, 750), (1000, 50), (100, 50)]


def test_marks_are_typed_as_dots_too(square: SquarePhoto) -> None:
    assert square.says("200, 1000") == "200 pixels from the left, 1000 from the top"
    square.type("200, 1000, 1450, 1100")
    square.type("1300, 150, 350, 250")
    assert [(mark.u, mark.v) for mark in place_of(square, "900, 700, 0, 0").marks] == list(DOTS)


def test_half_a_mark_is_refused_and_leaves_no_trace(square: SquarePhoto) -> None:
    trial = copy.copy(square)
    with pytest.raises(ReadingError, match="a mark needs two numbers"):
        trial.type("200, 1000, 1450")
    assert not square.is_begun


def test_distances_between_the_marks_are_adjusted_and_kept_to_check_by(marked: SquarePhoto) -> None:
    gesture = marked.turned()
    assert gesture.wants == "from mark 1 to mark 2"
    assert isinstance(gesture, SquarePhoto)
    gesture.type("2400, 1200, 2400, 1200, 2685")
    assert gesture.wants == "from mark 2 to mark 4, or ⏎ without it"
    gesture.type("2681")
    place = place_of(gesture, enter=True)
    assert [length.length_mm for length in place.lengths] == [2400, 1200, 2400, 1200, 2685, 2681]
    assert max(abs(check.off_mm) for check in check_lengths(place)) == pytest.approx(1.0, abs=1.0)


def test_the_second_diagonal_may_be_left_out(marked: SquarePhoto) -> None:
    gesture = marked.turned()
    assert isinstance(gesture, SquarePhoto)
    gesture.type("2400, 1200, 2400, 1200, 2685")
    assert gesture.enter() is None
    assert gesture.wants == "how far it is from the left end, or ⏎ for 0"
    assert len(place_of(gesture, "100, 0").lengths) == 5


def test_distances_that_make_no_figure_are_refused_and_can_be_typed_again(marked: SquarePhoto) -> None:
    gesture = marked.turned()
    assert isinstance(gesture, SquarePhoto)
    gesture.type("2400, 1200, 2400, 1200, 9000, 2681")
    with pytest.raises(JobError, match="make no triangle"):
        gesture.enter()
    gesture.back()
    gesture.back()
    gesture.type("2685, 2681")
    assert places(place_of(gesture, "0, 0"))[0] == pytest.approx((0.0, 0.0), abs=20)


def test_a_fourth_mark_in_a_line_with_others_is_refused_and_set_again(square: SquarePhoto) -> None:
    square.type("0, 1000, 1000, 1000, 1000, 0")
    with pytest.raises(JobError, match="are in a line"):
        square.type("500, 500")
    assert square.wants == "its upper left corner"
    square.type("0, 0")
    assert square.wants == "width of the rectangle"


def test_a_mark_beside_the_photo_is_refused(square: SquarePhoto) -> None:
    with pytest.raises(JobError, match="outside the photo"):
        square.press((-500.0, 100.0))


def test_a_size_of_nothing_is_refused(marked: SquarePhoto) -> None:
    with pytest.raises(ReadingError):
        marked.type("0")


def test_taken_back_step_by_step(marked: SquarePhoto) -> None:
    marked.type("900, 700, 100")
    for wanted in ("how far it is from the left end, or ⏎ for 0", "height of the rectangle", "width of the rectangle"):
        marked.back()
        assert marked.wants == wanted
    for _ in DOTS:
        marked.back()
    assert not marked.is_begun


def test_squared_again_the_photo_stays_as_dense_as_it_was(marked: SquarePhoto) -> None:
    first = place_of(marked, "900, 700, 0, 0")
    face = replace(marked.scene.face, photo_place=replace(first, opacity=0.8))
    marked.scene = marked.scene._replace(job=with_changed_face(marked.scene.job, face))
    marked.back()
    assert place_of(marked, "0, 5").opacity == 0.8


def test_afterwards_the_hand_picks(marked: SquarePhoto) -> None:
    assert isinstance(marked.again(SCENE), Pick)
