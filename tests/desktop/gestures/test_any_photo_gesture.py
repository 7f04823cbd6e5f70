"""Whatever is clicked and typed on a photo, in whatever order: a word of refusal at worst, and a job that holds."""

from collections.abc import Callable

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from desktop.gestures.check_photo import CheckPhoto
from desktop.gestures.gesture import Gesture, Scene
from desktop.gestures.square_photo import SquarePhoto
from desktop.painting.photo import fitted_layer
from geometry.photos.marks import rectangle_marks
from shared.edits.drawn import find_face, with_changed_face
from shared.job import PhotoPlace, View
from tests.any_order import act, check_sound
from tests.desktop.gestures.scenes import JOB, SCENE
from tests.desktop.photographed import plain

MARKS = rectangle_marks(((200.0, 1000.0), (1450.0, 1100.0), (1300.0, 150.0), (350.0, 250.0)), 3600, 2400, (0, 0))
FACE = replace(find_face(JOB, "f1"), photo="wall.jpg", photo_place=PhotoPlace(MARKS))
PHOTOGRAPHED = SCENE._replace(job=with_changed_face(JOB, FACE))
LAYER = fitted_layer(plain(160, 120), (0.0, 0.0, 3600.0, 2400.0), View.ELEVATION)


def square(scene: Scene) -> Gesture:
    return SquarePhoto(scene, LAYER)


places = st.tuples(st.integers(-200, 3800), st.integers(-200, 2600)) | st.sampled_from(
    [(300, 100), (3000, 200), (2800, 2300), (400, 2200)]
)
lines = st.sampled_from(
    ["900", "0", "-5", "900, 700", "900, 700, 0, 0", "10, 100, 150, 110, 130, 15, 35, 25", "9e99", "x", "1200, 1300"]
)
steps = st.one_of(
    st.tuples(st.just("press"), places),
    st.tuples(st.just("point"), places),
    st.tuples(st.sampled_from(["type", "says"]), lines),
    st.tuples(st.sampled_from(["enter", "turned", "back", "cancel"])),
)


@given(st.sampled_from([square, CheckPhoto]), st.lists(steps, max_size=25))
def test_no_order_of_acts_makes_a_job_that_does_not_hold(
    make: Callable[[Scene], Gesture], acts: list[tuple[str, *tuple[object, ...]]]
) -> None:
    gesture = make(PHOTOGRAPHED)
    for name, *values in acts:
        gesture, done = act(gesture, name, *values)
        assert gesture.wants
        assert gesture.preview is not None
        if done is not None:
            check_sound(done.job)
            gesture = make(PHOTOGRAPHED)
