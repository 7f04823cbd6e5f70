"""How long the window waits at most while a photo of 12 megapixels is read and straightened in the background."""

from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtGui import QColor, QImage, QLinearGradient, QPainter

from benchmarks.measuring import Measured
from benchmarks.screen import screen
from desktop.canvas.new_photo import picture_of, read_photo
from desktop.painting.photo import squared_layer
from desktop.state.background import Background
from shared.errors import RecoatError
from shared.job import PhotoMark, View

WIDE, HIGH = 4000, 3000
MOST_WAIT_MS = 50.0
MARKS = (
    PhotoMark(300, 2100, 0, 0),
    PhotoMark(2800, 2150, 2400, 0),
    PhotoMark(2600, 250, 2400, 2400),
    PhotoMark(400, 300, 0, 2400),
)
"""Marks on the photo as it is kept, 3000 dots wide."""


def measured() -> Iterator[Measured]:
    """The longest that the window's thread stands still, and how long the work takes, in milliseconds."""
    screen()
    with TemporaryDirectory() as folder:
        path = Path(folder) / "photo.jpg"
        _photo().save(str(path), quality=90)
        photo = read_photo(path)
        picture = picture_of(photo)
        for what, work in (
            ("reading a photo of 12 megapixels", lambda: read_photo(path)),
            ("unpacking it", lambda: picture_of(photo)),
            ("squaring it", lambda: squared_layer(picture, MARKS, View.ELEVATION)),
        ):
            taken, longest = _watched(work)
            yield Measured(what, taken, "{:.0f} ms")
            yield Measured(f"{what}: longest wait of the window", longest, "{:.0f} ms", MOST_WAIT_MS)


def _photo() -> QImage:
    image = QImage(WIDE, HIGH, QImage.Format.Format_RGB32)
    shades = QLinearGradient(0, 0, WIDE, HIGH)
    for place in range(11):
        shades.setColorAt(place / 10, QColor.fromHsv(33 * place, 120, 200))
    with QPainter(image) as painter:
        painter.fillRect(image.rect(), shades)
    return image


def _watched(work: Callable[[], object]) -> tuple[float, float]:
    """How long work in the background takes, and the longest time between two ticks of the window's thread, in ms."""
    loop, timer, background = QEventLoop(), QTimer(), Background()
    ticks = [perf_counter()]
    timer.timeout.connect(lambda: ticks.append(perf_counter()))
    timer.start(1)
    begun = perf_counter()

    def failed(error: RecoatError) -> None:
        raise error

    background.start("", work, lambda _: loop.quit(), failed)
    loop.exec()
    taken = perf_counter() - begun
    timer.stop()
    background.join()
    ticks.append(perf_counter())
    return 1000 * taken, 1000 * max(after - before for before, after in pairwise(ticks))
