"""On which part of an edge each fold or slash lies: written in the recipe, so that it is never a result.

An edge that consists of several parts, between darts or over panels, has parts of other lengths on another
body. Which part a fold lies on is then what was written, or it is said that the part is too short for it.
"""

from collections.abc import Sequence

from notchbook.errors import InputError, NameLost, StepRefused
from notchbook.pattern import Pattern, Place, directed, locate, require, spoken
from notchbook.pattern.sewn import sewn_edge_length
from notchbook.style.fullness.opening import even_shares

LEAST_ROOM = 10.0
"""mm that a part must have for each slash on it: a strip narrower than this cannot be cut and spread. Own
judgment."""


def parts_met(pattern: Pattern, edge: str, from_point: str, distances: Sequence[float]) -> tuple[str, ...]:
    """The part of the edge at each distance (mm, as sewn); none where the edge is one."""
    if len(require(pattern, edge)) == 1:
        return ()
    return tuple(locate(pattern, Place(edge, from_point, distance)).edge.name for distance in distances)


def require_parts(
    pattern: Pattern, edge: str, from_point: str, distances: Sequence[float], parts: Sequence[str]
) -> None:
    """NameLost ``fold-elsewhere`` where a place does not lie on the part that was written for it."""
    _require_all(edge, distances, parts)
    for number, (distance, part) in enumerate(zip(distances, parts, strict=False), start=1):
        found = locate(pattern, Place(edge, from_point, distance)).edge.name
        if found not in require(pattern, part):
            begin, finish = _range(pattern, edge, from_point, part)
            raise NameLost(
                "fold-elsewhere",
                name=part,
                number=number,
                found=spoken(found),
                wanted=spoken(part),
                distance=distance,
                begin=begin,
                finish=finish,
                candidates=(found,),
                by="",
            )


def held_on_parts(
    pattern: Pattern,
    edge: str,
    from_point: str,
    distances: Sequence[float],
    parts: Sequence[str],
    bounds: tuple[float, float],
) -> list[float]:
    """Even distances (mm, as sewn), each on the part that was written for it.

    The slashes of a part of which one would lie elsewhere lie evenly along what of the part lies within the
    bounds. StepRefused ``part-too-short`` where they have no room there.
    """
    _require_all(edge, distances, parts)
    held = list(distances)
    for part in dict.fromkeys(parts):
        indices = [index for index, name in enumerate(parts) if name == part]
        members = require(pattern, part)
        places = [locate(pattern, Place(edge, from_point, distances[index])) for index in indices]
        if all(place.edge.name in members for place in places):
            continue
        begin, finish = _range(pattern, edge, from_point, part)
        begin, finish = max(begin, bounds[0]), min(finish, bounds[1])
        if finish - begin < LEAST_ROOM * len(indices):
            raise StepRefused(
                "part-too-short", part=spoken(part), count=len(indices), room=max(finish - begin, 0.0)
            )
        for index, distance in zip(indices, even_shares(len(indices), begin, finish), strict=True):
            held[index] = distance
    return held


def _require_all(edge: str, distances: Sequence[float], parts: Sequence[str]) -> None:
    if parts and len(parts) != len(distances):
        raise InputError("parts-not-all", edge=spoken(edge), parts=len(parts), places=len(distances))


def _range(pattern: Pattern, edge: str, from_point: str, part: str) -> tuple[float, float]:
    """From where to where the part lies along the edge, mm as sewn; NameLost where it is no part of it."""
    members = require(pattern, part)
    travelled, found = 0.0, list[float]()
    for step in directed(pattern, edge, from_point):
        sewn = sewn_edge_length(pattern, step.edge)
        if step.edge.name in members:
            found += [travelled, travelled + sewn]
        travelled += sewn
    if not found:
        raise InputError("part-of-other-edge", part=spoken(part), edge=spoken(edge))
    return found[0], found[-1]
