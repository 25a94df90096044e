"""Is every piece cut-ready once, and numbered once?"""

from collections import Counter
from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, Severity, spoken


@check(
    id="piece-numbers",
    title="Pieces are numbered once each, and none is missing",
    rationale=(
        "Each paper says which piece of how many it is, so that a missing one is noticed before cutting. "
        "Two pieces of one number, or a count that does not match, and the cutter trusts neither. The set "
        "of papers must be the set of pieces of the pattern, no more and no fewer."
    ),
    severity=Severity.STOP,
    reads=("cut",),
    messages={
        "number-twice": "The number {number} stands on several pieces.",
        "number-wrong": "{piece} is number {number} of {count}, which does not fit the set.",
        "piece-not-cut": "{piece} of the pattern is missing from the cut pieces.",
        "piece-unknown": "{piece} is among the cut pieces but not in the pattern.",
    },
    suggestion="Make the pieces cut-ready again from the pattern.",
)
def piece_numbers(subject: Subject) -> Iterator[Finding]:
    """Numbers that stand twice or do not fit the set, and pieces that are missing."""
    pieces = subject.cut_pieces
    for number, times in sorted(Counter(piece.number for piece in pieces).items()):
        if times > 1:
            yield piece_numbers.finding("number-twice", Spot(), Reading(times, 1, ""), number=number)
    for piece in pieces:
        if not 1 <= piece.number <= len(pieces) or piece.of != len(pieces):
            yield piece_numbers.finding(
                "number-wrong",
                Spot(piece.name),
                Reading(piece.of, len(pieces), ""),
                piece=piece.title,
                number=piece.number,
                count=piece.of,
            )
    made = {piece.name for piece in pieces}
    for name in subject.pattern.pieces:
        if name not in made:
            yield piece_numbers.finding("piece-not-cut", Spot(name), piece=spoken(name))
    for name in sorted(made - set(subject.pattern.pieces)):
        yield piece_numbers.finding("piece-unknown", Spot(name), piece=spoken(name))
