"""Does each dart end within its piece, clear of other edges, and can it be pressed?"""

from collections.abc import Iterator

import numpy as np
from shapely import Point as Place
from shapely import Polygon

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import dense, place_along, start_direction, wrapped
from notchbook.checks.subject import Subject
from notchbook.geometry import Point
from notchbook.pattern import Finding, Intake, Piece, Severity, spoken
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
        for intake in piece.intakes:
            yield from _room(subject, piece, intake)


def _room(subject: Subject, piece: Piece, intake: Intake) -> Iterator[Finding]:
    point = piece.edge(intake.first_leg).path.end
    spot = Spot(piece.name, intake.name, point)
    words = {"piece": spoken(piece.name), "dart": spoken(intake.name)}
    if not _body(piece).contains(Place(point.x, point.y)):
        yield dart_room.finding("dart-point-outside", spot, None, Severity.STOP, **words)
        return
    angle = _angle(piece, intake)
    if angle >= subject.limits.dart_angle:
        yield dart_room.finding(
            "dart-wide-angle", spot, Reading(angle, subject.limits.dart_angle, "deg"), **words
        )
    gap, edge = _nearest_edge(piece, intake, point)
    if gap < subject.limits.dart_room:
        yield dart_room.finding(
            "dart-near-edge", spot, Reading(gap, subject.limits.dart_room), edge=spoken(edge), **words
        )


def _body(piece: Piece) -> Polygon:
    """The piece with its darts filled: straight across every mouth."""
    legs = {leg for intake in piece.intakes for leg in (intake.first_leg, intake.second_leg)}
    return Polygon(np.vstack([dense(edge.path).points for edge in piece.outline if edge.name not in legs]))


def _angle(piece: Piece, intake: Intake) -> float:
    """The angle between the legs at the point, degrees."""
    first = start_direction(piece.edge(intake.first_leg).path.reversed())
    second = start_direction(piece.edge(intake.second_leg).path)
    return abs(wrapped(second - first))


def _nearest_edge(piece: Piece, intake: Intake, point: Point) -> tuple[float, str]:
    """The nearest edge that is not a leg of this dart, nor one that it opens from."""
    own = {intake.first_leg, intake.second_leg}
    mouth = {piece.edge(intake.first_leg).start, piece.edge(intake.second_leg).end}
    others = [
        (place_along(edge.path, point)[1], edge.name)
        for edge in piece.outline
        if edge.name not in own and edge.length > TOLERANCES.sew_length and not {edge.start, edge.end} & mouth
    ]
    return min(others, default=(float("inf"), ""))
