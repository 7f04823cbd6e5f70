"""Whatever the hand does, in whatever order: an error in words at worst, and never a job that cannot be measured."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from desktop.gestures.box import Box
from desktop.gestures.gesture import Done, Gesture, Held, Scene
from desktop.gestures.pick import Pick
from desktop.gestures.preview import NOTHING, Point
from desktop.gestures.round import Circle, CircleAcross, RoundedBox
from desktop.gestures.run import Run
from desktop.gestures.trace import Trace
from geometry.checking import check_outlines
from shared.checking import check_job
from shared.errors import RecoatError
from tests.desktop.gestures.scenes import SCENE

GESTURES = (Box, Circle, CircleAcross, RoundedBox, Trace, Pick, Run)

places = st.tuples(st.integers(-500, 4000), st.integers(-500, 3000)) | st.sampled_from([(0, 0), (600, 150), (300, 500)])
keys = st.builds(Held, st.booleans(), st.booleans())
steps = st.one_of(
    st.tuples(st.sampled_from(["press", "point", "release"]), places, keys),
    st.tuples(st.just("read"), st.sampled_from([-5.0, 0.0, 1.0, 100.0, 450.0, 2000.0])),
    st.tuples(st.sampled_from(["enter", "turn", "back", "cancel"])),
)


def after(gesture: Gesture, step: tuple[str, *tuple[object, ...]]) -> tuple[Gesture, Done | None]:
    name, *values = step
    if name == "turn":
        return gesture.turned(), None
    act: Callable[..., Done | None] = getattr(gesture, name)
    try:
        return gesture, act(*values)
    except RecoatError:
        return gesture, None


@given(st.sampled_from(GESTURES), st.lists(steps, max_size=25))
def test_no_order_of_acts_makes_a_job_that_cannot_be_measured(
    make: Callable[[Scene], Gesture], acts: list[tuple[str, *tuple[object, ...]]]
) -> None:
    gesture = make(SCENE)
    for step in acts:
        gesture, done = after(gesture, step)
        if gesture.tried is not None:
            check_outlines(gesture.tried)
        if done is not None:
            check_job(done.job)
            check_outlines(done.job)
            gesture = gesture.again(SCENE._replace(job=done.job, picked=done.picked))


@pytest.mark.parametrize("make", GESTURES)
@given(st.lists(places, max_size=6))
def test_cancelling_leaves_nothing(make: Callable[[Scene], Gesture], hands: list[Point]) -> None:
    gesture = make(SCENE)
    for hand in hands:
        after(gesture, ("press", hand))
        after(gesture, ("point", hand))
    gesture.cancel()
    assert not gesture.is_begun
    assert gesture.tried is None
    assert gesture.preview._replace(guides=(), spot=None, words="") == NOTHING
