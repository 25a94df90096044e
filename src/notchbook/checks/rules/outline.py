"""Is each outline one closed line that a knife can follow?"""

from collections.abc import Iterator
from math import hypot

import numpy as np
from shapely import LinearRing, Polygon, is_simple, is_valid_reason

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import dense, length
from notchbook.checks.subject import Subject
from notchbook.geometry import Point
from notchbook.pattern import Finding, Piece, Severity, spoken
from notchbook.units import TOLERANCES


@check(
    id="outline",
    title="Outlines are closed and do not cross themselves",
    rationale=(
        "A piece is one closed line that a knife can follow round. Where the line crosses itself the "
        "cutter has two choices and cloth is lost either way; it happens when a dart or a curve is pulled "
        "too far. Outlines run counter-clockwise, or allowance would be added on the inside. Segments too "
        "short to draw come from cuts beside a corner and spoil the allowance there."
    ),
    severity=Severity.STOP,
    reads=("edges",),
    messages={
        "outline-not-a-number": "{piece}: {edge} holds a place that is no number.",
        "outline-gap": "{piece}: {edge} does not meet the edge after it.",
        "outline-clockwise": "{piece} runs clockwise or encloses nothing.",
        "outline-crosses": "{piece} crosses or touches itself.",
        "outline-sliver": "{piece}: {edge} has a part too short to draw.",
    },
    suggestion="Take back the last step that moved this outline, or move its points apart.",
)
def outline(subject: Subject) -> Iterator[Finding]:
    """Outlines that are open, cross themselves, run clockwise or hold slivers, mm."""
    for piece in subject.pattern.pieces.values():
        broken = [*_not_numbers(piece), *_gaps(piece)]
        yield from broken
        if not broken:
            yield from _crossing(piece)
            yield from _slivers(subject, piece)


def _not_numbers(piece: Piece) -> Iterator[Finding]:
    for edge in piece.outline:
        if not np.isfinite(dense(edge.path).points).all():
            yield outline.finding(
                "outline-not-a-number",
                Spot(piece.name, edge.name),
                piece=spoken(piece.name),
                edge=spoken(edge.name),
            )


def _gaps(piece: Piece) -> Iterator[Finding]:
    for edge, following in zip(piece.outline, (*piece.outline[1:], piece.outline[0]), strict=True):
        gap = edge.path.end.distance_to(following.path.start)
        if gap > TOLERANCES.sew_length:
            yield outline.finding(
                "outline-gap",
                Spot(piece.name, edge.name, edge.path.end),
                Reading(gap, 0.0),
                piece=spoken(piece.name),
                edge=spoken(edge.name),
            )


def _crossing(piece: Piece) -> Iterator[Finding]:
    points = _ring(piece)
    name = spoken(piece.name)
    if len(points) < 3:
        yield outline.finding("outline-clockwise", Spot(piece.name), piece=name)
        return
    ring = LinearRing(np.array(points))
    if not is_simple(ring):
        yield outline.finding("outline-crosses", Spot(piece.name, None, _place(ring)), piece=name)
    elif not ring.is_ccw:
        yield outline.finding("outline-clockwise", Spot(piece.name), piece=name)


def _ring(piece: Piece) -> list[tuple[float, float]]:
    """The points round the piece, each once; darts that take up nothing are left out."""
    closed = {
        leg
        for intake in piece.darts
        for leg in (intake.first_leg, intake.second_leg)
        if piece.edge(intake.first_leg).path.start.distance_to(piece.edge(intake.second_leg).path.end)
        <= TOLERANCES.sew_length
    }
    found: list[tuple[float, float]] = []
    for edge in piece.outline:
        if edge.name in closed:
            continue
        for x, y in dense(edge.path).points.tolist():
            if not found or hypot(x - found[-1][0], y - found[-1][1]) > TOLERANCES.join:
                found.append((x, y))
    if (
        len(found) > 1
        and hypot(found[0][0] - found[-1][0], found[0][1] - found[-1][1]) <= TOLERANCES.sew_length
    ):
        found.pop()
    return found


def _place(ring: LinearRing) -> Point | None:
    """Where the ring crosses itself, as shapely tells it: ``Self-intersection[x y]``."""
    reason = str(is_valid_reason(Polygon(ring)))
    if "[" not in reason:
        return None
    x, y = reason.split("[", 1)[1].rstrip("]").split()[:2]
    return Point(float(x), float(y))


def _slivers(subject: Subject, piece: Piece) -> Iterator[Finding]:
    legs = {leg for intake in piece.intakes for leg in (intake.first_leg, intake.second_leg)}
    for edge in piece.outline:
        if edge.name in legs:
            continue
        shortest = min(length(type(edge.path)((segment,))) for segment in edge.path.segments)
        if shortest < subject.limits.shortest:
            yield outline.finding(
                "outline-sliver",
                Spot(piece.name, edge.name, edge.path.start),
                Reading(shortest, subject.limits.shortest),
                Severity.LOOK,
                piece=spoken(piece.name),
                edge=spoken(edge.name),
            )
