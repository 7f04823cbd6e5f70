"""JSON Schemas of what Recoat writes, made from the types themselves; the same from every Python."""

from inspect import cleandoc
from typing import Any

import msgspec

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def json_schema(described: type, title: str) -> dict[str, Any]:
    """The JSON Schema of a type; its docstrings are the descriptions (Python 3.13 strips their indents, others not)."""
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
