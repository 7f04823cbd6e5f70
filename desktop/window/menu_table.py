"""The table of what the menus offer; `menus` turns it into menus.

No menu takes a letter of the column of modes: Alt+P, B, T, R, U, O, C, S, L and I for the modes, A for a mode's other
variant, K for the kind of new parts.
"""

from functools import partial
from typing import Protocol

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMenu

from desktop.files.exports import Exports
from desktop.files.finish import FinishFiles, with_finishes
from desktop.files.job import Files
from desktop.files.prices import Prices
from desktop.gestures.match_size import MatchSize
from desktop.gestures.mirror_copy import MirrorCopy
from desktop.measure.hand import Hand
from desktop.measure.modes import KEYS, Mode
from desktop.measure.part_commands import Parts
from desktop.measure.photo_commands import PhotoCommands, with_photo, with_squared_photo
from desktop.pages.all import Pages
from desktop.rooms.face_commands import Faces
from desktop.rooms.room_commands import Rooms
from desktop.state.shown import Overlay, Page, Shown
from desktop.state.store import Store
from desktop.window.cards import Cards
from desktop.window.frame import Frame
from desktop.window.main_window import Window
from desktop.window.menus import (
    REDO,
    UNDO,
    Choice,
    Command,
    Fold,
    Menus,
    always,
    can_redo,
    can_undo,
    with_face,
    with_findings,
    with_job,
    with_picked,
    with_room,
    with_several,
    with_two,
)
from geometry.edits.lining_up import Alignment
from shared.job import Corner, Unit, Way
from shared.trade.tape import TapeClass
from takeoff.figures.measured import Fronts

Keys = QKeySequence.StandardKey

FRONTS = {Fronts.HUNG: "Fronts &hung", Fronts.OFF: "&Fronts off"}
CORNERS = {
    Corner.INSIDE: "&Inside corner to the next face",
    Corner.OUTSIDE: "&Outside corner to the next face",
    Corner.NONE: "&No corner to the next face",
}
UNITS = {Unit.MM: "Lengths in &millimetres", Unit.INCH: "Lengths in f&eet and inches"}
LINE_UP = {
    Alignment.LEFT: "&Left ends",
    Alignment.RIGHT: "&Right ends",
    Alignment.TOP: "&Tops",
    Alignment.BOTTOM: "&Bottoms",
    Alignment.MIDDLE_ACROSS: "&Middles, one over another",
    Alignment.MIDDLE_UP: "Mi&ddles, side by side",
}
MITRED = "Lay t&hem out with mitred corners"
SCREEN_KEYS = {
    Overlay.NAMES: "&Names",
    Overlay.SIZES: "&Sizes",
    Overlay.JOINTS: "&Joints",
    Overlay.MASKING: "&Masking",
    Overlay.SET_OUT: "Set-o&ut lines",
    Overlay.PHOTO: "Photo &under the face",
}


class Doers(Protocol):
    """Who does what the menus offer. The App fits this, so it knows the table and the table knows no App."""

    window: Window
    store: Store
    files: Files
    exports: Exports
    finish_files: FinishFiles
    prices: Prices
    parts: Parts
    hand: Hand
    photos: PhotoCommands
    faces: Faces
    rooms: Rooms
    cards: Cards
    frame: Frame
    pages: Pages

    def begin(self) -> None:
        """Leave the job for the doors into another."""

    def open_example(self) -> None:
        """Open the example."""

    def close(self) -> None:
        """Close the window."""

    def show_help(self) -> None:
        """Open the help."""


def fill(doers: Doers) -> tuple[Menus, QMenu]:
    """The filled menus of the window, and the menu of the job and its faces, which the strip opens too."""
    menus = Menus(doers.window)
    _file(doers, menus)
    _edit(doers, menus)
    _drawing(doers, menus)
    _view(doers, menus)
    job = _job(doers, menus)
    menus.add("&Help", (Command("&How to use Recoat", Keys.HelpContents, doers.show_help, always),))
    return menus, job


