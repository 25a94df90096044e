"""Does each dart end within its piece, clear of other edges, and can it be pressed?"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from shapely import Point as Place
from shapely import Polygon

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import dense, place_along, start_direction, wrapped
from notchbook.checks.subject import Subject
from notchbook.geometry import Path, Point
from notchbook.pattern import Finding, Piece, Severity, spoken
from notchbook.units import TOLERANCES


@check(
    id="dart-room",
    title="Darts end inside the piece and can be pressed",
    rationale=(
        "The point of a dart must end in cloth, with room to tie off and to press. Near another edge or "
        "another dart it runs into that seam's allowance and cannot be eased to nothing. A dart wider "
        "than 60 degrees does not lie flat at all and wants to be a seam or two darts."
    ),
    severity=Severity.LOOK,
    reads=("edges", "intakes"),
    messages={
        "dart-point-outside": "{piece}: {dart} ends outside the piece.",
        "dart-near-edge": "{piece}: {dart} ends close to {edge}.",
        "dart-wide-angle": "{piece}: {dart} opens too wide to be pressed flat.",
    },
    suggestion="Shorten the dart, turn it, or share its intake with another.",
)
def dart_room(subject: Subject) -> Iterator[Finding]:
    """Darts that end outside the piece or near an edge (mm), or open too wide (degrees)."""
    for piece in subject.pattern.pieces.values():
        for end in _ends(piece):
            yield from _room(subject, piece, end)


@dataclass(frozen=True, slots=True)
class _End:
    """One point of a dart, the angle between its legs there (degrees), its own legs and mouth."""

    dart: str
    point: Point
    degrees: float
    legs: frozenset[str] = frozenset()
    mouth: frozenset[str] = frozenset()


def _ends(piece: Piece) -> Iterator[_End]:
    for intake in piece.darts:
        first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
        degrees = _between(first.path.reversed(), second.path)
        legs = frozenset((first.name, second.name))
        yield _End(intake.name, first.path.end, degrees, legs, frozenset((first.start, second.end)))
    for dart in piece.inner_darts:
        center, side = (piece.line(leg).path for leg in (dart.center_leg, dart.side_leg))
        yield _End(dart.name, center.start, _between(center, side))
        yield _End(dart.name, center.end, _between(center.reversed(), side.reversed()))


def _between(first: Path, second: Path) -> float:
    """The angle between two legs that leave one point, degrees."""
    return abs(wrapped(start_direction(second) - start_direction(first)))


def _room(subject: Subject, piece: Piece, end: _End) -> Iterator[Finding]:
    point = end.point
    spot = Spot(piece.name, end.dart, point)
    words = {"piece": spoken(piece.name), "dart": spoken(end.dart)}
    if not _body(piece).contains(Place(point.x, point.y)):
        yield dart_room.finding("dart-point-outside", spot, None, Severity.STOP, **words)
        return
    if end.degrees >= subject.limits.dart_angle:
        yield dart_room.finding(
            "dart-wide-angle", spot, Reading(end.degrees, subject.limits.dart_angle, "deg"), **words
        )
    gap, edge = _nearest_edge(piece, end)
    if gap < subject.limits.dart_room:
        yield dart_room.finding(
            "dart-near-edge", spot, Reading(gap, subject.limits.dart_room), edge=spoken(edge), **words
        )


def _body(piece: Piece) -> Polygon:
    """The piece with its darts filled: straight across every mouth."""
    legs = {leg for intake in piece.darts for leg in (intake.first_leg, intake.second_leg)}
    return Polygon(np.vstack([dense(edge.path).points for edge in piece.outline if edge.name not in legs]))


def _nearest_edge(piece: Piece, end: _End) -> tuple[float, str]:
    """The nearest edge that is not a leg of this dart, nor one that it opens from."""
    others = [
        (place_along(edge.path, end.point)[1], edge.name)
        for edge in piece.outline
        if edge.name not in end.legs
        and edge.length > TOLERANCES.sew_length
        and not {edge.start, edge.end} & end.mouth
    ]
    return min(others, default=(float("inf"), ""))
