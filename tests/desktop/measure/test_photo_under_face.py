"""The photo under the face, through the window: brought in, squared, checked, made paler, undone, saved, opened."""

from functools import cache
from pathlib import Path

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QCheckBox

from desktop.count.page import COUNT
from desktop.measure.photo_form import GUIDE, NOT_SQUARED, UNCHECKED
from desktop.state.shown import Overlay
from shared.files.job import JobFile, Photo, read_job_file, write_job_file
from shared.job import Face, PhotoPlace
from tests.desktop.photographed import aslant, saved, written
from tests.window import Person

CORNERS = ((200.0, 1000.0), (1450.0, 1100.0), (1300.0, 150.0), (350.0, 250.0))
"""Of the wall, 3600 x 2400, on the photo."""

TYPED = "200, 1000, 1450, 1100, 1300, 150, 350, 250"


@pytest.fixture
def wall(person: Person) -> Person:
    """A wall of 3600 x 2400."""
    person.begin_wall("3600", "2400")
    return person


@cache
def photo() -> bytes:
    """The wall, taken aslant."""
    return written(aslant(CORNERS))


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return saved(tmp_path, photo(), "wall.jpg")


@pytest.fixture
def brought(wall: Person, path: Path) -> Person:
    """The photo is chosen and lies over the wall, to be squared."""
    _choose(wall, "&Add photo...")
    wall.fill_file_dialog(path)
    wall.wait_until(lambda: _asks(wall, "its lower left corner"))
    return wall


@pytest.fixture
def squared(brought: Person) -> Person:
    """The wall's own corners are marked."""
    brought.read(TYPED, "3600, 2400")
    brought.press(Qt.Key.Key_Return)
    brought.wait_until(lambda: brought.app.face_photos.layer(brought.shown) is not None)
    return brought


def _choose(person: Person, words: str) -> None:
    person.app.menus.action(words).trigger()


def _asks(person: Person, words: str) -> bool:
    return words in person.app.measure.line.wants.text()


def _face(person: Person) -> Face:
    (face,) = person.shown.job.faces
    return face


def _place(person: Person) -> PhotoPlace:
    place = _face(person).photo_place
    assert place is not None
    return place


def _colour(person: Person, x: float, y: float) -> tuple[int, int, int]:
    """What the canvas shows at a point of the face."""
    canvas = person.app.measure.canvas
    dot = canvas.grab().toImage().pixelColor(canvas.glass.to_device.map(QPointF(x, y)).toPoint())
    return dot.red(), dot.green(), dot.blue()


def test_a_photo_brought_in_is_one_step_and_is_to_be_squared(brought: Person) -> None:
    assert _face(brought).photo == "wall.jpg"
    assert brought.shown.history.undo_label == "Photo under the face"
    assert brought.app.measure.details.photo.words.text() == NOT_SQUARED


def test_a_photo_that_nothing_checks_asks_to_be_checked(squared: Person) -> None:
    assert UNCHECKED in squared.app.measure.details.photo.words.text()


def test_the_photo_lies_over_the_face_while_it_is_marked(brought: Person) -> None:
    red, green, blue = _colour(brought, 1000, 1000)
    assert blue > 200
    assert max(red, green) < 60


def test_squared_it_lies_under_the_wall_where_the_wall_is(squared: Person) -> None:
    cupboard, plain = _colour(squared, 900, 600), _colour(squared, 900, 1800)
    assert cupboard[2] - cupboard[0] > 60
    assert abs(plain[2] - plain[0]) < 20


def test_the_four_corners_may_be_clicked(brought: Person) -> None:
    gesture_box = 3200.0, 2400.0  # 4 : 3 in the middle of 3600 x 2400
    for u, v in CORNERS:
        brought.click_at(200.0 + u / 1600 * gesture_box[0], 2400.0 - v / 1200 * gesture_box[1])
    brought.read("3600, 2400, 0, 0")
    for mark, (u, v) in zip(_place(brought).marks, CORNERS, strict=True):
        assert (mark.u, mark.v) == pytest.approx((u, v), abs=3.0)


def test_a_known_length_is_checked_and_told_in_the_details(squared: Person) -> None:
    _choose(squared, "Chec&k a length on the photo")
    squared.read("0, 0, 1800, 0")
    squared.type("1804")
    assert "the photo says 1800, 4 less" in squared.app.measure.line.answer.text()
    squared.press(Qt.Key.Key_Return)
    words = squared.app.measure.details.photo.words.text()
    assert "1804 by the tape: the photo says 1800, 4 less." in words
    assert words.endswith(GUIDE)


