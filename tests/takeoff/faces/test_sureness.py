import csv
import io
import json
import math

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.outlines.measured import signed_area_mm2
from geometry.outlines.shapes import box, circle
from geometry.outlines.sides import Side
from geometry.set_out.propagation import Sum
from shared.edits.drawn import find_part, with_changed_parts
from shared.job import Face, Job, Part, Tiles, Unit
from shared.trade.kinds import Kind
from shared.trade.tape import TapeClass, tape_tolerance_mm
from takeoff.faces.measuring import Context, count_face
from takeoff.faces.sureness import coated_sum
from takeoff.figures.measured import Fronts, Sureness
from takeoff.memory import Memory
from takeoff.tables.takeoff_csv import takeoff_csv
from takeoff.tables.takeoff_json import takeoff_json
from takeoff.tables.takeoff_text import takeoff_text
from takeoff.tables.takeoff_xlsx import xlsx_bytes
from takeoff.take_off import take_off
from tests.geometry.faces import random_face
from tests.takeoff.rows import face_of, job_of


def sure(job: Job) -> Sureness:
    found = take_off(job).sure
    assert found is not None
    return found


def off_mm(distance_mm: float, tape: TapeClass = TapeClass.SECOND) -> float:
    return tape_tolerance_mm(distance_mm, tape, hooked=True)


def amount(quantity: Sum) -> float:
    areas = sum(times * signed_area_mm2(ring) for times, ring in quantity.areas)
    return areas + sum(times * Side(0, *piece).length_mm for times, piece in quantity.lengths)


def test_a_splashback_is_off_by_its_width_and_its_two_heights() -> None:
    found = sure(job_of(face_of(Part("tiles", Kind.SPLASHBACK, box(0, 900, 3000, 600)))))
    by_hand = math.sqrt((600 * off_mm(3000)) ** 2 + (3000 * off_mm(900)) ** 2 + (3000 * off_mm(1500)) ** 2)
    assert found.coated_mm2 == pytest.approx(by_hand)
    assert dict(found.parts) == {"tiles": pytest.approx(by_hand)}


def test_a_moulded_surface_is_off_by_as_much_more() -> None:
    plain = Part("tiles", Kind.SPLASHBACK, box(0, 900, 3000, 600))
    more = sure(job_of(face_of(replace(plain, profile_factor=1.3)))).coated_mm2
    assert more == pytest.approx(1.3 * sure(job_of(face_of(plain))).coated_mm2)


def test_a_front_is_off_by_its_area_and_its_edges() -> None:
    door = Part("door", Kind.DOOR, box(0, 0, 400, 700), thickness_mm=18)
    across, up = (700 + 2 * 18) * off_mm(400), (400 + 2 * 18) * off_mm(700)  # w h + 2 (w + h) t
    assert sure(job_of(face_of(door))).coated_mm2 == pytest.approx(math.hypot(across, up))


def test_masking_and_beads_are_off_as_their_ends_are(kitchen: Job) -> None:
    found = sure(kitchen)
    assert 0 < found.bead_mm < 40
    assert 0 < found.old_bead_mm <= found.bead_mm
    assert found.masking_mm > 0


def test_a_wider_tape_class_makes_everything_less_sure(kitchen: Job) -> None:
    first, third = (sure(replace(kitchen, tape=tape)) for tape in (TapeClass.FIRST, TapeClass.THIRD))
    assert all(a < b for a, b in zip(first[:4], third[:4], strict=True))


def test_faces_are_read_independently() -> None:
    tiles = Part("tiles", Kind.SPLASHBACK, box(0, 900, 3000, 600))
    one = sure(job_of(face_of(tiles))).coated_mm2
    two = sure(job_of(face_of(tiles), Face("b", "B", parts=(replace(tiles, id="other"),)))).coated_mm2
    assert two == pytest.approx(math.sqrt(2) * one)


def test_what_is_not_coated_is_not_off() -> None:
    assert sure(job_of(face_of(Part("wall", Kind.WALL, box(0, 0, 3000, 2400))))).coated_mm2 == 0
    assert sure(Job("Empty")) == Sureness()


