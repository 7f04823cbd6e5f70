"""Whatever is done to the window in whatever order: it never fails, the job holds together, undo takes it all back.

`MONKEY_STEPS=2000 MONKEY_SEEDS=100 pytest tests/journeys/test_monkey.py` goes on for longer.
"""

import os

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from geometry.kitchens.rows import with_row
from geometry.kitchens.walls import start_kitchen
from geometry.outlines.shapes import circle
from shared.edits.drawn import fresh_id, with_changed_face, with_parts
from shared.errors import RecoatError
from shared.files.job import JobFile, Photo, job_to_json
from shared.job import Job, Part, PhotoMark, PhotoPlace, Unit, usual_heights
from shared.trade.kinds import Kind
from shared.typed.rows import read_row
from shared.typed.walls import read_walls
from takeoff.faces.benchtop_plans import with_benchtop_plans
from takeoff.surfaces.tags import with_tags_given
from tests.any_order import check_sound
from tests.desktop.photographed import aslant, written
from tests.journeys.monkey import Monkey
from tests.window import Keys, Person

STEPS = int(os.environ.get("MONKEY_STEPS", "350"))
MONKEYS = int(os.environ.get("MONKEY_SEEDS", "6"))
SEEDS = tuple((seed, Unit.INCH if seed % 3 == 2 else Unit.MM) for seed in range(1, MONKEYS + 1))
TOLD = 12
"""So many of the latest things done are told where one fails."""

PHOTO = "wall.jpg"
DOTS = ((20.0, 130.0), (180.0, 140.0), (170.0, 20.0), (40.0, 30.0))
MARKS = (
    PhotoMark(20.0, 130.0, 0.0, 0.0),
    PhotoMark(180.0, 140.0, 1500.0, 0.0),
    PhotoMark(170.0, 20.0, 1500.0, 2400.0),
    PhotoMark(40.0, 30.0, 0.0, 2400.0),
)
"""The wall's corners, in dots of the photo and on the face."""


def small_job(unit: Unit) -> Job:
    """Two walls that meet, a row of cabinets and a photo under one, and its benchtop with a round basin."""
    job = start_kitchen("Monkey", read_walls("1500 mm, 900 mm", unit), usual_heights(unit), unit)
    wall = job.faces[0].id
    job, _ = with_row(job, wall, read_row("450 mm door, 600 mm drawers 3, splashback", unit))
    job, (plan,) = with_benchtop_plans(job, job.rooms[0].id, mitred=False)
    job = with_parts(job, plan, (Part(fresh_id(job, "p"), Kind.FIXTURE, circle(500.0, 300.0, 180.0), "basin"),))
    return with_changed_face(job, replace(job.faces[0], photo=PHOTO, photo_place=PhotoPlace(MARKS)))


def small_file(job: Job) -> JobFile:
    """The job with its photo, so small that it is read at once."""
    return JobFile(job, (Photo(PHOTO, written(aslant(DOTS, 200, 150))),))


# A menu that pops up wants of Qt's offscreen screen what it has not.
@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
@pytest.mark.parametrize(("seed", "unit"), SEEDS)
def test_a_monkey_breaks_nothing_and_undo_takes_all_back(person: Person, qtbot: QtBot, seed: int, unit: Unit) -> None:
    app, start = person.app, small_job(unit)
    told: list[str] = []
    app.report.told.connect(told.append)
    app.files.show_new(small_file(start))
    monkey, edits = Monkey(app, seed), 0
    for _ in range(STEPS):
        before = person.shown.job
        with qtbot.capture_exceptions() as raised:
            monkey.do()
        if raised or told or app.store.shown is None:
            pytest.fail(f"{raised} {told} after {monkey.did[-TOLD:]}")
        if app.store.shown.job is not before:
            _check(app.store.shown.job, monkey)
            edits += 1

    assert edits
    monkey.calm_down()
    qtbot.waitUntil(app.window.isActiveWindow)
    for _ in person.shown.history.past:
        QTest.keyClick(app.measure.canvas, Qt.Key.Key_Z, Keys.ControlModifier)
    assert not person.shown.history.can_undo
    assert job_to_json(person.shown.job) == job_to_json(with_tags_given(start))


def _check(job: Job, monkey: Monkey) -> None:
    try:
        check_sound(job)
    except RecoatError as error:
        pytest.fail(f"{error} after {monkey.did[-TOLD:]}")
