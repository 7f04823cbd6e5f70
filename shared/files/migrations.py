"""Older job files brought up to date, one version at a time.

Version 1 is the first that was ever written, so there is nothing to bring up to date yet. When the schema changes, add
one to `VERSION` in `shared.job` and a row here that turns a document of the version before into one of the new.
"""

from collections.abc import Callable, Mapping
from typing import Any

from shared.errors import FileError
from shared.job import VERSION

Document = dict[str, Any]
"""A job as plain dictionaries and lists, as JSON holds it."""

MIGRATIONS: Mapping[int, Callable[[Document], Document]] = {}
"""From a version to the function that makes a document of the next one."""


def migrated(
    document: Document,
    where: str,
    *,
    migrations: Mapping[int, Callable[[Document], Document]] = MIGRATIONS,
    version: int = VERSION,
) -> Document:
    """The document as one of this version. FileError where it is of a newer one, or of one that never was."""
    begin = document.get("version", version)
    if begin > version:
        raise FileError(
            f"this job was written by a newer Recoat (version {begin}); this one reads up to {version}",
            where=where,
            do="update Recoat",
        )
    for step in range(begin, version):
        if step not in migrations:
            raise FileError(f"no Recoat ever wrote version {begin} of a job", where=where, do='check its "version"')
        document = {**migrations[step](document), "version": step + 1}
    return document
