"""What a drafter's program finds in the DXF: GDAL, an engine that is not ours, reads the takeoff's areas and lengths.

GDAL draws arcs as chords, so each figure is compared within what its chords leave out at the step set below; exact
arcs are compared through the bulges, in closed form (DXF reference, LWPOLYLINE 42: tangent of a quarter of the angle).
"""

import math
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pyogrio
import pytest
import shapely
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.filemanagement import readfile
from shapely.geometry.base import BaseGeometry

from geometry.dxf.door import write_dxf
from geometry.dxf.layers import layer_name
from geometry.outlines.shapes import box, circle, rounded_box
from shared.drawing import Role
from shared.files.job import read_job_file
from shared.job import Face, Job, Part, Room, Tiles, Unit, Vertex, View
from shared.trade.kinds import Kind
from takeoff.drawing.face import draw_face
from takeoff.figures.measured import Takeoff
from takeoff.memory import Memory
from takeoff.take_off import take_off

EXAMPLE = Path(__file__).parents[2] / "examples" / "harbour-row.json"

# How GDAL must be asked: closed lines as polygons, arcs in steps of half a degree, text as UTF-8.
OPTIONS = {
    "OGR_ARC_STEPSIZE": "0.5",
    "DXF_MERGE_BLOCK_GEOMETRIES": "FALSE",
    "DXF_ENCODING": "UTF-8",
}

# An arc of radius r drawn as chords of half a degree loses this share of its segment's area and of its length.
STEP = math.radians(0.5)
LENGTH_SHARE = 1 - 2 * math.sin(STEP / 2) / STEP
AREA_SHARE = 1 - math.sin(STEP) / STEP


class Read(NamedTuple):
    """What GDAL found: by layer the geometries with the handle of their entity, and all texts."""

    shapes: dict[str, list[tuple[str, BaseGeometry]]]
    texts: list[tuple[str, str]]


@pytest.fixture(autouse=True)
def gdal_options() -> Iterator[None]:
    pyogrio.set_gdal_config_options(OPTIONS)
    yield
    pyogrio.set_gdal_config_options(dict.fromkeys(OPTIONS))


def read_by_gdal(path: Path) -> Read:
    meta, _, geometries, columns = pyogrio.raw.read(path, CLOSED_LINE_AS_POLYGON="YES")
    fields = dict(zip(meta["fields"], columns, strict=True))
    shapes: dict[str, list[tuple[str, BaseGeometry]]] = defaultdict(list)
    texts = []
    rows = zip(fields["Layer"], fields["EntityHandle"], fields["Text"], shapely.from_wkb(geometries), strict=True)
    for layer, handle, text, shape in rows:
        if text:
            texts.append((layer, text))
        shapes[layer].append((handle, shape))
    return Read(shapes, texts)


def round_face() -> Face:
    """Parts with arcs over and beside each other, and a hole across two of them."""
    return Face(
        "a",
        "A",
        parts=(
            Part("wall", Kind.WALL, box(0, 0, 3000, 2400)),
            Part("tiles", Kind.SPLASHBACK, rounded_box(100, 800, 2500, 900, 80)),
            Part("bench", Kind.BENCHTOP, box(0, 860, 3000, 40)),
            Part("mirror", Kind.FIXTURE, circle(900, 1500, 350)),
            Part("outlet", Kind.OUTLET, box(1240, 1460, 115, 75)),
            Part("eye", Kind.WINDOW, circle(2600, 1600, 150)),
        ),
    )


def round_plan() -> Face:
    """A benchtop with a rounded end, a round basin and a cut-out."""
    top = (Vertex(0, 0), Vertex(2000, 0, 1.0), Vertex(2000, 600), Vertex(0, 600))
    return Face(
        "d",
        "D",
        View.PLAN,
        parts=(
            Part("top", Kind.BENCHTOP, top),
            Part("basin", Kind.FIXTURE, circle(1700, 300, 200)),
            Part("hole", Kind.CUT_OUT, rounded_box(300, 50, 600, 450, 40)),
        ),
    )


