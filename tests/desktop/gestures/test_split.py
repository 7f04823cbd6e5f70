import pytest

from desktop.gestures.gesture import Done
from desktop.gestures.split import Split
from geometry.outlines.measured import outline_box
from shared.edits.drawn import find_part
from shared.errors import JobError, ReadingError
from tests.desktop.gestures.scenes import JOB, SCENE, ended

BASE = SCENE._replace(picked=("base",))
DOOR = SCENE._replace(picked=("door",))
Boxes = list[tuple[float, float, float, float]]


def boxes(done: Done | None) -> Boxes:
    return [outline_box(find_part(ended(done).job, part)[1].outline) for part in ended(done).picked]


def test_a_number_splits_side_by_side_without_reveals() -> None:
    done = Split(BASE).type("3")
    assert boxes(done) == [(0, 150, 200, 870), (200, 150, 400, 870), (400, 150, 600, 870)]
    assert ended(done).label == "Split sink base"
    assert [size.length_mm for size in ended(done).preview.sizes] == [200]


@pytest.mark.parametrize("line", ["2 up reveal 4", "2 reveal 4 up"])
def test_a_line_says_which_way_and_what_is_left_free(line: str) -> None:
    assert boxes(Split(BASE).type(line)) == [(0, 150, 600, 508), (0, 512, 600, 870)]


def test_the_other_way_is_up() -> None:
    assert boxes(Split(BASE).turned().type("2")) == [(0, 150, 600, 510), (0, 510, 600, 870)]
    assert boxes(Split(BASE).turned().type("2 across")) == [(0, 150, 300, 870), (300, 150, 600, 870)]


def test_fronts_get_the_rooms_reveal() -> None:
    reveal = JOB.rooms[0].heights.reveal_mm
    left, right = boxes(Split(DOOR).type("2"))
    assert reveal > 0
    assert right[0] - left[2] == pytest.approx(reveal)
    left, right = boxes(Split(DOOR).type("2 reveal 0"))
    assert right[0] == left[2]


def test_widths_leave_the_rest() -> None:
    assert [box[2] - box[0] for box in boxes(Split(BASE).type("150, 300"))] == [150, 300, 150]


def test_several_parts_are_split_at_once() -> None:
    done = Split(SCENE._replace(picked=("base", "next"))).type("2")
    assert [box[2] - box[0] for box in boxes(done)] == [300, 300, 450, 450]


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("3", "3 pieces of 200"),
        ("3 reveal 3", "3 pieces of 198"),
        ("150, 300", "3 pieces: 150, 300, 150"),
        ("50, 100, 60, 70, 80, 90, 75", "8 pieces: 50, 100, 60, 70, 80, 90, ..."),
    ],
)
def test_what_a_line_comes_to_is_said(line: str, words: str) -> None:
    assert Split(BASE).says(line) == words


@pytest.mark.parametrize("line", ["0", "1", "10000", "3 reveal 300", "400, 300"])
def test_what_cannot_be_is_refused_in_words(line: str) -> None:
    for act in (Split(BASE).type, Split(BASE).says):
        with pytest.raises(JobError, match="sink base"):
            act(line)


def test_a_click_picks_what_is_to_be_split() -> None:
    gesture = Split(SCENE)
    with pytest.raises(ReadingError, match="click the part"):
        gesture.type("3")
    done = ended(gesture.press((300, 400)))
    assert done.picked == ("door",)
    assert done.job is SCENE.job
    assert Split(DOOR).press((300, 400)) is None


def test_what_to_do_first_is_said_while_a_line_is_typed() -> None:
    with pytest.raises(ReadingError, match="click the part"):
        Split(SCENE).says("3")
