"""Notches on an edge that was opened: each stays on its part of the piece."""

from collections.abc import Mapping
from dataclasses import replace

from notchbook.pattern import Notch, Pattern, Place, directed, locate, require, sewn_length
from notchbook.style.fullness.spread import CutEdge

_STAYS = 1e-6
"""mm by which a place that did not move may come out elsewhere."""


def notches_carried(before: Pattern, after: Pattern, edges: Mapping[str, CutEdge]) -> tuple[Notch, ...]:
    """The notches of both patterns whose edges were opened, at the places where their cloth lies now.

    A place counted from another notch stays counted from it; one given as a share is given as one again.
    """
    moved: list[Notch] = []
    for notch in before.notches.values():
        if not set(require(before, notch.place.edge)) & edges.keys():
            continue
        place = _carried(before, after, notch.place, edges)
        if place is not None:
            moved.append(replace(notch, place=place))
    return tuple(moved)


def _carried(before: Pattern, after: Pattern, place: Place, edges: Mapping[str, CutEdge]) -> Place | None:
    counted = _walked_now(before, after, place, edges)
    if place.notch is not None:
        origin = before.notches[place.notch].place
        there = _walked_now(before, after, origin, edges)
        counted -= there if origin.from_point == place.from_point else sewn_length(after, place.edge) - there
    amount = counted / sewn_length(after, place.edge) if place.measure == "fraction" else counted
    return None if abs(amount - place.amount) <= _STAYS else replace(place, amount=amount)


def _walked_now(before: Pattern, after: Pattern, place: Place, edges: Mapping[str, CutEdge]) -> float:
    """How far from its named end the cloth of a place lies now, as sewn, mm."""
    found = locate(before, place)
    travelled = 0.0
    for step in directed(after, place.edge, place.from_point):
        if step.edge.name != found.edge.name:
            travelled += step.edge.length
            continue
        met = edges.get(step.edge.name)
        distance = found.distance
        if met is not None:
            # Truing takes a little off or adds a little: shared out along the edge.
            share = step.edge.length / (met.old.length + met.opened)
            distance = met.place_now(found.distance) * share
        return travelled + (distance if step.forward else step.edge.length - distance)
    return travelled
