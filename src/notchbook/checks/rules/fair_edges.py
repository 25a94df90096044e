"""Is each edge a fair line: no kink, no S where none was drawn?"""

from collections.abc import Iterator
from itertools import pairwise

import numpy as np

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import Dense, dense, end_direction, length, start_direction, wrapped
from notchbook.checks.subject import Subject
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Finding, Piece, Severity, spoken

_STEP = 1.0
"""mm between the places where the turning of an edge is looked at."""
_STRAIGHT = 1e-6
"""Degrees a step below which a line is straight: what arithmetic leaves of a ruler's line."""


@check(
    id="fair-edges",
    title="Edges are fair lines",
    rationale=(
        "A line drawn with a curve ruler has no kink and bends one way between its marks. A kink inside "
        "an edge shows as a corner when sewn; a curve that wavers cannot be followed by a foot and looks "
        "like a mistake. Both come from pulling a curve through a point that lies off it. An edge that is "
        "meant to bend both ways, such as a sleeve cap, is declared in the profile."
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
            if not kinks:
                yield from _wavers(subject, piece, edge)


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
    stretches = _stretches(_turns(line))
    seen = [stretch for stretch in stretches if abs(stretch[1]) >= subject.limits.inflection]
    for before, after in pairwise(seen):
        if before[1] * after[1] < 0.0:
            x, y = line.at(after[0] * _STEP)
            yield fair_edges.finding(
                "edge-wavers",
                Spot(piece.name, edge.name, Point(float(x), float(y))),
                Reading(min(abs(before[1]), abs(after[1])), 0.0, "deg"),
                edge=spoken(edge.name),
            )


def _turns(line: Dense) -> list[float]:
    """How much the line turns at places one step apart, degrees."""
    count = int(line.length / _STEP)
    if count < 3:
        return []
    places = np.arange(count + 1) * _STEP
    points = np.column_stack([np.interp(places, line.along, line.points[:, axis]) for axis in (0, 1)])
    steps = np.diff(points, axis=0)
    ways = np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))
    return [float(turn) for turn in np.degrees(np.diff(ways))]


def _stretches(turns: list[float]) -> list[tuple[int, float]]:
    """Stretches that turn to one side: the index where each begins and how far it turns in all."""
    found: list[tuple[int, float]] = []
    for index, turn in enumerate(turns):
        if abs(turn) < _STRAIGHT:
            continue
        if found and found[-1][1] * turn > 0.0:
            found[-1] = (found[-1][0], found[-1][1] + turn)
        else:
            found.append((index, turn))
    return found
