"""Does any curve slacken and tighten again?"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from notchbook.checks.armholes import armholes
from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import Dense, Numbers, dense, up_to
from notchbook.checks.subject import Subject
from notchbook.checks.traced import traced_edges
from notchbook.checks.turning import STEP, bends
from notchbook.geometry import Point
from notchbook.pattern import Edge, Finding, Piece, Severity, split_side, spoken

WINDOW = 10.0
"""mm of a curve over which the eye takes in its roundness. Own judgment."""
_STRAIGHT = 1e-3
"""Degrees over that window below which a line is straight."""


@check(
    id="no-bump",
    title="Curves have no bump",
    rationale=(
        "A fair curve grows rounder toward one place and slacker from there on. Where it slackens and "
        "tightens again without turning the other way, two curves were pieced together, and the eye "
        "finds the bump at once on a neckline or an armhole. A foot that follows the line jerks there. "
        "It is judged on the roundness over a centimeter, as the eye does. Near its tip an armhole grows "
        "round once more, to come in square to the shoulder: that end is left out. A panel seam that goes on "
        "over the waist is judged above it, at it and below it."
    ),
    severity=Severity.LOOK,
    reads=("edges",),
    messages={"edge-bumpy": "{edge} slackens and grows round again: a bump."},
    suggestion="Draw the two parts of the curve as one, or move the point that pulls the line.",
)
def no_bump(subject: Subject) -> Iterator[Finding]:
    """Edges with two round places and a slacker one between, degrees over a centimeter."""
    traced = traced_edges(subject.pattern)
    for piece in subject.pattern.pieces.values():
        for edge in piece.outline:
            if not _is_armhole(edge.name) and edge.name not in traced:
                for part in _parts(piece, edge):
                    yield from _bump(subject, piece.name, edge.name, part)
    for run in armholes(subject.pattern):
        if run.piece.rule is not None:
            continue
        below = (1.0 - subject.limits.armhole_hook) * run.line.length
        yield from _bump(subject, run.piece.name, run.name, up_to(run.line, below))


_AT_WAIST = 60.0
"""mm above and below the waist along which a panel seam is shaped to it, as a waist dart is. Own judgment."""


def _parts(piece: Piece, edge: Edge) -> list[Dense]:
    """The stretches of an edge that are each one curve: the whole of it, but for a panel seam that goes on
    over the waist. It is round over the bust and again at the waist, straight between."""
    line = dense(edge.path)
    waists = [mark.path.start.y for mark in piece.lines if "waist_line" in _words(mark.name)]
    if _words(edge.name)[-1] != "style_line" or not waists:
        return [line]
    heights = line.points[:, 1]
    bounds = (-np.inf, waists[0] - _AT_WAIST, waists[0] + _AT_WAIST, np.inf)
    inside = (line.points[(heights >= low) & (heights < high)] for low, high in pairwise(bounds))
    return [_line(points) for points in inside if len(points) > 1]


def _line(points: Numbers) -> Dense:
    steps = np.hypot(*np.diff(points, axis=0).T)
    return Dense(points, np.concatenate(([0.0], np.cumsum(steps))))


def _words(name: str) -> list[str]:
    return split_side(name)[0].split("/")


def _is_armhole(name: str) -> bool:
    return "armhole" in _words(name)


def _bump(subject: Subject, piece: str, name: str, line: Dense) -> Iterator[Finding]:
    worst = slack(line)
    if worst is not None and worst.depth > subject.limits.bump:
        x, y = line.at(worst.along)
        spot = Spot(piece, name, Point(float(x), float(y)))
        yield no_bump.finding("edge-bumpy", spot, Reading(worst.depth, 0.0, "deg"), edge=spoken(name))


@dataclass(frozen=True, slots=True)
class Slack:
    """The slackest place between two rounder ones: how far along, mm, and by how much less it turns over a
    centimeter than the slacker of the two, degrees."""

    along: float
    depth: float


def slack(line: Dense) -> Slack | None:
    """The worst slack place of a line, among stretches that turn to one side; None where there is none."""
    turning = bends(line, WINDOW)
    worst: Slack | None = None
    for begin, end in _one_sided(turning):
        round_here = np.abs(turning[begin:end])
        before = np.maximum.accumulate(round_here)
        after = np.maximum.accumulate(round_here[::-1])[::-1]
        depths = np.minimum(before, after) - round_here
        index = int(depths.argmax())
        depth = float(depths[index])
        if worst is None or depth > worst.depth:
            worst = Slack((begin + index) * STEP + WINDOW / 2.0, depth)
    return worst


def _one_sided(turning: Numbers) -> Iterator[tuple[int, int]]:
    """The stretches that turn to one side, straight places among them: where each begins and ends."""
    begin, side = 0, 0.0
    for index, turn in enumerate(turning):
        way = float(np.sign(turn)) if abs(turn) > _STRAIGHT else side
        if way * side < 0.0:
            yield begin, index
            begin = index
        side = way
    if len(turning):
        yield begin, len(turning)
