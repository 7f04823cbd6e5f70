"""The command line, as a person and a script meet it."""

import csv
import io
import json
import os
import subprocess
import sys
from pathlib import Path

import openpyxl
import pytest

from desktop.command_line import main
from shared.files.job import job_to_json, read_job_file, schema

PROJECT = Path(__file__).parents[2]


@pytest.fixture
def example(tmp_path: Path) -> Path:
    path = tmp_path / "harbour row.recoat"
    assert main(["example", str(path)]) == 0
    return path


@pytest.fixture
def sound(tmp_path: Path) -> Path:
    """A job with nothing to look at."""
    path = tmp_path / "sound.json"
    path.write_text('{"name": "Empty", "version": 1}')
    return path


def run(*arguments: str, stdout: int = subprocess.PIPE) -> subprocess.CompletedProcess[bytes]:
    """The program in a process of its own."""
    command = (sys.executable, "-c", "import sys; from desktop.command_line import main; sys.exit(main())", *arguments)
    return subprocess.run(command, check=False, cwd=PROJECT, stdout=stdout, stderr=subprocess.PIPE)


def error_of(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    """The one line that a command that fails tells."""
    assert main(arguments) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith("recoat: ")
    assert told.err.count("\n") == 1
    return told.err


def test_the_takeoff_is_shown_as_text(example: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["takeoff", str(example)]) == 0
    out = capsys.readouterr().out
    assert "gross" in out.splitlines()[0]
    assert out.splitlines()[-1].startswith("Coated ")


def test_every_format_tells_the_same_totals(example: Path, tmp_path: Path) -> None:
    files = {form: tmp_path / f"takeoff.{form}" for form in ("json", "csv", "xlsx")}
    for form, path in files.items():
        assert main(["takeoff", str(example), "--format", form, "-o", str(path)]) == 0
    totals = json.loads(files["json"].read_bytes())["totals"]
    rows = csv.DictReader(io.StringIO(files["csv"].read_bytes().decode(), newline=""))
    by_name = {row["name"]: row for row in rows if row["row"] == "total"}
    assert float(by_name["coated"]["coated m2"]) == pytest.approx(totals["coated_area_m2"], abs=1e-6)
    assert float(by_name["bead"]["length m"]) == pytest.approx(totals["bead_m"], abs=1e-6)
    sheet = openpyxl.load_workbook(files["xlsx"], data_only=True)["Totals"]
    shown = {row[0]: row[-1] for row in sheet.iter_rows(values_only=True)}
    assert shown["Masking m"] == pytest.approx(totals["masking_m"])


def test_csv_goes_to_standard_output_byte_for_byte(example: Path, tmp_path: Path) -> None:
    path = tmp_path / "takeoff.csv"
    main(["takeoff", str(example), "--format", "csv", "-o", str(path)])
    assert run("takeoff", str(example), "--format", "csv").stdout == path.read_bytes()


def test_the_takeoff_imports_no_qt_and_no_pint(example: Path) -> None:
    script = (
        "import sys; from desktop.command_line import main; main(); "
        "print(*{'PySide6', 'pint', 'ezdxf', 'xlsxwriter'} & set(sys.modules), file=sys.stderr)"
    )
    command = (sys.executable, "-c", script, "takeoff", str(example))
    done = subprocess.run(command, check=True, cwd=PROJECT, capture_output=True, text=True)
    assert done.stderr.strip() == ""


def test_the_basket_imports_no_qt_and_no_pint(example: Path) -> None:
    script = (
        "import sys; from desktop.command_line import main; main(); "
        "print(*{'PySide6', 'pint', 'ezdxf', 'xlsxwriter', 'openpyxl'} & set(sys.modules), file=sys.stderr)"
    )
    command = (sys.executable, "-c", script, "buy", str(example))
    done = subprocess.run(command, check=True, cwd=PROJECT, capture_output=True, text=True)
    assert done.stderr.strip() == ""


def priced(folder: Path, prices: str) -> tuple[str, str]:
    """A job that needs 2.25 L of a satin, and a price list for it."""
    part = {"id": "top", "kind": "benchtop", "outline": [[0, 0], [3000, 0], [3000, 3000], [0, 3000]]}
    face = {"id": "p", "name": "P", "view": "plan", "parts": [part]}
    job = {
        "name": "Quince Lane 2",
        "version": 1,
        "rooms": [{"id": "r", "name": "Kitchen", "faces": [face]}],
        "finishes": [
            {"id": "benchtop", "name": "Bench", "steps": [{"work": "colour", "product": "satin", "coats": 2}]},
            {"id": "tiles", "name": "Tiles"},
            {"id": "fronts", "name": "Fronts"},
        ],
        "products": [
            {"id": "satin", "name": "Satin", "use": "colour", "covers_m2": 8, "packs": [{"size": 1}, {"size": 2.5}]}
        ],
        "allowances": {"allowance": 0, "tray_l": 0},
    }
    (folder / "job.json").write_text(json.dumps(job), "utf-8")
    (folder / "prices.csv").write_text(prices, "utf-8")
    return str(folder / "job.json"), str(folder / "prices.csv")


def test_a_job_without_prices_says_so_beside_its_basket(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job, _ = priced(tmp_path, "")
    assert main(["buy", job]) == 0
    told = capsys.readouterr()
    assert "Satin                                   2.25 L  1 x 2.5 L" in told.out
    assert "Satin: no pack has a price" in told.err


def test_check_tells_what_cannot_be_bought(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job, _ = priced(tmp_path, "")
    assert main(["check", job]) == 1
    assert "Basket: Satin: no pack has a price" in capsys.readouterr().out


def test_prices_of_a_list_make_the_basket_the_cheapest(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job, prices = priced(tmp_path, "product;size;price\nSatin;1 L;10,00\nSatin;2,5 L;31,00\nGloss;1 L;9,00\n")
    assert main(["buy", job, "--prices", prices]) == 0
    told = capsys.readouterr()
    assert "3 x 1 L" in told.out
    assert "30.00" in told.out
    assert "prices.csv: UTF-8, separated by semicolons, decimal comma; lines taken 2, left out 1." in told.err
    assert "line 4: “Gloss”: the job has no such product" in told.err


def test_the_shopping_list_is_written_to_a_file(tmp_path: Path) -> None:
    job, prices = priced(tmp_path, "product,size,price\nsatin,2.5 L,31\n")
    page = tmp_path / "list.html"
    assert main(["buy", job, "--prices", prices, "--format", "html", "-o", str(page)]) == 0
    assert "1 x 2.5 L" in page.read_text("utf-8")


def test_every_figure_unfolds_on_the_terminal(example: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["takeoff", str(example), "--why"]) == 0
    out = capsys.readouterr().out
    assert "      width x height: 3600 x 2400 = 8.640 m2\n" in out
    assert "Proved: no cheaper set of packs covers the job." in out


def test_every_format_tells_the_same_cost(example: Path, tmp_path: Path) -> None:
    files = {form: tmp_path / f"basket.{form}" for form in ("text", "json", "csv", "xlsx", "html")}
    for form, path in files.items():
        assert main(["buy", str(example), "--format", form, "-o", str(path)]) == 0
    cost = json.loads(files["json"].read_bytes())["basket"]["cost"]
    assert cost > 0
    rows = csv.DictReader(io.StringIO(files["csv"].read_bytes().decode(), newline=""))
    assert [float(row["cost"]) for row in rows if row["row"] == "total" and row["product"] == "cost"] == [cost]
    sheet = openpyxl.load_workbook(files["xlsx"], data_only=True)["Basket"]
    assert [row[7] for row in sheet.iter_rows(values_only=True) if str(row[0]).startswith("Total")] == [cost]
    for form in ("text", "html"):
        assert f"{cost:.2f}" in files[form].read_text("utf-8")


def test_another_measuring_rule_is_named_in_the_takeoff(example: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["takeoff", str(example), "--rule", "is-1200-13"]) == 0
    assert "by is-1200-13: openings up to 0.5 m2 not deducted" in capsys.readouterr().out


def test_check_tells_what_to_look_at_and_exits_1(example: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(example)]) == 1
    assert "are 3 mm apart" in capsys.readouterr().out


def test_check_exits_0_where_nothing_is_odd(sound: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(sound)]) == 0
    assert capsys.readouterr().out == "Nothing to look at.\n"


def test_the_schemas_are_written(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == schema()
    assert main(["schema", "takeoff"]) == 0
    assert "masking" in capsys.readouterr().out


def test_a_job_goes_to_json_and_back_unchanged(example: Path, tmp_path: Path) -> None:
    plain, back = tmp_path / "plain.json", tmp_path / "back.recoat"
    assert main(["convert", str(example), "-o", str(plain)]) == 0
    assert main(["convert", str(plain), "-o", str(back)]) == 0
    assert plain.read_bytes() == job_to_json(read_job_file(example).job)
    assert back.read_bytes() == example.read_bytes()


def test_one_face_is_drawn_by_its_name(example: Path, tmp_path: Path) -> None:
    whole, one = tmp_path / "all.dxf", tmp_path / "one.dxf"
    assert main(["draw", str(example), "-o", str(whole)]) == 0
    assert main(["draw", str(example), "-o", str(one), "--face", "A"]) == 0
    assert 0 < one.stat().st_size < whole.stat().st_size


@pytest.mark.parametrize("ending", ["pdf", "png", "svg"])
def test_a_picture_is_drawn_without_a_display(example: Path, tmp_path: Path, ending: str) -> None:
    path = tmp_path / f"faces.{ending}"
    done = run("draw", str(example), "-o", str(path), "--face", "A")
    assert (done.returncode, done.stderr) == (0, b"")
    assert path.stat().st_size > 0


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("takeoff", "missing.recoat"), "missing.recoat: there is no such file or folder"),
        (("takeoff",), "the following arguments are required: JOB"),
        (("takeoff", "JOB", "--format", "ods"), "invalid choice: 'ods'"),
        (
            ("takeoff", "JOB", "--rule", "by eye"),
            'there is no measuring rule "by eye"; the rules are net, is-1200-13, wholly-within',
        ),
        (("takeoff", "JOB", "--format", "xlsx"), "a spreadsheet cannot be shown on a terminal; name a file with -o"),
        (("takeoff", "JOB", "-o", "nowhere/x.txt"), "there is no such file or folder"),
        (
            ("takeoff", "JOB", "--why", "--format", "csv"),
            "--why writes text, not csv; leave out --format or --why",
        ),
        (("takeoff", "JOB", "-o", "JOB"), "this file is the job itself and would be overwritten"),
        (("buy", "JOB", "--format", "xlsx"), "a spreadsheet cannot be shown on a terminal; name a file with -o"),
        (("buy", "JOB", "-o", "JOB"), "this file is the job itself and would be overwritten"),
        (("buy", "JOB", "--prices", "missing.csv"), "missing.csv: there is no such file or folder"),
        (("buy", "JOB", "--prices", "FOLDER"), "this is a folder"),
        (("convert", "JOB", "-o", "JOB"), "this file is the job itself and would be overwritten"),
        (("example", "JOB"), "this file exists already and would be overwritten"),
        (("draw", "JOB", "-o", "x.docx"), "Recoat cannot write a drawing with this ending"),
        (("draw", "JOB", "-o", "x.dxf", "--face", "Z"), 'the job has no face "Z"; its faces are A, B'),
        (("open", "missing.recoat"), "missing.recoat: there is no such file"),
        (("missing.recoat",), "missing.recoat: there is no such file"),
        (("measure", "JOB"), 'there is no command "measure"'),
        (("schema", "basket"), "invalid choice: 'basket'"),
        (("check", "FOLDER"), "this is a folder"),
    ],
)
def test_an_error_is_one_line_that_says_what_to_do(
    example: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], words: str
) -> None:
    before = example.read_bytes()
    places = {"JOB": str(example), "FOLDER": str(tmp_path)}
    assert words in error_of(capsys, *(places.get(argument, argument) for argument in arguments))
    assert example.read_bytes() == before


