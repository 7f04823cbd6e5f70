import pytest

from shared.errors import FileError
from shared.files.migrations import Document, migrated


def with_unit(document: Document) -> Document:
    return {**document, "unit": "mm"}


def with_named_rooms(document: Document) -> Document:
    return {**document, "rooms": [{"name": name} for name in document["rooms"]]}


STEPS = {1: with_unit, 2: with_named_rooms}


def test_an_older_document_goes_through_every_version_in_turn() -> None:
    document: Document = {"version": 1, "rooms": ["Kitchen"]}
    newest = {"version": 3, "unit": "mm", "rooms": [{"name": "Kitchen"}]}
    assert migrated(document, "job", migrations=STEPS, version=3) == newest
    assert document == {"version": 1, "rooms": ["Kitchen"]}


def test_a_document_of_this_version_stays_as_it_is() -> None:
    document: Document = {"version": 3, "rooms": []}
    assert migrated(document, "job", migrations=STEPS, version=3) is document


def test_a_document_of_a_later_version_is_refused() -> None:
    said = r"job: this job was written by a newer Recoat \(version 4\); this one reads up to 3; update Recoat"
    with pytest.raises(FileError, match=said):
        migrated({"version": 4}, "job", migrations=STEPS, version=3)


@pytest.mark.parametrize("version", [0, -1])
def test_a_version_that_never_was_is_refused(version: int) -> None:
    with pytest.raises(FileError, match=f"no Recoat ever wrote version {version}"):
        migrated({"version": version}, "job", migrations=STEPS, version=3)
