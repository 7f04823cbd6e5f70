"""The one routine that paints a drawing onto any painter: screen, strip, print, PDF, SVG, PNG.

The painter's units are 1/96 inch (a screen's pixels at usual size). Lettering is in the painter's font. What is painted
comes from the drawing, which `takeoff.drawing` puts together. The options only say how much of it to paint, and which
parts are picked or lit up.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPainterPath, QPen, QRegion, QTransform

from desktop.look.palette import KindLook, Look, mixed, text_on
from desktop.painting.lettering import box_at, draw_centred, fit
from desktop.painting.paths import line_shape, rings_shape, ruling
from desktop.painting.sizes import paint_size, size_box
from desktop.painting.tiles import Grout, grout_of, paint_grout
from shared.drawing import Area, Drawing, Line, Role, Size, Text
from shared.job import Vertex
from shared.trade.kinds import Kind, usual

OUTLINE_PX = 1.2
PATTERN_PX = 0.6
PICKED_PX = 2.2
LIT_PX = 7.0
HANDLE_PX = 7.0

REACH_PX = 8.0
"""How far paint reaches beyond the path that it follows: more than half the widest line and half a handle."""

OVERLAY_SHARE = 0.25
"""The share of its colour (0 to 1) that a part has if it does not hide what is behind it."""

OVERLAY_DASHES = (6.0, 4.0)

PATTERN_SHARE, OUTLINE_SHARE = 0.3, 0.6
"""The share of black or white mixed into a finish's colour, for a pattern's lines and for outlines (own choice)."""

PLATE_PX = 2.0
"""How far the plate under a name stands out to the left and right of the name."""


class Stroke(NamedTuple):
    """How lines of a role are drawn: their colour, width in 1/96 inch, and dashes in widths."""

    colour: str
    width: float
    dashes: tuple[float, ...] = ()


def strokes(look: Look) -> dict[Role, Stroke]:
    """How lines of each role are drawn, in the order of drawing: dashes of tape lie over beads and let them be seen."""
    return {
        Role.FLOOR: Stroke(look.ink, 2.0),
        Role.SET_OUT: Stroke(look.set_out, 1.0, (8.0, 3.0, 2.0, 3.0)),
        Role.JOINT: Stroke(look.joint, 3.0),
        Role.MASKING: Stroke(look.masking, 2.2, (3.0, 2.0)),
    }


class PaintOptions(NamedTuple):
    """How much of a drawing to paint. `picked` and `lit` are ids of parts.

    Lines are `weight` times their usual width. Fills and patterns have the share `density` of their colour: below 1
    what lies under the face shows through, but not through lit parts. `lit_lines` are paths on the face that shine,
    whether or not lines of their role are shown. `finishes` pair a part's id with the colour of its finish ("" for
    none); if they are given, parts are shown in these colours and not as their kinds.
    """

    names: bool = True
    tags: bool = True
    sizes: bool = True
    joints: bool = False
    masking: bool = False
    set_out: bool = False
    patterns: bool = True
    weight: float = 1.0
    density: float = 1.0
    picked: frozenset[str] = frozenset()
    lit: frozenset[str] = frozenset()
    lit_lines: tuple[tuple[Vertex, ...], ...] = ()
    finishes: tuple[tuple[str, str], ...] | None = None

    @staticmethod
    def small() -> "PaintOptions":
        """For a face in the strip: colours and fine outlines only."""
        return PaintOptions(names=False, tags=False, sizes=False, patterns=False, weight=0.5)

    @property
    def roles(self) -> frozenset[Role]:
        """The roles of the items to paint."""
        asked = {
            Role.NAME: self.names,
            Role.TAG: self.tags,
            Role.SIZE: self.sizes,
            Role.JOINT: self.joints,
            Role.MASKING: self.masking,
            Role.SET_OUT: self.set_out,
        }
        return frozenset(role for role in Role if asked.get(role, True))


class _Easel(NamedTuple):
    """What painting one drawing needs.

    `seen` is the painter's clip in the painter's units, and `near` a box round it on the face; both are None without a
    clip. `grout` are the lines of tiled parts. `coats` are the colours of finishes by part id; None if parts are shown
    as their kinds.
    """

    painter: QPainter
    view: QTransform
    look: Look
    options: PaintOptions
    seen: QRegion | None
    near: QRectF | None
    grout: Grout
    coats: dict[str, str] | None

    def outline(self, part: str) -> QPen:
        """The pen for the line round a part."""
        shade = self.coats.get(part) if self.coats else None
        colour = mixed(shade, text_on(shade), OUTLINE_SHARE) if shade else self.look.outline
        return QPen(QColor(colour), OUTLINE_PX * self.options.weight)

    def look_of(self, part: str, kind: Kind) -> KindLook:
        """How a part is filled: as its kind, or in the colour of its finish."""
        how = self.look.kinds[kind]
        if self.coats is None:
            return how._replace(fill=self.look.lit) if part in self.options.lit else how
        shade = self.coats.get(part, self.look.uncoated)
        return how._replace(fill=shade, pattern=mixed(shade, text_on(shade), PATTERN_SHARE)) if shade else how

    def meets(self, box: QRectF) -> bool:
        """Whether paint along a path in this box, on the face, can be seen. Without a clip all can."""
        if self.seen is None or self.near is None:
            return True
        return self.near.intersects(box) and self.seen.intersects(grown(self.view.mapRect(box)).toAlignedRect())


def paint(drawing: Drawing, painter: QPainter, to_device: QTransform, look: Look, options: PaintOptions) -> None:
    """Paint the whole drawing. `to_device` leads from its millimetres to the painter's units.

    The caller paints the ground. For a drawing with nothing on it nothing is painted.
    """
    paint_face(drawing, painter, to_device, look, options)
    paint_picked(drawing, painter, to_device, look, options.picked)


def paint_face(drawing: Drawing, painter: QPainter, to_device: QTransform, look: Look, options: PaintOptions) -> None:
    """Paint the drawing without the marks of picked parts. If the painter has a clip, only what meets it is painted."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    font = QFont(painter.font())
    easel = _easel(painter, to_device, look, options, grout_of(drawing.lines))
    shapes = ((area, rings_shape(area.rings)) for area in drawing.areas)
    areas = [(area, to_device.map(shape.path)) for area, shape in shapes if easel.meets(shape.box)]
    _paint_regions(areas, easel)
    for area, path in areas:
        _paint_outline(area, path, easel)
    _paint_lines(drawing.lines, easel)
    _paint_texts(drawing, easel, font)
    if options.sizes:
        for size in drawing.sizes:
            if easel.seen is None or easel.seen.intersects(size_box(size, to_device).toAlignedRect()):
                paint_size(size, drawing.unit, painter, to_device, look, font)
    painter.setFont(font)


