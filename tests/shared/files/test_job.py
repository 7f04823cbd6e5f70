import io
import json
import stat
import struct
import zipfile
from collections.abc import Callable
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from shared.edits.drawn import find_face, with_changed_face
from shared.errors import FileError, JobError
from shared.files import container
from shared.files.job import (
    JobFile,
    Photo,
    container_of,
    job_from_json,
    job_to_json,
    read_job_file,
    schema,
    write_job_file,
)
from shared.job import Face, Fillet, Job, JointChoice, Outline, Part, Room, Unit, Vertex, View
from shared.trade.kinds import Kind, Treatment

PUBLISHED = Path(__file__).parents[3] / "shared" / "data" / "job.schema.json"

number = st.floats(-1e5, 1e5) | st.integers(-1000, 1000).map(float)
outlines: st.SearchStrategy[Outline] = st.lists(st.builds(Vertex, number, number, number), max_size=5).map(tuple)
texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
parts = st.builds(
    Part,
    id=texts,
    kind=st.sampled_from(Kind),
    outline=outlines,
    name=texts,
    level=st.integers(-9, 9),
    hides=st.booleans(),
    treatment=st.sampled_from(Treatment),
    thickness_mm=number,
    coated_sides=st.none() | st.lists(st.integers(0, 9), max_size=3).map(tuple),
)
faces = st.builds(Face, id=texts, name=texts, view=st.sampled_from(View), parts=st.lists(parts, max_size=3).map(tuple))
rooms = st.builds(Room, id=texts, name=texts, faces=st.lists(faces, max_size=2).map(tuple))
jobs = st.builds(Job, name=texts, rooms=st.lists(rooms, max_size=2).map(tuple), unit=st.sampled_from(Unit))


@pytest.fixture
def with_photo(kitchen: Job) -> JobFile:
    """The kitchen with a picture of its first wall."""
    wall = replace(find_face(kitchen, "f1"), photo="wall a.jpg")
    return JobFile(with_changed_face(kitchen, wall), (Photo("wall a.jpg", bytes(range(256)) * 20),))


@given(jobs)
def test_a_job_saved_and_loaded_is_the_same_job(job: Job) -> None:
    assert job_from_json(job_to_json(job), "job") == job


VALIDATOR = jsonschema.validators.validator_for(schema())(schema())


def test_the_schema_is_one() -> None:
    VALIDATOR.check_schema(schema())


@given(jobs)
def test_what_is_written_fits_the_published_schema(job: Job) -> None:
    VALIDATOR.validate(json.loads(job_to_json(job)))


def test_the_published_schema_is_that_of_the_program() -> None:
    assert json.loads(PUBLISHED.read_text("utf-8")) == schema()


def test_a_job_file_saved_and_loaded_is_the_same(tmp_path: Path, with_photo: JobFile) -> None:
    path = tmp_path / "kitchen.recoat"
    write_job_file(path, with_photo)
    assert read_job_file(path) == with_photo


def test_a_bare_job_is_written_and_read_too(tmp_path: Path, kitchen: Job) -> None:
    path = tmp_path / "kitchen.json"
    write_job_file(path, JobFile(kitchen))
    assert json.loads(path.read_bytes())["name"] == kitchen.name
    assert read_job_file(path) == JobFile(kitchen)


def test_what_a_file_is_its_content_says(tmp_path: Path, kitchen: Job) -> None:
    path = tmp_path / "kitchen.recoat"
    path.write_bytes(b"\xef\xbb\xbf" + job_to_json(kitchen))
    assert read_job_file(path).job == kitchen


