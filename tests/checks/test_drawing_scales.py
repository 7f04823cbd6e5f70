"""Sheets, scales and letters for drawings against their standards."""

from pathlib import Path

import pytest
from ezdxf.entities.mtext import MText
from ezdxf.filemanagement import readfile

from geometry.drawn.sheets import fit, room_for_drawing, sheets
from geometry.dxf.door import write_dxf
from geometry.dxf.layers import uses
from shared.drawing import Drawing, Role, Size, Text
from shared.job import Unit, View

# ISO 128, the series of line widths: from memory.
LINE_WIDTHS = {0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0}

# ISO 5455: 1:1 1:2 1:5 1:10 1:20 1:50 1:100, seen in part; 1:200 1:500 1:1000 from memory.
SCALES = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)
SMALLEST_INCH_SCALE = 1536
"""1/128 in to the foot: 12 x 128 (common practice, no source)."""

ROOM = {"A4": (267.0, 166.0), "A3": (390.0, 253.0), "Letter": (249.4, 171.9), "Tabloid": (401.8, 235.4)}
"""Width and height that a sheet leaves, by hand: less 20 at the left and 10 elsewhere, and 24 for the title block."""


def drawing(width: float, height: float, unit: Unit = Unit.MM, sizes: tuple[Size, ...] = ()) -> Drawing:
    return Drawing("a", "A", View.ELEVATION, unit, (0.0, 0.0, width, height), sizes=sizes)


def test_sheets_are_those_of_iso_216() -> None:
    # ISO 216, from memory: A4 210 x 297, A3 297 x 420.
    assert [(s.name, s.height, s.width) for s in sheets().mm.sheets] == [("A4", 210, 297), ("A3", 297, 420)]


def test_inch_sheets_are_8_1_2_by_11_and_11_by_17_inches() -> None:
    # 1 in = 25.4 mm (16 CFR 500.19, seen); the sheets' sizes in inches are common practice, no source.
    sizes = [(round(s.height / 25.4, 9), round(s.width / 25.4, 9)) for s in sheets().inch.sheets]
    assert sizes == [(8.5, 11), (11, 17)]


def test_scales_are_those_of_iso_5455() -> None:
    assert sheets().mm.scales == SCALES


def test_letters_are_those_of_iso_3098() -> None:
    # ISO 3098: 2.5 3.5 5 7 10.
    assert sheets().lettering == (2.5, 3.5, 5, 7, 10)


def test_letters_of_2_5_mm_are_50_high_in_a_model_drawn_at_1_to_20(tmp_path: Path) -> None:
    # Seen: 2.5 mm lettering is 50 units high in a 1:20 model.
    wall = drawing(5000, 3000)._replace(texts=(Text(Role.NAME, 2500, 1500, "Oak", 3000, 2000),))
    assert fit(wall).scale == 20
    write_dxf((wall,), tmp_path / "wall.dxf")
    texts = readfile(tmp_path / "wall.dxf").modelspace().query("MTEXT")
    assert [text.dxf.char_height for text in texts if isinstance(text, MText) and text.text == "Oak"] == [50]


def test_lines_have_widths_of_iso_128() -> None:
    assert {use.width for use in uses().values()} <= LINE_WIDTHS


def test_margins_and_title_block_are_those_of_iso_5457_and_iso_7200() -> None:
    # From memory: 20 at the left, 10 elsewhere, a title block at most 180 wide.
    table = sheets()
    assert (table.left_margin, table.margin) == (20, 10)
    assert table.title_width <= 180


@pytest.mark.parametrize(
    ("width", "height", "sheet", "scale"),
    [
        # Inside the margins and over the title block A4 leaves 267 x 166, A3 390 x 253; 5 stay free round a drawing.
        (2570, 1560, "A4", 10),
        (2571, 1560, "A3", 10),
        (3600, 2430, "A3", 10),
        (3600, 2431, "A4", 20),
        (100, 80, "A4", 1),
        (10_000, 2400, "A4", 50),
        (100_000, 2700, "A4", 500),
    ],
)
def test_a_face_gets_the_largest_scale_that_fits_and_then_the_smallest_sheet(
    width: float, height: float, sheet: str, scale: int
) -> None:
    fitted = fit(drawing(width, height))
    assert (fitted.sheet.name, fitted.scale) == (sheet, scale)


def test_an_inch_job_gets_a_scale_of_feet_and_inches() -> None:
    fitted = fit(drawing(12 * 304.8, 8 * 304.8, Unit.INCH))
    assert (fitted.sheet.name, fitted.scale) == ("Tabloid", 12)


@pytest.mark.parametrize("unit", list(Unit))
@pytest.mark.parametrize("width", [1, 600, 3600, 9999, 40_000, 100_000])
def test_what_a_sheet_shows_lies_within_its_border(unit: Unit, width: float) -> None:
    fitted = fit(drawing(width, 2400, unit))
    wide, high = ROOM[fitted.sheet.name]
    left, bottom, right, top = fitted.shown
    assert max(left, bottom) <= 0
    assert min(right - width, top - 2400) >= 0
    assert (right - left) / fitted.scale <= wide
    assert (top - bottom) / fitted.scale <= high


def test_a_sheet_leaves_so_much_for_a_drawing() -> None:
    for sheet in (*sheets().mm.sheets, *sheets().inch.sheets):
        left, bottom, right, top = room_for_drawing(sheet)
        assert (right - left, top - bottom) == pytest.approx(ROOM[sheet.name])


def test_sizes_belong_to_what_a_sheet_shows() -> None:
    size = Size((1000.0, 0.0), (0.0, 0.0), 300.0)
    assert fit(drawing(1000, 1000, sizes=(size,))).shown[1] < -300


def test_nothing_fits_a_face_of_a_thousand_kilometres_so_it_gets_the_smallest_scale() -> None:
    assert fit(drawing(1e9, 1e9)).scale == SCALES[-1]
    assert fit(drawing(1e9, 1e9, Unit.INCH)).scale == SMALLEST_INCH_SCALE
