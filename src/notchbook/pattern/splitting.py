"""Cutting a piece along a line: pure geometry and bookkeeping, the names are given by the step."""

from dataclasses import dataclass, replace

from notchbook.errors import HouseFault, StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern.names import spoken
from notchbook.pattern.piece import Edge, InnerDart, InternalLine, Piece
from notchbook.pattern.sewn import Located
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class EdgeNames:
    """The names for an edge that is cut: its part before and after the cut, in its own direction,
    and the new points at the end of the first and the start of the second part."""

    before: str
    after: str
    end_before: str
    start_after: str


@dataclass(frozen=True, slots=True)
class Halves:
    """The two outlines made by a cut: ``left`` lies left of the line from start to end."""

    left: tuple[Edge, ...]
    right: tuple[Edge, ...]


def cut_edge(edge: Edge, distance: float, names: EdgeNames) -> tuple[Edge, Edge]:
    """The edge cut at a distance from its start into two named parts.

    Refused (``cut-at-end``) nearer to an end than the closure tolerance: no pencil draws that part.
    """
    if not TOLERANCES.closure < distance < edge.length - TOLERANCES.closure:
        raise StepRefused("cut-at-end", edge=spoken(edge.name), distance=distance, length=edge.length)
    before, after = edge.path.split_at(distance)
    return (
        Edge(names.before, before, edge.start, names.end_before, edge.kind),
        Edge(names.after, after, names.start_after, edge.end, edge.kind),
    )


def cut_outline(
    piece: Piece,
    line: Path,
    start: tuple[Located, EdgeNames],
    end: tuple[Located, EdgeNames],
    line_names: tuple[str, str],
) -> Halves:
    """The outline cut along ``line`` from a place on one edge to a place on another.

    ``line_names`` are the new edge's name on the left half and on the right half. Refused when
    both places lie on one edge.
    """
    if start[0].edge.name == end[0].edge.name:
        raise StepRefused("cut-same-edge", piece=spoken(piece.name), edge=spoken(start[0].edge.name))
    start_before, start_after = cut_edge(start[0].edge, start[0].distance, start[1])
    end_before, end_after = cut_edge(end[0].edge, end[0].distance, end[1])
    between = _edges_between(piece, start[0].edge.name, end[0].edge.name)
    around = _edges_between(piece, end[0].edge.name, start[0].edge.name)
    _require_meeting(line, start_after.path.start, end_before.path.end)
    right = (
        start_after,
        *between,
        end_before,
        Edge(line_names[1], line.reversed(), end_before.end, start_after.start),
    )
    left = (
        end_after,
        *around,
        start_before,
        Edge(line_names[0], line, start_before.end, end_after.start),
    )
    return Halves(left=left, right=right)


def _require_meeting(line: Path, start: Point, end: Point) -> None:
    if line.start.distance_to(start) > TOLERANCES.join or line.end.distance_to(end) > TOLERANCES.join:
        raise HouseFault("cut-off-place", start=line.start.distance_to(start), end=line.end.distance_to(end))


def _edges_between(piece: Piece, first: str, last: str) -> tuple[Edge, ...]:
    """The edges strictly after ``first`` and before ``last``, counter-clockwise."""
    count = len(piece.outline)
    begin = piece.edge_index(first)
    steps = (piece.edge_index(last) - begin) % count
    return tuple(piece.outline[(begin + step) % count] for step in range(1, steps))


def belongings(piece: Piece, outline: tuple[Edge, ...]) -> Piece:
    """The part of the piece's intakes, inner darts and marks that lies on or inside the given outline.

    Internal lines are left to :func:`cut_lines`, for a cut may go across them.
    """
    names = {edge.name for edge in outline}
    inside = Path(tuple(segment for edge in outline for segment in edge.path.segments))
    marks = tuple(mark for mark in piece.marks if inside.contains(mark.position))
    kept = {mark.name for mark in marks}
    return replace(
        piece,
        outline=outline,
        intakes=tuple(i for i in piece.intakes if {i.first_leg, i.second_leg} <= names),
        marks=marks,
        inner_darts=tuple(d for d in piece.inner_darts if {d.upper_point, d.lower_point} <= kept),
        lines=(),
    )


def dart_crossed(piece: Piece, line: Path) -> InnerDart | None:
    """The first double-ended dart that a cut would go through; None when it goes clear of them all."""
    for dart in piece.inner_darts:
        if any(piece.line(leg).path.intersections(line) for leg in (dart.center_leg, dart.side_leg)):
            return dart
    return None


def cut_lines(piece: Piece, line: Path) -> tuple[tuple[InternalLine, tuple[Path, ...]], ...]:
    """Each internal line of the piece with the parts that a cut leaves of it, in order."""
    return tuple((inner, _parts(inner.path, line)) for inner in piece.lines)


def _parts(path: Path, line: Path) -> tuple[Path, ...]:
    parts: list[Path] = []
    rest, travelled = path, 0.0
    for crossing in path.intersections(line):
        distance = crossing.at_self - travelled
        if TOLERANCES.join < distance < rest.length - TOLERANCES.join:
            part, rest = rest.split_at(distance)
            parts.append(part)
            travelled = crossing.at_self
    return (*parts, rest)