def test_no_output_replaces_the_price_list_under_whatever_name(
    example: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    prices, link = tmp_path / "prices.csv", tmp_path / "link.csv"
    prices.write_text("Product,Size,Price\nPrimer,1 L,20\n")
    link.symlink_to(prices)
    before = prices.read_bytes()
    for one, other in ((prices, prices), (prices, link), (link, prices)):
        told = error_of(capsys, "buy", str(example), "--prices", str(one), "-o", str(other))
        assert "this file is the price list and would be overwritten; name another file" in told
    assert prices.read_bytes() == before


def test_ctrl_c_ends_a_command_with_130_and_one_line(
    example: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupted(_: Path) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("takeoff.opening.open_job", interrupted)
    assert main(["takeoff", str(example)]) == 130
    assert capsys.readouterr().err == "recoat: stopped.\n"


def job_of(outline: str) -> bytes:
    part = '{"id": "p", "kind": "wall", "outline": ' + outline + "}"
    face = '{"id": "a", "name": "A", "parts": [' + part + "]}"
    return ('{"name": "x", "version": 1, "rooms": [{"id": "r", "name": "", "faces": [' + face + "]}]}").encode()


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"PK\x03\x04 cut off",
        b"[" * 100_000,
        b'{"name": "x", "version": 99}',
        b'{"name": 3, "version": 1}',
        job_of("[[0, 0, 0], [1e300, 0, 0], [0, 5, 0]]"),
        job_of("[[0, 0, 0], [9, 9, 0], [9, 0, 0], [0, 9, 0]]"),
        job_of("[[0, 0, 0], [NaN, 0, 0], [0, 5, 0]]"),
    ],
)
def test_a_bad_job_is_one_line_for_every_command(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], content: bytes
) -> None:
    path = tmp_path / "bad.json"
    path.write_bytes(content)
    output = str(tmp_path / "out.dxf")
    for arguments in (("takeoff",), ("buy",), ("check",), ("draw", "-o", output), ("convert", "-o", output)):
        assert str(path) in error_of(capsys, arguments[0], str(path), *arguments[1:])
    assert not Path(output).exists()