def test_equal_jobs_give_equal_bytes(with_photo: JobFile) -> None:
    job = Job("One", (Room("r", "R", (Face("f", "A", parts=(Part("p", Kind.DOOR, (Vertex(0.0, 5.0),)),)),)),))
    same = Job("One", (Room("r", "R", (Face("f", "A", parts=(Part("p", Kind.DOOR, (Vertex(-0.0, 5),)),)),)),))
    assert job == same
    assert job_to_json(job) == job_to_json(same)
    more = (*with_photo.photos, Photo("a.jpg", b"a"))
    assert container_of(JobFile(job, more)) == container_of(JobFile(same, more[::-1]))


def test_photos_cannot_go_into_a_bare_job(tmp_path: Path, with_photo: JobFile) -> None:
    path = tmp_path / "kitchen.json"
    with pytest.raises(FileError, match=r"a \.json file cannot hold photos"):
        write_job_file(path, with_photo)
    assert not path.exists()


def test_a_photo_that_is_not_in_the_file_is_named(tmp_path: Path, with_photo: JobFile) -> None:
    path = tmp_path / "kitchen.json"
    path.write_bytes(job_to_json(with_photo.job))
    with pytest.raises(FileError, match=r'face A names the photo "wall a\.jpg", which is not in the file'):
        read_job_file(path)
    with pytest.raises(FileError, match="which is not in the file"):
        write_job_file(path, JobFile(with_photo.job))


@pytest.mark.parametrize("name", ["", "../up.jpg", "a/b.jpg", "a\\b.jpg", ".hidden", "C:a", "a\nb", "x" * 101])
def test_a_photo_needs_a_plain_name(kitchen: Job, name: str) -> None:
    with pytest.raises(FileError, match="has a name that no file can have"):
        container_of(JobFile(kitchen, (Photo(name, b""),)))


@pytest.mark.parametrize(
    "job",
    [
        Job("\ud800"),
        Job("x", joints=(JointChoice("f", ("a", "b"), section=Fillet(float("nan"))),)),
        Job("x", (Room("r", "R", (Face("f", "A", parts=(Part("p", Kind.DOOR, (Vertex(0, float("inf")),)),)),)),)),
    ],
)
def test_what_could_not_be_read_again_is_not_written(tmp_path: Path, job: Job) -> None:
    path = tmp_path / "kitchen.recoat"
    path.write_bytes(b"old")
    with pytest.raises(JobError):
        write_job_file(path, JobFile(job))
    assert path.read_bytes() == b"old"


def outline(text: str) -> str:
    """A job with one part whose outline is this JSON."""
    face = (
        '{"id": "f", "name": "B", "parts": [{"id": "p1", "kind": "door", "name": "Sink door", "outline": '
        + text
        + "}]}"
    )
    return '{"name": "a", "rooms": [{"id": "r", "name": "Kitchen", "faces": [' + face + "]}]}"


TROUBLE = {
    "": "not a job file",
    "hello": "not a job file",
    '{"name": "a"': "not a job file",
    '{"name": "a"} more': "not a job file",
    '{"name": NaN}': "not a job file",
    "[]": "this should be a group of fields, not a list",
    "{}": 'the field "name" is missing',
    '{"name": 5}': '"name": this should be text, not a whole number',
    '{"name": "a", "colour": 1}': 'there is no field "colour" here',
    '{"name": "a", "unit": "ell"}': '"ell" is not one of the words known here',
    '{"version": 7}': "was written by a newer Recoat (version 7); this one reads up to 1; update Recoat",
    '{"version": 0}': "no Recoat ever wrote version 0 of a job",
    '{"version": "1"}': '"version": this should be a whole number, not text',
    "[" * 100_000: "this should be a group of fields, not a list",
    '{"a":' * 100_000: "nested too deeply",
    '{"name": "a", "rooms": ' + "[" * 100_000: "nested too deeply",
    outline("7"): 'face 1 (B), part 1 (Sink door), "outline": this should be a list, not a whole number',
    outline('[[0, "1"]]'): "part 1 (Sink door), corner 1, item 2: this should be a number, not text",
    outline("[[0]]"): "part 1 (Sink door), corner 1: this list has fewer than 2 items",
    outline("[[0, 1, 2, 3]]"): "a corner of an outline has more than 3 numbers",
    outline("[[0, 1e999]]"): "room 1, face 1, part 1, corner 1, item 2: this number is too large",
    outline("[[0, NaN]]"): "not a job file",
    outline("[]").replace("door", "sofa", 1): 'part 1 (Sink door), "kind": "sofa" is not one of the words known here',
    outline('[], "level": 1.5'): '"level": this should be a whole number, not a number',
    outline('[], "hides": 1'): '"hides": this should be true or false, not a whole number',
    outline('[], "level": ' + "9" * 5000): '"level": this number is too large',
    '{"name": "a", "joints": [{"face": "f", "parts": ["p"]}]}': '1, "parts": this list should have 2 items',
    '{"name": "a", "\\u001b[31m": 1}': "there is no field",
}


