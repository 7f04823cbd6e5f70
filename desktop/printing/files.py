"""Writes faces to a file; the ending says with which writer. ezdxf and Qt are imported only when they are needed."""

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
"""The endings that can be written, each with what a person calls such a file."""


def check_ending(path: Path) -> None:
    """Raise FileError if no drawing is written with this ending."""
    if path.suffix.lower().lstrip(".") not in DRAWINGS:
        endings = ", ".join(f".{ending}" for ending in DRAWINGS)
        raise FileError("Recoat cannot write a drawing with this ending", where=str(path), do=f"use one of {endings}")


def write_drawings(drawings: Sequence[Drawing], path: Path, drawn_on: date) -> None:
    """Write the drawings of faces as a DXF, as sheets or as a picture, by the ending. FileError if that fails."""
    check_ending(path)
    if path.suffix.lower() == ".dxf":
        from geometry.dxf.door import write_dxf

        write_dxf(drawings, path, drawn_on=drawn_on)
    else:
        from desktop.printing.pictures import write_picture

        write_picture(drawings, path, drawn_on=drawn_on)
