"""Reports errors that nobody foresaw: it writes them to the log, keeps the job safe and tells the person.

A traceback never comes onto the screen.
"""

import logging
import sys
import threading
from collections.abc import Callable
from types import TracebackType

from PySide6.QtCore import QMessageLogContext, QObject, QtMsgType, Signal, qInstallMessageHandler

from shared.errors import RecoatError

LOG = logging.getLogger("recoat")

WORDS = "Something went wrong inside Recoat. The log says what."
KEPT = "A copy of your job was kept. Save the job, then start Recoat again."

_LEVELS = {
    QtMsgType.QtDebugMsg: logging.DEBUG,
    QtMsgType.QtInfoMsg: logging.INFO,
    QtMsgType.QtWarningMsg: logging.WARNING,
    QtMsgType.QtCriticalMsg: logging.ERROR,
    QtMsgType.QtFatalMsg: logging.CRITICAL,
}


class ErrorReport(QObject):
    """Hears of errors on every thread while it is installed, and tells of them by `told(words)`.

    `keep_safe` writes a copy of the job, and says whether there was anything to keep.
    """

    told = Signal(str)

    def __init__(self, keep_safe: Callable[[], bool], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._keep_safe = keep_safe

    def install(self) -> None:
        """Hear of all errors from now on."""
        sys.excepthook = self.report_error
        threading.excepthook = self._from_thread
        qInstallMessageHandler(_log_message)

    def uninstall(self) -> None:
        """Hear of none any more."""
        sys.excepthook = sys.__excepthook__
        threading.excepthook = threading.__excepthook__
        qInstallMessageHandler(None)

    def report_error(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Log the error, keep the job, tell the person. Ctrl+C in the terminal ends the program as ever."""
        if issubclass(kind, KeyboardInterrupt):
            sys.__excepthook__(kind, error, trace)
            return
        LOG.error("an unexpected error", exc_info=(kind, error, trace))
        self.told.emit(f"{WORDS} {KEPT}" if self.kept() else WORDS)

    def kept(self) -> bool:
        """Whether a copy of the job could be kept just now. Whatever is in the way of it is logged."""
        try:
            return self._keep_safe()
        except RecoatError as trouble:
            LOG.error("no copy of the job could be kept: %s", trouble)
            return False
        except Exception:  # whatever it is, the person must still be told
            LOG.exception("no copy of the job could be kept")
            return False

    def _from_thread(self, args: threading.ExceptHookArgs) -> None:
        if args.exc_value is not None:
            self.report_error(args.exc_type, args.exc_value, args.exc_traceback)


def _log_message(kind: QtMsgType, _context: QMessageLogContext, message: str | None) -> None:
    LOG.log(_LEVELS.get(kind, logging.WARNING), "%s", message)
