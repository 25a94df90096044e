"""Where the legs of a double-ended dart are widest apart, and what it takes up there."""

from notchbook.geometry import Path, Point
from notchbook.pattern.piece import InnerDart, Piece
from notchbook.units import TOLERANCES


def mouth_of(leg: Path) -> tuple[float, Point]:
    """How far along a leg (mm from its upper point) its corner stands, and the corner itself.

    The corner is the joint of two segments that lies farthest from the straight line between the two
    points of the dart; the middle of a leg without joints.
    """
    best, place = -1.0, (leg.length / 2.0, leg.point_at(leg.length / 2.0))
    chord = leg.end - leg.start
    travelled = 0.0
    for segment in leg.segments[:-1]:
        travelled += segment.length
        away = abs(chord.cross(segment.end - leg.start))
        if away > best:
            best, place = away, (travelled, segment.end)
    return place


def inner_dart_width(piece: Piece, dart: InnerDart) -> float:
    """What the dart takes up at its widest, straight from leg to leg, mm."""
    center, side = (mouth_of(piece.line(leg).path)[1] for leg in (dart.center_leg, dart.side_leg))
    return center.distance_to(side)


def is_open_inside(piece: Piece, dart: InnerDart) -> bool:
    """Whether the dart takes up anything."""
    return inner_dart_width(piece, dart) > TOLERANCES.sew_length
