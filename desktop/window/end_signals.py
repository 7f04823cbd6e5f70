"""Hears the signals by which the system, a terminal or Ctrl+C ends the program, while Qt waits for the person.

Python runs a handler only when it gets its turn, which it does not have while Qt waits. So Python also writes each
signal to a socket, and Qt wakes up for what comes there.
"""

import signal
import socket
from collections.abc import Callable
from types import FrameType

from PySide6.QtCore import QObject, QSocketNotifier

Handler = Callable[[int, FrameType | None], object] | int | None

SIGNALS = (signal.SIGTERM, signal.SIGHUP, signal.SIGINT)


class EndSignals(QObject):
    """Calls `end(number)` at the first such signal; a second one ends the program as if nobody had listened.

    A signal that the program was started to ignore, as `nohup` does, stays ignored.
    """

    EXIT_CODE = 128
    """A program that a signal ends has this and the signal's number as its exit code."""

    def __init__(self, end: Callable[[int], None], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._end = end
        self._heard, self._said = socket.socketpair()
        self._heard.setblocking(False)
        self._said.setblocking(False)
        self._notifier = QSocketNotifier(self._heard.fileno(), QSocketNotifier.Type.Read, self)
        self._notifier.setEnabled(False)
        self._notifier.activated.connect(self._hear)
        self._numbers: tuple[signal.Signals, ...] = ()
        self._handlers: list[Handler] = []
        self._before = -1

    def install(self) -> None:
        """Hear of the signals from now on. Only the main thread may do this."""
        self._notifier.setEnabled(True)
        self._before = signal.set_wakeup_fd(self._said.fileno(), warn_on_full_buffer=False)
        self._numbers = tuple(each for each in SIGNALS if signal.getsignal(each) is not signal.SIG_IGN)
        self._handlers = [signal.signal(number, _let_qt_hear) for number in self._numbers]

    def uninstall(self) -> None:
        """Hear of none any more: each does again what it did before."""
        signal.set_wakeup_fd(self._before)
        for number, handler in zip(self._numbers, self._handlers, strict=True):
            signal.signal(number, handler)
        self._notifier.setEnabled(False)
        self._heard.close()
        self._said.close()

    def _hear(self) -> None:
        try:
            said = self._heard.recv(64)
        except BlockingIOError:  # it was woken up for nothing
            return
        numbers = [number for number in said if number in self._numbers]
        if numbers:
            for number in self._numbers:
                signal.signal(number, signal.SIG_DFL)
            self._end(numbers[0])


def _let_qt_hear(_number: int, _frame: FrameType | None) -> None:
    """Do nothing: with a handler of Python's, the signal is written to the socket."""
