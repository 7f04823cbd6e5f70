"""Bringing in photos: upright, scaled down, without what a phone writes beside them; refused in one sentence."""

import struct
import zlib
from pathlib import Path

import pytest
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from desktop.canvas.new_photo import LONG_SIDE_DOTS, picture_of, read_photo
from shared.errors import FileError
from shared.files.job import Photo
from tests.desktop.photographed import TURNED_RIGHT, plain, saved, with_exif, written

RED, GREY = (254, 0, 0), (128, 128, 128)


@pytest.fixture(autouse=True)
def pictures_can_be_read(qtbot: QtBot) -> None:
    """The image reader's plug-ins stand ready."""


@pytest.fixture
def jpeg() -> bytes:
    return written(plain(800, 600))


def colours(photo: Photo) -> tuple[tuple[int, int, int], tuple[int, int, int]]:
    """The upper left and the upper right colour."""
    picture = picture_of(photo)
    left, right = picture.pixelColor(4, 4), picture.pixelColor(picture.width() - 5, 4)
    return (left.red(), left.green(), left.blue()), (right.red(), right.green(), right.blue())


def png_of(width: int, height: int) -> bytes:
    """A PNG whose head says that it is so large."""
    head = b"IHDR" + struct.pack(">II", width, height) + b"\x08\x02\x00\x00\x00"
    content = written(plain(8, 8), b"PNG")
    return content[:12] + head + struct.pack(">I", zlib.crc32(head)) + content[33:]


def test_a_photo_is_turned_as_its_exif_says(tmp_path: Path, jpeg: bytes) -> None:
    photo = read_photo(saved(tmp_path, with_exif(jpeg, TURNED_RIGHT)))
    assert picture_of(photo).size().toTuple() == (600, 800)
    assert colours(photo) == (GREY, RED)


def test_neither_place_nor_camera_is_kept(tmp_path: Path, jpeg: bytes) -> None:
    content = read_photo(saved(tmp_path, with_exif(jpeg, 1, b"taken at home with camera 7"))).content
    assert b"camera 7" not in content
    assert b"Exif" not in content


def test_a_large_photo_is_scaled_down(tmp_path: Path) -> None:
    photo = read_photo(saved(tmp_path, written(plain(6000, 4000))))
    assert picture_of(photo).size().toTuple() == (LONG_SIDE_DOTS, 2000)


@pytest.mark.parametrize("form", [b"PNG", b"WEBP"])
def test_other_pictures_become_a_jpeg(tmp_path: Path, form: bytes) -> None:
    photo = read_photo(saved(tmp_path, written(plain(800, 600), form), "wall.picture"))
    assert photo.name == "wall.jpg"
    assert photo.content.startswith(b"\xff\xd8\xff")


@pytest.mark.parametrize(
    ("name", "expected"), [("IMG 0042.jpeg", "IMG 0042.jpg"), (".wall", "wall.jpg"), ("a:b?.png", "a-b-.jpg")]
)
def test_a_photo_keeps_the_name_of_its_file(tmp_path: Path, jpeg: bytes, name: str, expected: str) -> None:
    assert read_photo(saved(tmp_path, jpeg, name)).name == expected


def test_another_photo_of_the_same_name_is_numbered(tmp_path: Path, jpeg: bytes) -> None:
    kept = (Photo("IMG 0042.jpg", b"one"), Photo("IMG 0042 2.jpg", b"two"))
    assert read_photo(saved(tmp_path, jpeg), kept).name == "IMG 0042 3.jpg"


def test_the_same_photo_again_is_the_one_that_is_kept(tmp_path: Path, jpeg: bytes) -> None:
    first = read_photo(saved(tmp_path, jpeg))
    assert read_photo(saved(tmp_path, jpeg, "copy.jpg"), (first,)) is first


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "the file is empty"),
        (b"no picture at all", "this photo cannot be read"),
        (b"<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>", "this photo cannot be read"),
        (png_of(9000, 9000), "the photo would take more than 256 MB when unpacked"),
        (png_of(60000, 60000), "the photo has 60000 x 60000 pixels, more than 200 million"),
    ],
)
def test_what_is_no_photo_is_refused_in_one_sentence(tmp_path: Path, content: bytes, words: str) -> None:
    with pytest.raises(FileError, match=words) as refused:
        read_photo(saved(tmp_path, content))
    assert str(refused.value).count("\n") == 0


@pytest.mark.parametrize("share", [0.1, 0.5, 0.99])
def test_a_photo_cut_short_is_refused_though_its_preview_is_whole(tmp_path: Path, jpeg: bytes, share: float) -> None:
    whole = with_exif(jpeg, 1)
    with pytest.raises(FileError, match=r"short|no photo"):
        read_photo(saved(tmp_path, whole[: int(len(whole) * share)]))


def test_a_photo_that_is_not_there_or_a_folder_is_refused(tmp_path: Path) -> None:
    for path in (tmp_path / "nothing.jpg", tmp_path):
        with pytest.raises(FileError):
            read_photo(path)


def test_a_jpeg_of_a_hundred_megapixels_is_scaled_while_it_is_read(tmp_path: Path) -> None:
    image = QImage(10_000, 10_000, QImage.Format.Format_Grayscale8)
    image.fill(200)
    photo = read_photo(saved(tmp_path, written(image)))
    assert picture_of(photo).size().toTuple() == (LONG_SIDE_DOTS, LONG_SIDE_DOTS)
