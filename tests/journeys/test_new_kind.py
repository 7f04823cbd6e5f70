"""A kind of part is added to the program: jobs that were saved before are opened and counted as they were.

The program is copied, the kind is added to the copy as a contributor would, and the copy runs in processes of its own.
"""

import json
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from desktop.command_line import main
from shared.files.job import read_job_file
from takeoff.take_off import take_off
from tests.processes import apart_from_the_person

PROJECT = Path(__file__).parents[2]
EXAMPLE = PROJECT / "examples" / "harbour-row.json"
ROOMS = ("desktop", "takeoff", "geometry", "shared")

MEMBER = '    GRAB_RAIL = "grab rail"\n'
ROW = """
["grab rail"]
rank = 5
treatment = "in place"
material = "metal"
finish = "fronts"
said = ["handhold"]
"""
JOINT = """
[[joint]]
kinds = ["splashback", "grab rail"]
name = "grab rail to tiles"
section = { type = "fillet", leg_mm = 4.0 }
sealant = "wet-area silicone"
old_bead = false
"""
LOOK = """
[kinds."grab rail"]
tint = "green"
share = 0.2
lines = [[30, 7]]
"""

COMMANDS = "import json, sys; from desktop.command_line import main; sys.exit(max(map(main, json.loads(sys.argv[1]))))"
"""Several commands in one process: half of the time goes into starting it."""

WINDOW = """
import json, sys, time
from pathlib import Path
from desktop.app import App
from desktop.look.palette import light
from desktop.start import application, dress
from shared.trade.kinds import Kind

qt = application()
dress(qt, light())
app = App(light(), copies_in=Path(sys.argv[1]).parent)
app.window.show()
app.files.open_path(Path(sys.argv[1]))
patience = time.monotonic() + 60
while app.store.shown is None and time.monotonic() < patience:
    qt.processEvents()
for page in app.pages.all:
    app.store.turn_to(page)
    qt.processEvents()
before = app.store.open
row = app.finish.surfaces.rows[Kind("grab rail")]
shown = [row.way.currentText(), row.finish.currentText()]
row.finish.setCurrentIndex(0)
row.finish.activated.emit(0)
after = app.store.open.job
print(json.dumps({
    "mm2": before.takeoff.totals.coated_mm2,
    "shown": shown,
    "before": [choice.kind for choice in before.job.kinds],
    "after": [(choice.kind, choice.finish) for choice in after.kinds][-1],
}))
app.window.close_now()
"""


@pytest.fixture(scope="module")
def program(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the program that knows one kind more."""
    copy = tmp_path_factory.mktemp("program")
    for room in ROOMS:
        shutil.copytree(PROJECT / room, copy / room, ignore=shutil.ignore_patterns("__pycache__"))
    kinds = copy / "shared" / "trade" / "kinds.py"
    before, after = kinds.read_text("utf-8").split("\n\n\nclass Treatment(")
    kinds.write_text(f"{before}\n{MEMBER}\n\nclass Treatment({after}", "utf-8")
    for file, row in (
        ("shared/data/kinds.toml", ROW),
        ("takeoff/data/joints.toml", JOINT),
        ("desktop/data/look.toml", LOOK),
    ):
        with (copy / file).open("a", encoding="utf-8") as table:
            table.write(row)
    return copy


@pytest.fixture
def saved(tmp_path: Path) -> Path:
    """The example as it was saved before: nothing is said of the new kind."""
    return Path(shutil.copy(EXAMPLE, tmp_path / "saved.json"))


def run(program: Path, script: str, *words: str | Path) -> subprocess.CompletedProcess[str]:
    environment = {**apart_from_the_person(program), "PYTHONPATH": str(program)}
    command = (sys.executable, "-c", script, *map(str, words))
    return subprocess.run(command, check=False, cwd=program, env=environment, capture_output=True, text=True)


def told(program: Path, *commands: list[str], code: int = 0) -> str:
    """What commands of the program with the new kind tell; `code` is the greatest that one of them ends with."""
    done = run(program, COMMANDS, json.dumps(commands))
    assert (done.returncode, done.stderr) == (code, "")
    return done.stdout


def test_a_saved_job_is_counted_as_before(program: Path, saved: Path) -> None:
    asked = [
        [*words, str(saved)] for words in (("takeoff", "--format", "json"), ("buy", "--format", "json"), ("check",))
    ]
    assert told(program, *asked, code=1) == told(PROJECT, *asked, code=1)


def test_a_saved_job_is_saved_and_drawn_as_before(program: Path, saved: Path) -> None:
    again, now, before = (saved.with_name(name) for name in ("again.json", "now.png", "before.png"))
    told(program, ["convert", str(saved), "-o", str(again)], ["draw", str(saved), "-o", str(now), "--face", "A"])
    assert main(["draw", str(saved), "-o", str(before), "--face", "A"]) == 0
    assert again.read_bytes() == saved.read_bytes()
    assert now.read_bytes() == before.read_bytes()


def test_the_window_opens_a_saved_job_and_says_of_the_new_kind_what_is_usual(program: Path, saved: Path) -> None:
    done = run(program, WINDOW, saved)
    assert done.returncode == 0, done.stderr
    assert [line for line in done.stderr.splitlines() if "propagateSizeHints" not in line] == []
    shown, job = json.loads(done.stdout), read_job_file(saved).job
    assert shown["mm2"] == pytest.approx(take_off(job).totals.coated_mm2)
    names = {finish.id: finish.name for finish in job.finishes}
    assert shown["shown"] == ["in place", names["fronts"]]
    assert shown["before"] == [choice.kind for choice in job.kinds]
    assert shown["after"] == ["grab rail", ""]


def test_a_part_of_the_new_kind_is_coated_as_usual_sealed_by_its_joint_and_drawn(program: Path, saved: Path) -> None:
    job = json.loads(saved.read_text("utf-8"))
    face = job["rooms"][0]["faces"][0]
    splashback = next(part for part in face["parts"] if part["kind"] == "splashback")
    left, bottom = (min(corner[axis] for corner in splashback["outline"]) for axis in (0, 1))
    face["parts"].append(rail(left + 20, bottom + 50))
    saved.write_text(json.dumps(job), "utf-8")

    table, drawing, picture = (saved.with_name(f"counted.{ending}") for ending in ("json", "dxf", "png"))
    draws = (["draw", str(saved), "-o", str(path), "--face", "A"] for path in (drawing, picture))
    told(program, ["takeoff", str(saved), "--format", "json", "-o", str(table)], *draws)
    counted = json.loads(table.read_text("utf-8"))
    part = next(row for row in counted["parts"] if row["id"] == "rail")
    assert (part["kind"], part["finish"]) == ("grab rail", "fronts")
    assert part["coated_area_mm2"] == pytest.approx(60 * 30)
    joint = next(row for row in counted["joints"] if "rail" in row["parts"])
    assert joint["length_mm"] == pytest.approx(2 * (60 + 30))
    assert "GRAB-RAIL-VISIBLE" in drawing.read_text("utf-8")


def rail(x: float, y: float) -> dict[str, Any]:
    outline = [[x, y], [x + 60, y], [x + 60, y + 30], [x, y + 30]]
    return {"id": "rail", "kind": "grab rail", "outline": outline}