@pytest.mark.parametrize("text", TROUBLE, ids=lambda text: text[:60])
def test_json_that_is_no_job_is_refused_in_words(text: str) -> None:
    with pytest.raises(FileError) as caught:
        job_from_json(text.encode(), "kitchen.json")
    sentence = str(caught.value)
    assert sentence.startswith("kitchen.json: ")
    assert TROUBLE[text] in sentence
    assert sentence.isprintable()
    assert "$" not in sentence


@given(st.binary(max_size=80) | texts.map(str.encode))
def test_any_bytes_are_a_job_or_refused_in_words(content: bytes) -> None:
    with pytest.raises(FileError):
        job_from_json(content, "kitchen.json")


def test_a_million_parts_are_refused_by_their_size() -> None:
    part = '{"id": "p", "name": "Door", "kind": "door", "outline": [[0, 0], [1, 0], [1, 1]]}'
    text = outline("[]").replace('"parts": [', f'"parts": [{", ".join([part] * 1_000_000)}, ')
    with pytest.raises(FileError, match="the job is larger than 32 MB"):
        job_from_json(text.encode(), "kitchen.json")


def zipped(*entries: tuple[str | zipfile.ZipInfo, bytes], packing: int = zipfile.ZIP_DEFLATED) -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", packing) as file:
        for name, content in entries:
            file.writestr(name, content)
    return buffer.getvalue()


JOB = ("job.json", job_to_json(Job("Kitchen")))


def link() -> bytes:
    entry = zipfile.ZipInfo("photos/a.jpg")
    entry.create_system = 3
    entry.external_attr = (stat.S_IFLNK | 0o777) << 16
    return zipped(JOB, (entry, b"/etc/hostname"))


def encrypted() -> bytes:
    content = bytearray(zipped(JOB))
    content[content.index(b"PK\x01\x02") + 8] |= 1
    return bytes(content)


def overlapping() -> bytes:
    """Two entries of the list that point at the same stretch of the file."""
    content = bytearray(zipped(JOB, ("photos/a.jpg", b"a"), packing=zipfile.ZIP_STORED))
    second = content.index(b"PK\x01\x02", content.index(b"PK\x01\x02") + 1)
    struct.pack_into("<L", content, second + 42, 0)
    return bytes(content)


def understated() -> bytes:
    """A bomb whose list says that it is small."""
    content = bytearray(zipped(("job.json", b" " * 2**20)))
    listed = content.index(b"PK\x01\x02")
    struct.pack_into("<L", content, listed + 24, 100)
    return bytes(content)


def crowded() -> bytes:
    return zipped(JOB, *((f"photos/{n}.jpg", b"") for n in range(1_000)), packing=zipfile.ZIP_STORED)


def heavy() -> bytes:
    """Five claims of 60 MB in a small file: more than a job file may hold."""
    content = bytearray(zipped(JOB, *((f"photos/{n}.jpg", b"") for n in range(5)), packing=zipfile.ZIP_STORED))
    at = content.index(b"PK\x01\x02")
    while (at := content.find(b"PK\x01\x02", at + 1)) >= 0:
        struct.pack_into("<L", content, at + 24, 60 * 2**20)
    return bytes(content)


