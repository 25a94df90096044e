"""Does the edge run on smoothly where a dart is closed?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.mouths import angle_across
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken


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
        for intake in (one for one in piece.intakes if one.has_legs):
            turned = angle_across(piece, intake)
            if turned is None or abs(turned - 180.0) <= subject.limits.junction:
                continue
            yield dart_mouth.finding(
                "dart-mouth-peak" if turned < 180.0 else "dart-mouth-dip",
                Spot(piece.name, intake.name, piece.edge(intake.first_leg).path.start),
                Reading(turned, 180.0, "deg"),
                piece=spoken(piece.name),
                dart=spoken(intake.name),
            )
