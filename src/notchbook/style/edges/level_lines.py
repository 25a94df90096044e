"""Levels and other lines inside a piece that end on its outline: they end on it again when it was redrawn."""

from dataclasses import replace
from itertools import pairwise

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, InternalLine, Piece
from notchbook.style.edges.carried import carried_on
from notchbook.units import TOLERANCES

_REACH = 400.0
"""mm; how far a line is followed to find the edge that it ended on: more than any edge is moved."""


def followed_lines(before: Piece, after: Piece) -> tuple[InternalLine, ...]:
    """The lines of ``after``, each that ended on an edge of ``before`` carried on, or cut, to that edge."""
    old = {line.name: line.path for line in before.lines}
    return tuple(
        replace(line, path=_followed(line.path, old[line.name], before, after))
        if line.kind != "dart_leg"
        else line
        for line in after.lines
    )


def without_lines_outside(piece: Piece) -> tuple[Piece, tuple[str, ...]]:
    """The piece without the levels that lie wholly outside of it, and their names: an elbow line below the
    hem of a short sleeve. A level that still reaches into the piece is cut to it."""
    kept: list[InternalLine] = []
    gone: list[str] = []
    for line in piece.lines:
        if line.kind != "level" or line.path.length <= TOLERANCES.closure:
            kept.append(line)
        elif _reaches_into(line.path, piece.sew_line):
            kept.append(replace(line, path=_inside(line.path, piece.sew_line)))
        else:
            gone.append(line.name)
    return replace(piece, lines=tuple(kept)), tuple(gone)


def _reaches_into(path: Path, outline: Path) -> bool:
    middle = path.point_at(path.length / 2.0)
    return any(outline.contains(point) for point in (path.start, middle, path.end)) or bool(
        path.intersections(outline)
    )


def _followed(path: Path, old: Path, before: Piece, after: Piece) -> Path:
    ended = _to_edge(path, _edge_under(before, old.end), after)
    begun = _to_edge(ended.reversed(), _edge_under(before, old.start), after)
    return _inside(begun.reversed(), after.sew_line)


def _inside(path: Path, outline: Path) -> Path:
    """The longest part of the line that lies inside the piece, where an end of it came to lie outside."""
    if path.length <= TOLERANCES.closure or (outline.contains(path.start) and outline.contains(path.end)):
        return path
    cuts = sorted({0.0, path.length, *(crossing.at_self for crossing in path.intersections(outline))})
    parts = [
        path.between(start, end)
        for start, end in pairwise(cuts)
        if end - start > TOLERANCES.closure and outline.contains(path.point_at((start + end) / 2.0))
    ]
    return max(parts, key=lambda part: part.length, default=path)


def _edge_under(piece: Piece, point: Point) -> Edge | None:
    """The edge on which an end of a line lies, when it lies on exactly one; a dart leg is none."""
    found = [
        edge
        for edge in piece.outline
        if edge.path.bounds().gap_to(point) <= TOLERANCES.closure  # most are out of reach, told at once
        and edge.path.nearest(point).gap <= TOLERANCES.closure
    ]
    return found[0] if len(found) == 1 and found[0].kind != "leg" else None


def _to_edge(path: Path, edge: Edge | None, after: Piece) -> Path:
    """The path carried on or cut at its end so that it ends on the edge as it is now."""
    if edge is None or path.length <= TOLERANCES.closure:
        return path
    now = after.edge(edge.name).path
    if now == edge.path or now.nearest(path.end).gap <= TOLERANCES.join:
        return path
    longer = carried_on(path, _REACH)
    crossings = [c.at_self for c in longer.intersections(now) if c.at_self > TOLERANCES.closure]
    return longer.between(0.0, crossings[0]) if crossings else path
