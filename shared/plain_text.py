"""What a text may hold, and how any words are shown on a terminal.

The properties of characters are Unicode's own, as Python's `unicodedata` gives them.
"""

from unicodedata import bidirectional, category

_STEERING = frozenset({"Cc", "Cs", "Zl", "Zp"})
"""General categories (Unicode standard, section 4.5): controls, which steer a terminal and end lines, halves of
characters, which no file can hold, and the ends of lines and paragraphs."""

_TURNING = frozenset({"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"})
"""Bidirectional classes of what turns the writing of all that follows (Unicode Standard Annex 9, table 4)."""

_JOINERS = frozenset("\u200c\u200d")
"""Joiner and non-joiner: Persian words and many pictures fall apart without them (Unicode standard, section 23.2)."""

_SIGN = "?"
"""What stands for a character that is not shown as it is."""


def steering(text: str) -> str:
    """The first character of a text that ends a line, steers a terminal or turns the writing round; "" if none does.

    The two that no file of XML can hold, U+FFFE and U+FFFF, are among them. Marks of direction (U+200E, U+200F, U+061C)
    are not: a Hebrew or Arabic name needs them beside a number, and they turn nothing but the signs next to them.
    """
    if text.isprintable():  # none of them can be printed, and this is quick
        return ""
    return next((character for character in text if _steers(character)), "")


def one_line(words: str) -> str:
    """The words on one line, as a terminal can show them: a sign stands for each character that cannot be seen.

    Spaces of every width become a plain one.
    """
    return words if words.isprintable() else "".join(map(_shown, words))


def _steers(character: str) -> bool:
    ends_a_plane = ord(character) & 0xFFFE == 0xFFFE
    return category(character) in _STEERING or bidirectional(character) in _TURNING or ends_a_plane


def _shown(character: str) -> str:
    if character.isprintable() or character in _JOINERS:
        return character
    return " " if category(character) == "Zs" else _SIGN
