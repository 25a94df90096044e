"""Bending a good pattern in one place, so that a fault can be planted."""

from collections.abc import Callable
from dataclasses import replace

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Intake, Pattern, Piece


def point_moved(pattern: Pattern, name: str, dx: float, dy: float) -> Pattern:
    """The pattern with one named point moved (mm); the edges that meet there follow with their ends."""
    piece = pattern.piece_of(name)
    target = piece.points[name] + Point(dx, dy)
    outline = tuple(_following(edge, name, target) for edge in piece.outline)
    return pattern.with_pieces(replace(piece, outline=outline))


def _following(edge: Edge, name: str, target: Point) -> Edge:
    path = edge.path
    if edge.start == name:
        path = path.with_start(target)
    if edge.end == name:
        path = path.with_end(target)
    return replace(edge, path=path)


def path_changed(pattern: Pattern, edge: str, change: Callable[[Path], Path]) -> Pattern:
    """The pattern with one edge drawn anew between its ends."""
    return edge_changed(pattern, edge, lambda old: replace(old, path=change(old.path)))


def edge_changed(pattern: Pattern, edge: str, change: Callable[[Edge], Edge]) -> Pattern:
    """The pattern with one edge replaced."""
    piece = pattern.piece_of(edge)
    outline = tuple(change(old) if old.name == edge else old for old in piece.outline)
    return pattern.with_pieces(replace(piece, outline=outline))


def piece_changed(pattern: Pattern, name: str, change: Callable[[Piece], Piece]) -> Pattern:
    """The pattern with one piece replaced."""
    return pattern.with_pieces(change(pattern.pieces[name]))


def intake_changed(pattern: Pattern, name: str, change: Callable[[Intake], Intake]) -> Pattern:
    """The pattern with one intake replaced."""
    piece = pattern.piece_of(name)
    intakes = tuple(change(old) if old.name == name else old for old in piece.intakes)
    return pattern.with_pieces(replace(piece, intakes=intakes))


def outline_forced(pattern: Pattern, name: str, change: Callable[[Piece], tuple[Edge, ...]]) -> Pattern:
    """The pattern with an outline that the piece itself would refuse to be made with."""
    piece = replace(pattern.pieces[name])
    object.__setattr__(piece, "outline", change(piece))
    return pattern.with_pieces(piece)
