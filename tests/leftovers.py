"""What a test of the window has left behind: widgets without a parent, running threads, active timers."""

import gc
import threading
from collections.abc import Iterator
from pathlib import Path
from weakref import WeakSet

import shiboken6
from PySide6.QtCore import QEvent, QSettings, QStandardPaths, QThread, QThreadPool, QTimer
from PySide6.QtWidgets import QApplication


def use_settings_in(folder: Path) -> None:
    """Keep what the program remembers in a folder of the test's, never in the person's own settings."""
    QStandardPaths.setTestModeEnabled(True)
    for kind in (QSettings.Format.NativeFormat, QSettings.Format.IniFormat):
        QSettings.setPath(kind, QSettings.Scope.UserScope, str(folder))


def running_threads() -> frozenset[threading.Thread]:
    """Python's threads that run now."""
    return frozenset(threading.enumerate())


def leftovers(threads_before: frozenset[threading.Thread]) -> tuple[str, ...]:
    """A word for each thing that still lives after what was to be deleted has been; empty when all is tidy."""
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    found = _found(threads_before)
    if found:
        # A cycle that nobody holds is not left behind, only not yet collected.
        gc.collect()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        found = _found(threads_before)
    return found


def leave_out_what_stands() -> None:
    """Look no more at what stands now, modules and what they keep: it is most of all and never a test's.

    What a test might yet set going, a timer or a thread that is made but does not run, is still looked at.
    """
    gc.collect()
    _not_running.update(_alive())
    gc.freeze()


_not_running: WeakSet[QTimer | QThread] = WeakSet()
"""Timers and threads that were left out of the search for garbage, and with it of `gc.get_objects`."""


def _found(threads_before: frozenset[threading.Thread]) -> tuple[str, ...]:
    pool = QThreadPool.globalInstance()
    busy = ("a task in Qt's thread pool",) if pool.activeThreadCount() and not pool.waitForDone(1000) else ()
    widgets = (f"widget {widget}" for widget in QApplication.topLevelWidgets() if widget.parent() is None)
    threads = (f"thread {thread.name}" for thread in running_threads() - threads_before)
    own_thread = pool.thread()
    running = (thing for thing in (*_alive(), *_not_running) if _runs(thing) and thing is not own_thread)
    qt_things = (f"{'timer' if isinstance(thing, QTimer) else 'thread'} {thing}" for thing in running)
    return (*busy, *widgets, *threads, *qt_things)


def _alive() -> Iterator[QTimer | QThread]:
    """Every timer and thread of Qt's that Python knows of, but those that were left out."""
    # The type is asked, not the object: isinstance would wake stand-ins that answer for something else.
    return (thing for thing in gc.get_objects() if issubclass(type(thing), (QTimer, QThread)))


def _runs(thing: QTimer | QThread) -> bool:
    """Whether Qt has not deleted it and it is going."""
    return shiboken6.isValid(thing) and (thing.isActive() if isinstance(thing, QTimer) else thing.isRunning())
