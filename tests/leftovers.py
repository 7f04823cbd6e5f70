"""Finds what a test of the window has left behind: widgets without a parent, running threads, active timers."""

import gc
import threading
from collections.abc import Iterator
from pathlib import Path
from weakref import WeakSet

import shiboken6
from PySide6.QtCore import QEvent, QSettings, QStandardPaths, QThread, QThreadPool, QTimer
from PySide6.QtWidgets import QApplication


def use_settings_in(folder: Path) -> None:
    """Keep what the program remembers in a folder of the test, and never in the settings of the person who runs it."""
    QStandardPaths.setTestModeEnabled(True)
    for kind in (QSettings.Format.NativeFormat, QSettings.Format.IniFormat):
        QSettings.setPath(kind, QSettings.Scope.UserScope, str(folder))


def running_threads() -> frozenset[threading.Thread]:
    """The threads of Python that run now."""
    return frozenset(threading.enumerate())


def leftovers(threads_before: frozenset[threading.Thread]) -> tuple[str, ...]:
    """What is left once everything that was to be deleted is gone, each in words; empty if nothing is."""
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    found = _found(threads_before)
    if found:
        # A cycle that nothing refers to is not left behind; it is only not yet collected.
        gc.collect()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        found = _found(threads_before)
    return found


def leave_out_what_stands() -> None:
    """Look no more at what exists now: modules and what they keep. That is most of everything, and no test left it.

    Timers and threads that exist but do not run are still looked at, since a test might start them.
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
    """Every timer and thread of Qt that Python knows of, without those that were left out."""
    # The type is asked, not the object: isinstance would wake proxies, which answer for another object.
    return (thing for thing in gc.get_objects() if issubclass(type(thing), (QTimer, QThread)))


def _runs(thing: QTimer | QThread) -> bool:
    """Whether a timer or thread is running, and not yet deleted by Qt."""
    return shiboken6.isValid(thing) and (thing.isActive() if isinstance(thing, QTimer) else thing.isRunning())