def test_the_photo_is_made_paler_by_keys_in_one_step_each(squared: Person) -> None:
    squared.app.measure.details.photo.opacity.setFocus()
    squared.press(Qt.Key.Key_Left)
    assert _place(squared).opacity == pytest.approx(0.45)
    squared.app.store.undo()
    assert _place(squared).opacity == pytest.approx(0.5)
    assert squared.app.measure.details.photo.opacity.value() == 50


def test_the_photo_is_switched_off_and_on(squared: Person) -> None:
    with_photo = _colour(squared, 900, 600)
    squared.app.store.turn_overlay(Overlay.PHOTO)
    assert _colour(squared, 900, 600) != with_photo
    squared.app.store.turn_overlay(Overlay.PHOTO)
    assert _colour(squared, 900, 600) == with_photo


def test_count_offers_the_photo_only_where_there_is_one(squared: Person) -> None:
    box = next(box for box in squared.app.count.overlays.findChildren(QCheckBox) if box.text() == "Photo")
    squared.app.store.turn_to(COUNT)
    assert box.isVisible()
    _choose(squared, "&Remove the photo")
    assert not box.isVisible()


def test_undone_and_done_again_the_photo_is_there(squared: Person) -> None:
    squared.app.store.undo()
    squared.app.store.undo()
    assert _face(squared).photo == ""
    squared.app.store.redo()
    squared.app.store.redo()
    assert _place(squared).marks[1].x == 3600.0
    squared.wait_until(lambda: squared.app.face_photos.layer(squared.shown) is not None)


def test_the_file_holds_the_photos_that_faces_name_and_no_others(squared: Person, tmp_path: Path) -> None:
    first, second = tmp_path / "with.recoat", tmp_path / "without.recoat"
    squared.app.files.write_to(first)
    squared.wait_until(lambda: squared.shown.is_saved)
    _choose(squared, "&Remove the photo")
    squared.app.files.write_to(second)
    squared.wait_until(lambda: squared.shown.is_saved)
    assert [photo.name for photo in read_job_file(first).photos] == ["wall.jpg"]
    assert read_job_file(second).photos == ()


def test_an_opened_job_shows_its_photo(squared: Person, tmp_path: Path) -> None:
    path = tmp_path / "kept.recoat"
    squared.app.files.write_to(path)
    squared.wait_until(lambda: squared.shown.is_saved)
    squared.app.store.close_job()
    squared.app.files.open_path(path)
    squared.wait_until(lambda: squared.app.store.shown is not None)
    squared.wait_until(lambda: squared.app.face_photos.layer(squared.shown) is not None)
    assert _colour(squared, 900, 600)[2] - _colour(squared, 900, 600)[0] > 60


def test_what_is_no_photo_is_refused_and_nothing_changes(wall: Person, tmp_path: Path) -> None:
    before = wall.shown.job
    wall.app.photos.bring_path(saved(tmp_path, b"no photo", "note.jpg"))
    wall.wait_until(wall.app.window.notice.isVisible)
    assert "this photo cannot be read" in wall.app.window.notice.text()
    assert wall.shown.job is before
    assert wall.shown.photos == ()


def test_a_job_whose_photo_is_damaged_opens_and_says_so(squared: Person, tmp_path: Path) -> None:
    path = tmp_path / "damaged.recoat"
    write_job_file(path, JobFile(squared.shown.job, (Photo("wall.jpg", b"no photo any more"),)))
    squared.app.store.close_job()
    squared.app.files.open_path(path)
    squared.wait_until(squared.app.window.notice.isVisible)
    assert "photo wall.jpg: this photo cannot be read" in squared.app.window.notice.text()
    assert _place(squared).marks[1].x == 3600.0


def test_dropped_while_it_is_marked_the_photo_stays_to_be_squared_again(brought: Person) -> None:
    brought.read("200, 1000")
    brought.press(Qt.Key.Key_Escape)
    brought.press(Qt.Key.Key_Escape)
    assert not _asks(brought, "corner")
    _choose(brought, "&Straighten the photo")
    brought.wait_until(lambda: _asks(brought, "its lower left corner"))


def test_a_photo_taken_away_while_it_is_read_is_not_squared(squared: Person) -> None:
    ended: list[str] = []
    squared.app.background.busy.connect(ended.append)
    _choose(squared, "&Straighten the photo")
    _choose(squared, "&Remove the photo")
    squared.wait_until(lambda: ended[-1:] == [""])
    assert not _asks(squared, "its lower left corner")


def test_marks_in_a_line_are_refused_on_the_line_and_taken_back(brought: Person) -> None:
    brought.read("0, 1000, 1000, 1000, 1000, 0")
    brought.type("500, 500")
    brought.press(Qt.Key.Key_Return)
    assert "are in a line" in brought.app.measure.line.answer.text()
    assert _asks(brought, "its upper left corner")
