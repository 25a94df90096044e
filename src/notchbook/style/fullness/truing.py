"""One fair line along an edge that was slashed and spread.

Where the parts of an edge were moved apart, the line through them has a corner at each slash. A patternmaker
draws a fair line over it. Here the turn and the opening of each slash are spread evenly over the edge on both
sides of it: the direction of the old edge is kept, and what the slashes turned it by is added gradually. So a
straight hem that was slashed evenly becomes an arc, a hollow waist only a rounder one.

An edge that opened and bends one way is drawn anew from end to end, as by hand; of others, what lies far from
a slash stays. Where strips were only moved apart and not turned, as for a gathered sleeve cap, heights stay.
"""

from collections.abc import Sequence
from itertools import pairwise

from notchbook.geometry import Path, Segment, Transform, inflections
from notchbook.style.fullness.stretch import NEAR, Stretch, turned_by
from notchbook.units import TOLERANCES

REACH = 120.0
"""mm of the old edge to either side of a single slash over which its corner is drawn out. Own judgment."""

SOFT = 40.0
"""mm beyond the slashes over which an edge that opened is led back to its old line. Own judgment."""

_CORNER = 0.5
"""Degrees of turn that are a corner."""

_STRAIGHT = 1e-9
"""mm by which a straight edge may be longer than its chord."""

_TURNED = 0.01
"""Radians by which parts must be turned for the edge to keep its own slopes; below, it keeps its heights.
About half a degree, own judgment."""


def trued_edge(edge: Path, places: Sequence[float], motions: Sequence[Transform]) -> Path:
    """The fair line along the moved parts of ``edge``, in its direction.

    ``places`` of the slashes rise along the edge, mm; ``motions`` are those of the parts before, between and
    after them, one more than there are slashes. Ends and directions at the ends are those of the moved parts,
    but that a straight edge that no part of was turned stays straight.
    """
    if all(motion == motions[0] for motion in motions):
        return edge.transformed(motions[0])
    is_turned = any(abs(turned_by(motions[0], motion)) > _TURNED for motion in motions)
    if not is_turned and edge.length - edge.start.distance_to(edge.end) <= _STRAIGHT:
        return Path.line(motions[0].apply(edge.start), motions[-1].apply(edge.end))
    if _is_opened(edge, places, motions) and not inflections(edge) and not edge.corners(_CORNER):
        return Path(_whole(edge, places, motions))
    reaches = _to_joints(edge, _reaches(edge.length, places, 0.0 if is_turned else SOFT))
    trued: list[Segment] = []
    done = 0.0
    for first, last in _chains(reaches):
        begin, finish = reaches[first][0], reaches[last][1]
        if begin > done + NEAR:
            trued.extend(edge.between(done, begin).transformed(motions[first]).segments)
        knots = (begin, *(reaches[index][1] for index in range(first, last + 1)))
        parts = motions[first : last + 2]
        stretch = Stretch.of(edge, places[first : last + 1], knots, parts, along_edge=is_turned)
        trued.extend(stretch.drawn())
        done = finish
    if done < edge.length - NEAR:
        trued.extend(edge.between(done, edge.length).transformed(motions[-1]).segments)
    return Path(tuple(trued))


def _is_opened(edge: Path, places: Sequence[float], motions: Sequence[Transform]) -> bool:
    """Whether the edge opened visibly at any slash."""
    points = [edge.point_at(place) for place in places]
    return any(
        before.apply(point).distance_to(after.apply(point)) > TOLERANCES.seam_walk
        for point, (before, after) in zip(points, pairwise(motions), strict=True)
    )


def _whole(edge: Path, places: Sequence[float], motions: Sequence[Transform]) -> tuple[Segment, ...]:
    """The whole edge as one stretch; every slash is drawn out within its reach."""
    reaches = _reaches(edge.length, places, 0.0)
    bounds = [0.0, *(bound for reach in reaches for bound in reach), edge.length]
    knots = [bounds[0]]
    knots.extend(after for before, after in pairwise(bounds) if after > before + NEAR)
    return Stretch.of(edge, places, knots, motions, along_edge=True).drawn()


def _reaches(length: float, places: Sequence[float], soft: float) -> list[tuple[float, float]]:
    """From where to where each slash is drawn out: half way to its neighbors, as far beyond the outer ones
    and up to ``soft`` mm farther, but no more than half of what is left there."""
    bounds: list[tuple[float, float]] = []
    for index, place in enumerate(places):
        before = (place - places[index - 1]) / 2.0 if index else place
        after = (places[index + 1] - place) / 2.0 if index + 1 < len(places) else length - place
        inner = min(before, after)
        if index == 0:
            before = min(before, inner + min(soft, (before - inner) / 2.0))
        if index + 1 == len(places):
            after = min(after, inner + min(soft, (after - inner) / 2.0))
        bounds.append((place - min(before, REACH), place + min(after, REACH)))
    return bounds


def _to_joints(edge: Path, reaches: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """The reaches, each end that lies beside a joint of the edge moved on to it: no part is left between that
    is too short to draw."""
    return [(_to_joint(edge, begin, finish), _to_joint(edge, finish, begin)) for begin, finish in reaches]


def _to_joint(edge: Path, end: float, other: float) -> float:
    """The joint next to this end of a reach, or the end itself; the reach keeps its direction."""
    joint = min(edge.distances, key=lambda distance: abs(distance - end))
    most = min(TOLERANCES.closure, abs(end - other) / 4.0)
    return joint if abs(joint - end) < most else end


def _chains(reaches: Sequence[tuple[float, float]]) -> list[tuple[int, int]]:
    """Slashes whose reaches meet are drawn as one stretch: the first and the last of each chain."""
    chains = [(0, 0)]
    for index, (before, after) in enumerate(pairwise(reaches), start=1):
        if after[0] - before[1] <= NEAR:
            chains[-1] = (chains[-1][0], index)
        else:
            chains.append((index, index))
    return chains
