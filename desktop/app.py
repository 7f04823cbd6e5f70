"""The one place where the window is put together."""

from importlib.resources import files
from pathlib import Path

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QCursor

from desktop.buy.page import BuyPage
from desktop.buy.reckoning import Buying
from desktop.canvas.face_view import FaceSource
from desktop.canvas.squared_photos import FacePhotos
from desktop.count.page import CountPage
from desktop.files.exports import Exports
from desktop.files.finish import FinishFiles
from desktop.files.hold import Hold
from desktop.files.job import Files
from desktop.files.prices import Prices
from desktop.files.recovering import Recovering
from desktop.finish.page import FINISH, FinishPage
from desktop.look.palette import Look
from desktop.measure.modes import Mode
from desktop.measure.page import MEASURE, MeasurePage
from desktop.measure.part_commands import Parts
from desktop.measure.photo_commands import PhotoCommands
from desktop.pages.all import Pages
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
from desktop.window.kept_jobs import KeptJobs
from desktop.window.main_window import Window
from desktop.window.mends import Mends
from desktop.window.menu_table import fill
from desktop.window.page_bar import PageBar
from desktop.window.report_error import ErrorReport
from desktop.window.strip import Strip
from desktop.window.totals_bar import TotalsBar
from shared.findings import Finding