def jobs() -> list[Job]:
    rooms = (Room("r", "Bathroom", (round_face(), round_plan())),)
    return [Job("Round", rooms), Job("Round", rooms, unit=Unit.INCH), read_job_file(EXAMPLE).job]


class Case(NamedTuple):
    """A job, what was counted of it, the file that was written, and the length of the file's unit."""

    job: Job
    takeoff: Takeoff
    path: Path
    unit_mm: float


@pytest.fixture(params=jobs(), ids=lambda job: f"{job.name} in {job.unit}")
def case(request: pytest.FixtureRequest, tmp_path: Path) -> Case:
    job: Job = request.param
    memory = Memory()
    takeoff = take_off(job, memory)
    path = tmp_path / "job.dxf"
    write_dxf([draw_face(job, face, takeoff, memory) for face in job.faces], path)
    return Case(job, takeoff, path, 25.4 if job.unit is Unit.INCH else 1.0)


def entities(path: Path) -> dict[str, LWPolyline]:
    """The polylines of model space by their handle."""
    found = readfile(path).modelspace().query("LWPOLYLINE")
    return {str(entity.dxf.handle): entity for entity in found if isinstance(entity, LWPolyline)}


def part_of(entity: LWPolyline) -> str:
    return str(entity.get_xdata("RECOAT")[0][1]).removeprefix("part ")


def arcs_of(entity: LWPolyline) -> Iterator[tuple[float, float]]:
    """Of each side of a polyline: the radius (0 where it is straight) and the angle it turns through."""
    points = entity.get_points("xyb")
    following = [*points[1:], points[0]] if entity.closed else points[1:]
    for (x0, y0, bulge), (x1, y1, _) in zip(points, following, strict=False):
        chord = math.hypot(x1 - x0, y1 - y0)
        yield (chord * (1 + bulge**2) / (4 * abs(bulge)) if bulge else 0.0), 4 * math.atan(bulge)


def exact_length(entity: LWPolyline) -> float:
    points = entity.get_points("xyb")
    following = [*points[1:], points[0]] if entity.closed else points[1:]
    chords = [math.dist(a[:2], b[:2]) for a, b in zip(points, following, strict=False)]
    return sum(
        radius * abs(angle) if radius else chord for chord, (radius, angle) in zip(chords, arcs_of(entity), strict=True)
    )


def exact_area(entity: LWPolyline) -> float:
    """Signed, positive anticlockwise: the chords' polygon and the segment of each arc, r2 (t - sin t) / 2."""
    points = entity.get_points("xyb")
    chords = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, [*points[1:], points[0]], strict=True)) / 2
    return float(chords + sum(r * r * (angle - math.sin(angle)) / 2 for r, angle in arcs_of(entity)))


def sector(entity: LWPolyline) -> float:
    """The area between the arcs of a polyline and their centres: what the chords can lose a share of."""
    return sum(radius * radius * abs(angle) / 2 for radius, angle in arcs_of(entity))


def test_regions_have_the_net_areas_of_the_takeoff(case: Case) -> None:
    """What fronts hide counts as seen, as the takeoff measures it with them off: it has layers of its own."""
    found, lines = read_by_gdal(case.path), entities(case.path)
    behind = {part_of(line) for line in lines.values() if line.dxf.layer.endswith("-FRONTS-OFF")}
    areas: dict[str, float] = defaultdict(float)
    slack: dict[str, float] = defaultdict(float)
    for layer, shapes in found.shapes.items():
        for handle, shape in shapes if layer.endswith(("-VISIBLE", "-FRONTS-OFF")) else []:
            entity = lines[handle]
            if layer.endswith("-VISIBLE") and part_of(entity) in behind:
                continue
            turned = 1 if exact_area(entity) > 0 else -1
            if next(face for face in case.job.faces if part_of(entity) in {p.id for p in face.parts}).view is View.PLAN:
                turned = -turned
            areas[part_of(entity)] += turned * shape.area * case.unit_mm**2
            slack[part_of(entity)] += AREA_SHARE * sector(entity) * case.unit_mm**2 + 1e-3
    assert set(areas) == {row.id for row in case.takeoff.parts if row.net_mm2.amount > 0}
    for row in case.takeoff.parts:
        assert areas.get(row.id, 0.0) == pytest.approx(row.net_mm2.amount, abs=slack.get(row.id, 0.0)), row.id


