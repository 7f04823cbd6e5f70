"""The job file: a container with the job and its photos (`.recoat`), or the job alone as JSON (`.json`).

The content of a file says which of the two it is when it is read; its ending says which when it is written. Equal jobs
give equal bytes. `shared.files.container` packs the container, `shared.files.disk` reads and writes files.
"""

from collections.abc import Mapping
from math import isfinite
from pathlib import Path
from typing import Any, NamedTuple

import msgspec

from shared.errors import FileError, JobError
from shared.files.container import (
    JOB_NAME,
    LARGEST_TOTAL,
    PHOTO_FOLDER,
    is_container,
    is_photo_name,
    packed,
    unpacked,
)
from shared.files.disk import read_bounded, write_atomically
from shared.files.migrations import check_version, migrated
from shared.files.schema import json_schema
from shared.files.wrong_values import wrong_value
from shared.job import VERSION, Job

LARGEST_JOB = 32 * 2**20
"""The most bytes of `job.json`: a job at all its limits has some 29 MB.

Read, it takes up to 22 times as much memory (measured).
"""

_MARK_OF_UTF8 = b"\xef\xbb\xbf"


class Photo(NamedTuple):
    """A picture kept in a job file under a plain file name."""

    name: str
    content: bytes


class JobFile(NamedTuple):
    """What a job file holds."""

    job: Job
    photos: tuple[Photo, ...] = ()


class _Head(msgspec.Struct):
    """The part of a job that is read first: its version says how to read the rest."""

    version: int = VERSION


def read_job_file(path: Path) -> JobFile:
    """The job and the photos in a job file. FileError where it cannot be read.

    Whether the job holds together is for `shared.checks.job`.
    """
    where = str(path)
    content = read_bounded(path, LARGEST_TOTAL)
    if not is_container(content):
        return _with_its_photos(JobFile(job_from_json(content, where)), where)
    entries = unpacked(content, where)
    if JOB_NAME not in entries:
        raise FileError(f"the file has no {JOB_NAME} in it", where=where, do="use a file that Recoat has saved")
    photos = tuple(Photo(name.removeprefix(PHOTO_FOLDER), photo) for name, photo in entries.items() if name != JOB_NAME)
    return _with_its_photos(JobFile(job_from_json(entries[JOB_NAME], where), photos), where)


def write_job_file(path: Path, job_file: JobFile) -> None:
    """Write the job file: JSON alone if the name ends in `.json`, else the container. FileError where that fails."""
    write_atomically(path, content_for(path, job_file))


def content_for(path: Path, job_file: JobFile) -> bytes:
    """The content of the job file at this path. FileError for a job that a file with this ending cannot hold."""
    where = str(path)
    _with_its_photos(job_file, where)
    if path.suffix.lower() != ".json":
        return container_of(job_file)
    if job_file.photos:
        raise FileError("a .json file cannot hold photos", where=where, do="save the job with the ending .recoat")
    return job_to_json(job_file.job)


def container_of(job_file: JobFile) -> bytes:
    """The container of a job and its photos, sorted by name. FileError for names that photos cannot have."""
    photos = sorted(job_file.photos)
    named = {f"{PHOTO_FOLDER}{photo.name}": photo.content for photo in photos}
    if len(named) < len(photos) or not all(is_photo_name(photo.name) for photo in photos):
        raise FileError("two photos share a name, or one has a name that no file can have", do="rename the photos")
    return packed({JOB_NAME: job_to_json(job_file.job), **named})


def job_to_json(job: Job) -> bytes:
    """The job as JSON in UTF-8, with one field or corner on each line. JobError for a value that no file can hold.

    Equal jobs give equal bytes: every number is written as its field's type, and zero without a sign.
    """
    try:
        plain = msgspec.convert(_unsigned(msgspec.to_builtins(job)), Job)
        return msgspec.json.format(msgspec.json.encode(plain), indent=1)
    except (msgspec.ValidationError, UnicodeEncodeError) as trouble:
        raise JobError("the job has a value that cannot be saved", do="undo the last step") from trouble


def job_from_json(content: bytes, where: str) -> Job:
    """The job that this JSON says, brought up to date if an older Recoat wrote it. FileError where it says no job."""
    document = content.removeprefix(_MARK_OF_UTF8)
    if len(document) > LARGEST_JOB:
        raise FileError(f"the job is larger than {LARGEST_JOB // 2**20} MB", where=where, do="split it into several")
    try:
        version = msgspec.json.decode(document, type=_Head).version
        if version == VERSION:
            return msgspec.json.decode(document, type=Job)
        check_version(version, where)
        return msgspec.convert(migrated(msgspec.json.decode(document), where), Job)
    except msgspec.ValidationError as trouble:
        raise wrong_value(str(trouble), document, where) from trouble
    except RecursionError as trouble:
        raise FileError("the file is nested too deeply to be a job", where=where, do="choose a job file") from trouble
    except (msgspec.DecodeError, UnicodeDecodeError) as trouble:
        raise FileError(
            "this is not a job file, or the file is damaged",
            where=where,
            do="choose another file, or another copy of it",
        ) from trouble


def schema() -> dict[str, Any]:
    """The JSON Schema of a job, as published in `shared/data/job.schema.json`."""
    return json_schema(Job, f"Recoat job, version {VERSION}")


def _with_its_photos(job_file: JobFile, where: str) -> JobFile:
    """The job file itself. FileError where a face names a photo that is not in it."""
    names = {photo.name for photo in job_file.photos}
    for face in job_file.job.faces:
        if face.photo and face.photo not in names:
            what = f'face {face.name} names the photo "{face.photo}", which is not in the file'
            raise FileError(what, where=where, do="add the photo or take its name away")
    return job_file


def _unsigned(value: Any) -> Any:
    """The same document with 0.0 for every -0.0: the two are equal but written differently."""
    if isinstance(value, float):
        if not isfinite(value):
            raise JobError("the job has a number that cannot be saved", do="undo the last step")
        return value + 0.0
    if isinstance(value, Mapping):
        return {name: _unsigned(field) for name, field in value.items()}
    if isinstance(value, list | tuple):
        return [_unsigned(item) for item in value]
    return value
