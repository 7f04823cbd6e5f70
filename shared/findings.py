"""Things to look at: a job that can be read and measured, but in which something is odd."""

from typing import NamedTuple


class Finding(NamedTuple):
    """One thing to look at.

    `code` names the check for programs ("gap", "overlap", "outside-wall", "tie-length", ...), `message` says it to a
    person in one or two sentences, `face` and `parts` are the ids of where it is. `mend` says what one step would put
    it right ("Close the gap", see `takeoff.findings.mending`), "" where a person must decide.
    """

    code: str
    message: str
    face: str
    parts: tuple[str, ...] = ()
    mend: str = ""
