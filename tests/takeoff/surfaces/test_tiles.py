import csv
import io

import openpyxl
import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.edits.drawn import find_part, with_changed_parts
from shared.job import Job, Part, Tiles, Unit
from shared.trade.kinds import Kind
from takeoff.figures.measured import Fronts, Takeoff
from takeoff.memory import Memory
from takeoff.tables.takeoff_csv import takeoff_csv
from takeoff.tables.takeoff_json import takeoff_json
from takeoff.tables.takeoff_text import takeoff_text
from takeoff.tables.takeoff_xlsx import xlsx_bytes
from takeoff.take_off import take_off
from tests.takeoff.rows import codes, face_of, job_of


@pytest.fixture
def splashback() -> Part:
    """Three tiles wide and two high, as 150 x 150 tiles with 2 mm of grout are laid from its corner."""
    return Part("tiles", Kind.SPLASHBACK, box(0, 910, 454, 302), name="tiles", tiles=Tiles(150, 150, 2))


@pytest.fixture
def tiled(kitchen: Job) -> Job:
    return with_changed_parts(kitchen, [replace(find_part(kitchen, "tiles")[1], tiles=Tiles(150, 150, 2))])


def counted_of(*parts: Part) -> Takeoff:
    return take_off(job_of(face_of(*parts)))


def test_tiles_are_counted_whole_and_cut_with_their_grout(splashback: Part) -> None:
    takeoff = counted_of(splashback, Part("outlet", Kind.OUTLET, box(200, 950, 60, 60)))
    (row,) = takeoff.tiles
    assert (row.part, row.whole, row.cut, row.grout_width_mm) == ("tiles", 5, 1, 2)
    assert row.grout_mm.amount == pytest.approx(454 + 2 * 302)
    assert takeoff.totals.grout_mm == row.grout_mm.amount


def test_grout_is_the_sum_of_level_and_upright_lines_with_the_fronts_off(splashback: Part) -> None:
    (row,) = counted_of(splashback).tiles
    reason = row.grout_mm.reason
    assert [term.amount for term in reason.terms] == pytest.approx([454, 604])
    assert (reason.fronts, reason.parts) == (Fronts.OFF, ("tiles",))


def test_tiles_behind_a_door_that_is_taken_off_count(splashback: Part) -> None:
    behind = counted_of(splashback, Part("door", Kind.DOOR, box(0, 910, 454, 302)))
    assert behind.tiles == counted_of(splashback).tiles


def test_what_is_not_tiled_has_no_tiles(counted: Takeoff) -> None:
    assert counted.tiles == ()
    assert counted.totals.grout_mm == 0


@pytest.mark.parametrize(("grout_mm", "told"), [(1.4, True), (1.5, False), (2.0, False)])
def test_a_grout_line_under_the_published_least_is_a_thing_to_look_at(
    splashback: Part, grout_mm: float, told: bool
) -> None:
    # NHBC 9.1.7: wall tiles at least 1.5 mm. ANSI A108.02 says 1.6 mm and is not followed.
    takeoff = counted_of(replace(splashback, tiles=Tiles(150, 150, grout_mm)))
    assert ("thin-grout" in codes(takeoff)) is told


def test_a_thin_grout_line_is_told_in_inches_in_an_inch_job(splashback: Part) -> None:
    job = replace(job_of(face_of(replace(splashback, tiles=Tiles(150, 150, 25.4 / 32)))), unit=Unit.INCH)
    (message,) = (finding.message for finding in take_off(job).findings if finding.code == "thin-grout")
    assert '1/32" wide; at least 1/16" is usual' in message


def test_what_is_remembered_of_tiles_never_shows(tiled: Job) -> None:
    memory = Memory()
    take_off(tiled, memory)
    finer = with_changed_parts(tiled, [replace(find_part(tiled, "tiles")[1], tiles=Tiles(100, 50, 2))])
    assert take_off(finer, memory).tiles == take_off(finer).tiles != take_off(tiled).tiles


def test_every_table_has_the_tiles(tiled: Job) -> None:
    takeoff = take_off(tiled)
    (row,) = takeoff.tiles
    metres = row.grout_mm.amount / 1000
    lines = [" ".join(line.split()) for line in takeoff_text(takeoff, tiled).splitlines()]
    assert f"Kitchen A splashback {row.whole} {row.cut} {metres:.2f} m" in lines
    assert f"All grout {metres:.2f} m" in lines
    rows = list(csv.DictReader(io.StringIO(takeoff_csv(takeoff, tiled).decode("utf-8"), newline="")))
    (cells,) = (each for each in rows if each["row"] == "tiles")
    assert (float(cells["whole tiles"]), float(cells["cut tiles"])) == (row.whole, row.cut)
    assert float(cells["length m"]) == pytest.approx(metres)
    assert [each["name"] for each in rows if each["row"] == "total"][-1] == "grout"
    sheet = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(takeoff, tiled)))["Tiles"]
    assert [cell.value for cell in sheet[2]][3:] == pytest.approx([row.whole, row.cut, metres])
    assert f'"whole": {row.whole}'.encode() in takeoff_json(takeoff, tiled)


def test_tables_of_a_job_without_tiles_do_not_speak_of_them(kitchen: Job, counted: Takeoff) -> None:
    assert "grout" not in takeoff_text(counted, kitchen)
    assert "Tiles" not in openpyxl.load_workbook(io.BytesIO(xlsx_bytes(counted, kitchen))).sheetnames
