"""The point of a dart: its angle, the middle of its mouth, and the dart drawn to another point."""

from dataclasses import replace

from notchbook.geometry import Path, Point
from notchbook.pattern.piece import Intake, Piece
from notchbook.units import TOLERANCES


def middle_of_mouth(piece: Piece, intake: Intake) -> Point:
    """Half way between the two ends of the mouth, straight."""
    return piece.edge(intake.first_leg).path.start.lerp(piece.edge(intake.second_leg).path.end, 0.5)


def dart_angle(piece: Piece, intake: Intake, point: Point | None = None) -> float:
    """The angle of the dart, degrees, seen from ``point`` (None: from its own point)."""
    first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
    apex = point or first.end
    start, end = first.start - apex, second.end - apex
    if min(start.norm(), end.norm()) <= TOLERANCES.join:
        return 0.0
    return Point(start.dot(end), start.cross(end)).direction()


def with_point(piece: Piece, intake: Intake, point: Point) -> Piece:
    """The piece with the dart drawn to another point: both legs straight, its mouth as it was."""
    first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
    return piece.with_edges(
        replace(first, path=Path.line(first.path.start, point)),
        replace(second, path=Path.line(point, second.path.end)),
    )
