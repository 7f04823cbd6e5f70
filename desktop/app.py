"""The one place where the window is put together."""

from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QCursor
from PySide6.QtWidgets import QApplication, QWidget

from desktop.buy.page import BuyPage
from desktop.buy.reckoning import Buying
from desktop.buy.what_if import WhatIf
from desktop.canvas.board import Canvas
from desktop.canvas.face_view import FaceView
from desktop.canvas.squared_photos import FacePhotos
from desktop.count.overlay_bar import OverlayBar
from desktop.count.page import CountPage
from desktop.files.exports import Exports
from desktop.files.finish import FinishFiles
from desktop.files.job import Files
from desktop.files.prices import Prices
from desktop.finish.page import FinishPage
from desktop.look.palette import Look
from desktop.measure.details import Details
from desktop.measure.hand import Hand
from desktop.measure.modes import Mode, Modes
from desktop.measure.page import MeasurePage
from desktop.measure.part_commands import Parts
from desktop.measure.photo_commands import PhotoCommands
from desktop.measure.reading_line import ReadingLine
from desktop.painting.kept import Drawings
from desktop.rooms.face_commands import Faces
from desktop.rooms.room_commands import Rooms
from desktop.state.background import Background
from desktop.state.recovery import Recovery
from desktop.state.shown import Page, Shown
from desktop.state.store import Store
from desktop.window.cards import Cards
from desktop.window.frame import Frame
from desktop.window.help_view import HelpView
from desktop.window.main_window import Window
from desktop.window.mends import Mends
from desktop.window.menu_table import Doers, fill
from desktop.window.page_bar import PageBar
from desktop.window.report_error import ErrorReport
from desktop.window.strip import Strip
from desktop.window.totals_bar import TotalsBar
from shared.findings import Finding

SMALL_MARGIN_PX = 10
"""Round a face that is only looked at."""


