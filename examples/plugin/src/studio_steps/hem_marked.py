"""Is the middle of each hem marked? A rule of one studio, as an example of a check of your own."""

from collections.abc import Iterator

from notchbook.checks import Spot, Subject, check
from notchbook.pattern import Finding, Severity, require, spoken


@check(
    id="hem-marked",
    title="The middle of each hem is marked",
    rationale=(
        "In this studio hems are pinned from their middle outward. A hem without a mark there is folded "
        "in half once more, on the table and with pins in the mouth. A notch saves that. Other studios "
        "have no use for it, so the rule lives here and not in the house."
    ),
    severity=Severity.LOOK,
    reads=("edges", "notches"),
    messages={"hem-unmarked": "{hem} has no notch."},
    suggestion="Add the step hem_notch for this hem.",
)
def hem_marked(subject: Subject) -> Iterator[Finding]:
    """Hems on which no notch lies."""
    pattern = subject.pattern
    marked = {edge for notch in pattern.notches.values() for edge in require(pattern, notch.place.edge)}
    for piece in pattern.pieces.values():
        for edge in piece.outline:
            if edge.kind == "hem" and edge.name not in marked:
                yield hem_marked.finding("hem-unmarked", Spot(piece.name, edge.name), hem=spoken(edge.name))
