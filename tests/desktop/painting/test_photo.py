"""A photo squared and painted under a face: every colour where the wall has it, on elevations and plans."""

import pytest
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage, QPainter

from desktop.canvas.backing import Backing, Sight
from desktop.look.palette import light
from desktop.painting.drawing import PaintOptions
from desktop.painting.photo import PhotoLayer, fitted_layer, paint_layer, squared_layer
from desktop.painting.viewing import fitted
from geometry.photos.marks import rectangle_marks
from geometry.photos.squaring import FourPoints
from shared.drawing import Drawing
from shared.errors import JobError
from shared.job import Unit, View
from tests.desktop.drawn import DRAWING
from tests.desktop.photographed import aslant, plain

pytestmark = pytest.mark.usefixtures("qapp")

CORNERS: FourPoints = ((200.0, 1000.0), (1450.0, 1100.0), (1300.0, 150.0), (350.0, 250.0))
WALL = (0.0, 0.0, 3600.0, 2400.0)
BARE = Drawing("f1", "A", View.ELEVATION, Unit.MM, WALL)


def painted(layer: PhotoLayer) -> QImage:
    """A wall of 360 x 240 dots, a dot for 10 mm."""
    image = QImage(360, 240, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.green)
    with QPainter(image) as painter:
        paint_layer(layer, painter, fitted(WALL, layer.view, QRectF(0, 0, 360, 240)))
    return image


def colour(image: QImage, x_mm: float, height_mm: float) -> str:
    dot = image.pixelColor(round(x_mm / 10), round(239 - height_mm / 10))
    return {"#ffffff": "white", "#0000ff": "blue"}.get(dot.name(), dot.name())


@pytest.mark.parametrize("view", list(View))
def test_a_squared_photo_shows_everything_where_the_wall_has_it(view: View) -> None:
    marks = rectangle_marks(CORNERS, 3600.0, 2400.0, (0.0, 0.0), view)
    image = painted(squared_layer(aslant(CORNERS), marks, view))
    assert [colour(image, x, y) for x, y in ((900, 600), (40, 40), (1740, 1140))] == ["blue"] * 3
    assert [colour(image, x, y) for x, y in ((900, 1260), (1860, 600), (3540, 2340), (3540, 60))] == ["white"] * 4


def test_a_squared_photo_is_no_larger_than_the_photo_kept() -> None:
    marks = rectangle_marks(CORNERS, 90_000.0, 60_000.0, (0.0, 0.0))
    layer = squared_layer(aslant(CORNERS), marks, View.ELEVATION)
    assert max(layer.image.width(), layer.image.height()) <= 3000


def test_marks_beside_the_photo_are_refused_in_words() -> None:
    beside: FourPoints = ((200.0, 9000.0), (1450.0, 9000.0), (800.0, 8000.0), (700.0, 8000.0))
    marks = rectangle_marks(beside, 3600.0, 2400.0, (0.0, 0.0))
    with pytest.raises(JobError, match="outside the photo"):
        squared_layer(plain(1600, 1200), marks, View.ELEVATION)


@pytest.mark.parametrize("view", list(View))
def test_a_photo_not_yet_squared_lies_whole_in_the_middle_of_the_face(view: View) -> None:
    layer = fitted_layer(plain(1200, 1200), WALL, view)
    assert layer.box == pytest.approx((600.0, 0.0, 3000.0, 2400.0))


@pytest.mark.parametrize(("view", "upper_left"), [(View.ELEVATION, (600.0, 2400.0)), (View.PLAN, (600.0, 0.0))])
def test_its_first_dot_is_where_the_eye_sees_upper_left(view: View, upper_left: tuple[float, float]) -> None:
    layer = fitted_layer(plain(1200, 1200), WALL, view)
    assert layer.place(0.0, 0.0) == pytest.approx(upper_left)
    assert layer.dot(*layer.place(300.0, 200.0)) == pytest.approx((300.0, 200.0))


def backed(drawing: Drawing, photo: PhotoLayer | None, density: float = 1.0) -> QImage:
    """What a canvas of 360 x 240 dots has behind the hand."""
    view = fitted(WALL, View.ELEVATION, QRectF(0, 0, 360, 240))
    options = PaintOptions(names=False, tags=False, patterns=False, density=density)
    sight = Sight(QSize(360, 240), 1.0, view, light(), options, QGuiApplication.font(), photo)
    return Backing().picture(drawing, sight).toImage()


def test_the_photo_lies_on_the_paper_as_dense_as_it_is_said_to_be() -> None:
    red = QImage(36, 24, QImage.Format.Format_RGB32)
    red.fill(QColor(255, 0, 0))
    dot = backed(BARE, PhotoLayer(red, WALL, View.ELEVATION, 0.5)).pixelColor(180, 120)
    paper = QColor(light().paper)
    assert (dot.red(), dot.green()) == pytest.approx(((255 + paper.red()) / 2, paper.green() / 2), abs=2)


def test_parts_let_the_photo_be_seen_through_them() -> None:
    black, white = (QImage(36, 24, QImage.Format.Format_RGB32) for _ in range(2))
    black.fill(Qt.GlobalColor.black)
    white.fill(Qt.GlobalColor.white)
    over_black, over_white = (
        backed(DRAWING, PhotoLayer(image, WALL, View.ELEVATION), 0.3).pixelColor(180, 30) for image in (black, white)
    )
    assert over_white.lightness() - over_black.lightness() == pytest.approx(0.7 * 255, abs=3)
    assert backed(DRAWING, PhotoLayer(black, WALL, View.ELEVATION)).pixelColor(180, 30) == backed(
        DRAWING, None
    ).pixelColor(180, 30)
