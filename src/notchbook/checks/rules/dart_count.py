"""Would another number of darts serve better?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="dart-count",
    title="The number of darts suits the intake",
    rationale=(
        "How many darts a panel has is written in the pattern and never changes by itself when another "
        "body is drafted. On a flat figure a dart may shrink to a few millimeters or to nothing; it is "
        "then only work, and the side seam or its neighbor can take it. On a full hip one dart grows so "
        "wide that its end pokes, and two would lie better."
    ),
    severity=Severity.LOOK,
    reads=("edges", "intakes"),
    messages={
        "dart-small": "{piece}: {dart} takes up next to nothing; one dart fewer would serve better.",
        "dart-large": "{piece}: {dart} takes up so much that it will poke; one dart more would serve better.",
    },
    suggestion="Change the number of darts in the draft, or share the intake with its neighbors.",
)
def dart_count(subject: Subject) -> Iterator[Finding]:
    """Darts that take up too little or too much, by the straight width of their mouths, mm."""
    least, most = subject.limits.dart_smallest, subject.limits.dart_largest
    for piece in subject.pattern.pieces.values():
        for intake in piece.intakes:
            mouth = piece.edge(intake.first_leg).path.start
            width = mouth.distance_to(piece.edge(intake.second_leg).path.end)
            if least <= width <= most:
                continue
            code, wanted = ("dart-small", least) if width < least else ("dart-large", most)
            yield dart_count.finding(
                code,
                Spot(piece.name, intake.name, mouth),
                Reading(width, wanted),
                Severity.NOTE if code == "dart-small" else None,
                piece=spoken(piece.name),
                dart=spoken(intake.name),
            )
