import math
from itertools import pairwise

import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box, circle
from geometry.seen.arrangement import Edge
from shared.drawing import Drawing, Line, Role
from shared.edits.drawn import with_changed_parts, with_parts
from shared.job import Face, Fillet, Job, Part, Room, Tiles, View
from shared.trade.kinds import Kind, usual
from takeoff.drawing.face import draw_face, title
from takeoff.figures.measured import EdgeRow, Figure, Fronts, JointRow, MaskingRow, PartRow, Reason, Takeoff, Totals
from takeoff.memory import Memory
from takeoff.take_off import take_off

PARTS = (
    Part("wall", Kind.WALL, box(0, 0, 3000, 2400)),
    Part("tiles", Kind.SPLASHBACK, box(0, 910, 3000, 500), name="white tiles"),
    Part("base1", Kind.CABINET, box(0, 150, 900, 720)),
    Part("base2", Kind.CABINET, box(900, 150, 600, 720)),
    Part("door", Kind.DOOR, box(2, 152, 896, 716)),
    Part("buried", Kind.SHELF, box(10, 880, 20, 20)),
    Part("bench", Kind.BENCHTOP, box(0, 870, 3000, 40)),
    Part("upper", Kind.CABINET, box(0, 1410, 800, 700)),
    Part("outlet", Kind.OUTLET, box(1000, 1100, 115, 75)),
    Part("fridge", Kind.FIXTURE, box(2100, 0, 700, 1700), hides=False),
)
FACE = Face("a", "A", parts=PARTS)
PLAN = Face(
    "d",
    "D",
    View.PLAN,
    parts=(Part("top", Kind.BENCHTOP, box(0, 0, 3000, 600)), Part("bowl", Kind.FIXTURE, circle(800, 300, 200))),
)
JOB = Job("Quay Terrace 4", rooms=(Room("r", "Galley", (FACE, PLAN)), Room("s", "", (Face("e", "E"),))))
REASON = Reason("rule", "common practice, no source", Fronts.OFF, ())
ZERO = Figure(0.0, REASON)


def edge_row(edge: Edge) -> EdgeRow:
    return EdgeRow(
        "a",
        (edge.left or edge.right or "", edge.right),
        (edge.x0, edge.y0),
        (edge.x1, edge.y1),
        edge.bulge,
        edge.length_mm,
    )


def between(parts: set[str | None], face: Face = FACE) -> tuple[EdgeRow, ...]:
    edges = Memory().arrangement(JOB, face, Fronts.OFF).edges
    return tuple(edge_row(edge) for edge in edges if {edge.left, edge.right} == parts)


def joint(sealed: bool) -> JointRow:
    return JointRow(
        "a", "", ("bench", "tiles"), "back", Fillet(6.0), "silicone", sealed, True, ZERO, between({"bench", "tiles"})
    )


def counted(*, sealed: bool = True) -> Takeoff:
    rows = tuple(
        PartRow(part.id, "r", "a", part.name, part.kind, part.treatment, "", tag, ZERO, ZERO, ZERO)
        for part in PARTS
        for tag in ["A1" if part.id == "door" else ""]
    )
    masking = MaskingRow("a", ("tiles", None), "outlet", ZERO, between({"tiles", None}))
    return Takeoff(rows, (), (joint(sealed),), (masking,), Totals(0, 0, 0, 0, 1), ())


@pytest.fixture
def drawing() -> Drawing:
    return draw_face(JOB, FACE, counted(), Memory())


def test_areas_stand_back_to_front_and_what_hides_nothing_is_marked(drawing: Drawing) -> None:
    outlines = [area for area in drawing.areas if area.role is Role.OUTLINE]
    ranks = [usual()[area.kind].rank for area in outlines if area.in_front]
    assert ranks == sorted(ranks)
    assert [area.part for area in outlines if not area.in_front] == ["fridge"]


