"""Makes a DXF document of drawings, as bytes: `model` draws the faces, `paper` the sheets."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import date
from io import StringIO

from ezdxf import units
from ezdxf._options import options
from ezdxf.document import Drawing as Document
from ezdxf.filemanagement import new

from geometry.dxf.layers import add_lines
from geometry.dxf.model import APPLICATION, UNIT_MM, add_face, placed
from geometry.dxf.paper import add_sheets
from shared.drawing import Drawing
from shared.job import Unit

VERSION = "R2010"
"""The oldest version of the format that holds all that is written here, so that older programs read it too."""

FONT = "arial.ttf"
"""A font file that most machines have or replace. The stroke font of a new document has only Latin letters."""


def dxf_bytes(drawings: Sequence[Drawing], drawn_on: date | None) -> bytes:
    """The drawings as a DXF file. Equal drawings give equal bytes."""
    with _no_clock():
        document = _document(drawings[0].unit if drawings else Unit.MM)
        faces = placed(drawings)
        for face in faces:
            add_face(document, face)
        add_sheets(document, faces, drawn_on)
        stream = StringIO()
        document.write(stream)
    return stream.getvalue().encode("utf-8")


@contextmanager
def _no_clock() -> Iterator[None]:
    """Make the library write a fixed time and number into a file; otherwise it writes the clock and a chance number."""
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _document(unit: Unit) -> Document:
    """An empty document that declares its unit (a new one says metres) and has our line patterns and our font."""
    document = new(VERSION)
    document.units = units.MM if unit is Unit.MM else units.IN
    document.header["$MEASUREMENT"] = 1 if unit is Unit.MM else 0
    document.header["$LUNITS"] = 2 if unit is Unit.MM else 5
    document.header["$LTSCALE"] = 1.0
    # Patterns keep their true size in a view, as they are drawn for it.
    document.header["$PSLTSCALE"] = 0
    document.styles.get("Standard").dxf.font = FONT
    document.appids.add(APPLICATION)
    add_lines(document, UNIT_MM[unit])
    return document
