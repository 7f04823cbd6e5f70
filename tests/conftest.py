"""What holds for every test: random cases repeat, settings are the test's own, and nothing is left behind."""

import os
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path

import pytest
from hypothesis import settings

# A test never opens a window on the screen of the person who runs it.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

settings.register_profile("house", derandomize=True, deadline=None, print_blob=True)
settings.load_profile("house")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Name the settings of pytest-qt if Qt is not installed: pytest-qt is switched off then (-p no:pytest-qt)."""
    if find_spec("PySide6") is None:
        for name in ("qt_api", "qt_log_level_fail", "qt_log_ignore"):
            parser.addini(name, "unused without Qt", type="linelist")


@pytest.fixture(autouse=True, scope="module")
def standing() -> None:
    """Leave what exists before the tests of a module out of the search for leftovers: most of it never changes."""
    if find_spec("PySide6") is not None:
        from tests.leftovers import leave_out_what_stands

        leave_out_what_stands()


@pytest.fixture(autouse=True)
def clean_window(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Start a test of the window without settings, and fail it if it leaves a widget, a thread or a timer behind."""
    if "qapp" not in request.fixturenames:
        yield
        return
    from tests.leftovers import leftovers, running_threads, use_settings_in

    use_settings_in(Path(tmp_path_factory.mktemp("settings")))
    threads_before = running_threads()
    yield
    left = leftovers(threads_before)
    if left:
        pytest.fail(f"left behind: {', '.join(left)}")
