"""A line squared across: straight from a place on one edge to wherever it meets another."""

from notchbook.errors import NameLost, StepRefused
from notchbook.geometry import Path, direction
from notchbook.pattern import Located, Pattern, Piece, require_one, spoken
from notchbook.style.lines.parameters import LineParameters
from notchbook.units import TOLERANCES

_FAR = 5000.0
"""mm; how far the line is followed to find the other edge: beyond any piece."""


def squared_end(pattern: Pattern, line: LineParameters, start: Located) -> Located:
    """Where the line from ``start``, square to its edge or as turned, meets the edge where it is to end.

    StepRefused ``line-squared-and-told`` where more is told of it than it can keep to, and
    ``line-between-pieces``; NameLost ``style-line-elsewhere`` where it does not meet that edge.
    """
    _require_alone(line)
    wanted = require_one(pattern, line.end.part or line.end.edge)
    if pattern.carriers[wanted] != start.piece:
        raise StepRefused("line-between-pieces", first=spoken(start.edge.name), second=spoken(wanted))
    piece = pattern.pieces[start.piece]
    square = start.edge.path.tangent_at(start.distance).direction() + 90.0 + line.start_angle
    ray = Path.line(start.position, start.position + direction(square) * _FAR)
    met = _met(piece, ray)
    for _, name, distance in met:
        if name == wanted:
            edge = piece.edge(name)
            return Located(edge, piece.name, distance, edge.path.point_at(distance))
    found = met[0][1] if met else start.edge.name
    raise NameLost(
        "style-line-elsewhere",
        name=wanted,
        edge=spoken(line.end.edge),
        found=spoken(found),
        wanted=spoken(wanted),
        candidates=(found,),
        by="",
    )


def _require_alone(line: LineParameters) -> None:
    end = line.end
    is_placed = end.distance is not None or end.fraction is not None or end.notch is not None
    if is_placed or line.end_angle or line.through or line.darts:
        raise StepRefused("line-squared-and-told", start=spoken(line.start.edge), end=spoken(end.edge))


def _met(piece: Piece, ray: Path) -> list[tuple[float, str, float]]:
    """What the ray meets in its order: how far along it, the edge, and how far along that, mm."""
    return sorted(
        (crossing.at_self, edge.name, crossing.at_other)
        for edge in piece.outline
        for crossing in ray.intersections(edge.path)
        if crossing.at_self > TOLERANCES.closure
    )
