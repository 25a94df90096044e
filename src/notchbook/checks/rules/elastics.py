"""Does every elastic still have the edges that it draws in?"""

from collections.abc import Iterator

from notchbook.checks.check import Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, lost_edges, spoken


@check(
    id="elastics",
    title="Each elastic has its edges",
    rationale=(
        "What an elastic is cut to follows the edges that it is sewn to. When a later step takes one of "
        "them away, the figure on the card goes on without it. The elastic comes out too short, and the "
        "edge is drawn in until it no longer passes over the body."
    ),
    severity=Severity.STOP,
    reads=("edges",),
    messages={"elastic-edge-lost": "{elastic}: {edge}, which it was to draw in, is gone."},
    suggestion="Take back the step that took the edge away, or lay a stretch band to what is left.",
)
def elastics(subject: Subject) -> Iterator[Finding]:
    """Elastics one of whose edges the pattern does not have any more."""
    for elastic in subject.pattern.elastics.values():
        for edge in lost_edges(subject.pattern, elastic):
            yield elastics.finding(
                "elastic-edge-lost",
                Spot(names=(elastic.name,)),
                elastic=spoken(elastic.name),
                edge=spoken(edge),
            )
