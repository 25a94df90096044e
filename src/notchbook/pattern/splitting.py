"""Cutting a piece along a line: pure geometry and bookkeeping, the names are given by the step."""

from dataclasses import dataclass

from notchbook.errors import HouseFault, StepRefused
from notchbook.geometry import Path
from notchbook.pattern.names import spoken
from notchbook.pattern.piece import Edge, InnerDart, Intake, Piece
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
class EdgeCut:
    """A cut through an edge at a place, and the names of its parts."""

    located: Located
    names: EdgeNames


CutEnd = EdgeCut | Intake
"""Where a cut reaches the outline: through an edge, or through a dart, whose legs it takes in."""


@dataclass(frozen=True, slots=True)
class Runs:
    """What a cut leaves of the outline, counter-clockwise: ``right`` from its start to its end, ``left`` from
    its end to its start (as seen along the cut). The cut itself is not among them."""

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


def parted_outline(piece: Piece, start: CutEnd, end: CutEnd) -> Runs:
    """The outline parted where a cut begins and ends; refused when both ends are one edge or dart."""
    if _gate(start) == _gate(end):
        raise StepRefused("cut-same-edge", piece=spoken(piece.name), edge=spoken(_gate(start)))
    begin_before, begin_after = _beside(start)
    stop_before, stop_after = _beside(end)
    right = (*begin_after, *_edges_between(piece, _last(start), _gate(end)), *stop_before)
    left = (*stop_after, *_edges_between(piece, _last(end), _gate(start)), *begin_before)
    if not right or not left:
        raise StepRefused("cut-same-edge", piece=spoken(piece.name), edge=spoken(_gate(start)))
    return Runs(left=left, right=right)


def closed_by(run: tuple[Edge, ...], name: str, path: Path) -> tuple[Edge, ...]:
    """The outline of a run closed by a cut line from its end back to its start: one new seam edge."""
    gaps = (path.start.distance_to(run[-1].path.end), path.end.distance_to(run[0].path.start))
    if max(gaps) > TOLERANCES.join:
        raise HouseFault("cut-off-place", start=gaps[0], end=gaps[1])
    return (*run, Edge(name, path, run[-1].end, run[0].start))


def _gate(end: CutEnd) -> str:
    """The first edge of the outline that a cut's end takes in."""
    return end.first_leg if isinstance(end, Intake) else end.located.edge.name


def _last(end: CutEnd) -> str:
    return end.second_leg if isinstance(end, Intake) else end.located.edge.name


def _beside(end: CutEnd) -> tuple[tuple[Edge, ...], tuple[Edge, ...]]:
    """What is left of the edge before and after the cut; nothing of the legs of a dart."""
    if isinstance(end, Intake):
        return (), ()
    before, after = cut_edge(end.located.edge, end.located.distance, end.names)
    return (before,), (after,)


def _edges_between(piece: Piece, first: str, last: str) -> tuple[Edge, ...]:
    """The edges strictly after ``first`` and before ``last``, counter-clockwise."""
    count = len(piece.outline)
    begin = piece.edge_index(first)
    steps = (piece.edge_index(last) - begin) % count
    return tuple(piece.outline[(begin + step) % count] for step in range(1, steps))


def dart_crossed(piece: Piece, line: Path) -> InnerDart | None:
    """The first double-ended dart that a cut would go through; None when it goes clear of them all."""
    for dart in piece.inner_darts:
        if any(piece.line(leg).path.intersections(line) for leg in (dart.center_leg, dart.side_leg)):
            return dart
    return None


def cut_path(path: Path, line: Path) -> tuple[Path, ...]:
    """The parts of a path between the places where the line crosses it, in order."""
    parts: list[Path] = []
    rest, travelled = path, 0.0
    for crossing in path.intersections(line):
        distance = crossing.at_self - travelled
        if TOLERANCES.join < distance < rest.length - TOLERANCES.join:
            part, rest = rest.split_at(distance)
            parts.append(part)
            travelled = crossing.at_self
    return (*parts, rest)
