"""Small files that would cost a great deal: each is made here, so that none is kept."""

import io
import json
import zipfile
from collections.abc import Iterator
from hashlib import shake_256
from math import cos, pi, sin
from typing import Any

from tests.journeys.hostile import Corners, job_of, rectangle

MOSAIC = {"width_mm": 5, "height_mm": 5, "grout_mm": 1, "course_shift": 0.5}
MOST_MM = 100_000
TEETH = 1_990
HEADS = b"product,size,price\n"


def zigzag(turned: bool = False) -> Corners:
    """As many long teeth as an outline may have, side by side."""
    teeth = [(number * 45.0, 89_000.0 * (number % 2)) for number in range(TEETH)]
    corners = [*teeth, (90_000.0, 90_000.0), (0.0, 90_000.0)]
    return [(y, x) for x, y in corners] if turned else corners


def slanting() -> Corners:
    """Long teeth at 45 degrees: the box of each side meets the boxes of all others."""
    teeth = [(10.0 * step + far, far - 10.0 * step) for step in range(TEETH // 2) for far in (0.0, 50_005.0)]
    return [*teeth, (90_000, 60_000), (90_000, -60_000), (-1_000, -60_000)]


def part(name: str, outline: Corners, **fields: Any) -> dict[str, Any]:
    return {"id": name, "kind": "splashback", "name": "Mosaic", "outline": outline, **fields}


def circles(many: int) -> Iterator[dict[str, Any]]:
    """Circles on one spot, each of two half circles and a little aside from the last."""
    for number in range(many):
        y = 1_000 + number * 7 % 400
        yield {"id": f"c{number}", "kind": "fixture", "outline": [[number, y, 1], [number + 2_000, y, 1]]}


def faces(*parts: list[dict[str, Any]], **fields: Any) -> dict[str, Any]:
    """A job of as many walls as there are lists of parts."""
    walls = [{"id": f"f{place}", "name": f"A{place}", "parts": own, **fields} for place, own in enumerate(parts)]
    return {"name": "Job", "rooms": [{"id": "r", "name": "Kitchen", "faces": walls}]}


def mosaics() -> dict[str, Any]:
    """Three thousand strips of mosaic, each 100 m long."""
    strips = [
        [part(f"p{f}-{p}", rectangle(0, 3_300 * p, MOST_MM, 3_200), tiles=MOSAIC) for p in range(30)]
        for f in range(100)
    ]
    return faces(*strips)


def round_outlines(many: int) -> dict[str, Any]:
    """More corners than a job may have: circles traced corner by corner."""
    turn = [2 * pi * step / TEETH for step in range(TEETH)]
    ring = [(round(400 * cos(angle), 2), round(400 * sin(angle), 2)) for angle in turn]
    return job_of(*(part(f"p{n}", [(x + 900 * n, y) for x, y in ring]) for n in range(many)))


def disagreeing(many_faces: int) -> dict[str, Any]:
    """Faces full of readings that disagree."""
    readings = [
        {"start": f"l{n % 40}", "end": f"l{(7 * n + 1) % 41}", "length_mm": 600 + n}
        for n in range(500)
        if n % 40 != (7 * n + 1) % 41
    ]
    return faces(*([] for _ in range(many_faces)), readings=readings)


def tied(many: int) -> dict[str, Any]:
    """One benchtop, tied over and over to one wall."""
    job = job_of()
    top = {"id": "b", "kind": "benchtop", "outline": rectangle(0, 0, 600, 600)}
    ties = [{"part": "b", "side": n % 4, "face": "f", "start_mm": n, "end_mm": n + 600} for n in range(many)]
    job["rooms"][0]["faces"].append({"id": "g", "name": "B", "view": "plan", "parts": [top], "ties": ties})
    return job


def container(content: str, spaces: int = 1_700_000) -> bytes:
    """A job file of this text, packed; with spaces at random, so that it does not unpack to far too much."""
    filler = "".join(" \n\t\r"[byte & 3] for byte in shake_256().digest(spaces))
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as file:
        file.writestr("job.json", filler + content)
    return packed.getvalue()


def long_list(item: str, megabytes: int, before: str, after: str) -> bytes:
    """A container with a list of this item, as often as it takes to fill so much when unpacked."""
    many = megabytes * 2**20 // (len(item) + 1)
    return container(before + ",".join([item] * many) + after)


FACE = '{"name":"J","rooms":[{"id":"r","name":"K","faces":[{"id":"f","name":"A","parts":['
OUTLINE = FACE + '{"id":"p","kind":"door","outline":['


def spreadsheet(*, styles: bytes = b"", texts: bytes = b"", rows: bytes = b"", tables: int = 1) -> bytes:
    """A spreadsheet that holds a price list, with these raw pieces in its files, and noise against the ratio."""
    main = b' xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
    noise = b"<!--" + shake_256().hexdigest(250_000).encode() + b"-->"
    sheets = "".join(f'<sheet name="S{number}" sheetId="{number + 1}" r:id="rId1"/>' for number in range(tables))
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as file:
        for name, content in _FIXED.items():
            file.writestr(name, content.replace("SHEETS", sheets))
        file.writestr("xl/styles.xml", b"<styleSheet" + main + b">" + styles + noise + b"</styleSheet>")
        file.writestr("xl/sharedStrings.xml", b"<sst" + main + b">" + texts + b"</sst>")
        file.writestr(
            "xl/worksheets/sheet1.xml", b"<worksheet" + main + b"><sheetData>" + rows + b"</sheetData></worksheet>"
        )
    return packed.getvalue()


_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml"
_FIXED = {
    "[Content_Types].xml": f'<Types xmlns="{_PACKAGE}/content-types"><Default Extension="rels" '
    'ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    + "".join(
        f'<Override PartName="/xl/{name}.xml" ContentType="{_TYPE}.{kind}+xml"/>'
        for name, kind in (
            ("workbook", "sheet.main"),
            ("worksheets/sheet1", "worksheet"),
            ("styles", "styles"),
            ("sharedStrings", "sharedStrings"),
        )
    )
    + "</Types>",
    "_rels/.rels": f'<Relationships xmlns="{_PACKAGE}/relationships"><Relationship Id="rId1" '
    f'Type="{_OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
    "xl/workbook.xml": '<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" '
    f'xmlns:r="{_OFFICE}"><sheets>SHEETS</sheets></workbook>',
    "xl/_rels/workbook.xml.rels": f'<Relationships xmlns="{_PACKAGE}/relationships">'
    + "".join(
        f'<Relationship Id="rId{number}" Type="{_OFFICE}/{kind}" Target="{target}.xml"/>'
        for number, kind, target in (
            (1, "worksheet", "worksheets/sheet1"),
            (2, "styles", "styles"),
            (3, "sharedStrings", "sharedStrings"),
        )
    )
    + "</Relationships>",
}


def as_json(job: dict[str, Any]) -> bytes:
    return json.dumps(job, separators=(",", ":")).encode()
