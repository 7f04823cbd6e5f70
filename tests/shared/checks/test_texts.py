from collections.abc import Iterator
from enum import Enum
from unicodedata import category

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from shared.checks.job import check_job
from shared.checks.texts import Path, texts_of
from shared.errors import JobError
from shared.job import (
    Butt,
    Face,
    Job,
    JointChoice,
    KindChoice,
    Part,
    PhotoMark,
    PhotoPlace,
    Reading,
    Room,
    Tie,
    Tiles,
    View,
)
from shared.trade.finishes import Finish, Material, Step, Work
from shared.trade.kinds import Kind, Treatment
from shared.trade.products import Money, Pack, Product, Use
from tests.shared.conftest import rectangle

MARKS = (PhotoMark(0, 0, 0, 0), PhotoMark(1, 0, 9, 0), PhotoMark(1, 1, 9, 9), PhotoMark(0, 1, 0, 9))
TILES = Tiles(100.0, 100.0, 2.0)
TOP = Part("top", Kind.BENCHTOP, rectangle(0, 0, 900, 600), "Top", finish="gloss", made_of="oak", tiles=TILES)
DOOR = Part("door", Kind.DOOR, rectangle(0, 0, 450, 700))
WALL = Face("a", "A", parts=(DOOR,), photo="a.jpg", photo_place=PhotoPlace(MARKS), readings=(Reading("start", "l", 9),))
PLAN = Face("b", "B", view=View.PLAN, parts=(TOP,), ties=(Tie("top", 0, "a", 0, 900),))
FULL = Job(
    "Harbour Row",
    rooms=(Room("kitchen", "Kitchen", (WALL, PLAN)),),
    kinds=(KindChoice(Kind.DOOR, Treatment.IN_PLACE, "gloss"),),
    finishes=(Finish("gloss", "Gloss", steps=(Step(Work.PRIME, "grip", on=(Material.TILE,), tool="sleeve"),)),),
    joints=(JointChoice("a", ("door", "top"), "b", section=Butt(6.0, 6.0)),),
    products=(Product("grip", "Grip", Use.PRIMER, (Pack(1.0, 20.0, "tin"),), stands_for="primer"),),
    money=Money("AUD"),
)
"""A job in which every field that may hold a text is there."""

STEERING = [
    *("\n", "\r", "\t", "\x00", "\x1b[31m", "\x7f", "\x9b2J", "\u2028", "\u2029"),
    *map(chr, range(0x202A, 0x202F)),
    *map(chr, range(0x2066, 0x206A)),
    *("\ud800", "\ufffe", "\uffff", "\U0010ffff"),
]
NEEDED = [
    "Küche \N{COMBINING DIAERESIS}",
    "\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645",
    "\N{WOMAN}\u200d\N{PERSONAL COMPUTER} \N{HEAVY BLACK HEART}\ufe0f",
    "\u05de\u05d8\u05d1\u05d7 3\u200f (\u05d0)",
    "kitchen\u00a0 3",
    "<b>x</b>&y",
]


def with_text(value: object, path: Path, text: str) -> object:
    """The value with another text at the end of a way."""
    if not path:
        return text
    step, rest = path[0], path[1:]
    if isinstance(value, tuple) and isinstance(step, int):
        return (*value[:step], with_text(value[step], rest, text), *value[step + 1 :])
    assert isinstance(value, msgspec.Struct)
    name = str(step)
    return replace(value, **{name: with_text(getattr(value, name), rest, text)})


def job_with(path: Path, text: str) -> Job:
    job = with_text(FULL, path, text)
    assert isinstance(job, Job)
    return job


def said_of(job: Job) -> str:
    """Why a job is refused; "" if it is not."""
    try:
        check_job(job)
    except JobError as error:
        return str(error)
    return ""


