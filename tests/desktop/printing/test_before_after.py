"""Before and after: every face twice, to one scale, first as its kinds and then in its finish colours."""

from collections import Counter
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtGui import QImage

from desktop.look.palette import light
from desktop.printing.before_after import (
    Comparison,
    Pair,
    comparisons,
    placed,
    sheet_and_scale,
    write_comparisons,
)
from geometry.outlines.shapes import box
from shared.drawing import Area, Drawing, Role
from shared.edits.build_ups import start_job
from shared.errors import FileError
from shared.job import Face, Job, Part, Room, Unit, View
from shared.trade.kinds import Kind
from takeoff.memory import Memory
from takeoff.take_off import take_off
from tests.window import Person

pytestmark = pytest.mark.usefixtures("qapp")

DAY = date(2026, 3, 2)

WALL = Drawing(
    "f1",
    "Kitchen · A",
    View.ELEVATION,
    Unit.MM,
    (0.0, 0.0, 4000.0, 2000.0),
    (Area(Role.REGION, "p", Kind.BENCHTOP, (box(0, 0, 4000, 2000),)),),
)


@pytest.fixture
def job() -> Job:
    door = Part("p", Kind.DOOR, box(0, 0, 450, 720))
    kitchen = Room("r1", "Kitchen", (Face("f1", "A", parts=(door,)), Face("f2", "B")))
    return start_job("Quay", rooms=(kitchen, Room("r2", "Bare")))


def room(*drawings: Drawing) -> Comparison:
    return Comparison("Quay, Kitchen", Unit.MM, tuple(Pair("A", one, (("p", "#204060"),)) for one in drawings))


def test_a_room_is_shown_with_the_faces_that_have_something_on_them(job: Job) -> None:
    memory = Memory()
    (kitchen,) = comparisons(job, take_off(job, memory), memory)
    assert kitchen.title == "Quay, Kitchen"
    assert [pair.name for pair in kitchen.pairs] == ["A"]
    shades = {finish.id: finish.shade for finish in job.finishes}
    assert kitchen.pairs[0].finishes == (("p", shades["fronts"]),)


def test_pairs_go_on_in_the_next_line_where_one_is_full() -> None:
    one = placed(room(WALL), 0.1, 900.0)
    three = placed(room(WALL, WALL, WALL), 0.1, 1700.0)
    assert [corner.x() for corner in three.corners][0::2] == [0.0, 0.0]
    assert three.corners[1].y() == 0.0
    assert three.corners[2].y() > one.height
    assert three.height > 2 * one.height


def test_a_room_goes_on_a_sheet_at_the_largest_scale_that_has_room_for_both() -> None:
    panel = WALL._replace(box=(0.0, 0.0, 1200.0, 900.0))
    assert _on(room(panel)) == ("A4", 10)  # 2 x 120 mm, and 267 mm inside the margins
    assert _on(room(WALL)) == ("A4", 50)  # at 1:20 2 x 200 mm, and 390 mm on A3
    assert _on(room(*[panel] * 4)) == ("A4", 20)


def test_a_picture_has_the_kinds_colour_and_as_much_of_the_finish_colour(tmp_path: Path) -> None:
    path = tmp_path / "both.png"
    write_comparisons([room(WALL)], path, DAY)
    image = QImage(str(path))
    seen = Counter(
        image.pixelColor(x, y).name().upper() for x in range(0, image.width(), 4) for y in range(0, image.height(), 4)
    )
    before, after = seen[light().kinds[Kind.BENCHTOP].fill], seen["#204060"]
    assert min(before, after) > 1000
    assert before == pytest.approx(after, rel=0.1)


def test_a_pdf_has_a_sheet_for_each_room(tmp_path: Path) -> None:
    path = tmp_path / "both.pdf"
    write_comparisons([room(WALL), room(WALL)], path, DAY)
    assert path.read_bytes().count(b"/MediaBox") == 2


def test_another_ending_and_an_empty_job_are_refused_in_words(tmp_path: Path) -> None:
    with pytest.raises(FileError, match=r"both\.svg: Recoat cannot write a picture with this ending; choose"):
        write_comparisons([room(WALL)], tmp_path / "both.svg", DAY)
    with pytest.raises(FileError, match="no face to draw"):
        write_comparisons([], tmp_path / "both.pdf", DAY)
    assert list(tmp_path.iterdir()) == []


def test_the_menu_writes_the_example(person: Person, tmp_path: Path) -> None:
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    person.app.menus.action("&Before and after...").trigger()
    person.fill_file_dialog(tmp_path / "both.pdf")
    person.wait_until(person.app.window.notice.isVisible)
    assert (tmp_path / "both.pdf").read_bytes().startswith(b"%PDF")


def _on(both: Comparison) -> tuple[str, int]:
    sheet, scale = sheet_and_scale(both)
    return sheet.name, scale
