"""Take the pictures in README.md: the real window on the example, page after page, light and dark.

make pictures
"""

from pathlib import Path
from time import sleep

from PySide6.QtCore import QStandardPaths
from PySide6.QtWidgets import QApplication

from desktop.app import App
from desktop.buy.page import BUY
from desktop.count.page import COUNT
from desktop.finish.page import FINISH
from desktop.look.palette import Look, dark, light
from desktop.start import application, put_together
from desktop.state.shown import Overlay
from desktop.state.store import counted_file
from shared.files.job import read_job_file

HERE = Path(__file__).parent
JOB = HERE / "harbour-row.recoat"
PICTURES = HERE / "pictures"
SIZE = (1280, 720)
PAUSE_S = 0.02
PICKED, COUNTED = ("A", "a-splash"), "b-splash"
"""The ids of the face and the part that are picked in Measure, and of the part whose sum is unfolded in Count."""


def take_pictures(qt: QApplication, name: str, look: Look) -> None:
    """Open a window with this look, turn to each page, and write a picture of it."""
    app = put_together(qt, look, copies_in=HERE / "no copies")
    app.store.show_job(counted_file(read_job_file(JOB)), JOB, saved=True)
    app.window.resize(*SIZE)
    app.window.show()
    face, part = PICKED
    app.store.show_face(face, (part,))
    _grab(qt, app, f"measure-{name}.png")
    _wait_for_bill(qt, app)
    for page in (FINISH, BUY):
        app.store.turn_to(page)
        _grab(qt, app, f"{page.name.lower()}-{name}.png")
    app.store.turn_to(COUNT)
    app.store.turn_overlay(Overlay.JOINTS)
    _pick_row(app)
    _grab(qt, app, f"count-{name}.png")
    app.window.close_now()


def _wait_for_bill(qt: QApplication, app: App) -> None:
    """Wait until the basket is reckoned in the background."""
    while app.store.open.bill is None:
        qt.processEvents()
        sleep(PAUSE_S)


def _pick_row(app: App) -> None:
    """Pick a part in the table and unfold its sum."""
    row = app.count.model.index_of(f"part {COUNTED}")
    app.count.tree.setCurrentIndex(row)
    app.count.tree.expand(row)


def _grab(qt: QApplication, app: App, name: str) -> None:
    """Let the window settle, then write what it shows."""
    qt.processEvents()
    app.window.grab().save(str(PICTURES / name))
    print(f"wrote pictures/{name}")


def main() -> None:
    """Take all pictures, with settings apart, so that the person's recent files stay as they are and are not seen."""
    QStandardPaths.setTestModeEnabled(True)
    qt = application()
    PICTURES.mkdir(exist_ok=True)
    for name, look in (("light", light()), ("dark", dark())):
        take_pictures(qt, name, look)


if __name__ == "__main__":
    main()
