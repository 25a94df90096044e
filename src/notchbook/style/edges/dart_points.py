"""Darts whose mouths were moved: the point comes back to the middle, so that both legs are of one length."""

from dataclasses import replace

from notchbook.geometry import Point
from notchbook.pattern import Edge, Intake, Piece


def darts_of(piece: Piece) -> tuple[Intake, ...]:
    """The intakes whose legs are edges of the outline."""
    return tuple(intake for intake in piece.intakes if intake.kind == "dart")


def middled_darts(before: Piece, outline: tuple[Edge, ...]) -> tuple[Edge, ...]:
    """The outline with the point of each dart that changed in the middle of its mouth again.

    ``before`` is the piece as it was: a dart whose legs are as they were stays as it is.
    """
    edges = {edge.name: edge for edge in outline}
    for intake in darts_of(before):
        first, second = edges[intake.first_leg], edges[intake.second_leg]
        was = (before.edge(first.name).path, before.edge(second.name).path)
        if (first.path, second.path) == was or first.length == second.length:
            continue
        point = middled(first.path.start, second.path.end, first.path.end)
        edges[first.name] = replace(first, path=first.path.with_end(point))
        edges[second.name] = replace(second, path=second.path.with_start(point))
    return tuple(edges[edge.name] for edge in outline)


def middled(first_mouth: Point, second_mouth: Point, point: Point) -> Point:
    """The foot of a dart's point on the line that is as far from one mouth as from the other."""
    across = second_mouth - first_mouth
    if across.norm() == 0.0:
        return point
    middle = first_mouth.lerp(second_mouth, 0.5)
    away = across.unit()
    return point - away * (point - middle).dot(away)
