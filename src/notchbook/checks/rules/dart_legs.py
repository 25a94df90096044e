"""Are the two legs of each dart equally long?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import length
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="dart-legs",
    title="Dart legs are equally long",
    rationale=(
        "The legs of a dart are sewn to each other from the mouth to the point. If one is longer, the "
        "mouth has a step, or the machinist stretches the shorter one and the point puckers. Legs go "
        "unequal when a dart is moved or the edge is redrawn without closing it. Half a millimeter is "
        "what a pencil hides."
    ),
    severity=Severity.STOP,
    reads=("edges", "intakes"),
    messages={"dart-legs-differ": "{piece}: the legs of {dart} differ."},
    suggestion="Lengthen the shorter leg on its line, then true the edge with the dart closed.",
)
def dart_legs(subject: Subject) -> Iterator[Finding]:
    """Darts whose legs differ in length, mm."""
    for piece in subject.pattern.pieces.values():
        for intake in piece.intakes:
            first, second = (length(piece.edge(leg).path) for leg in (intake.first_leg, intake.second_leg))
            if abs(first - second) > subject.limits.dart_legs:
                yield dart_legs.finding(
                    "dart-legs-differ",
                    Spot(piece.name, intake.name, piece.edge(intake.second_leg).path.end),
                    Reading(second, first),
                    piece=spoken(piece.name),
                    dart=spoken(intake.name),
                )
