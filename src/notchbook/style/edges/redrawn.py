"""Edges of a piece drawn anew: their neighbors follow to the new ends, and the outline stays one plain
line."""

from collections.abc import Mapping
from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Piece, spoken
from notchbook.style.edges.end_turns import bent_end, bent_start, turned
from notchbook.style.edges.level_lines import followed_lines
from notchbook.units import TOLERANCES


def redrawn(piece: Piece, paths: Mapping[str, Path]) -> Piece:
    """The piece with these edges drawn anew (by name); every name stays.

    An end that moved takes the neighboring edge with it, which turns there with it, so that the corner
    keeps its angle; a leg and a fold stay straight. Where two edges that are both drawn anew meet, they
    must end in one point. Levels that ended on the outline end on it again.

    StepRefused ``edge-crosses-outline`` when the new outline would cross itself.
    """
    if all(paths[edge.name] == edge.path for edge in piece.outline if edge.name in paths):
        return piece
    outline = [replace(edge, path=paths.get(edge.name, edge.path)) for edge in piece.outline]
    for index, edge in enumerate(outline):
        if edge.name not in paths:
            following = (index + 1) % len(outline)
            old = piece.outline[index - 1], piece.outline[following]
            outline[index] = _following(edge, (outline[index - 1], outline[following]), old, paths)
    for index, edge in enumerate(outline):
        after = outline[(index + 1) % len(outline)]
        if edge.path.end != after.path.start:
            outline[index] = replace(edge, path=edge.path.with_end(after.path.start))
    changed = replace(piece, outline=tuple(outline))
    changed = replace(changed, lines=followed_lines(piece, changed))
    require_plain(changed)
    return changed


def _following(
    edge: Edge, around: tuple[Edge, Edge], old: tuple[Edge, Edge], paths: Mapping[str, Path]
) -> Edge:
    """The edge with each end that moved at its new place, at the angle at which it met its neighbor
    before."""
    path = edge.path
    (before, after), (was_before, was_after) = around, old
    if before.name in paths and before.path.end.distance_to(path.start) > TOLERANCES.join:
        turn = turned(was_before.path, before.path, at_end=True)
        path = bent_start(path.with_start(before.path.end), 0.0 if edge.kind in ("fold", "leg") else turn)
    if after.name in paths and after.path.start.distance_to(path.end) > TOLERANCES.join:
        turn = turned(was_after.path, after.path, at_end=False)
        path = bent_end(path.with_end(after.path.start), 0.0 if edge.kind in ("fold", "leg") else turn)
    return replace(edge, path=path)


def require_plain(piece: Piece) -> None:
    """StepRefused ``edge-crosses-outline`` when the sew line of the piece crosses itself.

    Legs of a dart that takes up nothing lie on each other, and their corners touch: that is no crossing.
    """
    for crossing in piece.sew_line.self_crossings():
        first, second = (_edge_at(piece, place) for place in (crossing.at_self, crossing.at_other))
        if {first.kind, second.kind} == {"leg"} or first.end == second.start or second.end == first.start:
            continue
        if _is_end(first, crossing.point) and _is_end(second, crossing.point):
            continue
        raise StepRefused(
            "edge-crosses-outline",
            piece=spoken(piece.name),
            first=spoken(first.name),
            second=spoken(second.name),
        )


def _is_end(edge: Edge, point: Point) -> bool:
    ends = (edge.path.start, edge.path.end)
    return min(point.distance_to(end) for end in ends) <= TOLERANCES.closure


def _edge_at(piece: Piece, distance: float) -> Edge:
    travelled = 0.0
    for edge in piece.outline:
        travelled += edge.length
        if distance <= travelled:
            return edge
    return piece.outline[-1]
