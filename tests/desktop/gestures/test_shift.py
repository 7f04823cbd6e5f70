"""Shift what follows: a size is clicked or a part's own is taken, and what is typed moves all beyond."""

import pytest

from desktop.gestures.shift import Shift
from geometry.outlines.measured import outline_box
from shared.edits.drawn import find_part
from shared.errors import ReadingError
from takeoff.drawing.sizes import face_sizes
from tests.desktop.gestures.scenes import SCENE, box_of, ended


def test_the_width_of_the_picked_part_becomes_what_the_tape_says_and_the_rest_moves_along() -> None:
    gesture = Shift(SCENE._replace(picked=("base",)))
    assert gesture.wants == "what the tape says, now 600"
    assert gesture.says("620") == "= 620 mm: 20 more · 2 move · 3 stretch"
    done = ended(gesture.type("620"))
    assert box_of(done, "base") == (0, 150, 620, 870)
    assert box_of(done, "next") == (620, 150, 1520, 870)
    assert box_of(done, "wall") == (0, 0, 3620, 2400)
    assert box_of(done, "outlet") == (820, 1100, 935, 1172)


def test_in_the_other_way_it_is_the_height() -> None:
    turned = Shift(SCENE._replace(picked=("base",))).turned()
    assert turned.wants == "what the tape says, now 720"
    assert box_of(turned.type("700"), "outlet")[1] == 1080


def test_a_size_of_the_face_is_clicked() -> None:
    gesture = Shift(SCENE)
    assert gesture.wants == ""
    size = next(size for size in face_sizes(SCENE.face) if size.length_mm == 900)
    middle = ((size.start[0] + size.end[0]) / 2, size.start[1] - abs(size.away_mm))
    gesture.point(middle)
    assert gesture.preview.sizes == (size,)
    gesture.press(middle)
    assert gesture.wants == "what the tape says, now 900"
    done = ended(gesture.type("890"))
    assert box_of(done, "next") == (600, 150, 1490, 870)
    assert box_of(done, "base") == (0, 150, 600, 870)


def test_nothing_is_typed_before_a_size_is_clicked_and_no_more_is_taken_away_than_there_is() -> None:
    with pytest.raises(ReadingError, match="no size is chosen yet"):
        Shift(SCENE).type("600")
    before = SCENE.job
    with pytest.raises(ReadingError):
        Shift(SCENE._replace(picked=("base",))).type("-5")
    assert outline_box(find_part(before, "base")[1].outline) == (0, 150, 600, 870)