def test_a_reader_that_goes_away_is_told_in_one_line(example: Path) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    try:
        done = run("takeoff", str(example), stdout=writing)
    finally:
        os.close(writing)
    assert done.returncode == 2
    assert done.stderr.startswith(b"recoat: the program that reads the output has stopped")
    assert done.stderr.count(b"\n") == 1


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no /dev/full")
def test_a_full_disk_is_told_in_one_line(example: Path) -> None:
    with Path("/dev/full").open("wb") as full:
        done = run("takeoff", str(example), stdout=full.fileno())
    assert (done.returncode, done.stderr.count(b"\n")) == (2, 1)
    assert b"the disk is full" in done.stderr


def test_version_and_help_are_no_errors(capsys: pytest.CaptureFixture[str]) -> None:
    for option, words in (("--version", "recoat 0."), ("--help", "takeoff")):
        with pytest.raises(SystemExit) as exit_:
            main([option])
        assert exit_.value.code == 0
        assert words in capsys.readouterr().out


def test_a_price_list_does_not_steer_the_terminal(
    example: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    prices = tmp_path / "\u202eprices.csv"
    prices.write_text("product,size,price\n\x1b[2Jgrip\u202e,4 L,1\n", encoding="utf-8")
    assert main(["buy", str(example), "--prices", str(prices)]) == 0
    told = capsys.readouterr()
    assert "?[2Jgrip?" in told.err
    assert (told.out + told.err).replace("\n", "").isprintable()


def test_a_library_that_fails_does_not_steer_the_terminal(
    example: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: object) -> None:
        raise ImportError("\x1b[2J\u202e")

    monkeypatch.setattr("takeoff.opening.open_job", fail)
    assert "cannot be loaded (?[2J?)" in error_of(capsys, "takeoff", str(example))


@pytest.mark.skipif(sys.platform == "win32", reason="this system has no such terminals")
def test_what_is_shown_on_a_terminal_steers_nothing_in_any_format(tmp_path: Path) -> None:
    job = tmp_path / "job.json"
    job.write_text('{"name": "Em\u200fpty", "version": 1}', encoding="utf-8")
    for command in (("takeoff",), ("takeoff", "--format", "csv"), ("takeoff", "--why"), ("buy", "--format", "html")):
        ours, theirs = os.openpty()
        try:
            assert run(command[0], str(job), *command[1:], stdout=theirs).returncode == 0
            shown = os.read(ours, 100_000).decode()
        finally:
            os.close(theirs)
            os.close(ours)
        assert "\u200f" not in shown
        assert shown.count("\n") >= 1
