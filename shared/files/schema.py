"""JSON Schemas of what Recoat writes, made from the types themselves. Every Python makes the same schema."""

from inspect import cleandoc
from typing import Any

import msgspec

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def json_schema(described: type, title: str) -> dict[str, Any]:
    """The JSON Schema of a type, with its docstrings as descriptions.

    The indents of the docstrings are stripped, as Python 3.13 does by itself and earlier ones do not.
    """
    document = {"$schema": DIALECT, "title": title, **msgspec.json.schema(described)}
    plain: dict[str, Any] = _clean(msgspec.json.decode(msgspec.json.encode(document)))
    return plain


def _clean(value: Any) -> Any:
    if isinstance(value, list):
        return [_clean(each) for each in value]
    if isinstance(value, dict):
        return {
            key: cleandoc(each) if key == "description" and isinstance(each, str) else _clean(each)
            for key, each in value.items()
        }
    return value