def test_grout_follows_its_surface_by_its_metres_a_square_metre() -> None:
    tiles = Part("tiles", Kind.SPLASHBACK, box(0, 900, 3000, 600), tiles=Tiles(148, 98, 2))
    found = sure(job_of(face_of(tiles)))
    assert found.grout_mm == pytest.approx(found.coated_mm2 * (1 / 150 + 1 / 100))


def test_an_opening_that_a_rule_leaves_in_makes_nothing_less_sure() -> None:
    tiles = Part("tiles", Kind.SPLASHBACK, box(0, 0, 3000, 600))
    opened = job_of(face_of(tiles, Part("outlet", Kind.OUTLET, circle(1000, 300, 100))))
    found = take_off(opened, rule="is-1200-13").sure
    assert found is not None
    assert found.coated_mm2 == pytest.approx(sure(job_of(face_of(tiles))).coated_mm2)


def test_every_table_says_how_sure_it_is(kitchen: Job) -> None:
    takeoff, found = take_off(kitchen), sure(kitchen)
    text = takeoff_text(takeoff, kitchen)
    assert "Tolerance (class II tape):" in text
    assert f"masking ± {found.masking_mm:.1f} mm" in text
    rows = list(csv.DictReader(io.StringIO(takeoff_csv(takeoff, kitchen).decode("utf-8"), newline="")))
    off = {row["name"]: row for row in rows if row["row"] == "tolerance" and not row["id"]}
    assert float(off["coated"]["coated m2"]) == pytest.approx(found.coated_mm2 / 1e6, abs=1e-6)
    assert float(off["bead"]["length m"]) == pytest.approx(found.bead_mm / 1e3, abs=1e-6)
    sheet = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(takeoff, kitchen)))["Tolerance"]
    cells = {row[2]: row[4] for row in sheet.iter_rows(min_row=2, values_only=True)}
    assert cells["all coated"] == pytest.approx(found.coated_mm2 / 1e6)
    assert cells["splashback"] == pytest.approx(dict(found.parts)["tiles-b"] / 1e6)
    document = json.loads(takeoff_json(takeoff, kitchen))
    assert document["tolerances"]["coated_area_m2"] == pytest.approx(found.coated_mm2 / 1e6)
    tiles = next(part for part in document["parts"] if part["id"] == "tiles")
    assert tiles["coated_area_tolerance_mm2"] == pytest.approx(dict(found.parts)["tiles"])


def test_an_inch_job_is_off_by_inches_and_square_feet(kitchen: Job) -> None:
    inches = replace(kitchen, unit=Unit.INCH)
    (line,) = (each for each in takeoff_text(take_off(inches), inches).splitlines() if "±" in each)
    assert "ft2" in line
    assert '"' in line
    assert " mm" not in line


def test_where_nobody_asks_it_is_not_reckoned(kitchen: Job) -> None:
    assert take_off(kitchen, sure=False).sure is None


def test_what_is_remembered_of_it_never_shows(kitchen: Job) -> None:
    memory = Memory()
    take_off(kitchen, memory)
    moved = with_changed_parts(kitchen, [replace(find_part(kitchen, "tiles")[1], profile_factor=1.2)])
    assert take_off(moved, memory).sure == take_off(moved).sure != take_off(kitchen).sure
    coarser = replace(kitchen, tape=TapeClass.THIRD)
    assert take_off(coarser, memory).sure == take_off(coarser).sure


@pytest.mark.parametrize("rule", ["net", "is-1200-13", "wholly-within"])
def test_its_areas_and_lengths_are_those_of_the_coated_area(kitchen: Job, rule: str) -> None:
    check_sums(kitchen, rule)


@given(st.integers(0, 1000))
def test_its_areas_and_lengths_are_those_of_any_coated_area(seed: int) -> None:
    check_sums(job_of(face_of(*random_face(seed))), "net")


def check_sums(job: Job, rule: str) -> None:
    memory = Memory()
    for face in job.faces:
        arrangements = (memory.arrangement(job, face, fronts) for fronts in Fronts)
        count = count_face(face, Context("r", job.unit, job.kinds, rule=rule), *arrangements)
        for surface, row in zip(count.surfaces, count.parts, strict=True):
            assert amount(coated_sum(surface)) == pytest.approx(row.coated_mm2.amount, rel=1e-9, abs=1e-4)
