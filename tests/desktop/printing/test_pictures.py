import re
import zlib
from pathlib import Path

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QImage

from desktop.look.palette import light
from desktop.painting.drawing import PaintOptions
from desktop.printing.pictures import PDF_DPI, on_sheet, write_picture
from geometry.drawn.sheets import fit
from geometry.outlines.shapes import box
from shared.drawing import Area, Drawing, Role
from shared.errors import FileError
from shared.job import Unit, View
from shared.trade.kinds import Kind
from tests.desktop.drawn import DRAWING

pytestmark = pytest.mark.usefixtures("qapp")

MM_PER_INCH = 25.4

WALL = Drawing(
    "f1",
    "Kitchen · A",
    View.ELEVATION,
    Unit.MM,
    (0.0, 0.0, 4000.0, 2000.0),
    (Area(Role.REGION, "p", Kind.BENCHTOP, (box(0, 0, 2000, 1000),)),),
)


def page_contents(path: Path) -> list[str]:
    """What is drawn on each page of a PDF, as the operators of the format (ISO 32000, from memory)."""
    streams = re.findall(rb"/FlateDecode\s*>>\s*stream\r?\n(.*?)endstream", path.read_bytes(), re.DOTALL)
    texts = [zlib.decompress(stream).decode("latin-1") for stream in streams]
    return [text for text in texts if " cm\n" in text]


def filled_width_dots(content: str, colour: str) -> float:
    """How wide the first path is that is filled in a colour."""
    red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    filled = re.compile(r"([\d.]+) ([\d.]+) ([\d.]+) scn\n.*\n((?:[\d.]+ [\d.]+ [ml]\n)+)h\nf")
    for match in filled.finditer(content):
        if [float(match[at]) for at in (1, 2, 3)] == pytest.approx([red, green, blue], abs=1e-6):
            xs = [float(line.split()[0]) for line in match[4].splitlines()]
            return max(xs) - min(xs)
    raise AssertionError(f"nothing is filled in {colour}")


def test_two_metres_at_1_to_20_are_100_mm_on_paper() -> None:
    placed = fit(WALL)
    assert placed.scale == 20
    view = on_sheet(WALL, placed)
    start, end = view.map(QPointF(0, 0)), view.map(QPointF(2000, 0))
    assert (end.x() - start.x()) / 96 * MM_PER_INCH == pytest.approx(100)


def test_the_pdf_itself_is_to_scale(tmp_path: Path) -> None:
    path = tmp_path / "faces.pdf"
    write_picture([WALL], path, options=PaintOptions(patterns=False))
    (content,) = page_contents(path)
    dots = filled_width_dots(content, light().kinds[Kind.BENCHTOP].fill)
    assert dots / PDF_DPI * MM_PER_INCH == pytest.approx(100, abs=0.01)


def test_a_pdf_has_a_sheet_for_each_face_of_an_iso_size(tmp_path: Path) -> None:
    path = tmp_path / "faces.pdf"
    write_picture([DRAWING, WALL, WALL._replace(view=View.PLAN)], path)
    boxes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", path.read_bytes())
    assert len(boxes) == 3
    # A4 is 210 x 297 mm (ISO 216, the design's table of checks); a point is 1/72 in.
    for width, height in boxes:
        assert float(width) == pytest.approx(297 / MM_PER_INCH * 72, abs=0.5)
        assert float(height) == pytest.approx(210 / MM_PER_INCH * 72, abs=0.5)


def test_an_inch_job_gets_a_sheet_measured_in_inches(tmp_path: Path) -> None:
    path = tmp_path / "faces.pdf"
    write_picture([WALL._replace(unit=Unit.INCH)], path)
    assert re.search(rb"/MediaBox \[0 0 1224[.0]* 792[.0]*\]", path.read_bytes())  # 17 x 11 in


def test_a_png_shows_all_faces_one_above_the_other(tmp_path: Path) -> None:
    one, two = tmp_path / "one.png", tmp_path / "two.png"
    write_picture([WALL], one)
    write_picture([WALL, WALL], two)
    first, both = QImage(str(one)), QImage(str(two))
    assert first.width() == both.width()
    assert both.height() > 1.9 * first.height()


def test_a_plan_and_an_elevation_are_painted_to_one_scale(tmp_path: Path) -> None:
    path = tmp_path / "faces.svg"
    half = WALL._replace(box=(0, 0, 2000, 1000), areas=(Area(Role.REGION, "q", Kind.SHELF, (box(0, 0, 2000, 1000),)),))
    write_picture([WALL, half], path, options=PaintOptions(patterns=False))
    text = path.read_text("utf-8")
    widths = []
    for kind in (Kind.BENCHTOP, Kind.SHELF):
        fill = light().kinds[kind].fill.lower()
        data = re.search(rf'fill="{fill}".*?d="([^"]*)"', text, re.DOTALL)
        assert data is not None
        xs = [float(x) for x in re.findall(r"[ML](-?[\d.]+),", data[1])]
        widths.append(max(xs) - min(xs))
    assert widths[0] == pytest.approx(widths[1], abs=0.01)


@pytest.mark.parametrize("ending", [".pdf", ".png", ".svg"])
def test_a_file_that_was_there_is_replaced_whole(tmp_path: Path, ending: str) -> None:
    path = tmp_path / f"faces{ending}"
    path.write_text("old", "utf-8")
    write_picture([WALL], path)
    assert path.stat().st_size > 500
    assert [file.name for file in tmp_path.iterdir()] == [path.name]


def test_another_ending_is_refused_in_words(tmp_path: Path) -> None:
    with pytest.raises(FileError, match=r"faces\.bmp: Recoat cannot write a picture with this ending; choose"):
        write_picture([WALL], tmp_path / "faces.bmp")
    assert list(tmp_path.iterdir()) == []


def test_no_face_is_no_picture(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="no face to draw"):
        write_picture([], tmp_path / "faces.pdf")


def test_more_faces_than_a_picture_holds_are_refused_in_words(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="too large"):
        write_picture([WALL] * 100, tmp_path / "faces.png")
