"""The program in a process of its own, for tests."""

import os
from pathlib import Path


def apart_from_the_person(folder: Path) -> dict[str, str]:
    """The environment of a process that shows no window and keeps its settings and copies in this folder."""
    own = {name: str(folder) for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME")}
    return {**os.environ, **own, "QT_QPA_PLATFORM": "offscreen"}
