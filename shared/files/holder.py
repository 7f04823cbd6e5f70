"""Who has a job open: a person, a machine and a process. It says whether that process is still there."""

import getpass
import hashlib
import os
import platform
import secrets
import sys
from contextlib import suppress
from datetime import datetime
from pathlib import Path
from typing import Annotated

import msgspec

from shared.written.moments import moment_words

_Word = Annotated[str, msgspec.Meta(max_length=200)]
_ENDED = frozenset("ZX")
_STATE, _START = 0, 19
"""Where Linux writes a process's state and start after its name: proc(5), /proc/pid/stat, fields 3 and 22."""


class Holder(msgspec.Struct, frozen=True):
    """Who has a job open.

    `machine` tells this machine from all others, also from one with the same `host` name. `process` and when it
    `started` ("" if unknown) tell a process from a later one with the same number. `since` is in seconds since 1970.
    `mark` is random: no two holders are equal.
    """

    who: _Word
    host: _Word
    machine: _Word
    process: Annotated[int, msgspec.Meta(gt=0, lt=2**31)]
    started: _Word
    since: Annotated[int, msgspec.Meta(ge=0, lt=2**35)]
    mark: _Word

    def words(self, now: datetime) -> str:
        """Who has had the job open, where and since when, as a sentence without its full stop."""
        since = moment_words(datetime.fromtimestamp(self.since).astimezone(), now)
        if (self.who, self.machine) == (_person(), _machine()):
            return f"it has been open in another window since {since}"
        return _plain(f"{self.who} has had it open on {self.host} since {since}")

    @property
    def is_there(self) -> bool | None:
        """Whether the process still runs; None if that cannot be seen from here."""
        if self.machine != _machine():
            return None
        started = _start_of(self.process)
        if started is None:
            return False
        return started == self.started if started and self.started else None


def this_process(now: datetime) -> Holder:
    """This person on this machine in this process, with a mark of its own."""
    process = os.getpid()
    return Holder(
        who=_person(),
        host=platform.node(),
        machine=_machine(),
        process=process,
        started=_start_of(process) or "",
        since=int(now.timestamp()),
        mark=secrets.token_hex(8),
    )


def _person() -> str:
    try:
        return getpass.getuser()
    except (KeyError, OSError):  # a number without a name; OSError from Python 3.13 on
        return "someone"


def _machine() -> str:
    """What only this machine has, and on Linux only this container on it: process numbers mean nothing elsewhere.

    It is a digest, because machine-id(5) asks that the id itself be kept to the machine.
    """
    marks = [platform.node()]
    with suppress(OSError):
        marks.append(Path("/etc/machine-id").read_text("utf-8"))
    with suppress(OSError):
        marks.append(str(Path("/proc/self/ns/pid").readlink()))
    return hashlib.sha256("\n".join(marks).encode()).hexdigest()[:16]


def _start_of(process: int) -> str | None:
    """When the process started, in the system's own count; "" if the system does not say, None if it has ended."""
    if sys.platform == "win32":
        return ""  # There, asking a process whether it is there ends it.
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return None
    except OSError:
        pass  # It is there, and another person's.
    try:
        fields = Path(f"/proc/{process}/stat").read_text("utf-8").rpartition(")")[2].split()
    except OSError:
        return ""
    return None if fields[_STATE] in _ENDED else fields[_START]


def _plain(words: str) -> str:
    """The words with a "?" for each character that is no sign: they come from a file that anybody may have written."""
    return "".join(character if character.isprintable() else "?" for character in words)
