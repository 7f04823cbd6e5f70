"""The spreadsheet's live formulas, reckoned by an engine that is not ours (the library `formulas`)."""

import io
from pathlib import Path

import formulas
import openpyxl
import pytest

from geometry.outlines.shapes import box
from shared.job import Face, Job, Part, Room
from shared.trade.kinds import Kind
from takeoff.tables.takeoff_xlsx import write_xlsx
from takeoff.take_off import take_off

JOB = Job(
    "Quince Lane 2",
    rooms=(
        Room(
            "r",
            "Kitchen",
            (
                Face(
                    "a",
                    "A",
                    parts=(
                        Part("wall", Kind.WALL, box(0, 0, 2000, 2400)),
                        Part("tiles", Kind.SPLASHBACK, box(0, 910, 2000, 500), name="=tiles"),
                        Part("edge", Kind.BENCHTOP, box(0, 872, 2000, 38)),
                        Part("door", Kind.DOOR, box(0, 150, 600, 700)),
                    ),
                ),
            ),
        ),
    ),
)


def reckoned(path: Path, *cells: str) -> list[float]:
    """The values of cells of the sheet Totals after everything was reckoned anew."""
    solution = formulas.ExcelModel().loads(str(path)).finish().calculate()
    return [float(solution[f"'[{path.name}]TOTALS'!{cell}"].value[0, 0]) for cell in cells]


@pytest.fixture
def book(tmp_path: Path) -> Path:
    path = tmp_path / "takeoff.xlsx"
    write_xlsx(take_off(JOB), JOB, path)
    return path


@pytest.mark.filterwarnings("ignore::DeprecationWarning", "ignore::FutureWarning", "ignore::SyntaxWarning")
def test_another_engine_reckons_the_same_totals(book: Path) -> None:
    totals = take_off(JOB).totals
    expected = (totals.coated_mm2 / 1e6, totals.masking_mm / 1e3, totals.bead_mm / 1e3, totals.old_bead_mm / 1e3)
    assert reckoned(book, "D5", "D6", "D7", "D8") == pytest.approx(expected)


@pytest.mark.filterwarnings("ignore::DeprecationWarning", "ignore::FutureWarning", "ignore::SyntaxWarning")
def test_totals_follow_when_an_area_or_a_length_is_changed(book: Path) -> None:
    before = reckoned(book, "D2", "D5", "D7", "D8")
    changed = openpyxl.load_workbook(io.BytesIO(book.read_bytes()))
    areas, joints = changed["Areas"], changed["Joints"]
    assert areas["F3"].value == "Tiles"
    assert joints["H2"].value == joints["I2"].value == "yes"
    areas["J3"] = areas["J3"].value + 1
    joints["J2"] = joints["J2"].value + 2
    changed.save(book)
    assert reckoned(book, "D2", "D5", "D7", "D8") == pytest.approx(
        [a + b for a, b in zip(before, (1, 1, 2, 2), strict=True)]
    )
