"""Notches stay where they are on the cloth when the edge that they are counted along is cut and spread."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from notchbook.geometry import Point
from notchbook.pattern import Notch, Pattern, Place, directed, locate, sewn_length
from notchbook.pattern.sewn import place_distance
from notchbook.units import TOLERANCES

Moved = Callable[[str, Point], bool]
"""Whether a place of the named piece belongs to the part that was moved."""


@dataclass(frozen=True, slots=True)
class KeptNotches:
    """The pattern with its notches counted anew, and those whose place was cut away, with the reason."""

    pattern: Pattern
    removals: dict[str, str]


def kept_notches(before: Pattern, after: Pattern, moved: Moved) -> KeptNotches:
    """``after`` with every notch counted anew that lies on the other part than the end it is counted from.

    A notch that is placed by a share of its edge keeps the share.
    """
    gone: set[str] = set()
    counted_from_ends_first = sorted(before.notches.values(), key=lambda notch: notch.place.notch is not None)
    for notch in counted_from_ends_first:
        kept = None if notch.place.notch in gone else _kept(before, after, notch, moved)
        if kept is None:
            gone.add(notch.name)
            after = after.with_notches(without=(notch.name,))
        elif kept is not notch:
            after = after.with_notches(kept)
    return KeptNotches(after, dict.fromkeys(sorted(gone), "its place was cut away"))


def _kept(before: Pattern, after: Pattern, notch: Notch, moved: Moved) -> Notch | None:
    place = notch.place
    total = sewn_length(after, place.edge)
    grown = total - sewn_length(before, place.edge)
    if place.measure == "fraction" or abs(grown) <= TOLERANCES.join:
        return notch
    found = locate(before, place)
    begin = directed(before, place.edge, place.from_point)[0]
    old = wanted = place_distance(before, place)
    if moved(found.piece, found.position) != moved(before.carriers[begin.edge.name], begin.path.start):
        wanted += grown
    if not -TOLERANCES.sew_length <= wanted <= total + TOLERANCES.sew_length:
        return None
    return replace(notch, place=_counted(before, after, notch, old, wanted))


def _counted(before: Pattern, after: Pattern, notch: Notch, old: float, wanted: float) -> Place:
    """The place with its amount changed so that it comes to ``wanted``, counted from a notch as before."""
    place = notch.place
    base_before = base_after = 0.0
    if place.notch is not None:
        base = replace(place, amount=0.0)
        base_before, base_after = place_distance(before, base), place_distance(after, base)
    return replace(place, amount=place.amount + (wanted - base_after) - (old - base_before))


def notches_beyond(before: Pattern, after: Pattern) -> tuple[str, ...]:
    """The notches whose edge was cut so short that their place, or that of a notch they are counted from,
    lies beyond it."""
    shorter = {
        name
        for name in {notch.place.edge for notch in before.notches.values()}
        if sewn_length(after, name) < sewn_length(before, name) - TOLERANCES.join
    }
    gone = {
        notch.name
        for notch in after.notches.values()
        if notch.place.edge in shorter
        and notch.place.measure == "distance"
        and _is_beyond(before, after, notch)
    }
    counted = {notch.name for notch in after.notches.values() if notch.place.notch in gone}
    return tuple(sorted(gone | counted))


def _is_beyond(before: Pattern, after: Pattern, notch: Notch) -> bool:
    return place_distance(before, notch.place) > sewn_length(after, notch.place.edge) + TOLERANCES.sew_length
