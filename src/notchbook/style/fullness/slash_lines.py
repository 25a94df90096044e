"""Where slashes run: from places along one edge to places along the edge across, as sewn."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Path, direction
from notchbook.pattern import Located, Pattern, Piece, Place, directed, locate, require, spoken

LinesRun = Literal["share", "grain"]
"""``share``: from as far along one edge as along the other; ``grain``: along the grain of the piece."""

MOST_SLASHES = 60
"""More strips than this are narrower than a pencil line is worth. Own judgment."""

_FAR = 5000.0
"""mm; how far the grain is followed to find the edge across: beyond any piece."""


@dataclass(frozen=True, slots=True)
class Ends:
    """The edge (or group) that opens and the one across from it, each with the end that places are counted
    from. Both ends lie on the side of the piece that stays."""

    edge: str
    from_point: str
    across: str
    across_point: str


@dataclass(frozen=True, slots=True)
class Slashes:
    """The piece with the places of its slashes in order from the named end, on the edge and across."""

    piece: Piece
    places: tuple[tuple[Located, Located], ...]
    forward: bool


def slashes_by_share(
    pattern: Pattern, ends: Ends, distances: Sequence[float], across: Sequence[float]
) -> Slashes:
    """Slashes between places at distances (mm, as sewn) from the named ends of both edges."""
    starts = [locate(pattern, Place(ends.edge, ends.from_point, distance)) for distance in distances]
    finishes = [locate(pattern, Place(ends.across, ends.across_point, distance)) for distance in across]
    piece = _one_piece(pattern, [*starts, *finishes], ends)
    return Slashes(piece, tuple(zip(starts, finishes, strict=True)), _is_forward(pattern, ends))


def slashes_along_grain(pattern: Pattern, ends: Ends, distances: Sequence[float]) -> Slashes:
    """Slashes from places at distances (mm, as sewn) along the grain to where it meets the edge across.

    StepRefused ``slash-misses-edge`` where it does not.
    """
    starts = [locate(pattern, Place(ends.edge, ends.from_point, distance)) for distance in distances]
    piece = _one_piece(pattern, starts, ends)
    places = tuple((start, _met_along_grain(pattern, piece, start, ends)) for start in starts)
    return Slashes(piece, places, _is_forward(pattern, ends))


def _is_forward(pattern: Pattern, ends: Ends) -> bool:
    """Whether the slashes follow each other in the direction of the outline."""
    walk, back = (
        directed(pattern, ends.edge, ends.from_point),
        directed(pattern, ends.across, ends.across_point),
    )
    if walk[0].forward == back[0].forward:
        raise StepRefused(
            "slash-ends-opposed", first=spoken(ends.from_point), second=spoken(ends.across_point)
        )
    return walk[0].forward


def _one_piece(pattern: Pattern, places: Sequence[Located], ends: Ends) -> Piece:
    carriers = {place.piece for place in places} | {
        pattern.carriers[member] for member in require(pattern, ends.across)
    }
    if len(carriers) != 1:
        raise StepRefused("slash-between-pieces", first=spoken(ends.edge), second=spoken(ends.across))
    return pattern.pieces[carriers.pop()]


def _met_along_grain(pattern: Pattern, piece: Piece, start: Located, ends: Ends) -> Located:
    along = direction(piece.grain.degrees)
    inward = start.edge.path.tangent_at(start.distance).perpendicular()
    if along.dot(inward) < 0.0:
        along = -along
    line = Path.line(start.position, start.position + along * _FAR)
    met = [
        (crossing.at_self, name, crossing.at_other)
        for name in require(pattern, ends.across)
        for crossing in line.intersections(piece.edge(name).path)
    ]
    if not met:
        raise StepRefused("slash-misses-edge", edge=spoken(ends.across), piece=spoken(piece.name))
    _, name, distance = min(met)
    edge = piece.edge(name)
    return Located(edge, piece.name, distance, edge.path.point_at(distance))
