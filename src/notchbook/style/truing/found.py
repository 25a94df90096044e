"""A seam or a notch found by its name; one that is not there is lost, never replaced by another."""

from collections.abc import Iterable

from notchbook.errors import NameLost
from notchbook.pattern import Notch, Pattern, Seam


def found_seam(pattern: Pattern, name: str) -> Seam:
    """The seam of this name; NameLost ``name-lost``."""
    seam = pattern.seams.get(name)
    if seam is None:
        raise _lost(name, pattern.seams, "seam")
    return seam


def found_notch(pattern: Pattern, name: str) -> Notch:
    """The notch of this name; NameLost ``name-lost``."""
    notch = pattern.notches.get(name)
    if notch is None:
        raise _lost(name, pattern.notches, "notch")
    return notch


def _lost(name: str, known: Iterable[str], wanted: str) -> NameLost:
    return NameLost(
        "name-lost",
        name=name,
        candidates=tuple(known),
        by="no step",
        reason=f"no {wanted} of this pattern has this name",
        wanted=wanted,
    )
