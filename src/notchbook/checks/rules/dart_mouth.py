"""Does the edge run on smoothly where a dart is closed?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.corners import inside_angle
from notchbook.checks.subject import Subject
from notchbook.pattern import Edge, Finding, Intake, Piece, Severity, spoken
from notchbook.units import TOLERANCES


@check(
    id="dart-mouth",
    title="The edge runs on across closed darts",
    rationale=(
        "A dart is closed before the edge is trued; cut without that, the waist has a notch or a beak at "
        "every dart. With the legs laid together the two parts of the edge must make one line. The angles "
        "beside the two legs then make 180 degrees, whatever way the dart is pressed."
    ),
    severity=Severity.LOOK,
    reads=("edges", "intakes"),
    messages={
        "dart-mouth-peak": "{piece}: with {dart} closed, the edge makes a point.",
        "dart-mouth-dip": "{piece}: with {dart} closed, the edge makes a dip.",
    },
    suggestion="Close the dart and true the edge across it.",
)
def dart_mouth(subject: Subject) -> Iterator[Finding]:
    """Darts across which the edge does not run on when they are closed, degrees."""
    for piece in subject.pattern.pieces.values():
        for intake in piece.intakes:
            turned = _turned(piece, intake)
            if turned is None or abs(turned - 180.0) <= subject.limits.junction:
                continue
            yield dart_mouth.finding(
                "dart-mouth-peak" if turned < 180.0 else "dart-mouth-dip",
                Spot(piece.name, intake.name, piece.edge(intake.first_leg).path.start),
                Reading(turned, 180.0, "deg"),
                piece=spoken(piece.name),
                dart=spoken(intake.name),
            )


def _turned(piece: Piece, intake: Intake) -> float | None:
    """The sum of the two angles at the mouth, degrees; None where the edge beside it is a leg too."""
    legs = {leg for other in piece.intakes for leg in (other.first_leg, other.second_leg)}
    first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
    before, after = _beside(piece, first, -1), _beside(piece, second, 1)
    if {before.name, after.name} & legs or min(first.length, second.length) <= TOLERANCES.sew_length:
        return None
    return inside_angle(before, first) + inside_angle(second, after)


def _beside(piece: Piece, edge: Edge, step: int) -> Edge:
    return piece.outline[(piece.edge_index(edge.name) + step) % len(piece.outline)]
