import subprocess
import sys
from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest
from ezdxf.document import Drawing as Document
from ezdxf.entities.dimension import Dimension
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.entities.mtext import MText
from ezdxf.entities.viewport import Viewport
from ezdxf.filemanagement import readfile
from ezdxf.layouts.layout import Paperspace
from hypothesis import given
from hypothesis import strategies as st

from geometry.dxf.door import write_dxf
from geometry.dxf.text import extended, layout_name, paragraph, readable
from geometry.outlines.shapes import box, circle, rounded_box
from shared.drawing import Area, Drawing, Line, Role, Size, Text
from shared.errors import FileError
from shared.job import Unit, Vertex, View
from shared.trade.kinds import Kind

HOSTILE = (
    "%%d and %%c, 50 %%",
    r"a\Pb \U+0041 \M+1828a",
    "a^Jb ^",
    "{\\fArial;x}",
    r"C:\new\temp\\",
    "קרש תחתון",
    "½ é 🪣",
    "=1+2",
    "  ",
    "0\nEOF\n",
    "a\r\nb\x00\x07",
    "\ud800",
    "x" * 10_000,
    "\u202eevil",
)


def face(
    name: str = "tiles", *, unit: Unit = Unit.MM, view: View = View.ELEVATION, title: str = "Galley · A"
) -> Drawing:
    """A splashback with an outlet and a round mirror, a joint with an arc in it, masking round the outlet."""
    tiles, outlet, mirror = box(0, 900, 3000, 600), box(500, 1100, 115, 75), circle(1500, 1200, 200)
    hole = tuple(Vertex(v.x, v.y) for v in (outlet[0], *reversed(outlet[1:])))
    return Drawing(
        face="a",
        title=title,
        view=view,
        unit=unit,
        box=(0.0, 0.0, 3000.0, 2400.0),
        areas=(
            Area(Role.REGION, "t", Kind.SPLASHBACK, (tiles, hole), name=name),
            Area(Role.OUTLINE, "t", Kind.SPLASHBACK, (tiles,), name=name),
            Area(Role.REGION, "m", Kind.FIXTURE, (mirror,)),
            Area(Role.OUTLINE, "f", Kind.FIXTURE, (rounded_box(2000, 0, 600, 1800, 50),), in_front=False),
            Area(Role.REGION, "o", Kind.OUTLET, ()),
            Area(Role.OUTLINE, "o", Kind.OUTLET, (outlet,)),
        ),
        lines=(
            Line(Role.FLOOR, (Vertex(-40, 0), Vertex(3040, 0))),
            Line(Role.JOINT, (Vertex(0, 900), Vertex(1000, 900, 0.5), Vertex(1400, 900)), ("b", "t")),
            Line(Role.MASKING, (*outlet, outlet[0]), ("t",)),
        ),
        texts=(
            Text(Role.NAME, 1500, 950, name, 3000, 400, "t"),
            Text(Role.TAG, 700, 500, "A1", 30, 30, "d"),
        ),
        sizes=(
            Size((3000.0, 0.0), (0.0, 0.0), 150.0),
            Size((0.0, 0.0), (0.0, 2400.0), 150.0),
            Size((0.0, 0.0), (0.0, 0.0), 150.0),
            Size((0.0, 0.0), (300.0, 400.0), 50.0, "t"),
        ),
        job=name,
    )


def written(tmp_path: Path, *drawings: Drawing) -> Document:
    path = tmp_path / "faces.dxf"
    write_dxf(drawings, path, drawn_on=date(2026, 3, 14))
    return readfile(path)


@pytest.fixture
def document(tmp_path: Path) -> Document:
    return written(tmp_path, face())


def polylines(document: Document, layer: str) -> list[LWPolyline]:
    found = document.modelspace().query(f'LWPOLYLINE[layer=="{layer}"]')
    return [entity for entity in found if isinstance(entity, LWPolyline)]


def texts(document: Document) -> list[str]:
    found = document.modelspace().query("MTEXT")
    return [str(entity.plain_text()) for entity in found if isinstance(entity, MText)]


def dimensions(document: Document) -> list[Dimension]:
    return [entity for entity in document.modelspace().query("DIMENSION") if isinstance(entity, Dimension)]


def sheets_of(document: Document) -> list[Paperspace]:
    return [layout for layout in document.layouts if isinstance(layout, Paperspace)]


def name_in(entity: LWPolyline) -> str:
    strings = [str(value) for _, value in entity.get_xdata("RECOAT")]
    return "".join(strings[strings.index("name") + 1 :])


@pytest.mark.parametrize("unit", list(Unit))
def test_the_audit_finds_nothing(tmp_path: Path, unit: Unit) -> None:
    plan = face(view=View.PLAN, unit=unit, title="Galley · D")
    auditor = written(tmp_path, face(unit=unit), plan, face(unit=unit)).audit()
    assert (auditor.errors, auditor.fixes) == ([], [])


