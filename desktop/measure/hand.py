"""The hand: it holds the gesture at work, and stands between the canvas, the reading line and the store.

For what a gesture is read `desktop.gestures.gesture`, for where its edits go `desktop.state.store`.
"""

import copy
from collections.abc import Callable

from PySide6.QtCore import QObject, Qt, Signal

from desktop.canvas.board import Canvas
from desktop.gestures.box import Box
from desktop.gestures.copy_along import CopyAlong
from desktop.gestures.gesture import Done, Gesture, Held, Scene
from desktop.gestures.pick import Pick
from desktop.gestures.preview import NOTHING
from desktop.gestures.reshape import Corners
from desktop.gestures.round import Circle
from desktop.gestures.run import Run
from desktop.gestures.set_out import SetOut
from desktop.gestures.shift import Shift
from desktop.gestures.split import Split
from desktop.gestures.trace import Trace
from desktop.look.wording import decimal_sign
from desktop.measure.modes import Mode
from desktop.measure.reading_line import ReadingLine
from desktop.state.shown import Overlay, Page, Shown
from desktop.state.store import Store
from geometry.outlines.sides import Point
from shared.errors import RecoatError
from shared.job import Job, View
from shared.trade.kinds import Kind

GESTURES: dict[Mode, Callable[[Scene], Gesture]] = {
    Mode.PICK: Pick,
    Mode.BOX: Box,
    Mode.TRACE: Trace,
    Mode.ROUND: Circle,
    Mode.RUN: Run,
    Mode.SET_OUT: SetOut,
    Mode.CORNERS: Corners,
    Mode.SPLIT: Split,
    Mode.COPY_ALONG: CopyAlong,
    Mode.SHIFT: Shift,
}

USUAL_KIND = {View.ELEVATION: Kind.CABINET, View.PLAN: Kind.BENCHTOP}
"""The kind that is drawn first on a face of each view (common practice, no source)."""


