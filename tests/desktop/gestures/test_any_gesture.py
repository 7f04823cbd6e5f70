"""Whatever the hand does, in whatever order: an error in words at worst, and never a job that cannot be measured."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from desktop.gestures.box import Box
from desktop.gestures.copy_along import CopyAlong
from desktop.gestures.gesture import Gesture, Held, Scene
from desktop.gestures.match_size import MatchSize
from desktop.gestures.mirror_copy import MirrorCopy
from desktop.gestures.pick import Pick
from desktop.gestures.preview import NOTHING
from desktop.gestures.reshape import Corners
from desktop.gestures.round import Circle, CircleAcross, RoundedBox
from desktop.gestures.run import Run
from desktop.gestures.split import Split
from desktop.gestures.trace import Trace
from geometry.checking import check_outlines
from geometry.outlines.sides import Point
from tests.any_order import act, check_sound
from tests.desktop.gestures.scenes import SCENE

GESTURES = (Box, Circle, CircleAcross, RoundedBox, Trace, Pick, Run, Corners, Split, CopyAlong, MirrorCopy, MatchSize)
LINES = (
    "0",
    "-5",
    "600",
    "600, 450",
    "10, 20, 300, 400",
    "35 right, 20 up",
    "600 at 45",
    "to 600, 870",
    "900 right rise 99 up",
    "2",
    "3 up reveal 4",
    "10000",
    "2 at 450 up",
    "1 at -50",
    "round 50",
    "cut 30",
    "rise 60",
    "rise -900",
    "radius 300",
    "500 by 40 centred",
    "cut-out 50 by 40 at 3, 4",
    "width",
    "600 door, 450 drawers 3",
    "wombat",
)

MOST_PARTS = 50
"""Copies of copies soon are many: then there is nothing new to learn."""

PICKED = ((), ("outlet",), ("base", "door"))

places = st.tuples(st.integers(-500, 4000), st.integers(-500, 3000)) | st.sampled_from([(0, 0), (600, 150), (300, 500)])
keys = st.builds(Held, st.booleans(), st.booleans())
steps = st.one_of(
    st.tuples(st.sampled_from(["press", "point", "release"]), places, keys),
    st.tuples(st.just("read"), st.sampled_from([-5.0, 0.0, 1.0, 100.0, 450.0, 2000.0])),
    st.tuples(st.sampled_from(["says", "offers", "type"]), st.sampled_from(LINES)),
    st.tuples(st.sampled_from(["enter", "turned", "back", "cancel", "put_in", "take_out"])),
)


@given(st.sampled_from(GESTURES), st.sampled_from(PICKED), st.lists(steps, max_size=25))
def test_no_order_of_acts_makes_a_job_that_cannot_be_measured(
    make: Callable[[Scene], Gesture], picked: tuple[str, ...], acts: list[tuple[str, *tuple[object, ...]]]
) -> None:
    gesture = make(SCENE._replace(picked=picked))
    for name, *values in acts:
        gesture, done = act(gesture, name, *values, on_copy=name == "type")
        if gesture.tried is not None:
            check_outlines(gesture.tried)
        if done is not None:
            check_sound(done.job)
            if len(done.job.faces[0].parts) > MOST_PARTS:
                break
            gesture = gesture.again(SCENE._replace(job=done.job, picked=done.picked))


@pytest.mark.parametrize("make", GESTURES)
@given(st.lists(places, max_size=6))
def test_cancelling_leaves_nothing(make: Callable[[Scene], Gesture], hands: list[Point]) -> None:
    gesture = make(SCENE)
    for hand in hands:
        act(gesture, "press", hand)
        act(gesture, "point", hand)
    gesture.cancel()
    assert not gesture.is_begun
    assert gesture.tried is None
    assert gesture.preview._replace(guides=(), spot=None, words="") == NOTHING
