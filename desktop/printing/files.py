"""Faces to a file: which writer an ending asks for. Neither ezdxf nor Qt is imported before it is needed."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from shared.drawing import Drawing
from shared.errors import FileError

DRAWINGS = {
    "dxf": "Drawing for a drafter (*.dxf)",
    "pdf": "Sheets to scale (*.pdf)",
    "png": "Picture (*.png)",
    "svg": "Picture in lines (*.svg)",
}
"""The endings that can be written, and what each is to a person."""


def check_ending(path: Path) -> None:
    """Raise FileError where no drawing is written with this ending."""
    if path.suffix.lower().lstrip(".") not in DRAWINGS:
        endings = ", ".join(f".{ending}" for ending in DRAWINGS)
        raise FileError("Recoat cannot write a drawing with this ending", where=str(path), do=f"use one of {endings}")


def write_drawings(drawings: Sequence[Drawing], path: Path, drawn_on: date) -> None:
    """Write the drawings of faces as a DXF, as sheets or as a picture, by the ending."""
    check_ending(path)
    if path.suffix.lower() == ".dxf":
        from geometry.dxf.door import write_dxf

        write_dxf(drawings, path, drawn_on=drawn_on)
    else:
        from desktop.printing.pictures import write_picture

        write_picture(drawings, path, drawn_on=drawn_on)
