"""What a name means now: found, ambiguous or lost. Never the nearest thing, never an index."""

from dataclasses import dataclass
from typing import Literal

from notchbook.errors import NameLost
from notchbook.pattern.names import split_side, spoken
from notchbook.pattern.pattern import Fate, NameKind, Pattern

Wanted = Literal["edge", "run", "piece", "point", "intake", "inner_dart", "seam", "notch"]
"""What a reference asks for; a ``run`` is an edge or all that an edge has become, in order."""

_FITS: dict[Wanted, tuple[NameKind, ...]] = {
    "edge": ("edge",),
    "run": ("edge",),
    "piece": ("piece",),
    "point": ("point", "mark"),
    "intake": ("intake",),
    "inner_dart": ("inner_dart",),
    "seam": ("seam",),
    "notch": ("notch",),
}


@dataclass(frozen=True, slots=True)
class Found:
    """The name stands for these living things, in order (one, but for a run)."""

    name: str
    members: tuple[str, ...]

    @property
    def only(self) -> str:
        """The one thing that was found."""
        (member,) = self.members
        return member


@dataclass(frozen=True, slots=True)
class Ambiguous:
    """One thing was asked for and several fit; ``by`` is the step that made them."""

    name: str
    candidates: tuple[str, ...]
    by: str


@dataclass(frozen=True, slots=True)
class Lost:
    """Nothing has this name now; ``by`` is the step that took it, empty if it never was."""

    name: str
    candidates: tuple[str, ...]
    by: str
    reason: str


Resolution = Found | Ambiguous | Lost


def resolve(pattern: Pattern, name: str, wanted: Wanted = "run") -> Resolution:
    """What ``name`` stands for in the pattern, when a ``wanted`` is asked for."""
    if name in pattern.groups:
        return _resolve_group(pattern, name, wanted)
    kind = pattern.index.get(name)
    if kind in _FITS[wanted]:
        return Found(name, (name,))
    if kind is not None:
        return Lost(name, (), "", f"it names {_a(kind)}, and {_a(_FITS[wanted][0])} is needed")
    return _resolve_gone(pattern, name)


def _resolve_group(pattern: Pattern, name: str, wanted: Wanted) -> Resolution:
    members, lost = expand(pattern, name)
    kinds = {pattern.index[member] for member in members}
    if lost or not members:
        first = lost[0] if lost else name
        gone = _resolve_gone(pattern, first)
        reason = gone.reason if isinstance(gone, Lost) else ""
        told = f"a part of it, {spoken(first)}, is gone: {reason}" if lost else reason
        return Lost(name, members, gone.by, told)
    if not kinds <= set(_FITS[wanted]):
        return Lost(name, (), "", f"it names a group of {sorted(kinds)[0]}s")
    if wanted == "run" or len(members) == 1:
        return Found(name, members)
    return Ambiguous(name, members, pattern.groups[name].by)


def fate_of(pattern: Pattern, name: str) -> Fate | None:
    """What became of a name that is gone; of one that was taken from both sides of an unfolded pattern, what
    became of it there."""
    fate = pattern.fates.get(name)
    if fate is not None or split_side(name)[1] != "both":
        return fate
    sided = [pattern.fates.get(f"{name}@{side}") for side in ("left", "right")]
    return sided[0] if all(sided) else None


def _resolve_gone(pattern: Pattern, name: str) -> Lost:
    fate = fate_of(pattern, name)
    base, side = split_side(name)
    sided = tuple(other for other in (f"{base}@left", f"{base}@right") if other in pattern.index)
    if fate is not None:
        return Lost(name, fate.into or (sided if side == "both" else ()), fate.by, fate.reason)
    if side == "both" and sided:
        return Lost(name, sided, "", "the two sides differ here: say left or right")
    return Lost(name, (), "", "nothing of this pattern ever had this name")


def _a(kind: NameKind) -> str:
    return f"an {kind}" if kind[0] in "aeiou" else f"a {kind}"


def expand(
    pattern: Pattern, name: str, outer: frozenset[str] = frozenset()
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The living members behind a name, in order, and those that are gone without an heir.

    ``outer`` holds the groups that are being expanded: a group within itself stands for nothing.
    """
    if name in outer:
        return (), (name,)
    if name not in pattern.groups:
        return ((name,), ()) if name in pattern.index else ((), (name,))
    living: list[str] = []
    lost: list[str] = []
    for member in pattern.groups[name].members:
        inner, gone = expand(pattern, member, outer | {name})
        living.extend(inner)
        lost.extend(gone)
    return tuple(living), tuple(lost)


def require(pattern: Pattern, name: str, wanted: Wanted = "run") -> tuple[str, ...]:
    """The living members behind a name; NameLost (``name-lost``, ``name-ambiguous``) otherwise."""
    answer = resolve(pattern, name, wanted)
    if isinstance(answer, Found):
        return answer.members
    if isinstance(answer, Ambiguous):
        raise NameLost("name-ambiguous", name=name, candidates=answer.candidates, by=answer.by, wanted=wanted)
    raise NameLost(
        "name-lost",
        name=name,
        candidates=answer.candidates,
        by=answer.by or "no step",
        reason=answer.reason,
        wanted=wanted,
    )


def require_one(pattern: Pattern, name: str, wanted: Wanted = "edge") -> str:
    """The one living thing behind a name; NameLost when it is lost or several fit."""
    members = require(pattern, name, wanted)
    if len(members) != 1:
        raise NameLost("name-ambiguous", name=name, candidates=members, by="", wanted=wanted)
    return members[0]
