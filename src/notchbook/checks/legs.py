"""Pairs of dart legs as measured: at the edge of a piece, and above and below in a dart inside it."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from notchbook.checks.measured import Dense, dense, length
from notchbook.geometry import Path, Point
from notchbook.pattern import InnerDart, Pattern, Piece


@dataclass(frozen=True, slots=True)
class LegPair:
    """Two legs that are sewn to each other, their lengths in mm, and where they open.

    ``part`` is "" for a dart at an edge, "above" or "below" for the parts of a dart inside the piece.
    """

    piece: Piece
    dart: str
    part: str
    legs: tuple[str, str]
    lengths: tuple[float, float]
    mouth: Point


@dataclass(frozen=True, slots=True)
class InnerMouth:
    """Where the legs of a dart inside a piece are widest apart: the two corners, mm."""

    center: Point
    side: Point
    center_along: float
    side_along: float

    @property
    def width(self) -> float:
        """Straight from leg to leg, mm."""
        return self.center.distance_to(self.side)


def leg_pairs(pattern: Pattern) -> Iterator[LegPair]:
    """Every pair of legs of the pattern."""
    for piece in pattern.pieces.values():
        for intake in (one for one in piece.intakes if one.has_legs):
            legs = (intake.first_leg, intake.second_leg)
            first, second = (length(piece.edge(leg).path) for leg in legs)
            yield LegPair(
                piece, intake.name, "", legs, (first, second), piece.edge(intake.second_leg).path.end
            )
        for dart in piece.inner_darts:
            yield from _inner_pairs(piece, dart)


def _inner_pairs(piece: Piece, dart: InnerDart) -> Iterator[LegPair]:
    legs = (dart.center_leg, dart.side_leg)
    center, side = (length(piece.line(leg).path) for leg in legs)
    mouth = inner_mouth(piece, dart)
    yield LegPair(piece, dart.name, "above", legs, (mouth.center_along, mouth.side_along), mouth.side)
    below = (center - mouth.center_along, side - mouth.side_along)
    yield LegPair(piece, dart.name, "below", legs, below, mouth.side)


def inner_mouth(piece: Piece, dart: InnerDart) -> InnerMouth:
    """The widest place of a dart inside a piece: on each leg the place farthest from its straight line."""
    center, side = (piece.line(leg).path for leg in (dart.center_leg, dart.side_leg))
    near, far = _farthest(center), _farthest(side)
    return InnerMouth(near[1], far[1], near[0], far[0])


def _farthest(leg: Path) -> tuple[float, Point]:
    """How far along a leg the place lies that is farthest from the line between its ends, and the place;
    the middle of a leg that is straight."""
    line: Dense = dense(leg)
    offsets = line.points - line.points[0]
    chord = line.points[-1] - line.points[0]
    away = np.abs(chord[0] * offsets[:, 1] - chord[1] * offsets[:, 0])
    if float(away.max()) <= 1e-9 * float(chord @ chord):
        x, y = line.at(line.length / 2.0)
        return line.length / 2.0, Point(float(x), float(y))
    index = int(away.argmax())
    return float(line.along[index]), Point(float(line.points[index, 0]), float(line.points[index, 1]))
