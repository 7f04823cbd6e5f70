"""Bad input, as a clumsy or a hostile person gives it: one clear sentence each, and nothing is harmed."""

import csv
import json
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any
from xml.parsers import expat

import ezdxf
import openpyxl
import pytest
from msgspec.structs import replace

from desktop.app import App
from desktop.command_line import main
from desktop.measure.page import MEASURE
from desktop.rooms.face_form import NewFace
from desktop.state.store import Store, counted_file
from shared.edits.drawn import find_face, with_changed_face, with_joint_choice, with_parts
from shared.errors import JobError, ReadingError
from shared.files.job import JobFile
from shared.job import Face, Job, JointChoice, Part, Room, Tie, Unit, Vertex, View
from shared.trade.kinds import Kind
from shared.typed.lengths import read_length
from tests.journeys.hostile import Corners, Said, door, job_of, rectangle, written
from tests.shared.files.test_job import HARMFUL

NOT_A_NUMBER, ENDLESS = float("nan"), float("inf")


def with_joint(**fields: Any) -> dict[str, Any]:
    return job_of(door(), joints=[{"face": "f", "parts": ["w", "p"], **fields}])


def with_tie(**fields: Any) -> dict[str, Any]:
    tie = {"part": "b", "side": 0, "face": "f", "start_mm": 0, "end_mm": 600, **fields}
    top = {"id": "b", "kind": "benchtop", "outline": rectangle(0, 0, 600, 600)}
    job = job_of()
    job["rooms"][0]["faces"].append({"id": "g", "name": "B", "view": "plan", "parts": [top], "ties": [tie]})
    return job


READINGS = {
    "": "no length was typed",
    "   ": "no length was typed",
    "12x": "nothing follows",
    "-5": "cannot be negative",
    "0": "cannot be 0",
    "1e999": "not a unit of length",
    "nan": "not a unit of length",
    "3 kg": "not a unit of length",
    "1/0": "a length cannot be divided by 0",
    "10 km": "not a unit of length",
    "10000 m": "longer than 100.00 m",
    "9" * 5000: "too long to be a length",
    "24\N{SUPERSCRIPT TWO}": "does not fit",
    "\x1b[31m5": "does not belong in a length",
    "\ud800": "does not belong in a length",
}


@pytest.mark.parametrize("text", READINGS, ids=lambda text: ascii(text[:12]))
def test_a_wrong_reading_is_answered_in_words(text: str) -> None:
    with pytest.raises(ReadingError, match=READINGS[text]) as caught:
        read_length(text, Unit.MM)
    assert caught.value.do
    assert str(caught.value).isprintable()


OUTLINES: dict[str, tuple[Corners, str]] = {
    "crossing itself": (((0, 0), (10, 10), (10, 0), (0, 10)), "side 1 and side 3 of the outline cross"),
    "running back along itself": (((0, 0), (100, 0), (50, 0), (50, 50)), "run back along each other"),
    "none": ((), "too few corners"),
    "two corners": (((0, 0), (10, 0)), "too few corners"),
    "no size": (rectangle(5, 5, 0, 0), "too few corners"),
    "no width": (rectangle(5, 5, 0, 100), "too few corners"),
    "next to no size": (rectangle(0, 0, 1e-300, 1e-300), "too few corners"),
    "two arcs on each other": (((0, 0, 1), (10, 0, -1)), "encloses no area"),
    "10 km wall": (rectangle(0, 0, 1e7, 2400), "more than 100 m away"),
    "beyond all floats": (rectangle(-1e308, 0, 1.7e308, 1), "more than 100 m away"),
    "endless bulge": (((0, 0, 1e12), (10, 0), (10, 10)), "a round side at (0, 0) reaches beyond 100 m"),
    "endless bulge over nothing": (((0, 0, 1e12), (1e-9, 0), (10, 10)), "begins and ends at one point"),
    "whole turn": (((0, 0, 1001), (10, 0), (10, 10)), "almost a whole turn"),
    "too many corners": (((0, 0),) * 2001, "has 2001 corners"),
}


@pytest.mark.parametrize("name", OUTLINES)
def test_an_outline_that_cannot_be_measured_is_named_with_its_face(desk: Path, said: Said, name: str) -> None:
    outline, words = OUTLINES[name]
    line = said("takeoff", written(desk, job_of(door(outline, name="Larder"))))
    assert words in line
    assert "hostile.json" in line
    assert "face A" in line
    assert "Larder" in line


