"""Would another number of darts serve better?"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.legs import inner_mouth
from notchbook.checks.subject import Subject
from notchbook.geometry import Point
from notchbook.pattern import Finding, Piece, Severity, spoken
from notchbook.pattern.names import last_word
from notchbook.units import TOLERANCES

_POINTS_AT = 3.0
"""mm beside the bust point within which a dart points at it. Own judgment."""

_SHORT_OF = 80.0
"""mm that a dart that shapes the bust ends short of the bust point at most: the radius of the bust (5 to
7.5 cm in drafting practice) and a little. Common practice, no source."""

_BUST_DART = "bust_dart"
"""What the dart is called that shapes the bust: it may stand
anywhere round the bust point, near it or far, so that its angle counts and not its width."""

_BUST_POINT = "bust_point"
"""The mark that the dart opens round: its own point lies short of it, by more on a fuller cup, and seen from
there the same intake would look wider."""

_WAIST = "waist"
"""A bust dart that opens here takes up the waist as well."""


@check(
    id="dart-count",
    title="The number of darts suits the intake",
    rationale=(
        "How many darts a panel has is written in the pattern and never changes by itself when another "
        "body is drafted. On a flat figure a dart may shrink to a few millimeters or to nothing; it is "
        "then only work, and the side seam or its neighbor can take it. On a full hip one dart grows so "
        "wide that its end pokes, and two would lie better. A bust dart is judged by its angle, for that "
        "stays the same wherever it is moved; one that opens at the waist takes up the waist besides."
    ),
    severity=Severity.LOOK,
    reads=("edges", "intakes"),
    messages={
        "dart-small": "{piece}: {dart} takes up next to nothing; one dart fewer would serve better.",
        "dart-large": "{piece}: {dart} takes up so much that it will poke; one dart more would serve better.",
    },
    suggestion="Change the number of darts, or share the intake with a neighbor or another place.",
)
def dart_count(subject: Subject) -> Iterator[Finding]:
    """Darts that take up too little or too much, by the straight width of their mouths, mm; bust darts that
    open too wide, degrees."""
    limits = subject.limits
    # What was derived of another piece, as a lining is, has its darts and is told of with it.
    drawn = (piece for piece in subject.pattern.pieces.values() if piece.rule is None)
    for piece in drawn:
        for dart in _darts(piece):
            spot = Spot(piece.name, dart.name, dart.mouth)
            words = {"piece": spoken(piece.name), "dart": spoken(dart.name)}
            if dart.width < limits.dart_smallest:
                reading = Reading(dart.width, limits.dart_smallest)
                yield dart_count.finding("dart-small", spot, reading, Severity.NOTE, **words)
            elif dart.is_at_bust:
                most = limits.combined_dart_angle if dart.is_at_waist else limits.bust_dart_angle
                if dart.degrees > most:
                    reading = Reading(dart.degrees, most, "deg")
                    yield dart_count.finding("dart-large", spot, reading, **words)
            elif dart.width > limits.dart_largest:
                reading = Reading(dart.width, limits.dart_largest)
                yield dart_count.finding("dart-large", spot, reading, **words)


@dataclass(frozen=True, slots=True)
class _Dart:
    """A dart, a place at its mouth, how wide this is, mm, the angle that it opens round the bust point (where
    there is none, at its own point), degrees, whether it opens at the waist, and whether it shapes the bust:
    it is called so, or opens elsewhere than at the waist and points at the bust point."""

    name: str
    mouth: Point
    width: float
    degrees: float
    is_at_waist: bool
    is_at_bust: bool = False


def _darts(piece: Piece) -> Iterator[_Dart]:
    bust_points = [mark.position for mark in piece.marks if last_word(mark.name) == _BUST_POINT]
    for intake in piece.darts:
        first = piece.edge(intake.first_leg).path
        mouth, end = first.start, piece.edge(intake.second_leg).path.end
        # A piece cut whole has a bust point on each side.
        around = min(bust_points, key=mouth.distance_to, default=first.end)
        width, reach = mouth.distance_to(end), mouth.distance_to(around) + end.distance_to(around)
        degrees = 2.0 * math.degrees(math.asin(min(width / (reach or 1.0), 1.0)))
        at_waist = last_word(intake.mouth) == _WAIST
        at_bust = bool(bust_points) and not at_waist and _points_at(around, mouth, end, first.end)
        called = last_word(intake.name) == _BUST_DART
        yield _Dart(intake.name, mouth, width, degrees, at_waist, called or at_bust)
    for dart in piece.inner_darts:
        widest = inner_mouth(piece, dart)
        yield _Dart(dart.name, widest.center, widest.width, 0.0, is_at_waist=True)


def _points_at(goal: Point, mouth: Point, end: Point, point: Point) -> bool:
    """Whether the middle of a dart, led on beyond its point, goes to a place as near as a dart can end."""
    middle = mouth.lerp(end, 0.5)
    along = point - middle
    if along.norm() <= TOLERANCES.sew_length or along.dot(goal - point) < -_POINTS_AT * along.norm():
        return False
    off = abs(along.unit().cross(goal - point))
    return off <= _POINTS_AT and goal.distance_to(point) <= _SHORT_OF
