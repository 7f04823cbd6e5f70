"""Photos for tests: what a phone would write, made dot by dot."""

import struct
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPointF, QRectF
from PySide6.QtGui import QColor, QImage, QImageWriter, QPainter, QPolygonF, QTransform

from desktop.canvas.new_photo import JPEG_QUALITY

TURNED_RIGHT = 6
"""EXIF's word for a picture that is upright after a quarter turn to the right."""


def written(image: QImage, form: bytes = b"JPEG") -> bytes:
    """The file that holds this picture."""
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(buffer, QByteArray(form))
    writer.setQuality(JPEG_QUALITY)
    writer.write(image)
    return bytes(buffer.data().data())


def plain(width: int, height: int) -> QImage:
    """A grey picture whose upper left quarter is red."""
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(QColor("grey"))
    with QPainter(image) as painter:
        painter.fillRect(0, 0, width // 2, height // 2, QColor("red"))
    return image


def with_exif(jpeg: bytes, orientation: int, words: bytes = b"") -> bytes:
    """The JPEG with an EXIF segment: its orientation, a word (place, camera), and a preview with an end mark."""
    entry = struct.pack(">HHIHH", 0x0112, 3, 1, orientation, 0)
    tiff = b"MM\x00\x2a" + struct.pack(">IH", 8, 1) + entry + struct.pack(">I", 0) + words + b"\xff\xd8preview\xff\xd9"
    segment = b"Exif\x00\x00" + tiff
    return jpeg[:2] + b"\xff\xe1" + struct.pack(">H", len(segment) + 2) + segment + jpeg[2:]


def aslant(corners: tuple[tuple[float, float], ...], width: int = 1600, height: int = 1200) -> QImage:
    """A photo of a white wall with a blue cupboard in its lower left quarter; the wall's corners are at these dots.

    They are lower left, lower right, upper right and upper left.
    """
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(QColor("darkgrey"))
    square = QPolygonF([QPointF(0, 100), QPointF(100, 100), QPointF(100, 0), QPointF(0, 0)])
    taken = QTransform.quadToQuad(square, QPolygonF([QPointF(*corner) for corner in corners]))
    if not isinstance(taken, QTransform):
        raise TypeError("these corners make no wall")
    with QPainter(image) as painter:
        painter.setTransform(taken)
        painter.fillRect(QRectF(0, 0, 100, 100), QColor("white"))
        painter.fillRect(QRectF(0, 50, 50, 50), QColor("blue"))
    return image


def saved(folder: Path, content: bytes, name: str = "IMG 0042.jpeg") -> Path:
    """The path of a file with this content."""
    path = folder / name
    path.write_bytes(content)
    return path
