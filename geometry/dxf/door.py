"""The door to DXF files: nothing that is slow to import is loaded before one is written."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from shared.drawing import Drawing
from shared.files.disk import write_atomically


def write_dxf(drawings: Sequence[Drawing], path: Path, *, drawn_on: date | None = None) -> None:
    """Write drawings of one job to a DXF file: at true size side by side in model space, and each on its own sheet.

    The file declares the unit of the first drawing, millimetres or inches. `drawn_on` is the date on the sheets.
    Without drawings nothing is drawn in the file. FileError where the file cannot be written; it is then as it was.
    """
    from geometry.dxf.document import dxf_bytes  # late: ezdxf is slow to import and most runs write no DXF

    write_atomically(path, dxf_bytes(drawings, drawn_on))
