"""The screen that the benchmarks of a run paint on, at 2x scaling."""

import os

from PySide6.QtWidgets import QApplication

from desktop.look.palette import light
from desktop.start import application, dress

RATIO = 2.0


def screen() -> QApplication:
    """The one application of a run. What is begun in processes of its own keeps the usual scaling."""
    os.environ["QT_SCALE_FACTOR"] = f"{RATIO:g}"
    running = application()
    del os.environ["QT_SCALE_FACTOR"]
    dress(running, light())
    return running