class App(QObject):
    """Everything in the window, and who hears whom. Copies of unsaved work go to a folder of the program's own data.

    `copies_in` is another folder for them.
    """

    def __init__(self, look: Look, window: Window | None = None, copies_in: Path | None = None) -> None:
        super().__init__()
        self.window = window or Window()
        self.store = Store(MEASURE, self)
        self.background = Background(self)
        self.buying = Buying(self.store, self.background, self)
        self.hold = Hold(self.store, self.background, self)
        self.recovery = Recovery(self.store, self.hold.stamp, copies_in, self)
        self.drawings, self.face_photos = Drawings(self.store), FacePhotos(self.background, self)
        self._build_pages(look)
        self.start, self.totals = self.window.start, TotalsBar()
        self.bar, self.strip = PageBar(self.pages.all), Strip(self.drawings, look)
        self.frame = Frame(self.window, self.bar, self.strip, self.pages, self.totals)
        self.kept = KeptJobs(self.window)
        self.window.put_on_top(self.kept)
        self.files = Files(self.store, self.background, self.recovery, self.hold, self.window)
        self.recovering = Recovering(self.store, self.background, self.recovery, self.hold, self.files, self.window)
        self.exports = Exports(self.store, self.background, self.window)
        self.finish_files = FinishFiles(self.store, self.background, self.finish.chosen_finish, self.window)
        self.prices = Prices(self.store, self.background, self.window)
        self.faces = Faces(self.store, self.window)
        self.rooms = Rooms(self.store, self.window)
        self.cards = Cards(self.window, self.frame, self.store, self.files, self.faces, self.rooms)
        self.parts = Parts(self.store, self.window)
        self.mends = Mends(self.store, self.frame.findings, self)
        self.photos = PhotoCommands(self.store, self.background, self.hand, self.window)
        self.menus, self.face_menu = fill(self)
        self.report = ErrorReport(self.recovery.keep_now, self)
        self._connect_views()
        self._connect_commands()
        self._render(None, None)
        self._show_recent()
        self.recovery.look()

    def show_help(self) -> None:
        """Open the help beside the work."""
        view = HelpView(self.window)
        view.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        view.show()

    def tell_trouble(self, words: str) -> None:
        """Say what went wrong: on the start page while no job is open, else above the totals."""
        if self.store.shown is None:
            self.start.tell(words)
        else:
            self.window.tell(words, trouble=True)

    def tell(self, words: str) -> None:
        """Say above the totals what was done."""
        self.window.tell(words, trouble=False)

    def open_example(self) -> None:
        """Leave the open job, and open the example as a new job that is in no file of the person's."""
        self.files.leave(self._open_example)

    def begin(self) -> None:
        """Leave the open job, and show the doors into another."""
        self.files.leave(self.store.close_job)

    def open_recent(self, path: Path) -> None:
        """Open a file that was open before."""
        self.files.leave_for(path)

    def close(self) -> None:
        """Close the window. Unsaved changes are asked about first."""
        self.files.leave(self.window.close_now)

    def keep_safe(self) -> None:
        """Keep a copy of what is not saved: the person's session ends, and perhaps nobody can answer a question."""
        self.report.kept()

    def end(self) -> None:
        """Close the window without a question, and keep a copy of what is not saved."""
        self.keep_safe()
        self.window.close_now()

    def _build_pages(self, look: Look) -> None:
        """Make the pages in the order of the job. To add a page, add it here: bar, menu and keys follow this list."""
        faces = FaceSource(look, self.drawings, self.face_photos)
        self.measure = MeasurePage(self.store, faces)
        self.finish = FinishPage(self.store, faces)
        self.count = CountPage(self.store, faces)
        self.buy = BuyPage(self.store, faces, self.background)
        self.pages = Pages((self.measure, self.finish, self.count, self.buy))
        self.hand = self.measure.hand

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
        self.hand.mode_changed.connect(self._mark_mode)

    def _connect_commands(self) -> None:
        self.start.asked_for_new.connect(self.cards.ask_for_room)
        self.start.asked_for_file.connect(self.files.open)
        self.start.asked_for_example.connect(self.open_example)
        self.start.asked_for_recent.connect(self.open_recent)
        self.files.failed.connect(self.tell_trouble)
        self.files.saved.connect(self.tell)
        self.recovery.told.connect(self.kept.tell)
        self.recovery.found.connect(self.kept.offer)
        self.kept.asked_to_recover.connect(self.recovering.recover)
        self.kept.asked_to_discard.connect(self.recovering.discard)
        self.recovering.failed.connect(self.tell_trouble)
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
        self.background.may_be_stopped.connect(self.window.progress.say)
        self.window.progress.stopped.connect(self._stop)
        self.hand.deleted.connect(self.parts.delete)
        self.measure.canvas.nudged.connect(self.parts.nudge)

    def _render(self, old: Shown | None, new: Shown | None) -> None:
        self.pages.follow(new)
        self.frame.follow(old, new)
        if new is not None and (old is None or old.page is not new.page):
            self.pages.focus_first()
        self.menus.follow(new)
        self.buying.follow(new)
        if old is None or new is None or old.job is not new.job:
            self.window.tell("", trouble=False)

    def _show_photo(self) -> None:
        """Show the face again, now that its photo is straightened."""
        if self.store.shown is not None:
            self.pages.open.show_face(self.store.shown)

    def _tell_refused(self, words: str) -> None:
        """Say what was refused where the person typed it. If the page has no such place, say it above the totals."""
        if self.store.shown is None or not self.pages.open.tell(words):
            self.tell_trouble(words)

    def _mark_mode(self) -> None:
        self.menus.follow(self.store.shown)

    def _turn_to(self, page: Page) -> None:
        if self.store.open.page is not page:
            self.store.turn_to(page)

    def _go_to(self, finding: Finding) -> None:
        """Show the page, the face and the section that a finding is about."""
        self._turn_to(self.pages.named(finding.code.place.page))
        if finding.face:
            self.store.show_face(finding.face, finding.parts)
        self.pages.open.open_section_of(finding)

    def _show_finish(self, finish_id: str) -> None:
        self._turn_to(FINISH)
        self.finish.show_finish(finish_id)

    def _give_keys_back(self) -> None:
        """Give the keys to the first place of the page, or to the first door if no job is open."""
        if self.store.shown is None:
            self.start.open_doors()
        else:
            self.pages.focus_first()

    def _begin_run(self) -> None:
        """Choose Run: after bare walls come rows of cabinets."""
        self.hand.choose_mode(Mode.RUN)

    def _begin_cut_outs(self) -> None:
        """Choose Box: after a benchtop's plan come its cut-outs for sink and cooktop."""
        self.hand.choose_mode(Mode.BOX)

    def _open_face_menu(self) -> None:
        self.face_menu.popup(QCursor.pos())

    def _show_recent(self) -> None:
        self.start.show_recent(self.files.recent)

    def _open_example(self) -> None:
        self.files.open_path(Path(str(files("desktop") / "data" / "example.json")), own=False)

    def _stop(self) -> None:
        """Wait no more for what takes long, and give the keys back."""
        self.background.stop()
        self.hold.settle()
        self._give_keys_back()

    def _end(self) -> None:
        self.background.stop()
        self.buying.stop()
        self.recovery.stop()
        self.background.join()
        self.hold.give_up()
