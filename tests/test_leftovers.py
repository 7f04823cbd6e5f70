"""A test of the window that leaves something behind fails; what stood before does not count, and hides nothing."""

import os
import re
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QRunnable, QThread, QThreadPool, QTimer
from PySide6.QtWidgets import QWidget

from tests.leftovers import leave_out_what_stands, leftovers, running_threads

PROJECT = Path(__file__).parents[1]

LONG_MS = 60_000

LEAVING = """
import gc, threading
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QWidget

kept, stood = [], QTimer()

def test_tidy(qapp):
    widget = QWidget()
    widget.deleteLater()

def test_widget(qapp):
    kept.append(QWidget())

def test_timer(qapp):
    kept[-1].deleteLater()
    kept.append(QTimer())
    kept[-1].start(60_000)

def test_timer_that_stood_before(qapp):
    kept[-1].stop()
    stood.start(60_000)

def test_thread(qapp):
    stood.stop()
    threading.Thread(target=threading.Event().wait, daemon=True, name="still there").start()
"""
"""Tests of which each puts away what the one before left, and all but the first leave something."""

FIXTURES = "from tests.conftest import clean_window, standing\n"


def thread() -> tuple[str, Callable[[], None]]:
    ends = threading.Event()
    started = threading.Thread(target=ends.wait, name="waits")
    started.start()

    def end() -> None:
        ends.set()
        started.join()

    return "thread waits", end


def qt_thread() -> tuple[str, Callable[[], None]]:
    started = QThread()
    started.start()

    def end() -> None:
        started.quit()
        started.wait()

    return "thread <PySide6.QtCore.QThread", end


def task() -> tuple[str, Callable[[], None]]:
    ends = threading.Event()
    QThreadPool.globalInstance().start(QRunnable.create(ends.wait))

    def end() -> None:
        ends.set()
        QThreadPool.globalInstance().waitForDone()

    return "a task in Qt's thread pool", end


def timer() -> tuple[str, Callable[[], None]]:
    started = QTimer()
    started.start(LONG_MS)
    return "timer <PySide6.QtCore.QTimer", started.stop


def timer_that_stood_before() -> tuple[str, Callable[[], None]]:
    stood = QTimer()
    leave_out_what_stands()
    stood.start(LONG_MS)
    return "timer <PySide6.QtCore.QTimer", stood.stop


def widget() -> tuple[str, Callable[[], None]]:
    made = QWidget()
    return "widget <PySide6.QtWidgets.QWidget", made.deleteLater


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("leave", [thread, qt_thread, task, timer, timer_that_stood_before, widget])
def test_what_is_left_behind_is_named_until_it_is_gone(leave: Callable[[], tuple[str, Callable[[], None]]]) -> None:
    before = running_threads()
    words, put_away = leave()
    try:
        (found,) = leftovers(before)
    finally:
        put_away()
    assert found.startswith(words)
    assert leftovers(before) == ()


@pytest.mark.usefixtures("qapp")
def test_what_nobody_holds_is_not_left_behind() -> None:
    started = QTimer()
    started.start(LONG_MS)
    ring: list[object] = [started]
    ring.append(ring)  # goes only when garbage is collected
    del ring, started
    assert leftovers(running_threads()) == ()


@pytest.fixture
def outcome(tmp_path: Path) -> str:
    """What pytest says of tests that leave something behind."""
    (tmp_path / "conftest.py").write_text(FIXTURES)
    (tmp_path / "test_leaving.py").write_text(LEAVING)
    words = (sys.executable, "-m", "pytest", "--quiet", "-p", "no:cacheprovider", "--rootdir", str(tmp_path))
    ran = subprocess.run(
        (*words, str(tmp_path)),
        check=False,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(PROJECT), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
    )
    return ran.stdout


def test_a_test_that_leaves_something_behind_fails(outcome: str) -> None:
    assert "5 passed, 4 errors" in outcome, outcome
    assert re.findall(r"^E +Failed: left behind: (widget|timer|thread still there)", outcome, re.MULTILINE) == [
        "widget",
        "timer",
        "timer",
        "thread still there",
    ]
