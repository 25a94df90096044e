"""Is each edge a fair line: no kink, no S where none was drawn?"""

from collections.abc import Iterator
from itertools import pairwise

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import dense, end_direction, length, start_direction, wrapped
from notchbook.checks.subject import Subject
from notchbook.checks.turning import stretches
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Finding, Piece, Severity, split_side, spoken

_JUDGED_BY_SHAPE = frozenset({"armhole", "cap_front", "cap_back"})
"""Edges that may or must bend both ways: their own checks say where."""


@check(
    id="fair-edges",
    title="Edges are fair lines",
    rationale=(
        "A line drawn with a curve ruler has no kink and bends one way between its marks. A kink inside "
        "an edge shows as a corner when sewn; a curve that wavers cannot be followed by a foot and looks "
        "like a mistake. Both come from pulling a curve through a point that lies off it. Where an armhole "
        "and a sleeve cap may bend both ways is the business of their own checks, and a side seam that runs "
        "over the waist to the hip may change once; another edge that is meant to is declared in the profile."
    ),
    severity=Severity.LOOK,
    reads=("edges",),
    messages={
        "edge-kinked": "{edge} has a corner within it.",
        "edge-wavers": "{edge} bends first one way, then the other.",
    },
    suggestion="Move the point that pulls the line; split the edge where a corner is meant.",
)
def fair_edges(subject: Subject) -> Iterator[Finding]:
    """Kinks within edges, and edges that bend both ways, degrees."""
    for piece in subject.pattern.pieces.values():
        for edge in piece.outline:
            kinks = list(_kinks(subject, piece, edge))
            yield from kinks
            if not kinks and not _JUDGED_BY_SHAPE & set(_words(edge.name)):
                yield from _wavers(subject, piece, edge)


def _runs_over_waist(piece: Piece, edge: Edge) -> bool:
    """Whether the edge is a side seam that is hollow at the waist and round at the hip: it changes once."""
    words = {word for line in piece.lines for word in _words(line.name)}
    return "side_seam" in _words(edge.name) and "waist_line" in words


def _words(name: str) -> tuple[str, ...]:
    return tuple(split_side(name)[0].split("/"))


def _kinks(subject: Subject, piece: Piece, edge: Edge) -> Iterator[Finding]:
    parts = [Path((segment,)) for segment in edge.path.segments]
    parts = [part for part in parts if length(part) > subject.limits.shortest]
    for before, after in pairwise(parts):
        turn = wrapped(start_direction(after) - end_direction(before))
        if abs(turn) > subject.limits.kink:
            yield fair_edges.finding(
                "edge-kinked",
                Spot(piece.name, edge.name, after.start),
                Reading(abs(turn), 0.0, "deg"),
                edge=spoken(edge.name),
            )


def _wavers(subject: Subject, piece: Piece, edge: Edge) -> Iterator[Finding]:
    """A change of the side to which the edge turns, where it turns visibly before and after."""
    line = dense(edge.path)
    changes = list(pairwise(stretches(line, subject.limits.inflection)))
    if len(changes) == 1 and _runs_over_waist(piece, edge):
        return
    for before, after in changes:
        x, y = line.at(after.begins)
        yield fair_edges.finding(
            "edge-wavers",
            Spot(piece.name, edge.name, Point(float(x), float(y))),
            Reading(min(abs(before.turned), abs(after.turned)), 0.0, "deg"),
            edge=spoken(edge.name),
        )
