"""A line may leave the place to the middle of what is picked."""

import pytest

from desktop.gestures.box import Box
from desktop.gestures.gesture import Gesture
from desktop.gestures.round import Circle, CircleAcross, RoundedBox
from desktop.gestures.trace import Trace
from shared.edits.drawn import find_part
from shared.errors import ReadingError
from shared.trade.kinds import Kind
from tests.desktop.gestures.scenes import SCENE, ended, new_box

NEXT = SCENE._replace(picked=("next",))  # 600 to 1500, 150 to 870: its middle is 1050, 510


@pytest.mark.parametrize(
    ("gesture", "line", "box"),
    [
        (Box(NEXT), "cut-out 500 by 400 centred", (800, 310, 1300, 710)),
        (Box(NEXT), "50 by 40 cm centered", (800, 310, 1300, 710)),
        (Box(NEXT), "500 x 400 centred", (800, 310, 1300, 710)),
        (Box(NEXT._replace(decimal=",")), "500x400 centred", (800, 310, 1300, 710)),
        (Circle(NEXT), "2x100 centred", (850, 310, 1250, 710)),
        (RoundedBox(NEXT), "500 x 400 x 50 centred", (800, 310, 1300, 710)),
        (Box(NEXT), "500, 400 Centred", (800, 310, 1300, 710)),
        (Circle(NEXT), "basin 200 centred", (850, 310, 1250, 710)),
        (CircleAcross(NEXT), "400 centred", (850, 310, 1250, 710)),
        (RoundedBox(NEXT), "500 by 400 by 50 centred", (800, 310, 1300, 710)),
        (Box(SCENE._replace(picked=("base", "next"))), "100 by 20 centred", (700, 500, 800, 520)),
    ],
)
def test_a_part_stands_in_the_middle_of_what_is_picked(
    gesture: Gesture, line: str, box: tuple[float, float, float, float]
) -> None:
    assert new_box(gesture.type(line)) == pytest.approx(box)


def test_it_is_of_the_kind_that_is_said() -> None:
    done = ended(Box(NEXT).type("cut-out 500 by 400 centred"))
    assert find_part(done.job, done.picked[0])[1].kind is Kind.CUT_OUT


@pytest.mark.parametrize(
    ("gesture", "line", "words"),
    [
        (Box(SCENE), "500 by 400 centred", "no part is picked"),
        (Box(NEXT), "500 centred", "cannot be centred"),
        (Box(NEXT), "500 by 400 at 3, 4 centred", "more readings"),
        (Trace(NEXT), "500 centred", "cannot be centred"),
    ],
)
def test_what_cannot_be_centred_is_refused_in_words(gesture: Gesture, line: str, words: str) -> None:
    with pytest.raises(ReadingError, match=words):
        gesture.type(line)


def test_a_part_that_has_its_place_is_not_centred() -> None:
    gesture = Box(NEXT)
    gesture.type("0, 0")
    with pytest.raises(ReadingError, match="cannot be centred"):
        gesture.type("500 by 400 centred")
