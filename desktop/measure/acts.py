"""The edits to picked parts that need no pointing: nudge, delete, paste, duplicate."""

from collections.abc import Sequence

from msgspec.structs import replace

from desktop.gestures.gesture import Done, Scene
from desktop.gestures.pick import named
from geometry.parts.moves import moved
from shared.edits.drawn import fresh_ids, with_changed_parts, with_parts, without_parts
from shared.edits.locking import refuse_locked
from shared.job import Part

STEP_MM = 50.0
"""How far right and down a copy is put from the part that it would cover, to be seen (common practice, no source)."""


def picked_parts(scene: Scene) -> tuple[Part, ...]:
    """The picked parts, in drawing order."""
    return tuple(part for part in scene.face.parts if part.id in scene.picked)


def nudged(scene: Scene, dx: float, dy: float) -> Done | None:
    """Move the picked parts by (dx, dy) millimetres; None if none is picked. JobError if one is locked."""
    refuse_locked(picked_parts(scene))
    parts = tuple(moved(part, dx, dy) for part in picked_parts(scene))
    return Done(f"Move {named(parts)}", with_changed_parts(scene.job, parts), scene.picked) if parts else None


def deleted(scene: Scene) -> Done | None:
    """Delete the picked parts; None if none is picked. JobError if one is locked."""
    parts = picked_parts(scene)
    refuse_locked(parts)
    return Done(f"Delete {named(parts)}", without_parts(scene.job, scene.picked), ()) if parts else None


def pasted(scene: Scene, parts: Sequence[Part], verb: str = "Paste") -> Done | None:
    """Add copies of the parts to the scene's face, with ids of their own and unlocked; None if there are no parts.

    The copies stand where the parts stood. If one would cover a part with the same outline, all go aside by STEP_MM
    until none does.
    """
    if not parts:
        return None
    outlines = {part.outline for part in scene.face.parts}
    copies = tuple(parts)
    while any(part.outline in outlines for part in copies):
        copies = tuple(moved(part, STEP_MM, -STEP_MM) for part in copies)
    ids = fresh_ids(scene.job, "p", len(copies))
    copies = tuple(replace(part, id=new, locked=False) for part, new in zip(copies, ids, strict=True))
    return Done(f"{verb} {named(copies)}", with_parts(scene.job, scene.face_id, copies), ids)


def duplicated(scene: Scene) -> Done | None:
    """Add a copy of each picked part beside it; None if none is picked."""
    return pasted(scene, picked_parts(scene), "Duplicate")
