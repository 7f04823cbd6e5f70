"""The tables of a hand calculation: rows whose sums are written out as code, worked out with plain arithmetic.

A page may work out lengths under "Worked out first", each with a name that the sums after it can use.
"""

import ast
import math
from collections.abc import Iterator, Mapping
from operator import add, mul, sub, truediv
from pathlib import Path
from typing import NamedTuple

OPERATIONS = {ast.Add: add, ast.Sub: sub, ast.Mult: mul, ast.Div: truediv, ast.Pow: math.pow}


class Row(NamedTuple):
    """One row: the words in it, the amounts of its sums in mm or mm2, and the last one as printed, in m or m2."""

    words: tuple[str, ...]
    amounts: tuple[float, ...]
    printed: float


def rows_under(heading: str, page: Path) -> Iterator[Row]:
    """The rows that have sums, of all tables under a heading of the second level."""
    first = names_on(page)
    for words, sums, printed in _cells_under(heading, page):
        yield Row(words, _amounts(sums, first), printed)


def names_on(page: Path) -> dict[str, float]:
    """What is worked out first, by its name."""
    names = {"pi": math.pi}
    for words, sums, _ in _cells_under("Worked out first", page):
        names[words[0]] = worked_out(sums[0], names)
    return names


def totals_on(page: Path) -> dict[str, float]:
    """The totals as printed, by what they are of."""
    section = page.read_text("utf-8").split("\n## Totals\n", 1)[1]
    rows = [line.strip("|").split("|") for line in section.splitlines() if line.startswith("| ")]
    return {what.strip(): float(total) for what, total in rows[1:]}


def worked_out(text: str, names: Mapping[str, float]) -> float:
    """What a written sum comes to; it knows numbers, + - * / ** and the names given."""
    return _value(ast.parse(text, mode="eval").body, names)


def _cells_under(heading: str, page: Path) -> Iterator[tuple[tuple[str, ...], list[str], float]]:
    """The words, the sums and the printed amount of each row that has sums; none where the page has no such heading."""
    _, _, after = page.read_text("utf-8").partition(f"\n## {heading}\n")
    for line in after.split("\n## ", 1)[0].splitlines():
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        sums = [cell.strip("`") for cell in cells if cell.startswith("`")]
        if line.startswith("|") and sums:
            words = tuple(cell for cell in cells[:-1] if not cell.startswith("`"))
            yield words, sums, float(cells[-1])


def _amounts(sums: list[str], first: Mapping[str, float]) -> tuple[float, ...]:
    names = dict(first)
    for name, text in zip(("gross", "net", "coated"), sums, strict=False):
        names[name] = worked_out(text, names)
    return tuple(names[name] for name in ("gross", "net", "coated")[: len(sums)])


def _value(node: ast.expr, names: Mapping[str, float]) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return float(number)
        case ast.Name(id=name):
            return names[name]
        case ast.BinOp(left=left, op=operation, right=right):
            return float(OPERATIONS[type(operation)](_value(left, names), _value(right, names)))
    raise ValueError(f"not a sum: {ast.unparse(node)}")
