"""A drawing made by hand: a wall with something of every kind on it, and a fridge that rolls out."""

from geometry.outlines.shapes import box, circle, rounded_box
from shared.drawing import Area, Drawing, Line, Role, Size, Text
from shared.job import Outline, Unit, Vertex, View
from shared.trade.kinds import Kind


def _surface(part: str, kind: Kind, outline: Outline, *holes: Outline) -> tuple[Area, Area]:
    reversed_holes = tuple(tuple(Vertex(v.x, v.y) for v in reversed(hole)) for hole in holes)
    return Area(Role.OUTLINE, part, kind, (outline,)), Area(Role.REGION, part, kind, (outline, *reversed_holes))


OUTLET = box(700, 1100, 115, 72)

AREAS = (
    *_surface("wall", Kind.WALL, box(0, 1510, 3600, 890)),
    *_surface("bulkhead", Kind.BULKHEAD, box(0, 2230, 3600, 170)),
    *_surface("splash", Kind.SPLASHBACK, box(0, 910, 3000, 600), OUTLET),
    *_surface("base", Kind.CABINET, box(0, 150, 600, 722)),
    *_surface("bench", Kind.BENCHTOP, box(0, 872, 3000, 38)),
    *_surface("kick", Kind.KICKBOARD, box(0, 0, 3000, 150)),
    *_surface("door", Kind.DOOR, box(600, 150, 450, 722)),
    *_surface("drawer", Kind.DRAWER_FRONT, box(1050, 150, 600, 240)),
    *_surface("drawer2", Kind.DRAWER_FRONT, box(1050, 390, 600, 482)),
    *_surface("filler", Kind.FILLER, box(1650, 150, 50, 722)),
    *_surface("oven", Kind.FIXTURE, rounded_box(1700, 150, 600, 722, 40)),
    *_surface("shelf", Kind.SHELF, box(2300, 150, 300, 722)),
    *_surface("end", Kind.END_PANEL, box(2600, 150, 400, 722)),
    *_surface("window", Kind.WINDOW, box(2200, 1510, 900, 700))[:1],
    Area(Role.OUTLINE, "outlet", Kind.OUTLET, (OUTLET,)),
    Area(Role.OUTLINE, "hole", Kind.CUT_OUT, (circle(3300, 700, 220),)),
    Area(Role.OUTLINE, "fridge", Kind.FIXTURE, (box(3020, 0, 560, 1700),), in_front=False),
)

DRAWING = Drawing(
    "f1",
    "A",
    View.ELEVATION,
    Unit.MM,
    (0.0, 0.0, 3600.0, 2400.0),
    AREAS,
    (
        Line(Role.FLOOR, (Vertex(-60, 0), Vertex(3660, 0))),
        Line(Role.JOINT, (Vertex(0, 910), Vertex(3000, 910)), ("bench", "splash")),
        Line(Role.MASKING, (Vertex(0, 1510), Vertex(3000, 1510)), ("splash", "wall")),
        Line(Role.MASKING, (*OUTLET, OUTLET[0]), ("splash",)),
    ),
    (
        Text(Role.TAG, 825, 511, "A1", 450, 722, "door"),
        Text(Role.TAG, 1350, 270, "A2", 600, 240, "drawer"),
        Text(Role.TAG, 1350, 631, "A3", 600, 482, "drawer2"),
        Text(Role.NAME, 300, 511, "sink base", 600, 722, "base"),
        Text(Role.NAME, 1500, 1210, "tiles behind the bench", 1300, 600, "splash"),
        Text(Role.NAME, 1675, 511, "filler", 50, 722, "filler"),
        Text(Role.NAME, 2000, 511, "oven", 600, 722, "oven"),
        Text(Role.NAME, 2450, 511, "shelves of the corner", 300, 722, "shelf"),
        Text(Role.NAME, 2800, 511, "end panel", 400, 722, "end"),
        Text(Role.NAME, 1500, 75, "kickboard", 3000, 150, "kick"),
        Text(Role.NAME, 1500, 891, "benchtop", 3000, 38, "bench"),
    ),
    (
        Size((600, 0), (1050, 0), -120, "door"),
        Size((1050, 0), (1650, 0), -120, "drawer"),
        Size((1650, 0), (1700, 0), -120, "filler"),
        Size((0, 0), (3600, 0), -240, "wall"),
        Size((0, 0), (0, 2400), 180, "wall"),
    ),
)