def strings_in(value: object) -> Iterator[str]:
    """Every text in a value: found by what there is, not by the types of the fields."""
    if isinstance(value, str) and not isinstance(value, Enum):
        yield value
    elif isinstance(value, msgspec.Struct):
        yield from (text for name in value.__struct_fields__ for text in strings_in(getattr(value, name)))
    elif isinstance(value, tuple):
        yield from (text for item in value for text in strings_in(item))


PATHS = [path for _, path in texts_of(FULL)]
NAMED = {".".join(map(str, path)): path for path in PATHS}


def kinds_of_values(kind: msgspec.inspect.Type) -> Iterator[tuple[type, str]]:
    """Each kind of value in a job with each of its fields that holds a text or a list of texts, by the schema."""
    if isinstance(kind, msgspec.inspect.StructType):
        for field in kind.fields:
            if isinstance(field.type, msgspec.inspect.StrType) or "StrType" in str(field.type).partition("(cls")[0]:
                yield kind.cls, field.name
            yield from kinds_of_values(field.type)
    for inner in (getattr(kind, "item_type", None), *getattr(kind, "types", ()), *getattr(kind, "item_types", ())):
        if isinstance(inner, msgspec.inspect.Type):
            yield from kinds_of_values(inner)


def owner(path: Path) -> tuple[type, str]:
    """The kind of value that holds the text at the end of a way, and the field."""
    value: object = FULL
    held = (type(value), "")
    for step in path:
        if isinstance(value, msgspec.Struct):
            held = (type(value), str(step))
        value = value[step] if isinstance(value, tuple) and isinstance(step, int) else getattr(value, str(step))
    return held


def test_the_job_of_these_tests_holds_together_and_has_every_text_that_a_job_may_have() -> None:
    check_job(FULL)
    assert {owner(path) for path in PATHS} == set(kinds_of_values(msgspec.inspect.type_info(Job)))
    assert sorted(text for text, _ in texts_of(FULL)) == sorted(strings_in(FULL))


@pytest.mark.parametrize("path", NAMED.values(), ids=NAMED)
def test_no_field_takes_what_steers_a_terminal_or_turns_the_writing(path: Path) -> None:
    for sign in STEERING:
        said = said_of(job_with(path, f"a{sign}b"))
        assert "contains a control character" in said
        assert said.isprintable()


@given(path=st.sampled_from(PATHS), text=st.text(max_size=20))
def test_a_text_is_refused_exactly_if_unicode_says_that_it_steers_or_turns(path: Path, text: str) -> None:
    steers = any(
        category(each) in {"Cc", "Cs", "Zl", "Zp"}
        or "\u202a" <= each <= "\u202e"
        or "\u2066" <= each <= "\u2069"
        or each in "\ufffe\uffff"
        for each in text
    )
    assert ("contains a control character" in said_of(job_with(path, text))) is steers


@pytest.mark.parametrize("text", NEEDED)
def test_what_any_script_needs_is_kept(text: str) -> None:
    check_job(replace(FULL, name=text))


@pytest.mark.parametrize(
    ("path", "words"),
    [
        (("finishes", 0, "steps", 0, "tool"), 'finish 1 (Gloss), step 1: the tool "a?b" contains a control character'),
        (("rooms", 0, "faces", 1, "parts", 0, "made_of"), "room 1 (Kitchen), face 2 (B), part 1 (Top): the made of"),
        (("joints", 0, "parts", 1), 'joint choice 1: the parts "a?b" contains'),
        (
            ("money", "currency"),
            'money: the currency "a?b" contains a control character (U+202E); write it',
        ),
        (("products", 0, "name"), 'product 1: the name "a?b" contains'),
    ],
)
def test_a_refused_text_is_named_with_its_field_and_its_place(path: Path, words: str) -> None:
    assert said_of(job_with(path, "a\u202eb")).startswith(words)


def test_every_field_is_as_short_as_any_text() -> None:
    for path in PATHS:
        with pytest.raises(JobError, match="is too long"):
            check_job(job_with(path, "n" * 501))