def test_a_file_says_in_which_unit_it_is(tmp_path: Path) -> None:
    # DXF reference (seen): $INSUNITS 1 inches, 4 millimetres.
    for unit, code, measurement in ((Unit.MM, 4, 1), (Unit.INCH, 1, 0)):
        header = written(tmp_path, face(unit=unit)).header
        assert (header["$INSUNITS"], header["$MEASUREMENT"]) == (code, measurement)


def test_an_inch_job_is_drawn_in_inches_at_true_size(tmp_path: Path) -> None:
    (outline,) = polylines(written(tmp_path, face(unit=Unit.INCH)), "SPLASHBACK-OUTLINE")
    xs = [x for x, _ in outline.vertices()]
    assert max(xs) - min(xs) == pytest.approx(3000 / 25.4, abs=1e-9)


def test_each_kind_and_use_has_its_layer(document: Document) -> None:
    names = {layer.dxf.name for layer in document.layers} - {"0", "Defpoints"}
    assert names == {
        "SPLASHBACK-VISIBLE",
        "SPLASHBACK-OUTLINE",
        "FIXTURE-VISIBLE",
        "FIXTURE-OVERLAY",
        "OUTLET-OUTLINE",
        "SPLASHBACK-NAME",
        "TAG",
        "JOINT",
        "MASKING",
        "FLOOR",
        "SIZE",
        "FACE-NAME",
        "SHEET",
        "SHEET-VIEW",
    }


def test_outlines_are_closed_and_keep_true_arcs(document: Document) -> None:
    (mirror,) = polylines(document, "FIXTURE-VISIBLE")
    assert mirror.closed
    assert [point[2] for point in mirror.get_points("xyb")] == [1.0, 1.0]


def test_a_hole_is_a_ring_of_its_own_that_says_whose_it_is(document: Document) -> None:
    marks = [list(line.get_xdata("RECOAT")) for line in polylines(document, "SPLASHBACK-VISIBLE")]
    assert [[value for _, value in mark[:2]] for mark in marks] == [
        ["part t", "ring 1 of 2"],
        ["part t", "ring 2 of 2"],
    ]


def test_a_joint_keeps_its_arc_and_says_what_it_divides(document: Document) -> None:
    (joint,) = polylines(document, "JOINT")
    assert not joint.closed
    assert [point[2] for point in joint.get_points("xyb")] == [0, 0.5, 0]
    assert [value for _, value in joint.get_xdata("RECOAT")] == ["part b", "part t"]


def test_sizes_measure_what_they_show(document: Document) -> None:
    assert sorted(round(float(d.get_measurement()), 9) for d in dimensions(document)) == [500, 2400, 3000]
    assert {d.dxf.get("text", "") for d in dimensions(document)} == {""}
    shown = {
        entity.plain_text()
        for d in dimensions(document)
        for entity in d.virtual_entities()
        if isinstance(entity, MText)
    }
    assert shown == {"500", "2400", "3000"}


def test_inch_sizes_show_fractions_and_measure_inches(tmp_path: Path) -> None:
    (size, *_) = dimensions(written(tmp_path, face(unit=Unit.INCH)))
    assert size.get_measurement() == pytest.approx(3000 / 25.4)
    assert {e.plain_text() for e in size.virtual_entities() if isinstance(e, MText)} == {'118 1/8"'}
    style = size.override()
    assert (style.get("dimlunit"), style.get("dimpost"), style.get("dimlfac")) == (5, '<>"', 1.0)


def test_words_of_sizes_are_not_upside_down(document: Document) -> None:
    angles = [e.dxf.rotation for d in dimensions(document) for e in d.virtual_entities() if isinstance(e, MText)]
    assert all(-90 < angle <= 90.0001 for angle in angles)


def test_a_tag_is_written_even_where_it_has_no_room_and_a_name_is_not(tmp_path: Path) -> None:
    tight = face()._replace(
        texts=(Text(Role.TAG, 0, 0, "A1", 10, 10, "d"), Text(Role.NAME, 0, 0, "outlet", 10, 10, "o"))
    )
    assert texts(written(tmp_path, tight)) == ["A1", "Galley · A"]


def test_letters_in_the_model_are_2_5_mm_on_the_sheet(document: Document) -> None:
    (name,) = document.modelspace().query('MTEXT[layer=="SPLASHBACK-NAME"]')
    assert name.dxf.char_height == 2.5 * 20


def test_a_plan_is_drawn_as_seen_from_above_with_the_wall_at_the_top(tmp_path: Path) -> None:
    corner = (Vertex(0, 0), Vertex(3000, 0), Vertex(3000, 600, 0.2), Vertex(0, 900))
    plan = face(view=View.PLAN)._replace(areas=(Area(Role.OUTLINE, "p", Kind.BENCHTOP, (corner,)),))
    (top,) = polylines(written(tmp_path, plan), "BENCHTOP-OUTLINE")
    points = top.get_points("xyb")
    assert points[0][1] > points[3][1]
    assert [point[2] for point in points] == [0, 0, -0.2, 0]


