"""Joints: the pairs of parts that are sealed, by the rules in `data/joints.toml` and a person's choices over them."""

import tomllib
from collections.abc import Iterable, Sequence
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec
from msgspec.structs import replace

from shared.edits.drawn import with_joint_choice
from shared.job import Face, Job, JointChoice, Part, Section, View
from shared.trade.kinds import Kind
from takeoff.edges.of_face import Ranked, divided, length_figure, part_below, ranked_parts
from takeoff.figures.measured import EdgeRow, JointRow

BY_HAND = "decided by hand"
Pair = tuple[str, str]


class Bead(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """How a joint is sealed: its name, section and sealant, and whether an old bead is cut out first."""

    name: str
    section: Section
    sealant: str
    old_bead: bool


class JointRule(Bead, frozen=True, forbid_unknown_fields=True):
    """A row of the table: the two kinds in a joint, and the only view it holds in; None for both views.

    A joint is not sealed where the kind `not_below` lies below the other.
    """

    kinds: tuple[Kind, Kind]
    view: View | None = None
    not_below: Kind | None = None


class JointTable(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The table of joints; its fields are explained at the head of `data/joints.toml`."""

    source: str
    upright: Bead
    joint: tuple[JointRule, ...]

    def between(self, kinds: frozenset[Kind], view: View) -> JointRule | None:
        """The rule for an edge between parts of these kinds in this view; None when no rule seals it."""
        for rule in self.joint:
            if frozenset(rule.kinds) == kinds and rule.view in (None, view):
                return rule
        return None

    def ending_on(self, lower: Kind) -> tuple[Kind, ...]:
        """The kinds that an elevation seals to this one where they end on it, and not where they lie below it."""
        rules = (rule for rule in self.joint if lower in rule.kinds and rule.view in (None, View.ELEVATION))
        return tuple(rule.not_below for rule in rules if rule.not_below not in (None, lower))


class FoundJoint(NamedTuple):
    """Two parts that meet along a path, and the bead for such a pair by rule; None when no rule seals it.

    `next_face` is the second part's face for a joint between two faces, else "".
    """

    face: str
    next_face: str
    parts: tuple[Part, Part]
    bead: Bead | None
    path: tuple[EdgeRow, ...]


class Choices:
    """A person's choices about joints. They are found by a joint's faces and its two parts, in either order."""

    def __init__(self, choices: Iterable[JointChoice]) -> None:
        self._rows = {(choice.face, choice.next_face, frozenset(choice.parts)): choice for choice in choices}

    def about(self, face: str, next_face: str, parts: Pair) -> JointChoice | None:
        """The choice about the joint between these parts; None when nothing was decided."""
        return self._rows.get((face, next_face, frozenset(parts)))


@cache
def joint_table() -> JointTable:
    """The table of rules that comes with the program."""
    text = (files("takeoff") / "data" / "joints.toml").read_text("utf-8")
    return msgspec.convert(tomllib.loads(text), JointTable)


def meetings(face: Face, edges: Iterable[EdgeRow]) -> tuple[FoundJoint, ...]:
    """All pairs of parts that share an edge of this face. An opening counts as a part."""
    paths: dict[Pair, list[EdgeRow]] = {}
    for edge in edges:
        first, second = divided(edge)
        if second is not None:
            paths.setdefault((first, second), []).append(edge)
    ranked = ranked_parts(face.parts)
    return tuple(_found(face, ranked, pair, path) for pair, path in paths.items())


def with_joint_by_hand(job: Job, face_id: str, parts: Pair) -> Job:
    """The job with the joint between two parts of a face sealed, whatever the rules say.

    It gets the usual section of an upright joint, unless a person chose a section before. The takeoff shows whether the
    parts meet.
    """
    before = Choices(job.joints).about(face_id, "", parts) or JointChoice(face_id, parts)
    section = before.section or joint_table().upright.section
    return with_joint_choice(job, replace(before, sealed=True, section=section))


def joint_rows(found: Iterable[FoundJoint], choices: Choices) -> tuple[JointRow, ...]:
    """A row for every pair that is sealed by rule or by hand. A pair that a person switched off has a row too."""
    rows = (_joint_row(each, choices) for each in found)
    return tuple(row for row in rows if row is not None)


def _found(face: Face, ranked: Ranked, pair: Pair, path: Sequence[EdgeRow]) -> FoundJoint:
    """The pair with the rule for it. Its path is what the rule seals, or the whole path if no rule seals any of it."""
    parts = (ranked[pair[0]].part, ranked[pair[1]].part)
    rule = joint_table().between(frozenset(part.kind for part in parts), face.view)
    if rule is None:
        return FoundJoint(face.id, "", parts, None, tuple(path))
    sealed = [edge for edge in path if rule.not_below is None or _lower_kind(edge, ranked) is not rule.not_below]
    return FoundJoint(face.id, "", parts, rule if sealed else None, tuple(sealed or path))


def _lower_kind(edge: EdgeRow, ranked: Ranked) -> Kind | None:
    lower = part_below(edge, ranked)
    return lower.kind if lower else None


def _joint_row(found: FoundJoint, choices: Choices) -> JointRow | None:
    ids = (found.parts[0].id, found.parts[1].id)
    choice = choices.about(found.face, found.next_face, ids)
    bead = _decided(found, choice)
    if bead is None:
        return None
    sealed = choice is None or choice.sealed is not False
    by_hand = choice is not None and (found.bead is None or choice.section is not None)
    source = BY_HAND if by_hand else joint_table().source
    length = length_figure(found.path, f"sealed joint: {bead.name}", source)
    return JointRow(
        found.face,
        found.next_face,
        ids,
        bead.name,
        bead.section,
        bead.sealant,
        sealed,
        bead.old_bead,
        length,
        found.path,
    )


def _decided(found: FoundJoint, choice: JointChoice | None) -> Bead | None:
    """The bead by rule, changed by what a person decided; None with neither a rule nor a section chosen by hand."""
    bead = found.bead
    if choice is None:
        return bead
    if bead is None:
        if not choice.sealed or choice.section is None:
            return None
        bead = Bead(_pair_words(found.parts), choice.section, joint_table().upright.sealant, old_bead=False)
    return Bead(
        bead.name,
        choice.section or bead.section,
        bead.sealant,
        bead.old_bead if choice.old_bead is None else choice.old_bead,
    )


def _pair_words(parts: Sequence[Part]) -> str:
    return f"{parts[0].called} to {parts[1].called}"