@pytest.mark.parametrize("bulge", [5e-324, -1e-300, 1e-15, 1e-9])
def test_a_side_that_hardly_bows_is_measured_as_straight(
    desk: Path, capsys: pytest.CaptureFixture[str], bulge: float
) -> None:
    path = written(desk, job_of(door(((0, 0, bulge), (450, 0, bulge), (450, 700, bulge), (0, 700, bulge)))))
    assert main(["takeoff", str(path), "--format", "json"]) == 0
    part = json.loads(capsys.readouterr().out)["parts"][1]
    assert part["gross_area_mm2"] == pytest.approx(450 * 700, rel=1e-8)
    assert part["net_area_mm2"] == pytest.approx(450 * 700, rel=1e-8)
    assert main(["takeoff", str(path), "--format", "xlsx", "-o", str(desk / "t.xlsx")]) == 0


JOBS: dict[str, tuple[dict[str, Any], str]] = {
    "two parts of one id": (job_of(door(), door()), 'two parts have the id "p"'),
    "a joint on a face that is not there": (with_joint(face="z"), 'the job has no face "z"'),
    "a joint up to a face that is not there": (with_joint(next_face="z"), 'the job has no face "z"'),
    "a joint of a part that is not there": (with_joint(parts=["w", "z"]), 'face "f" has no part "z"'),
    "a joint of one part": (with_joint(parts=["w"]), "this list should have 2 items"),
    "a bead of nothing": (with_joint(section={"type": "fillet", "leg_mm": 0}), "no usable size"),
    "a bead of no sort": (with_joint(section={"type": "weld"}), '"weld" is not one of the words known here'),
    "a tie of a part that is not there": (with_tie(part="z"), 'a tie names the part "z"'),
    "a tie of a side that is not there": (with_tie(side=4), "a tie names side 4"),
    "a tie to a face that is not there": (with_tie(face="z"), 'a tie names the face "z"'),
    "a tie that runs backwards": (with_tie(start_mm=601), "a tie runs from 601 to 600 mm"),
    "a finish that is not there": (job_of(door(finish="gold")), 'the job has no finish "gold"'),
    "a side that is not there": (
        job_of(door(coated_sides=[-1])),
        "its coated sides include a wrong or repeated number",
    ),
    "a factor of next to nothing": (job_of(door(profile_factor=1e-300)), "the profile factor is 1e-300"),
    "a board as thick as the world": (job_of(door(thickness_mm=1e308)), "the thickness in mm is 1e+308"),
    "a level out of reach": (job_of(door(level=10**18)), "the level is 1e+18"),
    "a kind twice": (job_of(kinds=[{"kind": "wall", "treatment": "left"}] * 2), "the kind wall has 2 rows"),
    "a photo from elsewhere": (
        {"name": "J", "rooms": [{"id": "r", "name": "", "faces": [{"id": "f", "name": "", "photo": "../../a"}]}]},
        'the photo "../../a", which is not in the file',
    ),
    "a name of 10 000 characters": (job_of(door(name="n" * 10_000)), "is too long"),
    "a name on two lines": (job_of(door(name="a\nb")), "contains a control character"),
    "a name that steers the terminal": (job_of(door(name="\x1b[2J")), "contains a control character"),
    "a name that turns the writing round": (job_of(door(name="\u202eroodr")), "contains a control character"),
    "a name that no XML can hold": (job_of(door(name="\uffff")), "contains a control character"),
    "half a character": (job_of(door(name="\ud800")), "not a job file, or the file is damaged"),
    "a wrong type": (job_of(door(level="high")), '"level": this should be a whole number, not text'),
    "a version to come": ({"name": "J", "version": 2}, "was written by a newer Recoat"),
    "a version that never was": ({"name": "J", "version": -1}, "no Recoat ever wrote version -1"),
}


@pytest.mark.parametrize("name", JOBS)
def test_a_job_that_does_not_hold_together_is_refused(desk: Path, said: Said, name: str) -> None:
    job, words = JOBS[name]
    line = said("check", written(desk, job))
    assert words in line
    assert "hostile.json" in line