def test_faces_stand_side_by_side_with_a_gap_and_floors_on_one_line(tmp_path: Path) -> None:
    document = written(tmp_path, face(), face(title="Galley · B"))
    first, second = polylines(document, "FLOOR")
    assert max(x for x, _ in first.vertices()) < min(x for x, _ in second.vertices())
    assert {y for line in (first, second) for _, y in line.vertices()} == {0.0}
    assert {"Galley · A", "Galley · B"} <= set(texts(document))


def test_each_face_has_a_sheet_at_a_standard_scale(tmp_path: Path) -> None:
    document = written(tmp_path, face(), face(title="Galley · B"))
    assert document.layouts.names_in_taborder() == ["Model", "Galley - A", "Galley - B"]
    for sheet in sheets_of(document):
        view = [each for each in sheet.query("VIEWPORT") if isinstance(each, Viewport)][-1]
        assert view.dxf.view_height / view.dxf.height == pytest.approx(20)
        words = {each.plain_text() for each in sheet.query("MTEXT") if isinstance(each, MText)}
        assert {"1:20", "mm", "2026-03-14", "Sizes from tape readings: verify on site"} <= words


def test_a_sheet_hides_what_is_hidden_but_keeps_openings(document: Document) -> None:
    (sheet,) = sheets_of(document)
    view = [each for each in sheet.query("VIEWPORT") if isinstance(each, Viewport)][-1]
    assert set(view.frozen_layers) == {"SPLASHBACK-OUTLINE"}


def test_everything_on_a_sheet_lies_inside_its_margins(document: Document) -> None:
    (sheet,) = sheets_of(document)
    points = [point for line in sheet.query("LWPOLYLINE") if isinstance(line, LWPolyline) for point in line.vertices()]
    assert (min(x for x, _ in points), min(y for _, y in points)) == (20, 10)
    assert (max(x for x, _ in points), max(y for _, y in points)) == (287, 200)


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_is_read_back_as_it_was_written(tmp_path: Path, name: str) -> None:
    document = written(tmp_path, face(name, title=name), face(name, title=name))
    auditor = document.audit()
    assert (auditor.errors, auditor.fixes) == ([], [])
    plain = readable(name)
    if plain:
        assert plain in texts(document)
        assert name_in(polylines(document, "SPLASHBACK-OUTLINE")[0]) == readable(name[:500])


@given(st.text(max_size=60))
def test_any_text_is_one_line_without_control_signs(text: str) -> None:
    plain = readable(text)
    assert len(plain.splitlines()) <= 1
    assert all(sign.isprintable() or sign == " " or not sign.isascii() for sign in plain)


@given(st.text(max_size=300))
def test_a_string_of_extended_data_is_at_most_255_bytes(text: str) -> None:
    assert all(len(chunk.encode("utf-8")) <= 255 for chunk in extended(text))


@given(st.lists(st.text(max_size=50), max_size=5))
def test_layouts_have_different_short_names_that_a_table_may_hold(titles: list[str]) -> None:
    taken = {"model"}
    for title in titles:
        name = layout_name(title, taken)
        assert name.casefold() not in taken
        assert 0 < len(name) <= 31
        assert not set(name) & set('<>/\\":;?*|=`,')
        taken.add(name.casefold())


def test_codes_are_parted_so_that_no_reader_sees_them() -> None:
    assert paragraph(r"%%d\P") == "%{}%{}d\\\\{}P"


def test_equal_drawings_give_equal_bytes_in_any_process(tmp_path: Path) -> None:
    script = (
        "import sys; from pathlib import Path; from geometry.dxf.door import write_dxf;"
        "from tests.geometry.dxf.test_door import face;"
        "write_dxf([face(), face()], Path(sys.argv[1]))"
    )
    files = [tmp_path / f"{number}.dxf" for number in range(2)]
    for number, file in enumerate(files):
        subprocess.run((sys.executable, "-c", script, str(file)), check=True, env={"PYTHONHASHSEED": str(number)})
    first, second = (file.read_bytes() for file in files)
    assert first == second


def test_no_drawings_give_an_empty_file(tmp_path: Path) -> None:
    document = written(tmp_path)
    assert len(document.modelspace()) == 0
    assert document.audit().errors == []


def test_a_drawing_of_an_empty_face_is_written(tmp_path: Path) -> None:
    empty = Drawing("a", "A", View.ELEVATION, Unit.MM, (0.0, 0.0, 0.0, 0.0))
    assert written(tmp_path, empty).audit().errors == []


def test_a_file_that_cannot_be_written_is_said_in_words(tmp_path: Path) -> None:
    with pytest.raises(FileError):
        write_dxf([face()], tmp_path / "missing" / "faces.dxf")


def test_masking_round_an_outlet_is_as_long_as_its_sides(document: Document) -> None:
    (masking,) = polylines(document, "MASKING")
    points = [(x, y) for x, y in masking.vertices()]
    assert sum(abs(a[0] - b[0]) + abs(a[1] - b[1]) for a, b in pairwise(points)) == pytest.approx(2 * (115 + 75))


def test_the_slow_library_is_not_loaded_before_a_file_is_written() -> None:
    script = "import sys, geometry.dxf.door; sys.exit('ezdxf' in sys.modules)"
    assert subprocess.run((sys.executable, "-c", script), check=False).returncode == 0