def _file(doers: Doers, menus: Menus) -> None:
    menus.add(
        "&File",
        (
            Command("&New", Keys.New, doers.begin, with_job),
            Command("&Open...", Keys.Open, doers.files.open, always),
            Command("Open the &example", None, doers.open_example, always),
        ),
        (
            Command("&Save", Keys.Save, doers.files.save, with_job),
            Command("Save &as...", "Ctrl+Shift+S", doers.files.save_as, with_job),
        ),
        (
            Command("&Takeoff table...", "Ctrl+T", doers.exports.table, with_job),
            Command("Shopping &list...", "Ctrl+L", doers.exports.shopping_list, with_job),
            Command("&Drawing...", "Ctrl+D", doers.exports.drawing, with_job),
            Command("&Before and after...", None, doers.exports.before_after, with_face),
        ),
        (
            Command("Ta&ke a finish from a file...", None, doers.finish_files.take, with_job),
            Command("&Prices from a file...", None, doers.prices.ask, with_job),
            Command("&Write the finish to a file...", None, doers.finish_files.write, with_finishes),
        ),
        (Command("&Close", "Ctrl+Q", doers.close, always),),
    )


def _edit(doers: Doers, menus: Menus) -> None:
    parts = doers.parts
    menus.add(
        "&Edit",
        (
            Command(UNDO, Keys.Undo, doers.store.undo, can_undo),
            Command(REDO, "Ctrl+Shift+Z", doers.store.redo, can_redo),
        ),
        (
            Command("Cu&t", Keys.Cut, parts.cut, with_picked),
            Command("&Copy", Keys.Copy, parts.copy, with_picked),
            Command("&Paste", Keys.Paste, parts.paste, with_face),
            Command("&Duplicate", "Ctrl+Shift+D", parts.duplicate, with_picked),
            Command("De&lete", None, parts.delete, with_picked),
        ),
        (
            Command("Pick &all", Keys.SelectAll, parts.pick_all, with_face),
            Command("Pick all of this &kind", "Ctrl+K", parts.pick_kind, with_picked),
            Command("Pick all of this &size", "Ctrl+Shift+K", parts.pick_size, with_picked),
            Command("Pick the &next part", "Ctrl+Right", parts.pick_next, with_face),
            Command("Pick the pre&vious part", "Ctrl+Left", parts.pick_before, with_face),
        ),
    )


def _drawing(doers: Doers, menus: Menus) -> None:
    parts = doers.parts
    menus.add(
        "Dra&wing",
        (
            *(
                Choice(
                    mode.value, KEYS[mode], partial(doers.hand.choose_mode, mode), partial(_in_mode, doers.hand, mode)
                )
                for mode in Mode
            ),
            Command("Other &variant of this mode", "Alt+A", doers.hand.turn, with_face),
        ),
        (
            Fold("&Line up", _line_up(doers)),
            Command("Mirror left to ri&ght", None, partial(parts.mirror, Way.ACROSS), with_picked),
            Command("Mirror to&p to bottom", None, partial(parts.mirror, Way.UP), with_picked),
            Command("Mirror a cop&y about a line", None, partial(doers.hand.take_up, MirrorCopy), with_picked),
            Command("Match si&ze to another part", None, partial(doers.hand.take_up, MatchSize), with_picked),
        ),
        (
            Command("Ra&ise by a layer", "Ctrl+PgUp", parts.raise_level, with_picked),
            Command("L&ower by a layer", "Ctrl+PgDown", parts.lower_level, with_picked),
            Command("&Seal where the two meet", None, parts.seal, with_two),
            Command("Loc&k", None, partial(parts.lock, on=True), with_picked),
            Command("U&nlock", None, partial(parts.lock, on=False), with_picked),
        ),
    )


def _line_up(doers: Doers) -> tuple[Command, ...]:
    parts = doers.parts
    return (
        *(
            Command(words, None, partial(parts.line_up, alignment), with_several)
            for alignment, words in LINE_UP.items()
        ),
        Command("Even out the gaps a&cross", None, partial(parts.even_out, Way.ACROSS), with_several),
        Command("Even out the gaps &up", None, partial(parts.even_out, Way.UP), with_several),
    )


