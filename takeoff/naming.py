"""What a part is called in a sentence."""

from shared.job import Part


def called(part: Part) -> str:
    """Its name; its kind where it has none."""
    return part.name or part.kind.value
