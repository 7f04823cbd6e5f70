"""What the menus offer. The letters of the drawing modes (Alt+P, B, T, R, U, S, O, C, L, A, K) are no menu's."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMenu

from desktop.finish_files import with_finishes
from desktop.gestures.match_size import MatchSize
from desktop.gestures.mirror_copy import MirrorCopy
from desktop.menus import (
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
from desktop.modes import KEYS, Mode
from desktop.photo_commands import with_photo, with_squared_photo
from desktop.shown import Overlay, Page, Shown
from geometry.lining_up import Alignment
from shared.job import Corner, Unit, Way
from shared.tape import TapeClass
from takeoff.figures import Fronts

if TYPE_CHECKING:
    from desktop.app import App

Keys = QKeySequence.StandardKey

FRONTS = {Fronts.HUNG: "Fronts &hung", Fronts.OFF: "&Fronts off"}
CORNERS = {
    Corner.INSIDE: "Meets the next at an &inside corner",
    Corner.OUTSIDE: "Meets the next at an &outside corner",
    Corner.NONE: "Does &not meet the next",
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
MITRED = "Lay t&hem out, mitred at the corners"
SCREEN_KEYS = {
    Overlay.NAMES: "&Names",
    Overlay.SIZES: "&Sizes",
    Overlay.JOINTS: "&Joints",
    Overlay.MASKING: "&Masking",
    Overlay.SET_OUT: "Set-o&ut lines",
    Overlay.PHOTO: "Photo &under the face",
}


def fill(app: "App") -> tuple[Menus, QMenu]:
    """The menus of the window, filled; and the menu of jobs and faces, which the strip opens too."""
    menus = Menus(app.window)
    _file(app, menus)
    _edit(app, menus)
    _drawing(app, menus)
    _view(app, menus)
    job = _job(app, menus)
    menus.add("&Help", (Command("&How to", Keys.HelpContents, app.show_help, always),))
    return menus, job


def _file(app: "App", menus: Menus) -> None:
    menus.add(
        "&File",
        (
            Command("&New", Keys.New, app.begin, with_job),
            Command("&Open...", Keys.Open, app.files.open, always),
            Command("Open the &example", None, app.open_example, always),
        ),
        (
            Command("&Save", Keys.Save, app.files.save, with_job),
            Command("Save &as...", "Ctrl+Shift+S", app.files.save_as, with_job),
        ),
        (
            Command("&Takeoff table...", "Ctrl+T", app.exports.table, with_job),
            Command("Shopping &list...", "Ctrl+L", app.exports.shopping_list, with_job),
            Command("&Drawing...", "Ctrl+D", app.exports.drawing, with_job),
            Command("&Before and after...", None, app.exports.before_after, with_face),
        ),
        (
            Command("Ta&ke a finish from a file...", None, app.finish_files.take, with_job),
            Command("&Prices from a file...", None, app.prices.ask, with_job),
            Command("&Write the finish to a file...", None, app.finish_files.write, with_finishes),
        ),
        (Command("&Close", "Ctrl+Q", app.close, always),),
    )


def _edit(app: "App", menus: Menus) -> None:
    parts = app.parts
    menus.add(
        "&Edit",
        (
            Command(UNDO, Keys.Undo, app.store.undo, can_undo),
            Command(REDO, "Ctrl+Shift+Z", app.store.redo, can_redo),
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
            Command("Pick the part &before", "Ctrl+Left", parts.pick_before, with_face),
        ),
    )


def _drawing(app: "App", menus: Menus) -> None:
    parts = app.parts
    menus.add(
        "Dra&wing",
        (
            *(
                Choice(mode.value, KEYS[mode], partial(app.hand.choose_mode, mode), partial(_in_mode, app, mode))
                for mode in Mode
            ),
            Command("The other &way of this mode", "Alt+A", app.hand.turn, with_face),
        ),
        (
            Fold("&Line up", _line_up(app)),
            Command("Mirror left and ri&ght", None, partial(parts.mirror, Way.ACROSS), with_picked),
            Command("Mirror u&p and down", None, partial(parts.mirror, Way.UP), with_picked),
            Command("Mirror a cop&y about a line", None, partial(app.hand.take_up, MirrorCopy), with_picked),
            Command("Match si&ze to another part", None, partial(app.hand.take_up, MatchSize), with_picked),
        ),
        (
            Command("Ra&ise by a level", "Ctrl+PgUp", parts.raise_level, with_picked),
            Command("L&ower by a level", "Ctrl+PgDown", parts.lower_level, with_picked),
            Command("&Seal where the two meet", None, parts.seal, with_two),
            Command("Loc&k", None, partial(parts.lock, on=True), with_picked),
            Command("U&nlock", None, partial(parts.lock, on=False), with_picked),
        ),
    )


def _line_up(app: "App") -> tuple[Command, ...]:
    parts = app.parts
    return (
        *(
            Command(words, None, partial(parts.line_up, alignment), with_several)
            for alignment, words in LINE_UP.items()
        ),
        Command("Even out the gaps a&cross", None, partial(parts.even_out, Way.ACROSS), with_several),
        Command("Even out the gaps &up", None, partial(parts.even_out, Way.UP), with_several),
    )


def _view(app: "App", menus: Menus) -> None:
    store = app.store
    menus.add(
        "&View",
        (
            *(
                Choice(page.value, f"Ctrl+{number}", partial(store.turn_to, page), partial(_is_page, page))
                for number, page in enumerate(Page, 1)
            ),
        ),
        (
            Command("Zoom &in", Keys.ZoomIn, app.zoom_in, with_face),
            Command("Zoom &out", Keys.ZoomOut, app.zoom_out, with_face),
            Command("&Whole face", "Ctrl+0", app.zoom_whole, with_face),
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
            Command("&Things to look at", "F8", app.frame.open_findings, with_findings),
            Command("Ne&xt face", "Alt+Right", app.faces.show_next, with_face),
            Command("Face &before", "Alt+Left", app.faces.show_before, with_face),
            Command("Next &place for the keys", "F6", app.focus_next_place, with_job),
        ),
    )


def _job(app: "App", menus: Menus) -> QMenu:
    faces, rooms = app.faces, app.rooms
    return menus.add(
        "&Job",
        (
            Command("&Add a face...", "Ctrl+Shift+N", app.cards.ask_for_face, with_job),
            Command("&Rename the face...", "F2", faces.rename, with_face),
            Command("&Copy the face", None, faces.copy, with_face),
            Command("&Delete the face", None, faces.delete, with_face),
            Command("Move it &left", "Ctrl+Shift+Left", faces.move_left, with_face),
            Command("Move it ri&ght", "Ctrl+Shift+Right", faces.move_right, with_face),
        ),
        (
            Fold("C&orner of the face", _corners(app)),
            Fold("&Photo under the face", _photo(app)),
        ),
        (
            Command("Add a room from &wall lengths...", None, app.cards.ask_for_room, with_job),
            Command("&Usual heights of the room...", None, app.cards.ask_for_heights, with_room),
            Command("Lay out the &benchtops", "Ctrl+B", partial(rooms.lay_out_benchtops, mitred=False), with_room),
            Command(MITRED, "Ctrl+Shift+B", partial(rooms.lay_out_benchtops, mitred=True), with_room),
            Command("Rename the room...", None, rooms.rename, with_room),
            Command("Delete the room", None, rooms.delete, with_room),
        ),
        (
            Command("Rename the &job...", None, faces.rename_job, with_job),
            Fold("Lengths and tap&e", (*_units(app), *_tapes(app))),
        ),
    )


def _corners(app: "App") -> tuple[Choice, ...]:
    return tuple(
        Choice(words, None, partial(app.faces.set_corner, corner), partial(_is_corner, corner), with_face)
        for corner, words in CORNERS.items()
    )


def _photo(app: "App") -> tuple[Command, ...]:
    photos = app.photos
    return (
        Command("&Bring a photo in...", None, photos.bring_in, with_face),
        Command("&Square it", None, photos.square, with_photo),
        Command("Chec&k a length on it", None, photos.check, with_squared_photo),
        Command("&Take it away", None, photos.take_away, with_photo),
    )


def _units(app: "App") -> tuple[Choice, ...]:
    return tuple(
        Choice(words, None, partial(app.faces.set_unit, unit), partial(_is_unit, unit)) for unit, words in UNITS.items()
    )


def _tapes(app: "App") -> tuple[Choice, ...]:
    return tuple(
        Choice(f"Read with a tape of class {tape}", None, partial(app.faces.set_tape, tape), partial(_is_tape, tape))
        for tape in TapeClass
    )


def _in_mode(app: "App", mode: Mode, _: Shown) -> bool:
    return app.hand.mode is mode


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
