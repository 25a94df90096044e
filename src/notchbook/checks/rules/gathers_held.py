"""Is what was gathered sewn to something that holds the gathers?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Intake, Pattern, Piece, Severity, spoken
from notchbook.pattern.resolve import expand
from notchbook.units import TOLERANCES


@check(
    id="gathers-held",
    title="Gathers are held",
    rationale=(
        "Gathering threads only lay the gathers: it is the cuff, band, yoke or elastic sewn there that holds "
        "them. An edge that is gathered and sewn to nothing hangs open again when the threads are pulled "
        "out. Its raw edge shows besides."
    ),
    severity=Severity.NOTE,
    reads=("edges", "seams"),
    messages={"gathers-free": "The gathers of {edge} are sewn to nothing yet."},
    suggestion="Sew a cuff, a band or a binding to it, or let an elastic draw it in.",
)
def gathers_held(subject: Subject) -> Iterator[Finding]:
    """Edges that are gathered and that no seam and no elastic holds; mm drawn in."""
    held = frozenset(_held(subject.pattern))
    for piece in subject.pattern.pieces.values():
        for intake in piece.intakes:
            if intake.kind != "gather" or intake.amount <= TOLERANCES.closure:
                continue
            members = _members(subject.pattern, piece, intake)
            if members and not held & set(members):
                yield gathers_held.finding(
                    "gathers-free",
                    Spot(piece.name, members[0], piece.edge(members[0]).path.start, tuple(members)),
                    Reading(intake.amount, None),
                    edge=spoken(members[0]),
                )


def _held(pattern: Pattern) -> Iterator[str]:
    """The edges that a seam or an elastic holds."""
    named = [use.edge for seam in pattern.seams.values() for use in (*seam.first, *seam.second)]
    named += [name for elastic in pattern.elastics.values() for name in elastic.edges]
    for name in named:
        yield from (name, *expand(pattern, name)[0])


def _members(pattern: Pattern, piece: Piece, intake: Intake) -> list[str]:
    """The edges on which the gathers lie."""
    return [name for name in expand(pattern, intake.edge)[0] if piece.has_edge(name)]
