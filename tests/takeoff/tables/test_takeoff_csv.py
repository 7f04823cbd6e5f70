import csv
import io
import json
from pathlib import Path

import openpyxl
import pytest
from jsonschema import Draft202012Validator
from msgspec.structs import replace

from shared.edits.drawn import find_part, with_changed_parts
from shared.errors import FileError
from shared.job import Job, JointChoice, Unit
from shared.trade.finishes import Finish
from takeoff.figures.measured import Takeoff
from takeoff.tables.takeoff_csv import takeoff_csv
from takeoff.tables.takeoff_json import takeoff_json, takeoff_schema
from takeoff.tables.takeoff_text import takeoff_text
from takeoff.tables.takeoff_xlsx import write_xlsx, xlsx_bytes
from takeoff.take_off import take_off

SCHEMA = Path(__file__).parents[3] / "takeoff" / "data" / "takeoff.schema.json"


def renamed(job: Job, part: str, name: str) -> Job:
    return with_changed_parts(job, [replace(find_part(job, part)[1], name=name)])


def csv_of(job: Job) -> str:
    return takeoff_csv(take_off(job), job).decode("utf-8")


def test_the_text_gives_areas_by_finish_joints_masking_and_totals(counted: Takeoff, kitchen: Job) -> None:
    text = takeoff_text(counted, kitchen)
    lines = [" ".join(line.split()) for line in text.splitlines()]
    assert lines[0] == "Quince Lane 2 gross net coated"
    assert "Kitchen A splashback 2.16 m2 2.14 m2 2.14 m2" in lines
    assert "benchtop to splashback fillet 6 4.60 m 4.60 m" in lines
    assert lines[-1].startswith("Coated ")
    assert lines[-1].endswith("fronts 2 things to look at 0")
    assert max(map(len, text.splitlines())) <= 100


def test_the_text_of_an_empty_job_is_its_name_and_zeros() -> None:
    job = Job("Empty")
    assert takeoff_text(take_off(job), job).splitlines()[-1].startswith("Coated 0.00 m2   masked 0.00 m")


def test_a_name_cannot_move_the_cursor_of_a_terminal(kitchen: Job) -> None:
    job = renamed(kitchen, "tiles", "tiles\x1b[2J\nred")
    assert "\x1b" not in takeoff_text(take_off(job), job)
    assert "tiles?[2J?red" in takeoff_text(take_off(job), job)


def test_an_inch_job_is_told_in_feet(kitchen: Job) -> None:
    job = replace(kitchen, unit=Unit.INCH)
    text = takeoff_text(take_off(job), job)
    assert "ft2" in text
    assert " m2" not in text


def test_the_csv_ends_lines_as_rfc_4180_says_and_reads_back(kitchen: Job, counted: Takeoff) -> None:
    text = csv_of(renamed(kitchen, "tiles", 'tiles "white", glazed'))
    assert text.count("\r\n") == text.count("\n") == len(list(csv.reader(io.StringIO(text, newline=""))))
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    tiles = next(row for row in rows if row["id"] == "tiles" and row["row"] == "part")
    assert tiles["name"] == 'tiles "white", glazed'
    assert float(tiles["net m2"]) == pytest.approx(2.14344)
    total = sum(float(row["length m"]) for row in rows if row["row"] == "joint" and row["sealed"] == "yes")
    assert total == pytest.approx(counted.totals.bead_mm / 1000)
    assert [row["name"] for row in rows if row["row"] == "total"] == ["coated", "masking", "bead", "old bead"]


# OWASP, CSV injection, as seen, with the line feed that it added in August 2025; the full-width signs as a library's
# page names them. RFC 4180 doubles the quotes.
@pytest.mark.parametrize(
    ("name", "cell"),
    [
        ('=1+2";=1+2', '"\'=1+2"";=1+2"'),
        ("+1", '"\'+1"'),
        ("-1", '"\'-1"'),
        ("@SUM(A1)", '"\'@SUM(A1)"'),
        ("\t=1", '"\'\t=1"'),
        ("\r=1", '"\'\r=1"'),
        ("\n=1", '"\'\n=1"'),
        ("\uff1d1+2", '"\'\uff1d1+2"'),
        ("\uff0b1", '"\'\uff0b1"'),
        ("\uff0d1", '"\'\uff0d1"'),
        ("\uff20SUM(A1)", '"\'\uff20SUM(A1)"'),
        ("  =1+2", '"\'  =1+2"'),
        ("plain", '"plain"'),
    ],
)
def test_a_name_that_looks_like_a_formula_stays_text_in_the_csv(kitchen: Job, name: str, cell: str) -> None:
    assert f",{cell}," in csv_of(renamed(kitchen, "tiles", name))


