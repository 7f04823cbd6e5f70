"""Long work off the window's thread: one worker thread does it, and one signal brings its result back."""

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from threading import Event
from typing import Generic, TypeVar

from PySide6.QtCore import QObject, Signal

from shared.errors import RecoatError

Result = TypeVar("Result")


class Background(QObject):
    """Does one piece of work after another. The result of each is handed on in the window's thread."""

    busy = Signal(str)
    """What is being done, in words; "" when nothing is."""

    may_be_stopped = Signal(str)
    """What is being done that a person may stop, in words; "" when nothing such is."""

    _finished = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._executor = ThreadPoolExecutor(max_workers=1, thread_name_prefix="background")
        self._waiting = 0
        self._stoppable: Event | None = None
        self._finished.connect(self._end)

    def start(
        self,
        words: str,
        work: Callable[[], Result],
        done: Callable[[Result], None],
        failed: Callable[[RecoatError], None],
        stopped: Event | None = None,
    ) -> None:
        """Start the work; after it call `done` with its result, or `failed` with an error that a person can mend.

        `words` say meanwhile what is being done; "" is for what nobody needs to hear of. With `stopped` the work may be
        stopped, as long as no other such work is begun: `stop` sets it, and then neither function is called. The work
        may look at it to end sooner.
        """
        self._waiting += 1
        if words:
            self.busy.emit(words)
        future = self._executor.submit(work)
        if stopped is not None:
            self.stop()
            self._stoppable = stopped
            self.may_be_stopped.emit(words)

        def pass_on(ended: Future[Result]) -> None:
            self._finished.emit(_Ended(ended, done, failed, stopped))

        future.add_done_callback(pass_on)

    def stop(self) -> None:
        """Wait no more for the work that may be stopped: its result is dropped, whenever it ends."""
        if self._stoppable is not None:
            self._stoppable.set()
            self._stoppable = None
            self.may_be_stopped.emit("")

    def run_now(self, work: Callable[[], Result]) -> Result:
        """The result of this work, which is done right after the work that was given before. Its errors are raised."""
        return self._executor.submit(work).result()

    def join(self) -> None:
        """Wait for the work that was given; take no more, and hand no more results on."""
        self._executor.shutdown(wait=True)
        self._finished.disconnect(self._end)

    def _end(self, ended: "_Ended[object]") -> None:
        self._waiting -= 1
        if not self._waiting:
            self.busy.emit("")
        if ended.stopped is None:
            ended.settle()
        elif not ended.stopped.is_set():
            self._stoppable = None
            self.may_be_stopped.emit("")
            ended.settle()


class _Ended(Generic[Result]):
    """A piece of work that has ended, and the functions that wait for it."""

    def __init__(
        self,
        future: Future[Result],
        done: Callable[[Result], None],
        failed: Callable[[RecoatError], None],
        stopped: Event | None,
    ) -> None:
        self.stopped = stopped
        self._future = future
        self._done = done
        self._failed = failed

    def settle(self) -> None:
        """Hand the result on. An error that a person cannot mend is raised here, so that `report_error` hears of it."""
        error = self._future.exception()
        if isinstance(error, RecoatError):
            self._failed(error)
        else:
            self._done(self._future.result())
