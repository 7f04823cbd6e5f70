"""A window in a process of its own, in which somebody draws a part every 300 ms; it prints when each part stood.

It is run with the folder for its copies, and perhaps with the job's own file.
"""

import sys
import time
from pathlib import Path

from PySide6.QtCore import QTimer

from desktop.look.palette import light
from desktop.start import application, keep_work_at_the_end, put_together
from geometry.outlines.shapes import box
from shared.edits.drawn import with_parts
from shared.files.job import JobFile
from shared.job import Face, Job, Part, Room, View
from shared.trade.kinds import Kind

EVERY_MS = 300


def drawn() -> Job:
    """A kitchen of one wall, on which nothing stands yet."""
    wall = Part("wall", Kind.WALL, box(0, 0, 90_000, 2400))
    return Job("evening", rooms=(Room("r", "kitchen", faces=(Face("a", "A", View.ELEVATION, (wall,)),)),))


def main() -> int:
    """Draw until something ends the window."""
    qt = application()
    app = put_together(qt, light(), copies_in=Path(sys.argv[1]))
    app.files.show_new(JobFile(drawn()))
    app.window.show()
    many = 0

    def draw() -> None:
        nonlocal many
        if not app.window.isVisible():
            return  # nobody draws in a window that is closed
        shown = app.store.open
        many += 1
        shelf = Part(f"s{many}", Kind.SHELF, box(many * 20, 100, 15, 100))
        app.store.edit("draw a shelf", with_parts(shown.job, "a", (shelf,)))
        sys.stdout.write(f"{many} {time.time()}\n")
        sys.stdout.flush()

    timer = QTimer(app)
    timer.timeout.connect(draw)
    timer.start(EVERY_MS)
    signals = keep_work_at_the_end(qt, app)
    code = qt.exec()
    timer.stop()
    signals.uninstall()
    return code


if __name__ == "__main__":
    sys.exit(main())
