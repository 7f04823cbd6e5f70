import pytest

from desktop.gestures.copy_along import CopyAlong
from desktop.gestures.gesture import Done
from geometry.outlines.measured import outline_box
from shared.edits.drawn import find_part
from shared.errors import JobError, ReadingError
from tests.desktop.gestures.scenes import SCENE, ended

OUTLET = SCENE._replace(picked=("outlet",))
LEFT, LOW, WIDE, HIGH = 800, 1100, 115, 72


def corners(done: Done | None) -> list[tuple[float, float]]:
    return [outline_box(find_part(ended(done).job, part)[1].outline)[:2] for part in ended(done).picked]


@pytest.mark.parametrize(
    ("line", "step"),
    [
        ("2 at 450", (450, 0)),
        ("2 at 450 up", (0, 450)),
        ("2 at 45 cm left", (-450, 0)),
        ("2 at -450", (-450, 0)),
        ("2 at 100 d", (0, -100)),
        ("2", (WIDE, 0)),
        ("2 up", (0, HIGH)),
        ("2 left", (-WIDE, 0)),
    ],
)
def test_a_line_says_how_many_how_far_and_which_way(line: str, step: tuple[float, float]) -> None:
    done = CopyAlong(OUTLET).type(line)
    assert corners(done) == [(LEFT + n * step[0], LOW + n * step[1]) for n in range(3)]
    assert ended(done).label == "Copy outlet along"


def test_the_other_way_is_up() -> None:
    assert corners(CopyAlong(OUTLET).turned().type("1 at 300")) == [(LEFT, LOW), (LEFT, LOW + 300)]
    assert corners(CopyAlong(OUTLET).turned().type("1 at 300 right"))[1] == (LEFT + 300, LOW)


def test_several_parts_stand_together_side_by_side() -> None:
    done = CopyAlong(SCENE._replace(picked=("base", "door"))).type("1")
    assert corners(done) == [(0, 150), (3, 153), (600, 150), (603, 153)]


def test_dragging_shows_the_pitch_of_the_first() -> None:
    gesture = CopyAlong(OUTLET)
    gesture.press((850, 1130))
    gesture.point((1250, 1140))
    assert gesture.tried is not None
    gesture.release((1250, 1140))
    assert gesture.wants == "how many more, 400 from edge to edge"
    assert corners(gesture.enter())[1] == (LEFT + 400, LOW)
    assert corners(gesture.type("3")) == [(LEFT + n * 400, LOW) for n in range(4)]
    gesture.cancel()
    assert gesture.tried is None


def test_what_it_comes_to_is_said() -> None:
    assert CopyAlong(OUTLET).says("4 at 450") == "4 more, 450 from edge to edge"


@pytest.mark.parametrize("line", ["0", "4 at 0", "1001", "1000 at 450"])
def test_what_cannot_be_is_refused_in_words(line: str) -> None:
    with pytest.raises(JobError):
        CopyAlong(OUTLET).type(line)


def test_nothing_is_copied_where_nothing_is_picked() -> None:
    with pytest.raises(ReadingError, match="click the part"):
        CopyAlong(SCENE).type("4")
    assert CopyAlong(SCENE).enter() is None


def test_what_to_do_first_is_said_while_a_line_is_typed() -> None:
    with pytest.raises(ReadingError, match="click the part"):
        CopyAlong(SCENE).says("4")