class App(QObject):
    """Everything in the window, and who hears whom."""

    def __init__(self, look: Look, window: Window | None = None) -> None:
        super().__init__()
        self.window = window or Window()
        self.store = Store(self)
        self.background = Background(self)
        self.buying = Buying(self.store, self.background, self)
        self.recovery = Recovery(self.store, self.background, self)
        self._build_views(look)
        self.files = Files(self.store, self.background, self.recovery, self.window)
        self.exports = Exports(self.store, self.background, self.window)
        self.finish_files = FinishFiles(self.store, self.background, self.finish.chosen_finish, self.window)
        self.prices = Prices(self.store, self.background, self.window)
        self.faces = Faces(self.store, self.window)
        self.rooms = Rooms(self.store, self.window)
        self.cards = Cards(self.window, self.frame, self.store, self.files, self.faces, self.rooms)
        self.parts = Parts(self.store, self.window)
        self.mends = Mends(self.store, self.frame.findings, self)
        self.hand = Hand(self.store, self.canvas, self.line, self)
        self.photos = PhotoCommands(self.store, self.background, self.hand, self.window)
        self.menus, self.face_menu = fill(self._doers())
        self.report = ErrorReport(self.recovery.keep_now, self)
        self._connect_views()
        self._connect_commands()
        self._render(None, None)
        self._show_recent()
        self.start.kept.setVisible(self.recovery.has_copy)

    def show_help(self) -> None:
        """Open the help beside the work."""
        view = HelpView(self.window)
        view.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        view.show()

    def tell_trouble(self, words: str) -> None:
        """Say what went wrong, where the person looks."""
        if self.store.shown is None:
            self.start.tell(words)
        else:
            self.window.tell(words, trouble=True)

    def tell(self, words: str) -> None:
        """Say what was done."""
        self.window.tell(words, trouble=False)

    def open_example(self) -> None:
        """Open the example as a job of its own."""
        self.files.leave(self._open_example)

    def begin(self) -> None:
        """Leave the job that is open for the doors into another."""
        self.files.leave(self.store.close_job)

    def open_kept(self) -> None:
        """Take up the job that was not saved."""
        self.files.open_path(self.recovery.path)

    def open_recent(self, path: Path) -> None:
        """Open a file that was open before."""
        self.files.leave_for(path)

    def close(self) -> None:
        """Close the window, once nothing is lost by it."""
        self.files.leave(self.window.close_now)

    def zoom_in(self) -> None:
        """Nearer to the face."""
        self._open_canvas.zoom_in()

    def zoom_out(self) -> None:
        """Farther from the face."""
        self._open_canvas.zoom_out()

    def zoom_whole(self) -> None:
        """The whole face."""
        self._open_canvas.zoom_whole()

    def focus_next_place(self) -> None:
        """Give the keys to the next of strip, face, and what stands beside it."""
        focus = QApplication.focusWidget()
        beside, focus_first = self._beside[self.store.open.page]
        if focus is self._first_place or focus is self.line.edit:
            focus_first()
        elif self.strip.isVisible() and focus is not None and beside.isAncestorOf(focus):
            self.strip.focus_face()
        else:
            self._first_place.setFocus(Qt.FocusReason.ShortcutFocusReason)

    @property
    def _open_canvas(self) -> Canvas:
        return self._canvases[self.store.open.page]

    @property
    def _first_place(self) -> QWidget:
        """Where the keys go on a page: to its face, in Buy to the basket."""
        return self.buy.tree if self.store.open.page is Page.BUY else self._open_canvas

    def _build_views(self, look: Look) -> None:
        drawings = Drawings(self.store)
        self.face_photos = FacePhotos(self.background, self)
        self.start, self.bar, self.totals = self.window.start, PageBar(), TotalsBar()
        self.strip = Strip(drawings, look)
        self.modes, self.line, self.details = Modes(), ReadingLine(), Details(self.store, look)
        self.canvas, self.finish_canvas, self.count_canvas = Canvas(look), Canvas(look), Canvas(look)
        self._canvases = {
            Page.MEASURE: self.canvas,
            Page.FINISH: self.finish_canvas,
            Page.COUNT: self.count_canvas,
            Page.BUY: Canvas(look, margin_px=SMALL_MARGIN_PX),
        }
        self.overlays = OverlayBar()
        self.measure = MeasurePage(self.modes, self.canvas, self.line, self.details)
        self.count = CountPage(self.store, self.count_canvas, self.overlays)
        self.finish = FinishPage(self.store, self.finish_canvas)
        self.what_if = WhatIf(self.store, self.background, self)
        self.buy = BuyPage(self.store, self.what_if, self._canvases[Page.BUY])
        pages = {
            Page.MEASURE: self.measure,
            Page.FINISH: self.finish,
            Page.COUNT: self.count,
            Page.BUY: self.buy,
        }
        self._beside: dict[Page, tuple[QWidget, Callable[[], None]]] = {
            Page.MEASURE: (self.details, self.details.focus_first),
            Page.FINISH: (self.finish.panel, self.finish.focus_first),
            Page.COUNT: (self.count.table, self.count.tree.setFocus),
            Page.BUY: (self.buy.beside, self.buy.focus_beside),
        }
        self.frame = Frame(self.window, self.bar, self.strip, pages, self.totals)
        self.faces_shown = tuple(
            FaceView(canvas, drawings, self.face_photos, page) for page, canvas in self._canvases.items()
        )

    def _doers(self) -> Doers:
        return Doers(
            window=self.window,
            store=self.store,
            files=self.files,
            exports=self.exports,
            finish_files=self.finish_files,
            prices=self.prices,
            parts=self.parts,
            hand=self.hand,
            photos=self.photos,
            faces=self.faces,
            rooms=self.rooms,
            cards=self.cards,
            frame=self.frame,
            begin=self.begin,
            open_example=self.open_example,
            close=self.close,
            zoom_in=self.zoom_in,
            zoom_out=self.zoom_out,
            zoom_whole=self.zoom_whole,
            focus_next_place=self.focus_next_place,
            show_help=self.show_help,
        )

    def _connect_views(self) -> None:
        store, window = self.store, self.window
        store.changed.connect(self._render)
        store.refused.connect(self._tell_refused)
        self.face_photos.ready.connect(self._show_photo)
        self.face_photos.failed.connect(self.tell_trouble)
        self.bar.turned.connect(store.turn_to)
        self.bar.asked_for_findings.connect(self.frame.open_findings)
        self.frame.findings.chosen.connect(self._go_to)
        self.cards.gone.connect(self._give_keys_back)
        self.cards.room_stands.connect(self._begin_run)
        self.rooms.laid_out.connect(self._begin_cut_outs)
        window.asked_to_close.connect(self.close)
        window.closed.connect(self._end)
        self.strip.chosen.connect(store.show_face)
        self.strip.asked_for_face.connect(self.cards.ask_for_face)
        self.strip.asked_for_menu.connect(self._open_face_menu)
        self.modes.chosen.connect(self.hand.choose_mode)
        self.modes.kind_chosen.connect(self.hand.choose_kind)
        self.modes.left.connect(self.canvas.setFocus)
        self.details.readings.left.connect(self.canvas.setFocus)
        self.hand.mode_changed.connect(self._show_mode)
        self.overlays.hung.connect(store.hang_fronts)
        self.overlays.switched.connect(store.turn_overlay)
        self.count_canvas.pressed.connect(self.count.find_row)

    def _connect_commands(self) -> None:
        self.start.asked_for_new.connect(self.cards.ask_for_room)
        self.start.asked_for_file.connect(self.files.open)
        self.start.asked_for_example.connect(self.open_example)
        self.start.asked_for_kept.connect(self.open_kept)
        self.start.asked_for_recent.connect(self.open_recent)
        self.files.failed.connect(self.tell_trouble)
        self.files.recent_changed.connect(self._show_recent)
        self.exports.failed.connect(self.tell_trouble)
        self.photos.failed.connect(self.tell_trouble)
        self.exports.written.connect(self.tell)
        self.prices.failed.connect(self.tell_trouble)
        self.prices.gone.connect(self._give_keys_back)
        self.buy.prices.clicked.connect(self.prices.ask)
        self.buy.shopping_list.clicked.connect(self.exports.shopping_list)
        self.buy.table.clicked.connect(self.exports.table)
        self.finish_files.failed.connect(self.tell_trouble)
        self.finish_files.written.connect(self.tell)
        self.finish_files.taken.connect(self._show_finish)
        self.report.told.connect(self.tell_trouble)
        self.background.busy.connect(self.totals.say)
        self.hand.deleted.connect(self.parts.delete)
        self.canvas.nudged.connect(self.parts.nudge)

    def _render(self, old: Shown | None, new: Shown | None) -> None:
        if new is not None:
            for face_view in self.faces_shown:
                face_view.follow(new)
            self.hand.follow(old, new)
            self.details.follow(old, new)
            self.finish.follow(old, new)
            self.count.follow(old, new)
            self.buy.follow(old, new)
            self.overlays.follow(old, new)
        self.frame.follow(old, new)
        if new is not None and (old is None or old.page is not new.page):
            self._first_place.setFocus(Qt.FocusReason.OtherFocusReason)
        self.menus.follow(new)
        self.buying.follow(new)
        if old is None or new is None or old.job is not new.job:
            self.window.tell("", trouble=False)
            self._show_mode()

    def _show_photo(self) -> None:
        """A photo is ready to be shown."""
        shown = self.store.shown
        if shown is not None:
            for face_view in self.faces_shown:
                face_view.follow(shown)

    def _tell_refused(self, words: str) -> None:
        """Where the person typed: under the face, or else above the totals."""
        if self.store.open.page is Page.MEASURE:
            self.line.tell(words)
        else:
            self.tell_trouble(words)

    def _show_mode(self) -> None:
        self.modes.show_mode(self.hand.mode)
        self.modes.show_kind(self.hand.kind)
        self.menus.follow(self.store.shown)

    def _go_to(self, finding: Finding) -> None:
        """To the page and section that say it, with the face where it is."""
        page = Page(finding.code.place.page)
        if self.store.open.page is not page:
            self.store.turn_to(page)
        if finding.face:
            self.store.show_face(finding.face, finding.parts)
        if page is Page.FINISH:
            self.finish.open_section_of(finding)

    def _show_finish(self, finish_id: str) -> None:
        if self.store.open.page is not Page.FINISH:
            self.store.turn_to(Page.FINISH)
        self.finish.show_finish(finish_id)

    def _give_keys_back(self) -> None:
        """To the face, or to the first door."""
        if self.store.shown is None:
            self.start.open_doors()
        else:
            self._first_place.setFocus(Qt.FocusReason.OtherFocusReason)

    def _begin_run(self) -> None:
        """Where bare walls stand, rows of cabinets come next."""
        self.hand.choose_mode(Mode.RUN)

    def _begin_cut_outs(self) -> None:
        """Where a benchtop's plan stands, the cut-outs for sink and cooktop come next."""
        self.hand.choose_mode(Mode.BOX)

    def _open_face_menu(self) -> None:
        self.face_menu.popup(QCursor.pos())

    def _show_recent(self) -> None:
        self.start.show_recent(self.files.recent)

    def _open_example(self) -> None:
        self.files.open_path(Path(str(files("desktop") / "data" / "example.json")), own=False)

    def _end(self) -> None:
        self.buying.stop()
        self.recovery.stop()
        self.background.join()