def _view(doers: Doers, menus: Menus) -> None:
    store = doers.store
    menus.add(
        "&View",
        (
            *(
                Choice(page.name, f"Ctrl+{number}", partial(store.turn_to, page), partial(_is_page, page))
                for number, page in enumerate(doers.pages.all, 1)
            ),
        ),
        (
            Command("Zoom &in", Keys.ZoomIn, doers.pages.zoom_in, with_face),
            Command("Zoom &out", Keys.ZoomOut, doers.pages.zoom_out, with_face),
            Command("&Whole face", "Ctrl+0", doers.pages.zoom_whole, with_face),
        ),
        (
            *(
                Choice(words, None, partial(store.hang_fronts, fronts), partial(_are_fronts, fronts))
                for fronts, words in FRONTS.items()
            ),
        ),
        (
            *(
                Choice(words, None, partial(store.turn_overlay, overlay), partial(_has_overlay, overlay))
                for overlay, words in SCREEN_KEYS.items()
            ),
        ),
        (
            Command("&Things to look at", "F8", doers.frame.open_findings, with_findings),
            Command("Ne&xt face", "Alt+Right", doers.faces.show_next, with_face),
            Command("Pre&vious face", "Alt+Left", doers.faces.show_before, with_face),
            Command("Next &pane", "F6", doers.frame.focus_next_place, with_job),
        ),
    )


def _job(doers: Doers, menus: Menus) -> QMenu:
    faces, rooms = doers.faces, doers.rooms
    return menus.add(
        "&Job",
        (
            Command("&Add a face...", "Ctrl+Shift+N", doers.cards.ask_for_face, with_job),
            Command("&Rename the face...", "F2", faces.rename, with_face),
            Command("&Tag letter of the face...", None, faces.change_letter, with_face),
            Command("Renu&mber the tags of the face", None, faces.renumber, with_face),
            Command("&Copy the face", None, faces.copy, with_face),
            Command("&Delete the face", None, faces.delete, with_face),
            Command("Move the face &left", "Ctrl+Shift+Left", faces.move_left, with_face),
            Command("Move the face ri&ght", "Ctrl+Shift+Right", faces.move_right, with_face),
        ),
        (
            Fold("C&orner of the face", _corners(doers)),
            Fold("&Photo under the face", _photo(doers)),
        ),
        (
            Command("Add a room from &wall lengths...", None, doers.cards.ask_for_room, with_job),
            Command("&Usual heights of the room...", None, doers.cards.ask_for_heights, with_room),
            Command("Lay out the &benchtops", "Ctrl+B", partial(rooms.lay_out_benchtops, mitred=False), with_room),
            Command(MITRED, "Ctrl+Shift+B", partial(rooms.lay_out_benchtops, mitred=True), with_room),
            Command("Rename the room...", None, rooms.rename, with_room),
            Command("Delete the room", None, rooms.delete, with_room),
        ),
        (
            Command("Rename the &job...", None, faces.rename_job, with_job),
            Fold("Lengths and tap&e", (*_units(doers), *_tapes(doers))),
        ),
    )


def _corners(doers: Doers) -> tuple[Choice, ...]:
    return tuple(
        Choice(words, None, partial(doers.faces.set_corner, corner), partial(_is_corner, corner), with_face)
        for corner, words in CORNERS.items()
    )


def _photo(doers: Doers) -> tuple[Command, ...]:
    photos = doers.photos
    return (
        Command("&Add photo...", None, photos.bring_in, with_face),
        Command("&Straighten the photo", None, photos.square, with_photo),
        Command("Chec&k a length on the photo", None, photos.check, with_squared_photo),
        Command("&Remove the photo", None, photos.take_away, with_photo),
    )


def _units(doers: Doers) -> tuple[Choice, ...]:
    return tuple(
        Choice(words, None, partial(doers.faces.set_unit, unit), partial(_is_unit, unit))
        for unit, words in UNITS.items()
    )


def _tapes(doers: Doers) -> tuple[Choice, ...]:
    return tuple(
        Choice(f"Class {tape} tape", None, partial(doers.faces.set_tape, tape), partial(_is_tape, tape))
        for tape in TapeClass
    )


def _in_mode(hand: Hand, mode: Mode, _: Shown) -> bool:
    return hand.mode is mode


def _is_page(page: Page, shown: Shown) -> bool:
    return shown.page is page


def _are_fronts(fronts: Fronts, shown: Shown) -> bool:
    return shown.fronts is fronts


def _has_overlay(overlay: Overlay, shown: Shown) -> bool:
    return overlay in shown.overlays


def _is_corner(corner: Corner, shown: Shown) -> bool:
    face = shown.shown_face
    return face is not None and face.corner is corner


def _is_tape(tape: TapeClass, shown: Shown) -> bool:
    return shown.job.tape is tape


def _is_unit(unit: Unit, shown: Shown) -> bool:
    return shown.unit is unit