def test_the_json_has_what_programs_rely_on(kitchen: Job, counted: Takeoff) -> None:
    document = json.loads(takeoff_json(counted, kitchen))
    tiles = next(part for part in document["parts"] if part["id"] == "tiles")
    assert {key: tiles[key] for key in ("face", "name", "kind")} == {"face": "a", "name": "", "kind": "splashback"}
    assert tiles["gross_area_mm2"] == pytest.approx(2_160_000)
    assert tiles["net_area_mm2"] == tiles["coated_area_mm2"] == pytest.approx(2_143_440)
    joint = next(row for row in document["joints"] if row["parts"] == ["tiles", "edge"])
    assert joint["section"] == {"type": "fillet", "leg_mm": 6}
    assert joint["length_mm"] == pytest.approx(3600)
    outlet = sum(row["length_mm"] for row in document["masking"] if row["parts"] == ["tiles", "outlet1"])
    assert outlet == pytest.approx(374)
    assert document["totals"] == {
        "coated_area_m2": pytest.approx(counted.totals.coated_mm2 / 1e6),
        "masking_m": pytest.approx(counted.totals.masking_mm / 1e3),
        "bead_m": pytest.approx(counted.totals.bead_mm / 1e3),
        "old_bead_m": pytest.approx(counted.totals.old_bead_mm / 1e3),
        "fronts": 2,
        "grout_m": 0,
    }


def test_an_edge_at_an_opening_has_no_second_part_and_names_the_opening(kitchen: Job, counted: Takeoff) -> None:
    edges = json.loads(takeoff_json(counted, kitchen))["edges"]
    assert {tuple(edge["parts"]) for edge in edges if edge["opening"] == "outlet1"} == {("tiles", None)}


def test_the_json_keeps_to_its_schema(kitchen: Job) -> None:
    job = replace(kitchen, joints=(JointChoice("a", ("kick", "upper"), old_bead=True),))
    validator = Draft202012Validator(takeoff_schema())
    assert list(validator.iter_errors(json.loads(takeoff_json(take_off(job), job)))) == []


def test_the_published_schema_is_that_of_the_program() -> None:
    assert json.loads(SCHEMA.read_text("utf-8")) == takeoff_schema()


def test_equal_jobs_give_equal_bytes(kitchen: Job) -> None:
    assert takeoff_json(take_off(kitchen), kitchen) == takeoff_json(take_off(kitchen), kitchen)
    assert csv_of(kitchen) == csv_of(kitchen)


def sheet_values(content: bytes, sheet: str) -> dict[str, object]:
    """The last cell of each row of a sheet, by the first, as it shows without reckoning anew."""
    book = openpyxl.load_workbook(io.BytesIO(content), data_only=True)
    return {str(row[0]): row[-1] for row in book[sheet].iter_rows(min_row=2, values_only=True)}


def test_the_spreadsheet_shows_its_totals_at_once(kitchen: Job, counted: Takeoff) -> None:
    totals = sheet_values(xlsx_bytes(counted, kitchen), "Totals")
    assert totals["All coated m2"] == pytest.approx(counted.totals.coated_mm2 / 1e6)
    assert totals["Bead m"] == pytest.approx(counted.totals.bead_mm / 1e3)
    assert totals["Fronts"] == 2


@pytest.mark.parametrize(
    "name", ["=1+2", "+1", "-1", "@x", "\uff1d1+2", "\uff20x", " =1+2", "http://example.invalid", "{=1}"]
)
def test_every_name_stays_text_in_the_spreadsheet(kitchen: Job, name: str) -> None:
    job = renamed(kitchen, "tiles", name)
    book = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(take_off(job), job)))
    cells = [cell for row in book["Areas"].iter_rows() for cell in row if cell.value == name]
    assert [cell.data_type for cell in cells] == ["s"]
    assert cells[0].hyperlink is None


def test_two_finishes_of_one_name_are_told_apart(kitchen: Job) -> None:
    finishes = tuple(Finish(finish.id, "White") for finish in kitchen.finishes)
    job = replace(kitchen, finishes=finishes)
    names = sheet_values(xlsx_bytes(take_off(job), job), "Totals")
    assert {"White (tiles)", "White (benchtop)", "White (fronts)"} <= names.keys()


def test_a_spreadsheet_that_cannot_be_written_is_told_in_words(kitchen: Job, counted: Takeoff, tmp_path: Path) -> None:
    with pytest.raises(FileError, match="no such file or folder"):
        write_xlsx(counted, kitchen, tmp_path / "missing" / "takeoff.xlsx")
