"""The window, from the start of the program until it is on the screen, compared with a bare window of PySide6."""

import subprocess
import sys
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from benchmarks.measuring import Measured, medians

PROJECT = Path(__file__).parents[1]

GOAL = 2.5
"""The greatest ratio of the time for the window to that for a bare window of PySide6."""

BARE = """
from PySide6.QtWidgets import QApplication, QMainWindow
application = QApplication([])
window = QMainWindow()
window.resize(1280, 720)
window.show()
while not window.windowHandle().isExposed():
    application.processEvents()
"""

START = """
from desktop.start import application, dress, shown_window
from desktop.look.palette import system_look
running, look = application(), system_look()
dress(running, look)
window = shown_window(running)
"""

EXAMPLE = f"""
{START}
from pathlib import Path
from desktop.start import put_together
app = put_together(running, look, window)
app.files.open_path(Path("examples/harbour-row.json"))
while app.store.shown is None:
    running.processEvents()
running.processEvents()
"""

END = """
import os
os._exit(0)
"""
"""The process ends without closing down, since that is not measured."""


def measured() -> Iterator[Measured]:
    """The ratios of whole processes: until the window is shown, and until it shows the example."""
    bare, start, example = medians(partial(_run, BARE), partial(_run, START), partial(_run, EXAMPLE))
    yield Measured("bare window", bare, "{:.0f} ms")
    yield Measured("window, of a bare one", start / bare, "{:.2f}", GOAL)
    yield Measured("window with the example on it, of a bare one", example / bare, "{:.2f}")


def _run(words: str) -> None:
    subprocess.run((sys.executable, "-c", words + END), check=True, stdout=subprocess.DEVNULL, cwd=PROJECT)