DAMAGED = "cut short or damaged"
HARMFUL: dict[str, tuple[Callable[[], bytes], str]] = {
    "bomb": (lambda: zipped(("job.json", b" " * 2**25)), "far too large when unpacked"),
    "large file": (lambda: zipped(("job.json", bytes(2**26 + 1))), "larger than 64 MB"),
    "large whole": (heavy, "larger than 256 MB"),
    "understated": (understated, DAMAGED),
    "up": (lambda: zipped(JOB, ("../job.json", b"")), "does not belong in a job"),
    "up from photos": (lambda: zipped(JOB, ("photos/../../a", b"")), "does not belong in a job"),
    "absolute": (lambda: zipped(JOB, ("/etc/passwd", b"")), "does not belong in a job"),
    "backslash": (lambda: zipped(JOB, ("photos/..\\a", b"")), "does not belong in a job"),
    "stranger": (lambda: zipped(JOB, ("notes.txt", b"")), "does not belong in a job"),
    "zero byte": (lambda: zipped(JOB, ("photos/aXb", b"")).replace(b"aXb", b"a\0b"), "does not belong in a job"),
    "link": (link, "is a link"),
    "encrypted": (encrypted, "is encrypted"),
    "overlapping": (overlapping, "overlap"),
    "unknown packing": (lambda: zipped(JOB, packing=zipfile.ZIP_LZMA), "packed in a way that Recoat does not know"),
    "many": (crowded, "more than 1000 files"),
    "comment": (lambda: zipped(JOB) + b"comment", DAMAGED),
    "no job": (lambda: zipped(("photos/a.jpg", b"")), "the file has no job.json in it"),
    "start alone": (lambda: b"PK\x03\x04", DAMAGED),
    "bad sum": (lambda: zipped(JOB, packing=zipfile.ZIP_STORED).replace(b"Kitchen", b"Kitchan"), DAMAGED),
}


@pytest.mark.parametrize("name", HARMFUL)
def test_a_harmful_container_is_refused_in_words(tmp_path: Path, name: str) -> None:
    make, said = HARMFUL[name]
    path = tmp_path / "kitchen.recoat"
    path.write_bytes(make())
    with pytest.raises(FileError) as caught:
        read_job_file(path)
    assert said in str(caught.value)
    assert str(caught.value).startswith(str(path))


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_two_files_of_one_name_are_refused() -> None:
    with pytest.raises(FileError, match="two files with the same name"):
        container.unpacked(zipped(JOB, JOB), "kitchen.recoat")


def test_a_container_packed_again_by_hand_is_read(tmp_path: Path, with_photo: JobFile) -> None:
    path = tmp_path / "kitchen.recoat"
    photo = with_photo.photos[0]
    path.write_bytes(
        zipped(("photos/", b""), (f"photos/{photo.name}", photo.content), (JOB[0], job_to_json(with_photo.job)))
    )
    assert read_job_file(path) == with_photo


@given(st.data())
def test_a_container_cut_short_or_changed_is_read_whole_or_refused(data: st.DataObject) -> None:
    whole = container_of(JobFile(Job("Kitchen"), (Photo("a.jpg", b"picture"),)))
    content = bytearray(whole)
    for _ in range(data.draw(st.integers(1, 3))):
        content[data.draw(st.integers(4, len(content) - 1))] = data.draw(st.integers(0, 255))
    content = content[: data.draw(st.integers(4, len(content)))]
    assert refusal(bytes(content)).isprintable()


def refusal(content: bytes) -> str:
    """Why a container is refused, "" where it is not."""
    try:
        container.unpacked(content, "kitchen.recoat")
    except FileError as trouble:
        return str(trouble)
    return ""
