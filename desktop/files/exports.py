"""Writes files for others: the takeoff as a table, the faces as drawings, the basket as a shopping list."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from desktop.look.plain import file_words
from desktop.painting.kept import all_faces
from desktop.printing.before_after import PICTURES, comparisons, write_comparisons
from desktop.printing.files import DRAWINGS, write_drawings
from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.errors import RecoatError
from shared.files.disk import write_atomically
from takeoff.bill import make_bill
from takeoff.memory import Memory
from takeoff.tables.basket_csv import basket_csv
from takeoff.tables.shopping_list import basket_html
from takeoff.tables.takeoff_csv import takeoff_csv
from takeoff.tables.takeoff_xlsx import write_xlsx

LISTS = {"html": "Shopping list for a phone (*.html)", "csv": "Basket as comma-separated values (*.csv)"}
TABLES = {"xlsx": "Spreadsheet (*.xlsx)", "csv": "Comma-separated values (*.csv)"}


class Exports(QObject):
    """The commands that write files for others.

    `written(words)` says that a file is written, `failed(words)` why it cannot be.
    """

    written = Signal(str)
    failed = Signal(str)

    def __init__(self, store: Store, background: Background, window: QWidget) -> None:
        super().__init__(window)
        self._store = store
        self._background = background
        self._window = window

    def table(self) -> None:
        """Ask for a file and write the takeoff to it."""
        self._ask("Takeoff table", TABLES, self._write_table)

    def shopping_list(self) -> None:
        """Ask for a file and write the shopping list to it."""
        self._ask("Shopping list", LISTS, self._write_list)

    def drawing(self) -> None:
        """Ask for a file and draw all faces to it."""
        self._ask("Drawing", DRAWINGS, self._write_drawing)

    def before_after(self) -> None:
        """Ask for a file and draw the rooms to it, as they are and as they will look."""
        self._ask("Before and after", PICTURES, self._write_before_after)

    def _ask(self, title: str, kinds: dict[str, str], write: Callable[[str], None]) -> None:
        shown = self._store.open
        folder = shown.path.parent if shown.path else Path.home()
        dialog = QFileDialog(self._window, title, str(folder), ";;".join(kinds.values()))
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix(next(iter(kinds)))
        dialog.selectFile(shown.path.stem if shown.path else file_words(shown.job.name))
        dialog.fileSelected.connect(write)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def _write_table(self, name: str) -> None:
        self._write(Path(name), TABLES, _table)

    def _write_list(self, name: str) -> None:
        self._write(Path(name), LISTS, _list)

    def _write_drawing(self, name: str) -> None:
        self._write(Path(name), DRAWINGS, _drawing)

    def _write_before_after(self, name: str) -> None:
        self._write(Path(name), PICTURES, _before_after)

    def _write(self, path: Path, kinds: dict[str, str], write: Callable[[Shown, Path], None]) -> None:
        if path.suffix.lower().lstrip(".") not in kinds:
            self.failed.emit(
                f"{path.name}: Recoat cannot write a file with this ending; choose one of {', '.join(kinds)}."
            )
            return
        shown = self._store.open

        def work() -> Path:
            write(shown, path)
            return path

        self._background.start(f"Writing {path.name}", work, self._done, self._fail)

    def _done(self, path: Path) -> None:
        self.written.emit(f"{path.name} is saved.")

    def _fail(self, error: RecoatError) -> None:
        self.failed.emit(str(error))


def _table(shown: Shown, path: Path) -> None:
    if path.suffix.lower() == ".xlsx":
        write_xlsx(shown.takeoff, shown.job, path, make_bill(shown.job, shown.takeoff))
    else:
        write_atomically(path, takeoff_csv(shown.takeoff, shown.job))


def _list(shown: Shown, path: Path) -> None:
    writer = basket_html if path.suffix.lower() == ".html" else basket_csv
    bill = make_bill(shown.job, shown.takeoff)
    write_atomically(path, writer(bill.basket, bill.job, bill.left_out))


def _drawing(shown: Shown, path: Path) -> None:
    """Write all faces as drawings. This goes on off the window's thread, so it has a memory of its own."""
    drawings = all_faces(shown.job, shown.takeoff, Memory())
    write_drawings(drawings, path, datetime.now().astimezone().date())


def _before_after(shown: Shown, path: Path) -> None:
    rooms = comparisons(shown.job, shown.takeoff, Memory())
    write_comparisons(rooms, path, datetime.now().astimezone().date())