class Hand(QObject):
    """Makes a gesture for each mode, hands it points and readings, and takes what it comes to into the store.

    It works while `page` is open. `mode_changed` says that the mode or the kind of new parts is another, `deleted` that
    the picked parts are to go.
    """

    mode_changed = Signal()
    deleted = Signal()

    def __init__(self, store: Store, page: Page, canvas: Canvas, line: ReadingLine, parent: QObject) -> None:
        super().__init__(parent)
        self._store = store
        self._page = page
        self._canvas = canvas
        self._line = line
        self._gesture: Gesture | None = None
        self.mode = Mode.PICK
        self.kind = Kind.CABINET
        self._connect()

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Begin a new gesture if the job, the face or the picked parts are others than the gesture knows."""
        if old is None or old.face != new.face:
            self._take_usual_kind(new)
        scene = self._scene(new)
        known = self._gesture.scene if self._gesture else None
        if scene is None or known is None or _differs(known, scene):
            self._begin()
            if scene is not None and (known is None or known.face_id != scene.face_id or not self._line.text):
                self._hear(self._line.text)

    def leave(self) -> None:
        """Drop what was begun: another page was opened. What stands in the line is heard again on coming back."""
        self._begin()

    def choose_mode(self, mode: Mode) -> None:
        """Go on in this mode and drop what was begun. For Shift, in which a size is clicked, the sizes are shown."""
        self.mode = mode
        if mode is Mode.SHIFT and self._store.shown is not None:
            self._show_sizes(self._store.shown)
        self._gesture = None
        self._begin()
        self._hear(self._line.text)
        self.mode_changed.emit()
        self._canvas.setFocus(Qt.FocusReason.OtherFocusReason)

    def choose_kind(self, kind: Kind) -> None:
        """Draw parts of this kind from now on."""
        self.kind = kind
        self._begin()
        self.mode_changed.emit()

    def take_up(self, make: Callable[[Scene], Gesture]) -> None:
        """Go on with a gesture that is not a mode of its own. Once it is done or dropped, the hand picks."""
        self.choose_mode(Mode.PICK)
        shown = self._store.shown
        scene = self._scene(shown) if shown else None
        if scene is not None:
            self._gesture = make(scene)
            self._show()

    def turn(self) -> None:
        """Go on in the gesture's other variant, such as an arc instead of a straight side."""
        if self._gesture is not None:
            self._gesture = self._gesture.turned()
            self._hear(self._line.text)

    def _connect(self) -> None:
        canvas, line = self._canvas, self._line
        canvas.pressed.connect(self._press)
        canvas.pointed.connect(self._point)
        canvas.released.connect(self._release)
        canvas.typed.connect(line.take)
        canvas.entered.connect(self._enter)
        canvas.took_back.connect(self._back)
        canvas.cancelled.connect(self._cancel)
        canvas.deleted.connect(self._delete)
        canvas.inserted.connect(lambda: self._do(lambda gesture: gesture.put_in()))
        canvas.zoomed.connect(self._look)
        line.heard.connect(self._hear)
        line.entered.connect(self._type)
        line.finished.connect(self._enter)
        line.taken_back.connect(self._back)
        line.escaped.connect(self._cancel)

    def _press(self, at: Point, keys: Held) -> None:
        self._canvas.setFocus(Qt.FocusReason.MouseFocusReason)
        if self._gesture is not None:
            self._do(lambda gesture: gesture.press(at, keys))

    def _point(self, at: Point, keys: Held) -> None:
        if self._gesture is not None:
            self._gesture.point(at, keys)
            self._show()

    def _release(self, at: Point, keys: Held) -> None:
        self._do(lambda gesture: gesture.release(at, keys))

    def _show_sizes(self, shown: Shown) -> None:
        """Show the sizes of the face and of the one picked part. Sizes of several parts would lie over each other."""
        if Overlay.SIZES not in shown.overlays:
            self._store.turn_overlay(Overlay.SIZES)
        if len(shown.picked) > 1:
            self._store.pick(())

    def _hear(self, text: str) -> None:
        """Say what the line that is being typed means, and show on a copy of the gesture what would come of it."""
        gesture = self._gesture
        if gesture is None:
            return
        if not text.strip():
            self._line.say("")
            self._show()
            return
        trial = copy.copy(gesture)
        try:
            words, so_far = gesture.says(text), gesture.so_far(text)
            done = trial.type(so_far) if so_far else None
        except RecoatError as error:
            self._show()
            self._line.tell(str(error), gesture.offers(text))
            return
        self._line.say(words)
        if so_far:
            self._show_trial(trial, done)
        else:
            self._show()

    def _show_trial(self, trial: Gesture, done: Done | None) -> None:
        if done is None:
            self._canvas.show_preview(trial.preview, still=True)
            self._try_out(trial.tried)
            self._ask(then=trial.wants)
        else:
            self._canvas.show_preview(done.preview, still=True)
            self._try_out(done.job if done.job is not self._store.open.job else None)
            self._ask()

    def _type(self, text: str) -> None:
        """Take a line that was typed with Return. A refused one stays in the line, and leaves the gesture as it was."""
        gesture = self._gesture
        if gesture is None:
            return
        trial = copy.copy(gesture)
        try:
            done = trial.type(text)
        except RecoatError as error:
            self._line.tell(str(error), gesture.offers(text))
            return
        self._gesture = trial
        self._adopt_kind(trial)
        if self._take(done):
            self._line.take_in()
            self._canvas.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self._gesture = gesture

    def _adopt_kind(self, gesture: Gesture) -> None:
        """Take over the kind of new parts, which a line may name, from the gesture."""
        if gesture.scene.kind is not self.kind:
            self.kind = gesture.scene.kind
            self.mode_changed.emit()

    def _enter(self) -> None:
        self._canvas.setFocus(Qt.FocusReason.OtherFocusReason)
        self._do(lambda gesture: gesture.enter())

    def _back(self) -> None:
        if self._gesture is not None:
            self._gesture.back()
            self._show()

    def _delete(self) -> None:
        """Take out what the gesture holds; if it has not begun, the picked parts go."""
        if self._gesture is None or not self._gesture.is_begun:
            self.deleted.emit()
        else:
            self._do(lambda gesture: gesture.take_out())

    def _cancel(self) -> None:
        """Drop what was begun, with the line. If nothing was, pick no part; if none is picked, go back to Pick."""
        self._line.clear()
        self._canvas.setFocus(Qt.FocusReason.OtherFocusReason)
        if self._gesture is not None and self._gesture.is_begun:
            self._gesture.cancel()
            self._show()
        elif self._store.shown is not None and self._store.shown.picked:
            self._store.pick(())
        else:
            self.choose_mode(Mode.PICK)

    def _do(self, act: Callable[[Gesture], Done | None]) -> None:
        """Let the gesture take one point or key. What it comes to at its end is one edit for undo."""
        if self._gesture is None:
            return
        try:
            done = act(self._gesture)
        except RecoatError as error:
            self._line.tell(str(error))
            return
        if not self._take(done):
            self._begin()

    def _take(self, done: Done | None) -> bool:
        """Take what a gesture came to into the store. False if the store refuses it; the store then says why."""
        if done is None:
            self._show()
        elif done.job is self._store.open.job:
            self._store.try_out(None)
            self._store.pick(done.picked)
        elif not self._store.edit(done.label, done.job, picked=done.picked):
            return False
        return True

    def _show(self) -> None:
        """Show what the gesture would come to, count it, and say what it wants."""
        gesture = self._gesture
        if gesture is None:
            return
        self._canvas.show_preview(gesture.preview, still=gesture.is_steady)
        self._try_out(gesture.tried)
        self._ask()

    def _try_out(self, job: Job | None) -> None:
        if job is not None or self._store.open.tried is not None:
            self._store.try_out(job)

    def _ask(self, then: str = "") -> None:
        """Say what the gesture asks for, and what it will ask for after the line that is being typed."""
        shown, gesture = self._store.shown, self._gesture
        if shown is None or gesture is None or shown.shown_face is None:
            self._line.ask("", "add a face first" if shown is not None and shown.shown_face is None else "")
            return
        place = f"{gesture.title or self.mode.value} in {shown.shown_face.name}"
        hints = [f"{gesture.other_way} Alt+A"] if gesture.other_way else []
        if then:
            hints = [f"then {then} ⏎"]
        elif gesture.is_begun:
            hints += ["one step back ⌫", "cancel Esc"]
        self._line.ask(place, gesture.wants, " · ".join(hints), example=gesture.example)

    def _begin(self) -> None:
        shown = self._store.shown
        scene = self._scene(shown) if shown else None
        if scene is None:
            self._gesture = None
        else:
            self._gesture = self._gesture.again(scene) if self._gesture else GESTURES[self.mode](scene)
        self._canvas.show_preview(self._gesture.preview if self._gesture else NOTHING)
        if shown is not None and shown.tried is not None:
            self._store.try_out(None)
        self._ask()

    def _look(self) -> None:
        """Give the gesture the reach of the hand after a zoom. What was begun goes on."""
        if self._gesture is not None:
            self._gesture.scene = self._gesture.scene._replace(reach_mm=self._canvas.reach_mm)

    def _scene(self, shown: Shown) -> Scene | None:
        if not shown.face or shown.page is not self._page:
            return None
        return Scene(shown.job, shown.face, shown.picked, self.kind, self._canvas.reach_mm, decimal_sign())

    def _take_usual_kind(self, shown: Shown) -> None:
        face = shown.shown_face
        if face is not None and self.kind in USUAL_KIND.values() and self.kind is not USUAL_KIND[face.view]:
            self.kind = USUAL_KIND[face.view]
            self.mode_changed.emit()


def _differs(known: Scene, scene: Scene) -> bool:
    return known.job is not scene.job or known.face_id != scene.face_id or known.picked != scene.picked
