"""Set-out: what is typed becomes readings; how they close is said before Return."""

import pytest

from desktop.gestures.set_out import SetOut
from geometry.set_out.lines import set_out
from shared.edits.drawn import find_face
from shared.errors import RecoatError
from shared.job import END, START, Job, Reading, Way
from tests.desktop.gestures.scenes import JOB, SCENE, ended


def _lines(job: Job) -> list[tuple[Way, float]]:
    face = find_face(job, "f1")
    return [(line.way, round(line.at_mm, 3)) for line in set_out(face, job.tape).lines]


def test_readings_without_words_run_from_the_left_end() -> None:
    done = ended(SetOut(SCENE).type("600, 1050, 1950"))
    assert _lines(done.job) == [(Way.ACROSS, 600), (Way.ACROSS, 1050), (Way.ACROSS, 1950)]
    assert done.label == "Set out A: 3 readings"


def test_the_other_way_is_a_chain_then_both_upwards_then_as_before() -> None:
    gesture, asked = SetOut(SCENE), []
    for _ in range(5):
        asked.append(gesture.wants.split(",")[0])
        turned = gesture.turned()
        assert isinstance(turned, SetOut)
        gesture = turned
    assert asked == [
        "running readings from the left end",
        "a chain across from the left end",
        "running readings from the floor",
        "a chain up from the floor",
        "running readings from the left end",
    ]


def test_a_chain_says_how_it_closes_on_the_end_of_the_wall() -> None:
    gesture = SetOut(SCENE).turned()
    assert gesture.says("600, 450, 900, 1644") == (
        "600 · 1050 · 1950 · 3594 is 6 short of the end · 6 left · type new before them to make new lines"
    )
    done = ended(gesture.type("600, 450, 900, 1650"))
    assert find_face(done.job, "f1").readings[-1].end == END


def test_running_readings_join_the_lines_of_a_chain() -> None:
    job = ended(SetOut(SCENE).type("chain 600, 450")).job
    gesture = SetOut(SCENE._replace(job=job))
    assert gesture.says("602, 1050") == (
        "602 is 2 beyond 600 · 1050 closes · 2550 left · type new before them to make new lines"
    )
    assert len(_lines(ended(gesture.type("602, 1050")).job)) == 2
    assert len(_lines(ended(gesture.type("new 602")).job)) == 3


def test_a_chain_begins_where_the_face_was_pressed_or_where_it_says() -> None:
    job = ended(SetOut(SCENE).type("600")).job
    scene = SCENE._replace(job=job)
    pressed = SetOut(scene)
    pressed.press((608, 1000))
    for done in (pressed.type("450"), SetOut(scene).type("from 600, 450")):
        assert _lines(ended(done).job) == [(Way.ACROSS, 600), (Way.ACROSS, 1050)]
    with pytest.raises(RecoatError, match="no set-out line is at 900"):
        SetOut(scene).type("from 900, 450")


def test_sides_and_diagonals_place_the_corners_which_are_shown_before_return() -> None:
    line = "floor 3600, left 2400, right 2395, top 3606, diagonal 4326"
    done = ended(SetOut(SCENE).type(line))
    readings = find_face(done.job, "f1").readings
    assert [reading.way for reading in readings] == [Way.STRAIGHT] * 5
    assert readings[-1] == Reading("lower left", "upper right", 4326, Way.STRAIGHT)
    (corners,) = done.preview.outlines
    assert (corners[0].x, corners[0].y, corners[1].y) == (0, 0, 0)


def test_a_second_diagonal_is_the_other_one() -> None:
    job = ended(SetOut(SCENE).type("diagonal 4326")).job
    again = ended(SetOut(SCENE._replace(job=job)).type("diagonal 4310")).job
    assert find_face(again, "f1").readings[-1].start == "lower right"


def test_a_reading_beyond_the_wall_is_refused_and_nothing_is_kept() -> None:
    with pytest.raises(RecoatError, match="beyond the right end"):
        SetOut(SCENE).type("600, 36000")
    assert SCENE.face.readings == ()


def test_a_whole_length_is_a_reading_to_the_end() -> None:
    job = ended(SetOut(SCENE).type("wall 3600 up 150, 870")).job
    whole, *upright = find_face(job, "f1").readings
    assert (whole.start, whole.end, whole.way) == (START, END, Way.ACROSS)
    assert [reading.way for reading in upright] == [Way.UP, Way.UP]


def test_readings_stay_with_the_way_that_they_began_in() -> None:
    job = ended(SetOut(SCENE).type("up chain 150, 720")).job
    assert _lines(job) == [(Way.UP, 150), (Way.UP, 870)]
    assert JOB.rooms[0].faces[0].readings == ()
