"""A person's whole path by the command line: from the example to tables and drawings that open elsewhere."""

import csv
import json
import os
import subprocess
import sys
from collections import defaultdict
from pathlib import Path
from typing import Any, NamedTuple

import openpyxl
import pyogrio
import pytest
from shapely import LineString, Polygon, from_wkb

RECOAT = Path(sys.executable).with_name("recoat")
GDAL = {"OGR_ARC_STEPSIZE": "0.5", "DXF_MERGE_BLOCK_GEOMETRIES": "FALSE", "DXF_ENCODING": "UTF-8"}
"""How GDAL reads our DXF well (checks page, "Engines that are not ours")."""

FLATTENED = 2e-5
"""Of an arc in steps of half a degree a chord keeps all but 3e-6 of the length, a sector all but 1.3e-5 (exact)."""


class Desk(NamedTuple):
    """A folder with the example in it, and its takeoff as JSON."""

    folder: Path
    job: Path
    takeoff: dict[str, Any]

    @property
    def totals(self) -> dict[str, float]:
        """The totals of the takeoff."""
        totals: dict[str, float] = self.takeoff["totals"]
        return totals


def recoat(*words: str | Path) -> subprocess.CompletedProcess[str]:
    """One command, as a person types it, on a machine without a display."""
    without_display = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    return subprocess.run(
        [RECOAT, *words], capture_output=True, text=True, encoding="utf-8", env=without_display, check=False
    )


def done(*words: str | Path) -> str:
    """What a command that goes well says."""
    ran = recoat(*words)
    assert (ran.returncode, ran.stderr) == (0, "")
    return ran.stdout


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    folder = tmp_path_factory.mktemp("desk")
    job = folder / "ours.recoat"
    done("example", job)
    return Desk(folder, job, json.loads(done("takeoff", job, "--format", "json")))


def test_the_terminal_shows_the_totals_of_the_example(desk: Desk) -> None:
    shown = done("takeoff", desk.job)
    assert desk.takeoff["job"] in shown
    assert f"{desk.totals['coated_area_m2']:.2f} m2" in shown
    assert f"{desk.totals['masking_m']:.2f} m" in shown
    assert f"{desk.totals['bead_m']:.2f} m" in shown


def test_a_table_of_commas_adds_up_to_the_same_totals(desk: Desk) -> None:
    table = desk.folder / "takeoff.csv"
    done("takeoff", desk.job, "--format", "csv", "-o", table)
    with table.open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    coated = sum(float(row["coated m2"]) for row in rows if row["row"] == "part")
    masking = sum(float(row["length m"]) for row in rows if row["row"] == "masking")
    bead = sum(float(row["length m"]) for row in rows if row["row"] == "joint" and row["sealed"] == "yes")
    assert coated == pytest.approx(desk.totals["coated_area_m2"], abs=1e-4)
    assert masking == pytest.approx(desk.totals["masking_m"], abs=1e-3)
    assert bead == pytest.approx(desk.totals["bead_m"], abs=1e-3)


def test_a_spreadsheet_opens_elsewhere_with_the_same_totals(desk: Desk) -> None:
    book = desk.folder / "takeoff.xlsx"
    done("takeoff", desk.job, "--format", "xlsx", "-o", book)
    rows = openpyxl.load_workbook(book, data_only=True)["Totals"].iter_rows(values_only=True)
    totals = {str(row[0]): row[-1] for row in rows}
    assert totals["All coated m2"] == pytest.approx(desk.totals["coated_area_m2"], abs=1e-6)
    assert totals["Masking m"] == pytest.approx(desk.totals["masking_m"], abs=1e-6)
    assert totals["Fronts"] == desk.totals["fronts"]


def test_prices_of_a_shop_make_another_basket_and_leave_the_job_as_it_is(desk: Desk) -> None:
    before = desk.job.read_bytes()
    basket = json.loads(done("buy", desk.job, "--format", "json"))["basket"]
    row = next(row for row in basket["rows"] if row["cost"])
    prices = desk.folder / "shop.csv"
    lines = [f"{row['product']};{pack['size']:g};{pack['price'] + 1:.2f}" for pack in row["packs"]]
    prices.write_text("\n".join(("Produkt;Inhalt;Preis", *lines)).replace(".", ","), "cp1252")
    ran = recoat("buy", desk.job, "--prices", prices, "--format", "json")
    dearer = json.loads(ran.stdout)["basket"]
    assert f"lines taken {len(lines)}, left out 0." in ran.stderr
    assert basket["cost"] < dearer["cost"] <= basket["cost"] + sum(pack["many"] for pack in row["packs"])
    assert desk.job.read_bytes() == before


def test_what_is_bought_is_told_alike_on_the_terminal_and_the_phone(desk: Desk) -> None:
    page = desk.folder / "list.html"
    done("buy", desk.job, "--format", "html", "-o", page)
    basket = json.loads(done("buy", desk.job, "--format", "json"))["basket"]
    shown = done("buy", desk.job)
    for row in basket["rows"]:
        assert row["name"] in shown
        assert row["name"] in page.read_text("utf-8")
    assert f"{basket['cost']:.2f}" in shown
    assert f"{basket['cost']:.2f}" in page.read_text("utf-8")