def paint_picked(
    drawing: Drawing,
    painter: QPainter,
    to_device: QTransform,
    look: Look,
    picked: frozenset[str],
    *,
    handles: bool = True,
) -> None:
    """A frame round each picked part's whole outline; one picked alone has `handles` to pull it by."""
    if not picked:
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    accent = QColor(look.accent)
    for area in drawing.areas:
        if area.role is Role.OUTLINE and area.part in picked:
            path = to_device.map(rings_shape(area.rings).path)
            painter.strokePath(path, QPen(accent, PICKED_PX))
            if handles and len(picked) == 1:
                paint_handles(path.boundingRect(), painter, look)


def paint_handles(box: QRectF, painter: QPainter, look: Look) -> None:
    """A small square on each corner of a box."""
    painter.setPen(QPen(QColor(look.accent), OUTLINE_PX))
    painter.setBrush(QColor(look.field))
    for corner in (box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight()):
        painter.drawRect(QRectF(corner.x() - HANDLE_PX / 2, corner.y() - HANDLE_PX / 2, HANDLE_PX, HANDLE_PX))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def touched_box(item: Area | Line | Text | Size, to_device: QTransform) -> QRectF:
    """The box of all that painting one item may touch, in the painter's units."""
    if isinstance(item, Text):
        box = to_device.mapRect(_text_box(item))
    elif isinstance(item, Size):
        box = size_box(item, to_device)
    elif isinstance(item, Line):
        box = to_device.map(line_shape(item.path).path).controlPointRect()
    else:
        box = to_device.map(rings_shape(item.rings).path).controlPointRect()
    return grown(box)


def grown(box: QRectF) -> QRectF:
    """A path's box, grown by as far as paint along the path reaches."""
    return box.adjusted(-REACH_PX, -REACH_PX, REACH_PX, REACH_PX)


def _easel(painter: QPainter, view: QTransform, look: Look, options: PaintOptions, grout: Grout) -> _Easel:
    coats = None if options.finishes is None else dict(options.finishes)
    if not painter.hasClipping():
        return _Easel(painter, view, look, options, None, None, grout, coats)
    seen = painter.clipRegion()
    back, _ = view.inverted()
    near = back.mapRect(grown(QRectF(seen.boundingRect())))
    return _Easel(painter, view, look, options, seen, near, grout, coats)


