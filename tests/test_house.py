"""The invariants of the house that no other tool holds; DEVELOPERS.md lists them all."""

import ast
import re
import subprocess
import sys
import tomllib
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from shared.findings import Code

PROJECT = Path(__file__).parents[1]
ROOMS = ("desktop", "takeoff", "geometry", "shared")

LONGEST_MODULE = 400
LONGEST_FUNCTION = 40
FULLEST_FOLDER = 22

# What is slow to start (40 to 284 ms each, by measurement) and not always needed may be imported where first used.
SLOW_TO_START = {"PySide6", "ezdxf", "openpyxl", "ortools", "pint", "xlsxwriter"}

BANNED_NAMES = {"base", "helper", "helpers", "manager", "misc", "util", "utils"}

# The one module that spells the codes of findings; and where the same word means something else, as a field's name.
CODES = Path("shared/findings.py")
ALSO_OTHER_WORDS = {
    ("fields.py", "ratio"),
    ("front_rows.py", "hinges"),
    ("rows.py", "gap"),
}

# Written so that this file does not hold what it looks for.
MACHINE_TRACES = re.compile(
    r"(?:^|[\s\"'=(`])/(?:root|home|work|opt|Users)/\w"
    r"|files\.python" + r"hosted\.org|pypi\.python" + r"\.org|pypi" + r"\.org|deb\.debian" + r"\.org"
    r"|--(?:extra-)?index-" + r"url|--find-" + r"links",
    re.MULTILINE,
)
EXEMPTIONS = re.compile(r"#\s*(?:type:\s*ig" + r"nore|no" + r"qa|ruff:\s*no" + r"qa|mypy:\s*ig" + r"nore)")


def written_files() -> tuple[Path, ...]:
    """Every file that git holds or would take."""
    listing = subprocess.run(
        ("git", "-C", str(PROJECT), "ls-files", "-z", "--cached", "--others", "--exclude-standard"),
        check=True,
        capture_output=True,
        text=True,
    ).stdout
    files = (PROJECT / name for name in listing.split("\0") if name)
    return tuple(sorted({file for file in files if file.is_file()}))


def written_texts() -> Iterator[tuple[Path, str]]:
    for file in written_files():
        try:
            yield file.relative_to(PROJECT), file.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue


@pytest.fixture(scope="session")
def texts() -> dict[Path, str]:
    return dict(written_texts())


@pytest.fixture(scope="session")
def modules(texts: dict[Path, str]) -> dict[Path, ast.Module]:
    return {file: ast.parse(text) for file, text in texts.items() if file.suffix == ".py"}


@pytest.fixture(scope="session")
def project_file() -> dict[str, Any]:
    return tomllib.loads((PROJECT / "pyproject.toml").read_text(encoding="utf-8"))


def functions_of(module: ast.Module) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    return (node for node in ast.walk(module) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef))


def late_imports_of(module: ast.Module) -> Iterator[str]:
    """The first name of everything that is imported inside a function."""
    for function in functions_of(module):
        for node in ast.walk(function):
            if isinstance(node, ast.ImportFrom):
                yield (node.module or "").partition(".")[0]
            elif isinstance(node, ast.Import):
                yield from (alias.name.partition(".")[0] for alias in node.names)


def layer_contracts(project_file: dict[str, Any]) -> list[dict[str, Any]]:
    return [each for each in project_file["tool"]["importlinter"]["contracts"] if each["type"] == "layers"]


def in_rooms(file: Path) -> bool:
    return file.parts[0] in ROOMS


def test_a_module_fits_in_the_head(texts: dict[Path, str]) -> None:
    lengths = {str(file): len(text.splitlines()) for file, text in texts.items() if file.suffix == ".py"}
    assert {file: lines for file, lines in lengths.items() if lines > LONGEST_MODULE} == {}


def test_a_function_fits_on_a_screen(modules: dict[Path, ast.Module]) -> None:
    lengths = {
        f"{file}:{function.lineno} {function.name}": (function.end_lineno or function.lineno) - function.lineno + 1
        for file, module in modules.items()
        for function in functions_of(module)
    }
    assert {name: lines for name, lines in lengths.items() if lines > LONGEST_FUNCTION} == {}


def test_no_check_is_switched_off_for_a_line(texts: dict[Path, str]) -> None:
    assert [str(file) for file, text in texts.items() if file.suffix == ".py" and EXEMPTIONS.search(text)] == []


def test_only_what_is_slow_to_start_is_imported_late(modules: dict[Path, ast.Module]) -> None:
    allowed = SLOW_TO_START | set(ROOMS)
    late = {(str(file), name) for file, module in modules.items() if in_rooms(file) for name in late_imports_of(module)}
    assert {(file, name) for file, name in late if name not in allowed} == set()


def test_no_finding_is_asked_for_by_a_bare_word(modules: dict[Path, ast.Module]) -> None:
    words = {code.value for code in Code}
    bare = {
        (file.name, node.value)
        for file, module in modules.items()
        if in_rooms(file) and file != CODES
        for node in ast.walk(module)
        if isinstance(node, ast.Constant) and node.value in words
    }
    assert bare == ALSO_OTHER_WORDS