CONTENTS: dict[str, tuple[bytes, str]] = {
    "empty": (b"", "not a job file"),
    "zeros": (bytes(1000), "not a job file"),
    "cut short": (json.dumps(job_of(door())).encode()[:-40], "not a job file"),
    "of 16-bit characters": (json.dumps(job_of()).encode("utf-16"), "not a job file"),
    "of an old encoding": ('{"name": "caf\xe9"}'.encode("latin-1"), "not a job file"),
    "no numbers": (json.dumps(job_of(door(rectangle(NOT_A_NUMBER, 0, 1, 1)))).encode(), "not a job file"),
    "endless": (json.dumps(job_of(door(rectangle(ENDLESS, 0, 1, 1)))).encode(), "not a job file"),
    "of numbers too large": (json.dumps(job_of(door(((1.5, 0),)))).replace("1.5", "1e999").encode(), "too large"),
    "nested deeply": (b'{"a":' * 100_000, "nested too deeply"),
    "a list": (b"[]", "should be a group of fields"),
    "the start of a container": (b"PK\x03\x04", "cut short or damaged"),
}


@pytest.mark.parametrize("command", ["takeoff", "check", "draw", "convert"])
@pytest.mark.parametrize("name", CONTENTS)
def test_a_file_that_is_no_job_is_refused_by_every_command(desk: Path, said: Said, command: str, name: str) -> None:
    content, words = CONTENTS[name]
    output = desk / ("out.dxf" if command == "draw" else "out.json")
    output.write_bytes(b"old")
    asked = [] if command == "check" else ["-o", output]
    assert words in said(command, written(desk, content), *asked)
    assert output.read_bytes() == b"old"


@pytest.mark.parametrize("name", HARMFUL)
def test_a_harmful_container_is_refused_and_unpacks_nothing(desk: Path, said: Said, name: str) -> None:
    make, words = HARMFUL[name]
    path = written(desk, make())
    before = set(desk.iterdir())
    assert words in said("takeoff", path)
    assert set(desk.iterdir()) == before


def test_half_a_million_parts_are_refused_by_their_number(desk: Path, said: Said) -> None:
    parts = ",".join(f'{{"id":"{number}","kind":"door","outline":[]}}' for number in range(500_000))
    face = '{"id":"f","name":"A","parts":[' + parts + "]}"
    path = written(desk, ('{"name":"J","rooms":[{"id":"r","name":"","faces":[' + face + "]}]}").encode())
    assert "the job has 500000 parts; Recoat can measure at most 20000" in said("takeoff", path)


def test_a_heap_of_parts_is_refused_before_it_fills_the_memory(desk: Path, said: Said) -> None:
    heap = job_of(*(door(id=f"p{number}") for number in range(5_000)))
    assert "face A: too many parts lie on or across each other" in said("takeoff", written(desk, heap))


