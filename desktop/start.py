"""Starts the program. The window appears first and is filled right after, so that nobody waits at an empty screen."""

import gc
import logging
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEventLoop, QLoggingCategory
from PySide6.QtWidgets import QApplication

from desktop.look.palette import Look, system_look
from desktop.look.style import palette, style_sheet
from desktop.window.end_signals import EndSignals
from desktop.window.main_window import NAME, Window

if TYPE_CHECKING:
    from desktop.app import App


def application() -> QApplication:
    """Qt's application, with the name of the program. It is made if none runs.

    Qt's own log of photos that cannot be read is off: the program tells of them itself.
    """
    QLoggingCategory.setFilterRules("qt.gui.imageio.*=false")
    running = QApplication.instance()
    app = running if isinstance(running, QApplication) else QApplication(sys.argv[:1])
    app.setApplicationName(NAME)
    app.setOrganizationName(NAME)
    app.setStyle("Fusion")
    return app


def dress(app: QApplication, look: Look) -> None:
    """Give all widgets of the application this look."""
    app.setPalette(palette(look))
    app.setStyleSheet(style_sheet(look))


def put_together(qt: QApplication, look: Look, window: Window | None = None, *, copies_in: Path | None = None) -> "App":
    """Everything in the window, in this look; `copies_in` as in `App`.

    It is dressed once it stands: Qt works out a style sheet anew for all that is put into something else, and widgets
    are put into one another many times over. That took two thirds of the time.
    """
    from desktop.app import App  # late: with it come shapely and numpy, which take longer than the window

    qt.setStyleSheet("")
    app = App(look, window, copies_in)
    dress(qt, look)
    return app


def shown_window(qt: QApplication) -> Window:
    """The window, once it is on the screen. Its doors are still closed."""
    window = Window()
    window.start.setEnabled(False)
    window.show()
    handle = window.windowHandle()
    while not handle.isExposed():
        qt.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
    return window


def settle_down() -> None:
    """Leave everything made so far out of Python's search for garbage. The search took 30 ms each time, amid a drag."""
    gc.freeze()


def keep_work_at_the_end(qt: QApplication, app: "App") -> EndSignals:
    """Let nothing be lost when the system ends the program or the person's session; call `uninstall` at the end."""

    def end(number: int) -> None:
        app.end()
        qt.exit(EndSignals.EXIT_CODE + number)

    qt.commitDataRequest.connect(app.keep_safe)
    signals = EndSignals(end, app)
    signals.install()
    return signals


def open_window(path: str | None) -> int:
    """Show the window until it is closed, on the job in the file at `path` if there is one. Returns the exit code."""
    logging.basicConfig(level=logging.WARNING, stream=sys.stderr, format="recoat: %(message)s")
    qt, look = application(), system_look()
    dress(qt, look)
    window = shown_window(qt)
    app = put_together(qt, look, window)
    app.report.install()
    window.start.open_doors()
    settle_down()
    if path is not None:
        app.files.open_path(Path(path))
    signals = keep_work_at_the_end(qt, app)
    try:
        return qt.exec()
    finally:
        signals.uninstall()
        app.report.uninstall()
        window.deleteLater()
