"""The command that takes prices from a shop's list, after the person has read a report of it."""

from pathlib import Path
from threading import Event

from PySide6.QtCore import QObject, QPoint, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from desktop.files.prices_form import PricesForm
from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.errors import RecoatError
from takeoff.prices.listed import PriceList, read_price_list
from takeoff.prices.pricing import Priced, with_prices

PRICE_LISTS = "Price lists (*.csv *.txt *.xlsx)"
PLACE = QPoint(24, 60)
"""Where the report opens in the window: under the bar of pages."""


class Prices(QObject):
    """Takes prices from a list. `failed(words)` says why a list cannot be read.

    `gone` says that the report was put away, whatever came of it.
    """

    failed = Signal(str)
    gone = Signal()

    def __init__(self, store: Store, background: Background, window: QWidget) -> None:
        super().__init__(window)
        self._store, self._background, self._window = store, background, window
        self.form = PricesForm(self._priced, self._take, window)
        self.form.put_away.connect(self.gone)
        store.changed.connect(self._follow)

    def ask(self) -> None:
        """Ask for a file with a price list, and show a report of it."""
        path = self._store.open.path
        dialog = QFileDialog(self._window, "Prices from a file", str(path.parent if path else Path.home()), PRICE_LISTS)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self._read)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def _read(self, name: str) -> None:
        path, job = Path(name), self._store.open.job

        def work() -> PriceList:
            return read_price_list(path, path.name, job)

        self._background.start(f"Reading {path.name}", work, self._show, self._fail, Event())

    def _show(self, prices: PriceList) -> None:
        if self._store.shown is None:
            return
        try:
            self.form.open_for(prices, PLACE)
        except RecoatError as error:
            self._fail(error)

    def _priced(self, prices: PriceList, adds: bool) -> Priced:  # the card says whether its box is marked
        return with_prices(self._store.open.job, prices, add=adds)

    def _take(self, priced: Priced, name: str) -> None:
        self._store.edit(f"Prices from {name}", priced.job)
        self.gone.emit()

    def _follow(self, _old: Shown | None, new: Shown | None) -> None:
        if new is None:
            self.form.hide()

    def _fail(self, error: RecoatError) -> None:
        self.failed.emit(str(error))