def _paint_regions(areas: Sequence[tuple[Area, QPainterPath]], easel: _Easel) -> None:
    """Paint all visible regions. They never overlap, so any order will do. One path of them all would be slow."""
    regions = [(area, path) for area, path in areas if area.role is Role.REGION and area.in_front]
    for area, path in regions:
        _fill(area, path, easel)
    for area, path in regions:
        easel.painter.strokePath(path, easel.outline(area.part))
    if easel.coats is not None:
        _frame_lit(regions, easel)


def _frame_lit(regions: Sequence[tuple[Area, QPainterPath]], easel: _Easel) -> None:
    """Frame the lit parts. They keep the colour of their finish, and the frame is seen on any colour."""
    for area, path in regions:
        if area.part in easel.options.lit:
            easel.painter.strokePath(path, QPen(QColor(easel.look.field), 2 * PICKED_PX))
            easel.painter.strokePath(path, QPen(QColor(easel.look.accent), PICKED_PX))


def _paint_outline(area: Area, path: QPainterPath, easel: _Easel) -> None:
    """Paint what has no region of its own: openings, over what they are cut into, and parts that hide nothing."""
    if area.role is not Role.OUTLINE or (area.in_front and not usual()[area.kind].hole):
        return
    pen = easel.outline(area.part)
    if area.in_front:
        _fill(area, path, easel)
    else:
        veil = QColor(easel.look_of(area.part, area.kind).pattern)
        veil.setAlphaF(OVERLAY_SHARE)
        easel.painter.fillPath(path, veil)
        pen.setDashPattern(OVERLAY_DASHES)
    easel.painter.strokePath(path, pen)


def _fill(area: Area, path: QPainterPath, easel: _Easel) -> None:
    how, painter = easel.look_of(area.part, area.kind), easel.painter
    painter.save()
    painter.setOpacity(1.0 if area.part in easel.options.lit else easel.options.density)
    painter.fillPath(path, QColor(how.fill))
    if easel.options.patterns:
        painter.setPen(QPen(QColor(how.pattern), PATTERN_PX))
        if area.part in easel.grout:
            paint_grout(easel.grout[area.part], painter, easel.view, easel.meets)
        elif how.families:
            _paint_pattern(how, path, easel)
    painter.restore()


def _paint_pattern(how: KindLook, path: QPainterPath, easel: _Easel) -> None:
    painter = easel.painter
    painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
    over = path.controlPointRect()
    window = over if easel.seen is None else QRectF(painter.window())
    if easel.seen is not None:
        over = over.intersected(QRectF(easel.seen.boundingRect()))
    origin = easel.view.dx(), easel.view.dy()
    for family in how.families:
        painter.drawLines(ruling(family, window.getRect(), origin).across(over))


def _paint_lines(lines: Iterable[Line], easel: _Easel) -> None:
    glow = QPen(QColor(easel.look.accent), LIT_PX)
    for lit in easel.options.lit_lines:
        easel.painter.strokePath(easel.view.map(line_shape(lit).path), glow)
    how = strokes(easel.look)
    roles = easel.options.roles & how.keys()
    wanted = [line for line in lines if line.role in roles and easel.meets(line_shape(line.path).box)]
    for role, stroke in how.items():
        width = stroke.width * easel.options.weight
        pen = QPen(QColor(stroke.colour), width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap)
        if stroke.dashes:
            pen.setDashPattern(stroke.dashes)
        for line in wanted:
            if line.role is role:
                easel.painter.strokePath(easel.view.map(line_shape(line.path).path), pen)


def _text_box(text: Text) -> QRectF:
    return QRectF(text.x - text.width_mm / 2, text.y - text.height_mm / 2, text.width_mm, text.height_mm)


def _paint_texts(drawing: Drawing, easel: _Easel, font: QFont) -> None:
    """Paint names and tags, on a plate of their part's fill so that no pattern goes through them."""
    kinds = {area.part: area.kind for area in drawing.areas}
    bold = QFont(font)
    bold.setBold(True)
    roles = easel.options.roles
    for text in drawing.texts:
        if text.role not in roles or not easel.meets(_text_box(text)):
            continue
        box = easel.view.mapRect(_text_box(text))
        words = fit(text.text, bold if text.role is Role.TAG else font, box.width() - 2 * PLATE_PX, box.height())
        if words is None:
            continue
        ink = easel.look.ink
        if text.part in kinds:
            plate = easel.look_of(text.part, kinds[text.part]).fill
            ink = ink if easel.coats is None else text_on(plate)
            place = box_at(words, box.center()).adjusted(-PLATE_PX, 0, PLATE_PX, 0)
            easel.painter.fillRect(place, QColor(plate))
        easel.painter.setPen(QColor(ink))
        draw_centred(easel.painter, words, box.center())