def test_a_part_outside_the_wall_is_worth_a_look_and_no_error(desk: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = written(desk, job_of(door(rectangle(3400, 0, 600, 700), name="Larder")))
    assert main(["check", str(path)]) == 1
    out, error = capsys.readouterr()
    assert (error, sum("of the wall" in line for line in out.splitlines())) == ("", 1)
    assert "Larder reaches 400 mm beyond the right end of the wall" in out


def test_a_job_with_nothing_in_it_is_measured_as_nothing(desk: Path, said: Said) -> None:
    path = written(desk, {"name": "J"})
    for form in ("text", "json", "csv", "xlsx"):
        assert main(["takeoff", str(path), "--format", form, "-o", str(desk / "out")]) == 0
    assert "the job has no faces" in said("draw", path, "-o", desk / "out.dxf")


NAMES = (
    "=1+1",
    "+1",
    "-1",
    "@sum",
    "</text><script>x</script>",
    "&amp;\"'<b>",
    "\\U+0041%%d{\\H9;x}^J\\P",
    "_x000D_",
    'a,b;"c"',
    "n" * 500,
    "\N{GRINNING FACE}",
)
"""Names that a spreadsheet, a drawing or a page could take for something else."""


@pytest.fixture
def named(desk: Path) -> Path:
    """A job whose parts have names like that."""
    doors = (door(rectangle(300 * n, 0, 290, 700), id=f"p{n}", name=name, made_of=name) for n, name in enumerate(NAMES))
    return written(desk, {**job_of(*doors), "name": NAMES[0]})


def test_names_stay_names_in_tables(named: Path) -> None:
    table, book = named.with_name("t.csv"), named.with_name("t.xlsx")
    assert main(["takeoff", str(named), "--format", "csv", "-o", str(table)]) == 0
    assert main(["takeoff", str(named), "--format", "xlsx", "-o", str(book)]) == 0
    with table.open(encoding="utf-8", newline="") as file:
        names = [row["name"] for row in csv.DictReader(file) if row["row"] == "part"][1:]
    assert names == [f"'{name}" if name[0] in "=+-@" else name for name in NAMES]
    areas = openpyxl.load_workbook(book)["Areas"]
    assert [row[3].value for row in areas.iter_rows(min_row=3)] == list(NAMES)
    assert {cell.data_type for row in areas.iter_rows() for cell in row} <= {"s", "n"}
    assert zipfile.ZipFile(book).testzip() is None


def tags_in(page: bytes) -> set[str]:
    """What elements there are in XML; ExpatError where it is not well formed."""
    tags: set[str] = set()
    parser = expat.ParserCreate()
    parser.StartElementHandler = lambda tag, _: tags.add(tag)
    parser.Parse(page, True)
    return tags


@pytest.mark.usefixtures("qapp")
def test_names_stay_names_in_drawings(named: Path) -> None:
    drawing, page = named.with_name("d.dxf"), named.with_name("d.svg")
    assert main(["draw", str(named), "-o", str(drawing)]) == 0
    assert main(["draw", str(named), "-o", str(page)]) == 0
    audit = ezdxf.filemanagement.readfile(drawing).audit()
    assert (audit.errors, audit.fixes) == ([], [])
    assert "script" not in tags_in(page.read_bytes())


@pytest.fixture
def job() -> Job:
    wall = Part("w", Kind.WALL, tuple(Vertex(*corner) for corner in rectangle(0, 0, 3600, 2400)))
    return Job("Job", (Room("r", "Kitchen", (Face("f", "A", parts=(wall,)),)),))


def added(job: Job, outline: Corners, **fields: Any) -> Job:
    return with_parts(job, "f", [Part("p", Kind.DOOR, tuple(Vertex(*corner) for corner in outline), **fields)])


def tied_to_nothing(job: Job) -> Job:
    return with_changed_face(job, replace(find_face(job, "f"), ties=(Tie("z", 0, "f", 0, 1),)))


def with_outline(outline: Corners) -> Callable[[Job], Job]:
    return lambda job: added(job, outline)


STEPS: dict[str, Callable[[Job], Job]] = {
    **{name: with_outline(outline) for name, (outline, _) in OUTLINES.items()},
    "a corner that is not a number": lambda job: added(job, rectangle(NOT_A_NUMBER, 0, 9, 9)),
    "an endless corner": lambda job: added(job, rectangle(0, ENDLESS, 9, 9)),
    "a bulge that is not a number": lambda job: added(job, ((0, 0, NOT_A_NUMBER), (9, 0), (9, 9))),
    "half a character": lambda job: added(job, rectangle(0, 0, 9, 9), name="\ud800"),
    "an endless name": lambda job: added(job, rectangle(0, 0, 9, 9), name="n" * 10_000),
    "a joint of nothing": lambda job: with_joint_choice(job, JointChoice("f", ("w", "z"), sealed=True)),
    "a tie of nothing": tied_to_nothing,
    "a heap": lambda job: with_parts(
        job, "f", [replace(find_face(job, "f").parts[0], id=f"p{number}") for number in range(1_000)]
    ),
}


@pytest.mark.parametrize("name", STEPS)
def test_a_senseless_step_is_refused_and_the_job_on_screen_stays(job: Job, name: str) -> None:
    store, refusals = Store(MEASURE), list[str]()
    store.refused.connect(refusals.append)
    store.show_job(counted_file(JobFile(job)), None, saved=True)
    before = store.open
    assert not store.edit("Step", STEPS[name](job))
    assert store.open.job is job
    assert store.open.takeoff == before.takeoff
    assert not store.open.history.can_undo
    (line,) = refusals
    assert line.isprintable()


def test_an_edit_of_what_is_not_there_is_refused(job: Job) -> None:
    for edit in (lambda: find_face(job, "z"), lambda: with_parts(job, "f", find_face(job, "f").parts)):
        with pytest.raises(JobError):
            edit()


def test_a_job_without_rooms_takes_a_new_face(app: App) -> None:
    app.store.show_job(counted_file(JobFile(Job("Job"))), None, saved=True)
    app.faces.add(NewFace("A", View.ELEVATION, 3600.0, 2400.0))
    assert [face.name for face in app.store.open.job.faces] == ["A"]
