"""The screen that the benchmarks of one process paint on, at 2x scaling."""

import os

from PySide6.QtWidgets import QApplication

from desktop.look.palette import light
from desktop.start import application, dress

RATIO = 2.0


def screen() -> QApplication:
    """The one application of this process. Benchmarks in processes of their own keep the usual scaling."""
    os.environ["QT_SCALE_FACTOR"] = f"{RATIO:g}"
    running = application()
    del os.environ["QT_SCALE_FACTOR"]
    dress(running, light())
    return running
