"""Brings in a photo: it is read from a file, turned upright, scaled down, and kept as a plain JPEG.

Only the dots are kept, not what a phone writes beside them (place, time, camera, owner, preview). A file that is no
picture, is cut short or is too large to be unpacked is refused in one sentence.
"""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPointF, QSize, Qt
from PySide6.QtGui import QImage, QImageReader, QImageWriter, QPainter

from shared.errors import FileError
from shared.files.container import LARGEST_ENTRY, is_photo_name
from shared.files.disk import read_bounded
from shared.files.job import Photo

LONG_SIDE_DOTS = 3000
"""The long side of a kept photo: on a wall of 6 m a dot is 2 mm, as near as a hand can mark (own choice)."""

JPEG_QUALITY = 85
JPEG = "jpeg"
FORMATS = frozenset({JPEG, "png", "webp"})

MOST_DOTS = 200_000_000
"""Dots of the largest photo: the finest that phones take (common practice, no source). A JPEG of that size is scaled
down while it is read; other formats are unpacked whole, and the image reader stops at a bound of its own."""

MOST_BYTES = 256 * 2**20
LONGEST_STEM = 80
OTHER_PHOTO = "choose another photo, or save it smaller as JPEG"

_JPEG_START, _JPEG_END, _JPEG_SCAN = b"\xff\xd8", b"\xff\xd9", 0xDA


def read_photo(path: Path, kept: Sequence[Photo] = ()) -> Photo:
    """The photo in a file, as it is kept in the job, under a name that no photo in `kept` has.

    If one of those is the same picture, that one. FileError if the file holds no photo that can be read.
    """
    where = str(path)
    content = read_bounded(path, MOST_BYTES, do=OTHER_PHOTO)
    if not content:
        raise FileError("the file is empty", where=where, do="choose another photo")
    jpeg = _as_jpeg(_upright(content, where))
    if len(jpeg) > LARGEST_ENTRY:
        raise FileError("the photo is too large to keep", where=where, do=OTHER_PHOTO)
    same = next((photo for photo in kept if photo.content == jpeg), None)
    return same or Photo(_free_name(path.stem, {photo.name for photo in kept}), jpeg)


def picture_of(photo: Photo) -> QImage:
    """The picture of a kept photo. FileError if it is damaged, or no longer a photo as Recoat writes it."""
    return _upright(photo.content, f"photo {photo.name}")


def _upright(content: bytes, where: str) -> QImage:
    """The picture turned as its EXIF says, on white, no longer than `LONG_SIDE_DOTS`."""
    buffer = QBuffer()
    buffer.setData(QByteArray(content))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    _require_readable(reader, content, where)
    reader.setAutoTransform(True)
    size = reader.size()
    longest = QSize(LONG_SIDE_DOTS, LONG_SIDE_DOTS)
    if size.width() > LONG_SIDE_DOTS or size.height() > LONG_SIDE_DOTS:
        reader.setScaledSize(size.scaled(longest, Qt.AspectRatioMode.KeepAspectRatio).expandedTo(QSize(1, 1)))
    image = reader.read()
    if image.isNull():
        raise FileError("the photo is damaged or cut short", where=where, do="choose another copy of it")
    return _dots_only(image)


def _require_readable(reader: QImageReader, content: bytes, where: str) -> None:
    name = bytes(reader.format().data()).decode("ascii", "replace")
    size = reader.size() if reader.canRead() else QSize()
    if name not in FORMATS or size.isEmpty():
        raise FileError("this photo cannot be read", where=where, do="choose a JPEG, PNG or WebP")
    dots = size.width() * size.height()
    if dots > MOST_DOTS:
        what = f"the photo has {size.width()} x {size.height()} pixels, more than {MOST_DOTS // 10**6} million"
        raise FileError(what, where=where, do=OTHER_PHOTO)
    most = QImageReader.allocationLimit()
    if name != JPEG and dots * _bits(reader) > most * 2**23:
        raise FileError(f"the photo would take more than {most} MB when unpacked", where=where, do=OTHER_PHOTO)
    if name == JPEG and _is_cut_short(content):
        raise FileError("part of the photo is missing", where=where, do="choose another copy of it")


def _bits(reader: QImageReader) -> int:
    """How many bits one dot takes unpacked; 32 if the reader does not say."""
    return QImage.toPixelFormat(reader.imageFormat()).bitsPerPixel() or 32


def _is_cut_short(jpeg: bytes) -> bool:
    """Whether the end of the picture is missing: the image reader would fill it up with grey and say nothing.

    The segments before the first scan are skipped by their lengths, as a preview in them has an end mark of its own.
    In a scan the end mark means nothing else (ITU-T T.81, from memory).
    """
    place = len(_JPEG_START)
    while place + 4 <= len(jpeg) and jpeg[place] == _JPEG_END[0]:
        if jpeg[place + 1] == _JPEG_SCAN:
            return jpeg.find(_JPEG_END, place) < 0
        place += 2 + int.from_bytes(jpeg[place + 2 : place + 4])
    return True


def _dots_only(image: QImage) -> QImage:
    """The same dots on white, without what else came with them."""
    plain = QImage(image.size(), QImage.Format.Format_RGB32)
    plain.fill(Qt.GlobalColor.white)
    image.setDevicePixelRatio(1.0)
    with QPainter(plain) as painter:
        painter.drawImage(QPointF(0, 0), image)
    return plain


def _as_jpeg(image: QImage) -> bytes:
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(buffer, QByteArray(b"jpeg"))
    writer.setQuality(JPEG_QUALITY)
    writer.write(image)
    return bytes(buffer.data().data())


def _free_name(stem: str, taken: set[str]) -> str:
    """A plain file name made from the file's own, with a number if it is taken."""
    plain = "".join(sign if is_photo_name(f"x{sign}x") else "-" for sign in stem)[:LONGEST_STEM].strip(" .")
    plain = plain or "photo"
    names = (f"{plain}.jpg", *(f"{plain} {number}.jpg" for number in range(2, len(taken) + 3)))
    return next(name for name in names if name not in taken)