def test_every_part_has_its_outline_and_its_region(drawing: Drawing) -> None:
    for role in (Role.OUTLINE, Role.REGION):
        assert {area.part for area in drawing.areas if area.role is role} == {part.id for part in PARTS}


def test_what_a_front_hides_is_there_as_well(drawing: Drawing) -> None:
    behind = [area for area in drawing.areas if area.role is Role.FRONTS_OFF]
    assert [(area.part, len(area.rings)) for area in behind] == [("base1", 1)]
    off = draw_face(JOB, FACE, counted(), Memory(), fronts=Fronts.OFF)
    assert [area for area in off.areas if area.role is Role.FRONTS_OFF] == []


def test_fronts_that_are_off_are_not_drawn() -> None:
    off = draw_face(JOB, FACE, counted(), Memory(), fronts=Fronts.OFF)
    assert "door" not in {area.part for area in off.areas}
    assert "A1" not in {text.text for text in off.texts}


def grout(job: Job, fronts: Fronts = Fronts.OFF) -> list[Line]:
    drawing = draw_face(job, job.faces[0], take_off(job), Memory(), fronts=fronts)
    return [line for line in drawing.lines if line.role is Role.GROUT]


def length(line: Line) -> float:
    return sum(math.dist((a.x, a.y), (b.x, b.y)) for a, b in pairwise(line.path))


@pytest.mark.parametrize("shift", [0.0, 0.5])
def test_the_grout_lines_of_a_tiled_part_are_those_that_are_counted(shift: float) -> None:
    tiled = with_changed_parts(JOB, [replace(PARTS[1], tiles=Tiles(150, 100, 2, course_shift=shift))])
    (row,) = take_off(tiled).tiles
    assert sum(map(length, grout(tiled))) == pytest.approx(row.grout_mm.amount)
    assert {line.parts for line in grout(tiled)} == {("tiles",)}


def test_grout_lines_are_not_drawn_over_what_hangs_before_them() -> None:
    door = Part("cover", Kind.DOOR, box(0, 910, 1000, 500))
    tiled = with_changed_parts(JOB, [replace(PARTS[1], tiles=Tiles(150, 100, 2))])
    covered = with_parts(tiled, "a", [door])
    assert min(vertex.x for line in grout(covered, Fronts.HUNG) for vertex in line.path) >= 1000 - 1e-3
    assert sum(map(length, grout(covered))) == pytest.approx(sum(map(length, grout(tiled))))


def test_a_mosaic_too_fine_to_be_drawn_is_not() -> None:
    assert grout(with_changed_parts(JOB, [replace(PARTS[1], tiles=Tiles(10, 10, 2))])) == []
    assert len(take_off(with_changed_parts(JOB, [replace(PARTS[1], tiles=Tiles(10, 10, 2))])).tiles) == 1


def test_a_joint_is_drawn_along_the_edges_it_was_counted_from(drawing: Drawing) -> None:
    (line,) = [line for line in drawing.lines if line.role is Role.JOINT]
    assert line.parts == ("bench", "tiles")
    assert {vertex.y for vertex in line.path} == {910.0}
    assert sum(abs(b.x - a.x) for a, b in pairwise(line.path)) == sum(e.length_mm for e in between({"bench", "tiles"}))


def test_a_joint_that_is_switched_off_is_not_drawn() -> None:
    drawing = draw_face(JOB, FACE, counted(sealed=False), Memory())
    assert [line for line in drawing.lines if line.role is Role.JOINT] == []


def test_masking_round_an_outlet_is_one_closed_line(drawing: Drawing) -> None:
    paths = [line.path for line in drawing.lines if line.role is Role.MASKING]
    assert [len(path) for path in paths if path[0] == path[-1]] == [5]


def test_an_elevation_stands_on_a_floor_and_a_plan_does_not(drawing: Drawing) -> None:
    (floor,) = [line for line in drawing.lines if line.role is Role.FLOOR]
    assert {vertex.y for vertex in floor.path} == {0.0}
    assert [line for line in draw_face(JOB, PLAN, counted(), Memory()).lines if line.role is Role.FLOOR] == []


