"""Do edges meet the center square?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.corners import End, corner
from notchbook.checks.subject import Subject
from notchbook.checks.walks import walked_seams
from notchbook.pattern import Edge, Finding, Piece, Severity, spoken

_ENDS: tuple[End, End] = ("start", "end")


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
    for piece, center, end in _centers(subject):
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


def _centers(subject: Subject) -> Iterator[tuple[Piece, Edge, End]]:
    """Every end of a fold, and of a run of edges that is sewn to its own reflection."""
    for piece in subject.pattern.pieces.values():
        for edge in piece.outline:
            if edge.kind == "fold":
                yield from ((piece, edge, end) for end in _ENDS)
    for walked in walked_seams(subject.pattern):
        first, second = walked.runs
        for index in (0, -1):
            edge = first[index].edge
            if edge.name == second[index].edge.name:
                at_start = index == 0
                end: End = "start" if first[index].forward == at_start else "end"
                yield subject.pattern.piece_of(edge.name), edge, end
