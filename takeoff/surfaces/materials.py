"""Finds what parts are made of, for the finishes: by the words of a person, else by what is usual for the kind."""

import re
import tomllib
from functools import cache, lru_cache
from importlib.resources import files

import msgspec

from shared.job import Part
from shared.trade.finishes import Material
from shared.trade.kinds import usual

TEXTS_REMEMBERED = 4096


def material_of(part: Part) -> Material | None:
    """The material that a part's words name first, else its kind's usual one; None for an opening without words."""
    return material_named(part.made_of) or usual()[part.kind].material


@lru_cache(TEXTS_REMEMBERED)
def material_named(words: str) -> Material | None:
    """The first material that these words name, as `data/materials.toml` knows it; None when they name none.

    >>> material_named("laminate on particleboard").value
    'laminate'
    >>> material_named("stone")
    """
    found = _any_word().search(words.casefold())
    return _words()[_singular(found.group())] if found else None


@cache
def _words() -> dict[str, Material]:
    text = (files("takeoff") / "data" / "materials.toml").read_text("utf-8")
    rows = msgspec.convert(tomllib.loads(text), dict[Material, tuple[str, ...]])
    return {word: material for material, words in rows.items() for word in words}


@cache
def _any_word() -> re.Pattern[str]:
    """A pattern for any of the words by itself. Of words that begin at the same place it finds the longest."""
    longest_first = sorted(_words(), key=len, reverse=True)
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})s?\b")


def _singular(word: str) -> str:
    return word if word in _words() else word.removesuffix("s")
