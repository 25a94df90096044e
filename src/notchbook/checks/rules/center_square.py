"""Do edges meet the center square?"""

from collections.abc import Iterator

from notchbook.checks.centers import centers
from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.corners import corner
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="center-square",
    title="Edges meet the center square",
    rationale=(
        "At a fold, and at a seam that joins a piece to its reflection, the other half is the mirror of "
        "this one. An edge that comes in square runs straight over the center; any other angle is doubled "
        "there and makes a point or a dip in the waist, the neckline or the hem. A V neck is meant to "
        "have one: then say so in the profile. It is checked within one degree, which is what a set "
        "square shows."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "intakes"),
    messages={"center-not-square": "{piece}: {neighbor} does not meet {center} square."},
    suggestion="Draw the last part of the edge square to the center, or declare the point as meant.",
)
def center_square(subject: Subject) -> Iterator[Finding]:
    """Edges that do not meet a fold or a center seam square, degrees."""
    for piece, center, end in centers(subject.pattern):
        found = corner(piece, center, end)
        if not found.is_open and abs(found.degrees - 90.0) > subject.limits.square:
            yield center_square.finding(
                "center-not-square",
                Spot(piece.name, found.neighbor.name, found.position, (center.name,)),
                Reading(found.degrees, 90.0, "deg"),
                piece=spoken(piece.name),
                neighbor=spoken(found.neighbor.name),
                center=spoken(center.name),
            )
