"""Pages: only the page that is open follows; another catches up, from what it showed last, when it is turned to."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QModelIndex, Qt
from pytestqt.qtbot import QtBot

from desktop.buy.page import BUY
from desktop.count.page import COUNT
from desktop.finish.page import FINISH
from desktop.measure.page import MEASURE
from desktop.pages.all import Pages
from desktop.pages.view import PageView
from desktop.state.shown import Page, Shown
from desktop.state.store import Store, counted_file
from desktop.sums.row import SumRow
from desktop.sums.takeoff import count_rows
from shared.files.job import JobFile
from shared.job import Job
from takeoff.figures.measured import Fronts
from tests.window import Keys, Person

PLAN, DO = Page("Plan"), Page("Do", fronts=Fronts.OFF)


class Noting(PageView):
    """Keeps what it is asked to follow, and how often it was left."""

    def __init__(self, page: Page) -> None:
        super().__init__(page)
        self.followed: list[tuple[Shown | None, Shown]] = []
        self.left = 0

    def follow(self, old: Shown | None, new: Shown) -> None:
        self.followed.append((old, new))

    def leave(self) -> None:
        self.left += 1


class Desk:
    """A store whose changes two pages hear of."""

    def __init__(self) -> None:
        self.plan, self.do = Noting(PLAN), Noting(DO)
        self.pages = Pages((self.plan, self.do))
        self.store = Store(PLAN)
        self.store.changed.connect(self._follow)
        self.open_job("Quince Lane 2")

    def open_job(self, name: str) -> None:
        self.store.show_job(counted_file(JobFile(Job(name))), None, saved=True)

    def _follow(self, _old: Shown | None, new: Shown | None) -> None:
        self.pages.follow(new)


@pytest.fixture
def desk(qtbot: QtBot) -> Iterator[Desk]:
    made = Desk()
    for view in (made.plan, made.do):
        qtbot.addWidget(view)
    yield made
    made.store.deleteLater()


def test_a_job_opens_on_the_first_page(desk: Desk) -> None:
    assert desk.store.open.page is PLAN
    assert desk.plan.followed == [(None, desk.store.open)]


def test_a_page_that_is_not_shown_follows_nothing(desk: Desk) -> None:
    desk.store.edit("Rename", Job("Elm Street 3"))
    assert len(desk.plan.followed) == 2
    assert desk.do.followed == []


def test_a_page_that_is_turned_to_follows_from_what_it_showed_last(desk: Desk) -> None:
    last = desk.store.open
    desk.store.turn_to(DO)
    desk.store.edit("Rename", Job("Elm Street 3"))
    desk.store.edit("Rename", Job("Elm Street 4"))
    desk.store.turn_to(PLAN)
    assert desk.plan.followed[1:] == [(last, desk.store.open)]


def test_the_page_that_another_is_opened_over_is_left_once(desk: Desk) -> None:
    desk.store.turn_to(DO)
    desk.store.edit("Rename", Job("Elm Street 3"))
    assert (desk.plan.left, desk.do.left) == (1, 0)
    desk.store.turn_to(PLAN)
    assert (desk.plan.left, desk.do.left) == (1, 1)


def test_a_page_says_how_the_fronts_are_on_it(desk: Desk) -> None:
    fronts: list[Fronts] = []
    for page in (DO, PLAN):
        desk.store.turn_to(page)
        fronts.append(desk.store.open.fronts)
    assert fronts == [Fronts.OFF, Fronts.HUNG]


def test_of_another_job_a_page_has_shown_nothing_yet(desk: Desk) -> None:
    desk.store.turn_to(DO)
    desk.store.close_job()
    desk.open_job("Elm Street 3")
    desk.store.turn_to(DO)
    assert desk.plan.followed[-1][0] is None
    assert desk.do.followed[-1] == (None, desk.store.open)


def test_a_page_without_a_face_takes_the_keys_itself_and_has_nothing_to_zoom(desk: Desk) -> None:
    assert desk.plan.first_places == (desk.plan,)
    desk.pages.zoom_in()
    desk.pages.zoom_whole()


@pytest.fixture
def cabinet(person: Person) -> Person:
    """A wall with a cabinet, on Measure, every page turned to once."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("cab", ("0", "150", "600", "720"))
    for page in (FINISH, COUNT, BUY, MEASURE):
        person.turn_to(page)
    return person


def shown_rows(person: Person) -> tuple[SumRow | None, ...]:
    model = person.app.count.model
    return tuple(model.row_at(model.index(place, 0)) for place in range(model.rowCount(QModelIndex())))


def is_trying(person: Person) -> bool:
    return person.shown.tried is not None


def test_an_edit_on_measure_fills_no_table_until_its_page_is_turned_to(cabinet: Person) -> None:
    filled: list[str] = []
    cabinet.app.count.model.modelReset.connect(lambda: filled.append("Count"))
    cabinet.app.buy.tree.rows.modelReset.connect(lambda: filled.append("Buy"))
    cabinet.read("900", "150", "600", "720")
    cabinet.wait_until(lambda: cabinet.shown.bill is not None and cabinet.shown.bill.job is cabinet.shown.job)
    assert filled == []

    cabinet.turn_to(COUNT)
    assert filled == ["Count"]
    assert shown_rows(cabinet) == count_rows(cabinet.shown)


def test_what_is_undone_on_another_page_is_gone_from_the_details(cabinet: Person) -> None:
    cabinet.press(Qt.Key.Key_A, Keys.ControlModifier)
    assert cabinet.app.measure.details.head.text().startswith("2 parts")
    cabinet.turn_to(COUNT)
    cabinet.press(Qt.Key.Key_Z, Keys.ControlModifier)
    cabinet.turn_to(MEASURE)
    assert [part.name or part.kind.value for part in cabinet.shown.picked_parts] == ["wall"]
    assert cabinet.app.measure.details.head.text().endswith("wall")


def test_a_gesture_that_was_begun_is_not_gone_on_with_after_another_page(cabinet: Person) -> None:
    cabinet.read("900", "150")
    wants = cabinet.app.measure.line.wants.text()
    cabinet.turn_to(COUNT)
    cabinet.press(Qt.Key.Key_Z, Keys.ControlModifier)
    cabinet.turn_to(MEASURE)
    assert cabinet.app.measure.line.wants.text() != wants
    cabinet.read("10", "20", "300", "400")
    assert [part.kind.value for part in cabinet.shown.job.faces[0].parts] == ["wall", "cabinet"]
    assert min(vertex.x for vertex in cabinet.shown.job.faces[0].parts[1].outline) == 10


def test_what_is_tried_out_is_dropped_on_another_page_and_what_stands_in_the_line_is_heard_again(
    cabinet: Person,
) -> None:
    takeoff, face = cabinet.shown.takeoff, cabinet.app.count.face
    assert face is not None
    before = face.canvas.accessibleDescription()
    cabinet.type("900, 150, 600, 720")
    assert is_trying(cabinet)
    cabinet.turn_to(COUNT)
    assert not is_trying(cabinet)
    assert cabinet.shown.takeoff is takeoff
    assert face.canvas.accessibleDescription() == before
    cabinet.turn_to(MEASURE)
    assert cabinet.app.measure.line.text == "900, 150, 600, 720"
    assert is_trying(cabinet)


def test_the_picture_of_a_page_follows_only_while_it_is_open(cabinet: Person) -> None:
    face = cabinet.app.finish.canvas
    before = face.accessibleDescription()
    cabinet.read("900", "150", "600", "720")
    assert face.accessibleDescription() == before
    cabinet.turn_to(FINISH)
    assert face.accessibleDescription() != before
