"""Turns words into what a DXF file holds, so that a reader of the file shows what the person wrote."""

import re
import unicodedata

from shared.limits import LONGEST_TEXT

STRING = re.compile(r"[^\\]{0,59}\\|[^\\]{1,60}")
"""One string of extended data: at most 60 characters, so that it stays under the 255 bytes allowed. A backslash ends a
string, so that no character after it makes it a code."""

LONGEST_LAYOUT = 31
"""The most characters of a layout's name that every reader shows whole (common practice, no source)."""

UNSEEN = "\N{REPLACEMENT CHARACTER}"


def readable(text: str) -> str:
    """The text on one line. A space replaces tabs and line breaks; a sign replaces characters that no font can show."""
    return "".join(map(_shown, text)).strip()


def _shown(character: str) -> str:
    if character in "\t\n\v\f\r\x1c\x1d\x1e\x85\u2028\u2029":
        return " "
    return UNSEEN if unicodedata.category(character) in {"Cc", "Cs", "Cn"} else character


_ESCAPES = str.maketrans(
    {
        # An empty group after a backslash or a percent sign parts it from what follows: "\U+0041" and "%%d" are codes
        # that readers replace before they look at anything else.
        "\\": "\\\\{}",
        "%": "%{}",
        "{": "\\{",
        "}": "\\}",
        "^": "^ ",
    }
)


def paragraph(text: str) -> str:
    """The text as an MTEXT entity holds it, with nothing in it that is a code: ezdxf and GDAL read it unchanged."""
    return readable(text).translate(_ESCAPES)


def extended(text: str) -> tuple[str, ...]:
    """The text as strings of extended data that a reader joins; one empty string for an empty text.

    A text longer than a job allows is cut to that length.
    """
    plain = readable(text[:LONGEST_TEXT])
    return tuple(STRING.findall(plain)) or ("",)


def layout_name(wanted: str, taken: set[str]) -> str:
    """A name for a layout that is not in `taken`: the letters and digits wanted, with a dash for any other sign.

    `taken` holds casefolded names. A number is added to a name that is taken.
    """
    plain = "".join(sign if sign.isalnum() or sign in " -_" else "-" for sign in readable(wanted))
    name = plain[:LONGEST_LAYOUT].strip() or "Face"
    number = 1
    while name.casefold() in taken:
        number += 1
        ending = f" {number}"
        name = f"{plain[: LONGEST_LAYOUT - len(ending)].strip() or 'Face'}{ending}"
    return name
