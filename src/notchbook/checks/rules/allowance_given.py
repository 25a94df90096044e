"""Was an allowance thought of for each edge?"""

from collections.abc import Iterator

from notchbook.checks.check import Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Pattern, Severity, spoken
from notchbook.pattern.resolve import Found, resolve


@check(
    id="allowance-given",
    title="Each edge has an allowance of its own kind",
    rationale=(
        "One allowance for all edges is the mark of a careless pattern: a zip, a neckline and a hem each "
        "want their own. Where neither a step nor a seam says which, the house's plain width is taken, "
        "and that is a guess. A hem with a plain seam's allowance cannot be turned up."
    ),
    severity=Severity.LOOK,
    reads=("edges", "seams", "allowances"),
    messages={"allowance-guessed": "No allowance was set for {edge}; the house's plain one is taken."},
    suggestion="Set the allowance of this edge, or sew it to something.",
)
def allowance_given(subject: Subject) -> Iterator[Finding]:
    """Edges for which neither a step nor a seam set an allowance."""
    pattern = subject.pattern
    spoken_for = _spoken_for(pattern)
    for piece in pattern.pieces.values():
        for edge in piece.outline:
            if edge.kind not in ("fold", "leg") and edge.name not in spoken_for:
                yield allowance_given.finding(
                    "allowance-guessed",
                    Spot(piece.name, edge.name, edge.path.point_at(edge.length / 2)),
                    edge=spoken(edge.name),
                )


def _spoken_for(pattern: Pattern) -> set[str]:
    uses = [use.edge for seam in pattern.seams.values() for use in (*seam.first, *seam.second)]
    found: set[str] = set()
    for name in (*pattern.allowances, *uses):
        answer = resolve(pattern, name)
        if isinstance(answer, Found):
            found.update(answer.members)
    return found
