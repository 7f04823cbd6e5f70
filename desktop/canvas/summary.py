"""A drawing in words, for a person who hears it instead of seeing it."""

from collections import Counter

from desktop.look.wording import own_writing
from shared.drawing import Drawing, Role


def summary(drawing: Drawing, picked: frozenset[str]) -> tuple[str, str]:
    """The face's name, and a sentence that says what stands on the face and which parts are picked."""
    left, bottom, right, top = drawing.box
    size = f"{own_writing(drawing.unit).length(right - left)} by {own_writing(drawing.unit).length(top - bottom)}"
    kinds = Counter(area.kind.value for area in drawing.areas if area.role is Role.OUTLINE)
    parts = ", ".join(f"{count} {kind}" for kind, count in kinds.items()) or "nothing drawn yet"
    return f"Face {drawing.title}, {drawing.view.value}", f"{size}: {parts}.{_picked_words(drawing, picked)}"


def _picked_words(drawing: Drawing, picked: frozenset[str]) -> str:
    names = {text.part: text.text for text in drawing.texts}
    words = [
        f"{area.kind.value} {names[area.part]}" if area.part in names else area.kind.value
        for area in drawing.areas
        if area.role is Role.OUTLINE and area.part in picked
    ]
    return f" Picked: {', '.join(words)}." if words else ""
