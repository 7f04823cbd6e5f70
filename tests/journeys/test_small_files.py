"""Small files that would cost a great deal end soon, in a sentence or with a result, and never fill the memory."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.journeys import small_files as small
from tests.journeys.hostile import job_of, rectangle

MOST_CPU_S = 10
"""Seconds of the processor, far above the 5 that a good machine may take: what a busy machine takes does not count."""

MOST_WAIT_S = 100.0
MOST_BYTES = 2**30
COMMAND = f"""
import atexit, os, resource, sys
from pathlib import Path

def tell():
    lines = Path("/proc/self/status").read_text().splitlines() if sys.platform == "linux" else ()
    own = [int(line.split()[1]) * 1024 for line in lines if line.startswith("VmHWM:")]
    os.write(int(sys.argv[1]), str((own or [resource.getrusage(resource.RUSAGE_SELF).ru_maxrss])[0]).encode())

atexit.register(tell)
resource.setrlimit(resource.RLIMIT_CPU, ({MOST_CPU_S}, {MOST_CPU_S}))
from desktop.command_line import main
sys.exit(main(sys.argv[2:]))
"""
"""The program tells its own greatest memory: the system counts that of the test, which starts it, into the child's."""

EXAMPLE = Path(__file__).parents[2] / "desktop" / "data" / "example.json"


def _ended(*words: str | Path) -> tuple[int, str, int]:
    """The exit code of the program, what it said, and the most memory it took. Its time on the processor is bounded."""
    told, tell = os.pipe()
    with os.fdopen(told) as memory:
        run = [sys.executable, "-c", COMMAND, str(tell), *map(str, words)]
        done = subprocess.run(
            run, check=False, pass_fds=(tell,), stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=MOST_WAIT_S
        )
        os.close(tell)
        return done.returncode, done.stdout.decode(), int(memory.read() or 2**40)


def _assert_refused(words: str, *asked: str | Path) -> None:
    code, said, memory = _ended(*asked)
    assert (code, len(said.splitlines())) == (2, 1), said[-2000:]
    assert words in said
    assert said.rstrip().endswith(".")
    assert memory < MOST_BYTES


JOBS: dict[str, tuple[Callable[[], bytes], str]] = {
    "zigzag tiles": (
        lambda: small.as_json(job_of(small.part("p", small.zigzag(), tiles=small.MOSAIC))),
        "face A, Mosaic (p): its outline, with those of the tiled parts before it, runs through too many tiles",
    ),
    "400 circles": (
        lambda: small.as_json(job_of(*small.circles(400))),
        "face A: too many parts with many sides lie on or across each other",
    ),
    "two zigzags across each other": (
        lambda: small.as_json(job_of(small.part("a", small.zigzag()), small.part("b", small.zigzag(turned=True)))),
        "face A: too many parts lie on or across each other",
    ),
    "an outline all of whose sides pass each other": (
        lambda: small.as_json(job_of(small.part("p", small.slanting()))),
        "Mosaic (p): too many sides of its outline pass each other",
    ),
    "three thousand mosaics": (lambda: small.as_json(small.mosaics()), "runs through too many tiles to count them"),
    "corners without end": (lambda: small.as_json(small.round_outlines(101)), "the job has 200994 corners"),
    "readings without end": (
        lambda: small.as_json(small.disagreeing(60)),
        "readings; Recoat can measure at most 20000",
    ),
    "ties without end": (lambda: small.as_json(small.tied(20_000)), "the job has 20000 ties"),
    "a job that unpacks to a list of corners": (
        lambda: small.long_list("[0,0]", 60, small.OUTLINE, "]}]}]}]}"),
        "the job is larger than 32 MB",
    ),
    "a job of wrong types": (
        lambda: small.long_list("{}", 30, small.FACE, "]}]}]}"),
        'room 1, face 1, part 1: the field "id" is missing',
    ),
    "a version that never was": (
        lambda: small.long_list("[[]]", 30, '{"version":0,"x":[', "]}"),
        "no Recoat ever wrote version 0",
    ),
}


@pytest.mark.parametrize("name", JOBS)
def test_a_small_job_that_would_cost_much_is_refused_soon(tmp_path: Path, name: str) -> None:
    make, words = JOBS[name]
    path = tmp_path / "small.recoat"
    path.write_bytes(make())
    assert path.stat().st_size < 5 * 2**20
    _assert_refused(words, "takeoff", path)


LISTS: dict[str, tuple[Callable[[], bytes], str]] = {
    "line ends": (lambda: b"\n" * (16 * 2**20 - 1), "it has more than 20000 lines"),
    "headings without a price": (
        lambda: b",".join([b"product size"] * 10**6),
        "no column is headed product or price",
    ),
    "styles": (lambda: small.spreadsheet(styles=b"<cellXfs>" + b"<xf/>" * 5_000_000 + b"</cellXfs>"), "too many cells"),
    "fewer styles": (
        lambda: small.spreadsheet(styles=b"<cellXfs>" + b"<xf/>" * 490_000 + b"</cellXfs>"),
        "too many cells",
    ),
    "texts": (lambda: small.spreadsheet(texts=b"<si><t>a</t></si>" * 2_500_000), "too many cells, texts and styles"),
    "cells": (
        lambda: small.spreadsheet(rows=b'<row r="1">' + b'<c r="A1"><v>1</v></c>' * 1_800_000 + b"</row>"),
        "too many cells, texts and styles",
    ),
    "tables": (lambda: small.spreadsheet(rows=b"<row/>" * 50_000, tables=1_000), "it has 1000 tables"),
}


@pytest.mark.parametrize("name", LISTS)
def test_a_price_list_that_would_cost_much_is_refused_soon(tmp_path: Path, name: str) -> None:
    make, words = LISTS[name]
    path = tmp_path / "small.prices"
    path.write_bytes(make())
    _assert_refused(words, "buy", EXAMPLE, "--prices", path)


def test_what_is_large_and_sound_is_measured_all_the_same(tmp_path: Path) -> None:
    path = tmp_path / "large.json"
    wall = small.part("p", rectangle(0, 0, small.MOST_MM - 10, small.MOST_MM - 10), tiles=small.MOSAIC)
    path.write_bytes(small.as_json(small.faces([wall], list(small.circles(60)))))
    code, said, memory = _ended("takeoff", path)
    assert code == 0, said[-2000:]
    assert memory < MOST_BYTES
