from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale, QPointF, QRectF
from PySide6.QtGui import QColor, QImage, QPainter, QTransform

from desktop.look.palette import Look, dark, light
from desktop.painting.drawing import PaintOptions, paint
from desktop.painting.lettering import box_at, fit
from desktop.painting.viewing import fitted
from geometry.outlines.shapes import box, circle
from shared.drawing import Area, Drawing, Line, Role, Size, Text
from shared.job import Unit, Vertex, View
from shared.trade.kinds import Kind
from tests.desktop.drawn import DRAWING

pytestmark = pytest.mark.usefixtures("qapp")

PLAIN = PaintOptions(names=False, tags=False, sizes=False, patterns=False)


def drawing(*areas: Area, view: View = View.ELEVATION) -> Drawing:
    return Drawing("f1", "A", view, Unit.MM, (0.0, 0.0, 100.0, 100.0), areas)


def painted(what: Drawing, options: PaintOptions = PLAIN, look: Look | None = None, ratio: float = 1.0) -> QImage:
    look = look or light()
    image = QImage(round(200 * ratio), round(200 * ratio), QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(ratio)
    image.fill(QColor(look.paper))
    with QPainter(image) as painter:
        paint(what, painter, view_of(what), look, options)
    return image


def view_of(what: Drawing) -> QTransform:
    return fitted(what.box, what.view, QRectF(0, 0, 200, 200))


def colour_at(image: QImage, x_mm: float, y_mm: float, view: View = View.ELEVATION) -> str:
    place = view_of(drawing(view=view)).map(QPointF(x_mm, y_mm)) * image.devicePixelRatio()
    return image.pixelColor(int(place.x()), int(place.y())).name().upper()


def region(part: str, kind: Kind, *rings: tuple[Vertex, ...]) -> Area:
    return Area(Role.REGION, part, kind, rings)


def test_a_region_is_filled_in_its_kinds_tint_and_its_holes_are_not() -> None:
    hole = tuple(reversed(box(40, 40, 20, 20)))
    image = painted(drawing(region("p", Kind.BENCHTOP, box(10, 10, 80, 80), hole)))
    assert colour_at(image, 20, 20) == light().kinds[Kind.BENCHTOP].fill
    assert colour_at(image, 50, 50) == light().paper
    assert colour_at(image, 5, 5) == light().paper


@pytest.mark.parametrize("ratio", [1.0, 1.5, 2.0])
def test_arcs_are_painted_round_at_every_ratio(ratio: float) -> None:
    image = painted(drawing(region("p", Kind.FIXTURE, circle(50, 50, 40))), ratio=ratio)
    fill = light().kinds[Kind.FIXTURE].fill
    near, far = 0.70 * 38, 0.71 * 42  # on the diagonals, just inside and just outside
    for across in (-1, 1):
        for up in (-1, 1):
            assert colour_at(image, 50 + across * near, 50 + up * near) == fill
            assert colour_at(image, 50 + across * far, 50 + up * far) == light().paper


def test_an_elevation_has_y_up_and_a_plan_has_its_wall_at_the_top() -> None:
    low = region("p", Kind.BENCHTOP, box(0, 0, 100, 20))
    fill = light().kinds[Kind.BENCHTOP].fill
    assert painted(drawing(low)).pixelColor(100, 180).name().upper() == fill
    assert painted(drawing(low, view=View.PLAN)).pixelColor(100, 20).name().upper() == fill


def test_an_opening_is_painted_over_what_it_is_cut_into() -> None:
    wall = region("w", Kind.WALL, box(0, 0, 100, 100))
    window = Area(Role.OUTLINE, "o", Kind.WINDOW, (box(40, 40, 20, 20),))
    assert colour_at(painted(drawing(wall, window)), 50, 50) == light().kinds[Kind.WINDOW].fill


def test_what_is_behind_a_part_that_does_not_hide_shines_through() -> None:
    wall = region("w", Kind.SPLASHBACK, box(0, 0, 100, 100))
    fridge = Area(Role.OUTLINE, "f", Kind.FIXTURE, (box(20, 20, 60, 60),), in_front=False)
    seen = colour_at(painted(drawing(wall, fridge)), 50, 50)
    assert seen not in {light().kinds[Kind.SPLASHBACK].fill, light().kinds[Kind.FIXTURE].fill}


def test_lit_parts_are_lit() -> None:
    benchtop = region("p", Kind.BENCHTOP, box(10, 10, 80, 80))
    image = painted(drawing(benchtop), PLAIN._replace(lit=frozenset({"p"})))
    assert colour_at(image, 50, 50) == light().lit


@pytest.mark.parametrize(
    ("role", "wanted", "colour"),
    [
        (Role.JOINT, PLAIN._replace(joints=True), light().joint),
        (Role.MASKING, PLAIN._replace(masking=True), light().masking),
    ],
)
def test_joints_and_masking_are_painted_when_they_are_wanted(role: Role, wanted: PaintOptions, colour: str) -> None:
    line = Line(role, (Vertex(0, 50), Vertex(100, 50)), ("p", "q"))
    what = drawing()._replace(lines=(line,))

    def colours(image: QImage) -> set[str]:
        return {image.pixelColor(x, y).name().upper() for x in range(200) for y in range(96, 104)}

    assert colour in colours(painted(what, wanted))
    assert colours(painted(what)) == {light().paper}


def test_a_tiled_part_shows_its_tiles_instead_of_the_pattern_of_its_kind() -> None:
    splashback = drawing(region("p", Kind.SPLASHBACK, box(0, 0, 100, 100)))
    line = Line(Role.GROUT, (Vertex(0, 50), Vertex(100, 50)), ("p",))
    with_patterns = PLAIN._replace(patterns=True)
    tiled = painted(splashback._replace(lines=(line,)), with_patterns)
    plain, patterned = painted(splashback), painted(splashback, with_patterns)
    changed = {y for y in range(200) if tiled.pixelColor(50, y) != plain.pixelColor(50, y)}
    assert changed
    assert changed <= {99, 100, 101}
    assert tiled != patterned
    assert painted(splashback._replace(lines=(line,))) == plain  # in the strip, where patterns are left out


def test_a_lit_line_shines_where_its_role_is_not_shown() -> None:
    lit = ((Vertex(20, 50), Vertex(80, 50)),)
    assert colour_at(painted(drawing(), PLAIN._replace(lit_lines=lit)), 50, 50) == light().accent


def test_names_tags_and_sizes_are_left_out_where_they_are_not_wanted() -> None:
    what = drawing()._replace(
        texts=(Text(Role.NAME, 50, 70, "basin", 60, 20), Text(Role.TAG, 50, 30, "A1", 60, 20)),
        sizes=(Size((10, 10), (90, 10), -5),),
    )
    blank = painted(what)
    assert blank == painted(drawing())
    for wanted in (PLAIN._replace(names=True), PLAIN._replace(tags=True), PLAIN._replace(sizes=True)):
        assert painted(what, wanted) != blank


def test_a_size_has_the_decimal_sign_of_the_persons_system() -> None:
    def with_size(length_mm: float) -> QImage:
        size = Size((10, 10), (10 + length_mm, 10), -5)
        return painted(drawing()._replace(sizes=(size,)), PLAIN._replace(sizes=True))

    usual = QLocale()
    whole, half = with_size(80), with_size(80.5)
    QLocale.setDefault(QLocale("de_DE"))
    try:
        assert with_size(80) == whole
        assert with_size(80.5) != half
    finally:
        QLocale.setDefault(usual)


def test_a_drawing_with_nothing_on_it_paints_nothing() -> None:
    empty = Drawing("f1", "A", View.ELEVATION, Unit.MM, (0.0, 0.0, 0.0, 0.0))
    assert painted(empty, PaintOptions()) == painted(drawing())


def test_dark_is_another_picture_of_the_same_drawing() -> None:
    assert painted(DRAWING, look=dark()).size() == painted(DRAWING).size()
    assert painted(DRAWING, look=dark()) != painted(DRAWING)


@pytest.fixture
def painter() -> Iterator[QPainter]:
    image = QImage(10, 10, QImage.Format.Format_RGB32)
    with QPainter(image) as painter:
        yield painter


def test_words_that_do_not_fit_are_shrunk_then_shortened_then_left_out(painter: QPainter) -> None:
    whole = fit("splashback", painter.font(), 500, 50)
    assert whole is not None
    shrunk = fit("splashback", painter.font(), whole.width * 0.8, 50)
    assert shrunk is not None
    assert (shrunk.text, shrunk.width <= whole.width * 0.8) == ("splashback", True)
    short = fit("splashback", painter.font(), whole.width * 0.45, 50)
    assert short is not None
    assert short.text.startswith("spl")
    assert short.text.endswith("\N{HORIZONTAL ELLIPSIS}")
    assert fit("splashback", painter.font(), 8, 50) is None
    assert fit("splashback", painter.font(), 500, 4) is None
    assert fit("", painter.font(), 500, 50) is None


@pytest.mark.parametrize("width", [20, 33, 47, 80, 200])
@pytest.mark.parametrize("height", [9, 12, 30])
def test_words_never_leave_their_box(painter: QPainter, width: float, height: float) -> None:
    words = fit("drawer under the oven", painter.font(), width, height)
    if words is not None:
        assert QRectF(-0.5, -0.5, width + 1, height + 1).contains(box_at(words, QPointF(width / 2, height / 2)))


def test_in_finish_colours_a_part_has_that_of_its_finish_and_what_is_left_is_quiet() -> None:
    both = drawing(
        region("p", Kind.DOOR, box(10, 10, 30, 80)),
        region("q", Kind.DOOR, box(60, 10, 30, 80)),
        region("r", Kind.DOOR, box(45, 10, 10, 80)),
    )
    image = painted(both, PLAIN._replace(finishes=(("p", "#204060"), ("r", ""))))
    assert colour_at(image, 20, 50) == "#204060"
    assert colour_at(image, 75, 50) == light().uncoated
    assert colour_at(image, 50, 50) == light().kinds[Kind.DOOR].fill  # its finish has no colour yet


def test_what_is_lit_keeps_the_colour_of_its_finish() -> None:
    one = drawing(region("p", Kind.DOOR, box(10, 10, 80, 80)))
    lit = PLAIN._replace(lit=frozenset({"p"}))
    assert colour_at(painted(one, lit), 50, 50) == light().lit
    framed = painted(one, lit._replace(finishes=(("p", "#204060"),)))
    assert colour_at(framed, 50, 50) == "#204060"
    assert colour_at(framed, 10, 50) == light().accent


@pytest.mark.parametrize("look", [light(), dark()])
def test_a_name_is_read_on_the_colour_of_its_finish(look: Look) -> None:
    text = Text(Role.NAME, 50, 50, "MMMM", 80, 40, "p")
    one = drawing(region("p", Kind.DOOR, box(10, 10, 80, 80)))._replace(texts=(text,))
    for shade, ink in (("#101418", "#FFFFFF"), ("#F4F0E8", "#000000")):
        image = painted(one, PaintOptions(patterns=False, finishes=(("p", shade),)), look)
        seen = {image.pixelColor(x, y).name().upper() for x in range(60, 140) for y in range(80, 120)}
        assert {shade, ink} <= seen