def test_modules_are_named_by_what_they_hold(modules: dict[Path, ast.Module]) -> None:
    assert [str(file) for file in modules if in_rooms(file) and BANNED_NAMES & set(file.stem.split("_"))] == []


def test_no_file_names_this_machine_or_a_registry(texts: dict[Path, str]) -> None:
    found = {str(file): match.group() for file, text in texts.items() if (match := MACHINE_TRACES.search(text))}
    assert found == {}


def test_every_room_is_layered_typed_and_installed(project_file: dict[str, Any]) -> None:
    tools = project_file["tool"]
    layers = next(each for each in layer_contracts(project_file) if "containers" not in each)
    assert tuple(layers["layers"]) == ROOMS
    assert tuple(tools["importlinter"]["root_packages"]) == ROOMS
    assert set(ROOMS) <= set(tools["mypy"]["files"])
    assert {name for name in tools["setuptools"]["packages"]["find"]["include"] if "." not in name} == set(ROOMS)


def test_the_folders_of_every_room_are_layered_whole_and_without_circles(project_file: dict[str, Any]) -> None:
    inside = {room: each for each in layer_contracts(project_file) for room in each.get("containers", ())}
    assert set(inside) == set(ROOMS)
    assert all(each["exhaustive"] is True for each in inside.values())
    contracts = project_file["tool"]["importlinter"]["contracts"]
    (circles,) = (each for each in contracts if each["type"] == "acyclic_siblings")
    assert set(circles["ancestors"]) == set(ROOMS)


def test_a_folder_holds_no_more_than_the_eye_takes_in(modules: dict[Path, ast.Module]) -> None:
    held = Counter(file.parent for file in modules if file.name != "__init__.py" and in_rooms(file))
    assert {str(folder): many for folder, many in held.items() if many > FULLEST_FOLDER} == {}


def test_every_folder_says_in_one_sentence_what_it_is_for_and_what_it_uses(modules: dict[Path, ast.Module]) -> None:
    doors = {file: module for file, module in modules.items() if in_rooms(file) and file.name == "__init__.py"}
    assert {file.parent for file in doors} == {file.parent for file in modules if in_rooms(file)}
    assert [str(file) for file, module in doors.items() if " uses " not in (ast.get_docstring(module) or "")] == []
    assert [str(file) for file, module in doors.items() if len(module.body) != 1] == []


def test_tests_stand_in_the_folders_of_what_they_test(modules: dict[Path, ast.Module]) -> None:
    folders = {file.parent for file in modules if in_rooms(file)}
    tested = {file.relative_to("tests").parent for file in modules if file.parts[0] == "tests" and len(file.parts) > 2}
    assert {str(folder) for folder in tested if folder.parts[0] in ROOMS} <= {str(folder) for folder in folders}


def test_the_guide_shows_the_folders_that_there_are(texts: dict[Path, str], modules: dict[Path, ast.Module]) -> None:
    rooms = re.findall(
        rf"^    ({'|'.join(ROOMS)})/ +([\w, ]+)\n((?: {{17}}[\w ]+\n)+)", texts[Path("DEVELOPERS.md")], re.MULTILINE
    )
    shown = {room: (set(doors.split(", ")), set(folders.split())) for room, doors, folders in rooms}
    there = {
        room: (
            {file.stem for file in modules if file.parent == Path(room)} - {"__init__"},
            {file.parts[1] for file in modules if file.parts[0] == room and len(file.parts) > 2},
        )
        for room in ROOMS
    }
    assert shown == there


def test_no_layering_contract_has_an_exception(project_file: dict[str, Any]) -> None:
    contracts = project_file["tool"]["importlinter"]["contracts"]
    assert [each["name"] for each in contracts if "ignore_imports" in each] == []


def test_the_command_line_starts_without_qt_or_what_is_slow() -> None:
    script = f"import sys, desktop.command_line; print(*sorted({SLOW_TO_START!r} & set(sys.modules)))"
    started = subprocess.run((sys.executable, "-c", script), check=False, cwd=PROJECT, capture_output=True, text=True)
    assert (started.returncode, started.stdout.strip(), started.stderr) == (0, "", "")


def test_the_lower_rooms_and_their_tests_need_no_qt() -> None:
    script = (
        "import sys, pytest\n"
        "sys.modules['PySide6'] = sys.modules['shiboken6'] = None\n"
        "folders = ['tests/shared', 'tests/geometry', 'tests/takeoff']\n"
        "sys.exit(pytest.main(['--collect-only', '--quiet', '-p', 'no:pytest-qt', '-p', 'no:cacheprovider',\n"
        "    '--assert=plain', *folders]))"
    )
    collected = subprocess.run((sys.executable, "-c", script), check=False, cwd=PROJECT, capture_output=True, text=True)
    assert collected.returncode == 0, collected.stdout + collected.stderr


def test_every_test_that_the_guide_names_exists(texts: dict[Path, str], modules: dict[Path, ast.Module]) -> None:
    named = re.findall(r"\btest_\w+(?!\.py)\b(?!\.py)", texts[Path("DEVELOPERS.md")])
    defined = {function.name for module in modules.values() for function in functions_of(module)}
    assert named
    assert not set(named) - defined