def test_outlines_have_the_gross_areas_of_the_takeoff_exactly(case: Case) -> None:
    gross = {
        part_of(entity): abs(exact_area(entity)) * case.unit_mm**2
        for entity in entities(case.path).values()
        if entity.dxf.layer.endswith(("-OUTLINE", "-OVERLAY"))
    }
    expected = {row.id: row.gross_mm2.amount for row in case.takeoff.parts}
    holes = {part.id for face in case.job.faces for part in face.parts if row_is_empty(expected, part)}
    assert {part: gross[part] for part in expected if part not in holes} == pytest.approx(
        {part: area for part, area in expected.items() if part not in holes}, rel=1e-12, abs=1e-3
    )


def row_is_empty(expected: dict[str, float], part: Part) -> bool:
    """Openings have no surface, so the takeoff may count no gross area of them."""
    return expected[part.id] == 0.0


def test_grout_lines_are_as_long_as_the_takeoff_says(tmp_path: Path) -> None:
    tiles = Tiles(150, 100, 2, course_shift=0.5)
    parts = (
        Part("tiles", Kind.SPLASHBACK, box(0, 900, 2000, 500), tiles=tiles),
        Part("o", Kind.CUT_OUT, circle(900, 1100, 120)),
    )
    job = Job("Quay Terrace 4", rooms=(Room("r", "Galley", (Face("a", "A", parts=parts),)),))
    memory, path = Memory(), tmp_path / "tiles.dxf"
    takeoff = take_off(job, memory)
    write_dxf([draw_face(job, job.faces[0], takeoff, memory)], path)
    found = read_by_gdal(path).shapes[layer_name(Role.GROUT)]
    assert sum(shape.length for _, shape in found) == pytest.approx(takeoff.totals.grout_mm, abs=1e-6 * len(found))


@pytest.mark.parametrize("role", [Role.JOINT, Role.MASKING])
def test_lines_are_as_long_as_the_takeoff_says(case: Case, role: Role) -> None:
    found, lines = read_by_gdal(case.path), entities(case.path)
    layer = layer_name(role)
    rows = case.takeoff.joints if role is Role.JOINT else case.takeoff.masking
    counted = sum(row.length_mm.amount for row in rows if getattr(row, "sealed", True))
    drawn = [lines[handle] for handle, _ in found.shapes[layer]]
    assert counted > 0
    assert sum(map(exact_length, drawn)) * case.unit_mm == pytest.approx(counted, abs=1e-6 * len(drawn))
    by_gdal = sum(shape.length for _, shape in found.shapes[layer]) * case.unit_mm
    curved = sum(radius * abs(angle) for line in drawn for radius, angle in arcs_of(line)) * case.unit_mm
    assert by_gdal == pytest.approx(counted, abs=LENGTH_SHARE * curved + 1e-6 * len(drawn))


def test_every_tag_is_read(case: Case) -> None:
    tags = sorted(row.tag for row in case.takeoff.parts if row.tag)
    assert sorted(text for layer, text in read_by_gdal(case.path).texts if layer.endswith("-TAG")) == tags


def test_names_of_faces_are_read_with_their_signs(case: Case) -> None:
    names = [text for layer, text in read_by_gdal(case.path).texts if layer == "FACE-NAME"]
    assert [name.rpartition(" · ")[2] for name in names] == [face.name for face in case.job.faces]
