"""What a test of the window has left behind: widgets without a parent, running threads, active timers."""

import gc
import threading
from pathlib import Path
from typing import TypeVar

import shiboken6
from PySide6.QtCore import QEvent, QObject, QSettings, QStandardPaths, QThread, QThreadPool, QTimer
from PySide6.QtWidgets import QApplication

Thing = TypeVar("Thing", bound=QObject)


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


def _found(threads_before: frozenset[threading.Thread]) -> tuple[str, ...]:
    pool = QThreadPool.globalInstance()
    busy = ("a task in Qt's thread pool",) if pool.activeThreadCount() and not pool.waitForDone(1000) else ()
    widgets = (f"widget {widget}" for widget in QApplication.topLevelWidgets() if widget.parent() is None)
    threads = (f"thread {thread.name}" for thread in running_threads() - threads_before)
    own_thread = pool.thread()
    qt_threads = (f"thread {thread}" for thread in _alive(QThread) if thread.isRunning() and thread is not own_thread)
    timers = (f"timer {timer}" for timer in _alive(QTimer) if timer.isActive())
    return (*busy, *widgets, *threads, *qt_threads, *timers)


def _alive(kind: type[Thing]) -> tuple[Thing, ...]:
    """Every object of a Qt kind that Python knows of and Qt has not deleted."""
    # The type is asked, not the object: isinstance would wake stand-ins that answer for something else.
    objects = (thing for thing in gc.get_objects() if issubclass(type(thing), kind))
    return tuple(thing for thing in objects if shiboken6.isValid(thing))