def test_a_front_shows_its_tag_and_what_has_no_name_its_kind(drawing: Drawing) -> None:
    shown = {text.part: (text.role, text.text) for text in drawing.texts}
    assert shown["door"] == (Role.TAG, "A1")
    assert shown["tiles"] == (Role.NAME, "white tiles")
    assert shown["outlet"] == (Role.NAME, "outlet")
    assert "buried" not in shown


def test_a_named_front_shows_tag_and_name_apart() -> None:
    named = Face("a", "A", parts=(Part("door", Kind.DOOR, box(0, 0, 400, 700), name="pantry"),))
    texts = draw_face(JOB, named, counted(), Memory()).texts
    assert [(text.text, text.y, text.height_mm) for text in texts] == [("A1", 525, 350), ("pantry", 175, 350)]


def test_a_low_front_shows_its_tag_beside_its_name() -> None:
    drawer = Face("a", "A", parts=(Part("door", Kind.DRAWER_FRONT, box(0, 0, 600, 120), name="trays"),))
    texts = draw_face(JOB, drawer, counted(), Memory()).texts
    assert [(text.text, text.x, text.width_mm) for text in texts] == [("A1", 100, 200), ("trays", 400, 400)]


def test_what_hides_nothing_is_named_above_the_name_of_what_is_behind(drawing: Drawing) -> None:
    (fridge,) = [text for text in drawing.texts if text.part == "fridge"]
    assert fridge.y > 1700 / 2


def along(drawing: Drawing, end: float) -> list[float]:
    """The level sizes written below (y = end at the bottom) or above a face, in the order of the chain, by row."""
    return [abs(s.end[0] - s.start[0]) for s in drawing.sizes if s.start[1] == s.end[1] == end]


def test_widths_stand_below_and_above_and_levels_at_the_left(drawing: Drawing) -> None:
    assert along(drawing, 0) == [900, 600, 1500, 3000]
    assert along(drawing, 2400) == [800, 2200]
    upright = [size.end[1] - size.start[1] for size in drawing.sizes if size.start[0] == size.end[0]]
    assert upright == [150, 720, 40, 500, 700, 290, 2400]


def test_a_chain_sums_to_the_whole(drawing: Drawing) -> None:
    *chain, whole = along(drawing, 0)
    assert sum(chain) == whole


def test_a_row_of_fronts_without_cabinets_is_sized_without_its_reveals() -> None:
    doors = tuple(Part(f"d{n}", Kind.DOOR, box(n * 450 + 1.5, 150, 447, 720)) for n in range(4))
    face = Face("a", "A", parts=(Part("w", Kind.WALL, box(0, 0, 1800, 2400)), *doors))
    assert along(draw_face(JOB, face, counted(), Memory()), 0) == [448.5, 450, 450, 451.5, 1800]


def test_sizes_of_a_plan_stand_before_it_away_from_the_wall() -> None:
    drawing = draw_face(JOB, PLAN, counted(), Memory())
    assert along(drawing, 600) == [600, 400, 2000, 3000]
    assert along(drawing, 0) == []


def test_what_is_picked_shows_its_own_size() -> None:
    drawing = draw_face(JOB, FACE, counted(), Memory(), sized=("upper",))
    own = [size for size in drawing.sizes if size.part == "upper"]
    assert [(abs(s.end[0] - s.start[0]), abs(s.end[1] - s.start[1])) for s in own] == [(800, 0), (0, 700)]


def test_an_empty_face_gives_an_empty_drawing() -> None:
    empty = draw_face(JOB, JOB.rooms[1].faces[0], counted(), Memory())
    assert (empty.box, empty.areas, empty.lines, empty.texts, empty.sizes) == ((0, 0, 0, 0), (), (), (), ())


def test_a_sheet_names_room_and_face() -> None:
    assert title(JOB, FACE) == "Galley · A"
    assert title(JOB, JOB.rooms[1].faces[0]) == "E"
