"""Is each fold one straight line?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import bend
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="fold-straight",
    title="Folds are straight",
    rationale=(
        "An edge on the fold is laid on folded cloth, and a fold is straight. What bulges over the fold "
        "is cut off and what falls short of it is cut double, so that the middle of the piece comes out "
        "wrong by twice the amount. A shaped center needs a seam."
    ),
    severity=Severity.STOP,
    reads=("edges",),
    messages={"fold-bent": "{edge} lies on the fold but is not straight."},
    suggestion="Draw the fold straight, or make it a seam and cut the piece as a pair.",
)
def fold_straight(subject: Subject) -> Iterator[Finding]:
    """Folds that stray from a straight line, mm."""
    for piece in subject.pattern.pieces.values():
        for edge in piece.outline:
            if edge.kind != "fold":
                continue
            stray, place = bend(edge.path)
            if stray > subject.limits.straightness:
                yield fold_straight.finding(
                    "fold-bent",
                    Spot(piece.name, edge.name, place),
                    Reading(stray, subject.limits.straightness),
                    edge=spoken(edge.name),
                )