def test_a_drafter_reads_the_same_figures_from_the_dxf(desk: Desk) -> None:
    drawing = desk.folder / "faces.dxf"
    done("draw", desk.job, "-o", drawing)
    areas, lengths = _read_by_gdal(drawing)
    assert lengths["MASKING"] / 1e3 == pytest.approx(desk.totals["masking_m"], rel=FLATTENED)
    assert lengths["JOINT"] / 1e3 == pytest.approx(desk.totals["bead_m"], rel=FLATTENED)
    for kind, net_mm2 in _net_by_kind(desk).items():
        layer = f"{kind.replace(' ', '-').upper()}-VISIBLE"
        assert areas[layer] == pytest.approx(net_mm2, rel=FLATTENED), layer


def test_the_faces_are_drawn_as_pictures_too(desk: Desk) -> None:
    for ending, begins in ((".pdf", b"%PDF-"), (".png", b"\x89PNG"), (".svg", b"<?xml")):
        picture = desk.folder / f"faces{ending}"
        done("draw", desk.job, "-o", picture)
        assert picture.read_bytes().startswith(begins)


def test_the_gap_in_the_laundry_is_told_in_one_line(desk: Desk) -> None:
    ran = recoat("check", desk.job)
    assert (ran.returncode, ran.stderr) == (1, "")
    (line,) = ran.stdout.splitlines()
    assert "linen cabinet" in line
    assert "3 mm" in line


def test_a_job_there_and_back_as_json_is_the_same_to_the_byte(desk: Desk) -> None:
    plain, back = desk.folder / "plain.json", desk.folder / "back.recoat"
    done("convert", desk.job, "-o", plain)
    done("convert", plain, "-o", back)
    assert back.read_bytes() == desk.job.read_bytes()


def test_an_outlet_less_is_its_outline_less_to_mask(desk: Desk) -> None:
    plain = desk.folder / "edited.json"
    done("convert", desk.job, "-o", plain)
    job = json.loads(plain.read_bytes())
    side = next(face for room in job["rooms"] for face in room["faces"] if face["id"] == "D")
    side["parts"] = [part for part in side["parts"] if part["kind"] != "outlet"]
    plain.write_text(json.dumps(job), "utf-8")
    totals = json.loads(done("takeoff", plain, "--format", "json"))["totals"]
    assert desk.totals["masking_m"] - totals["masking_m"] == pytest.approx(2 * (0.115 + 0.072), abs=1e-6)
    assert totals["coated_area_m2"] - desk.totals["coated_area_m2"] == pytest.approx(0.115 * 0.072, abs=1e-6)


@pytest.mark.parametrize(
    "words", [("takeoff", "nowhere.recoat"), ("draw", "ours.recoat", "-o", "faces.doc"), ("example", "ours.recoat")]
)
def test_a_slip_is_told_in_one_line_and_harms_nothing(desk: Desk, words: tuple[str, ...]) -> None:
    before = desk.job.read_bytes()
    ran = recoat(*(desk.folder / word if "." in word else word for word in words))
    assert (ran.returncode, ran.stdout) == (2, "")
    assert len(ran.stderr.splitlines()) == 1
    assert desk.job.read_bytes() == before


def _read_by_gdal(path: Path) -> tuple[dict[str, float], dict[str, float]]:
    """By layer, the area within its closed lines (mm2) and the length of all its lines (mm)."""
    pyogrio.set_gdal_config_options(GDAL)
    _, _, shapes, (layers,) = pyogrio.raw.read(path, columns=["Layer"])
    lines: defaultdict[str, list[LineString]] = defaultdict(list)
    for shape, layer in zip(from_wkb(shapes), layers, strict=True):
        if isinstance(shape, LineString):
            lines[layer].append(shape)
    areas = {layer: _area_within([each for each in drawn if each.is_closed]) for layer, drawn in lines.items()}
    return areas, {layer: sum(each.length for each in drawn) for layer, drawn in lines.items()}


def _area_within(rings: list[LineString]) -> float:
    """The area within rings of which none crosses another: one that lies in another is a hole in it."""
    surfaces = sorted((Polygon(ring) for ring in rings), key=lambda surface: surface.area, reverse=True)
    total = 0.0
    for place, surface in enumerate(surfaces):
        depth = sum(larger.contains(surface.representative_point()) for larger in surfaces[:place])
        total += -surface.area if depth % 2 else surface.area
    return total


def _net_by_kind(desk: Desk) -> dict[str, float]:
    """The net area of every kind with a surface; not of cabinets, drawn with their doors on and counted without."""
    areas: defaultdict[str, float] = defaultdict(float)
    for part in desk.takeoff["parts"]:
        areas[part["kind"]] += part["net_area_mm2"]
    return {kind: area for kind, area in areas.items() if area and kind != "cabinet"}
