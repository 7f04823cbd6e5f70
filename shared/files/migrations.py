"""Brings older job files up to date, one version at a time.

Version 1 is the first that was ever written, so there is nothing to bring up to date yet. When the schema changes, add
one to `VERSION` in `shared.job`, and here an entry that turns a document of the version before into one of the new.
"""

from collections.abc import Callable, Mapping
from typing import Any

from shared.errors import FileError
from shared.job import VERSION

Document = dict[str, Any]
"""A job as plain dictionaries and lists, as JSON holds it."""

MIGRATIONS: Mapping[int, Callable[[Document], Document]] = {}
"""By version, the function that turns a document of it into one of the next version."""


def migrated(
    document: Document,
    where: str,
    *,
    migrations: Mapping[int, Callable[[Document], Document]] = MIGRATIONS,
    version: int = VERSION,
) -> Document:
    """The document brought up to this version. FileError for a newer version, or one that no Recoat ever wrote."""
    begin = document.get("version", version)
    check_version(begin, where, migrations=migrations, version=version)
    for step in range(begin, version):
        document = {**migrations[step](document), "version": step + 1}
    return document


def check_version(
    begin: int,
    where: str,
    *,
    migrations: Mapping[int, Callable[[Document], Document]] = MIGRATIONS,
    version: int = VERSION,
) -> None:
    """Pass a version that can be brought up to this one. It is asked before a document is read, which may be large."""
    if begin > version:
        raise FileError(
            f"this job was written by a newer Recoat (version {begin}); this one reads up to {version}",
            where=where,
            do="update Recoat",
        )
    if begin < min(migrations, default=version):
        raise FileError(f"no Recoat ever wrote version {begin} of a job", where=where, do='check its "version"')
