import pytest
from msgspec.structs import replace

from desktop.gestures.gesture import Held
from desktop.gestures.match_size import MatchSize
from desktop.gestures.mirror_copy import MirrorCopy
from desktop.gestures.pick import Pick
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import circle
from shared.edits.drawn import find_part, with_changed_parts, with_parts
from shared.errors import JobError, OutlineError, ReadingError
from shared.job import Part
from shared.trade.kinds import Kind
from takeoff.drawing.face import draw_face
from takeoff.memory import Memory
from takeoff.take_off import take_off
from tests.desktop.gestures.scenes import JOB, SCENE, box_of, ended, new_box

FREE = Held(free=True)
BASE = SCENE._replace(picked=("base",))
OUTLET = SCENE._replace(picked=("outlet",))


def test_a_copy_is_mirrored_about_a_typed_line() -> None:
    done = MirrorCopy(OUTLET).type("1000")
    assert new_box(done) == (2000 - 915, 1100, 2000 - 800, 1172)
    assert box_of(done, "outlet") == (800, 1100, 915, 1172)
    assert ended(done).label == "Mirror outlet"


def test_a_copy_is_mirrored_where_the_hand_clicks() -> None:
    gesture = MirrorCopy(OUTLET)
    gesture.point((1000, 400), FREE)
    assert gesture.tried is not None
    assert ((1000, 0), (1000, 2400)) in gesture.preview.guides
    assert new_box(gesture.press((1000, 400), FREE)) == (1085, 1100, 1200, 1172)


def test_the_line_snaps() -> None:
    gesture = MirrorCopy(OUTLET)
    gesture.point((1490, 600))
    assert gesture.preview.words.startswith("side of cabinet")
    assert new_box(gesture.press((1490, 600)))[0] == 2 * 1500 - 915


def test_the_other_way_is_about_a_level_line() -> None:
    assert new_box(MirrorCopy(OUTLET).turned().type("1000")) == (800, 2000 - 1172, 915, 900)


def test_names_are_upright_and_read_from_left_to_right_on_a_mirrored_part() -> None:
    named = with_changed_parts(JOB, (replace(find_part(JOB, "next")[1], name="cooker"),))
    done = ended(MirrorCopy(SCENE._replace(job=named, picked=("next",))).type("1600"))
    memory = Memory()
    drawing = draw_face(done.job, done.job.faces[0], take_off(done.job, memory), memory)
    old, new = (next(text for text in drawing.texts if text.part == part) for part in ("next", *done.picked))
    assert new.text == old.text == "cooker"
    assert (new.x - 1600, new.y) == (1600 - old.x, old.y)
    assert (new.width_mm, new.height_mm) == pytest.approx((old.width_mm, old.height_mm))


def test_after_the_copy_the_hand_picks() -> None:
    gesture = MirrorCopy(BASE)
    done = ended(gesture.type("1000"))
    assert isinstance(gesture.again(SCENE._replace(job=done.job)), Pick)
    assert isinstance(gesture.again(SCENE), MirrorCopy)


def test_parts_take_the_size_of_the_one_that_is_clicked() -> None:
    gesture = MatchSize(OUTLET)
    gesture.point((1200, 400))
    assert gesture.tried is not None
    done = gesture.press((1200, 400))
    assert box_of(done, "outlet") == (800, 1100, 1700, 1820)
    assert ended(done).label == "Match the size of outlet"


@pytest.mark.parametrize(
    ("word", "box"),
    [("width", (800, 1100, 1700, 1172)), ("Height", (800, 1100, 915, 1820)), ("both", (800, 1100, 1700, 1820))],
)
def test_a_word_says_what_they_take(word: str, box: tuple[float, float, float, float]) -> None:
    gesture = MatchSize(OUTLET)
    assert gesture.type(word) is None
    assert box_of(gesture.press((1200, 400)), "outlet") == box


def test_what_is_no_size_is_refused() -> None:
    with pytest.raises(ReadingError, match="width, height or both"):
        MatchSize(OUTLET).type("600")


def test_a_circle_made_oblong_is_refused() -> None:
    basin = Part("basin", Kind.FIXTURE, circle(2500, 1500, 200))
    gesture = MatchSize(SCENE._replace(job=with_parts(JOB, "f1", (basin,)), picked=("basin",)))
    gesture.point((1200, 400))
    assert gesture.preview.words == "the part cannot take this size"
    with pytest.raises(OutlineError):
        gesture.press((1200, 400))


def test_a_locked_part_is_refused() -> None:
    job = with_changed_parts(JOB, (replace(find_part(JOB, "outlet")[1], locked=True),))
    with pytest.raises(JobError, match="locked"):
        MatchSize(OUTLET._replace(job=job)).press((1200, 400))


def test_a_mirrored_copy_lies_where_its_original_does_after_two_mirrors() -> None:
    once = ended(MirrorCopy(BASE).type("1000"))
    twice = ended(MirrorCopy(SCENE._replace(job=once.job, picked=once.picked)).type("1000"))
    assert outline_box(find_part(twice.job, twice.picked[0])[1].outline) == outline_box(
        find_part(JOB, "base")[1].outline
    )
