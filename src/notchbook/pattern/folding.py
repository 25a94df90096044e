"""The fold of a half piece: one straight line, which a cut may have divided into several edges."""

from itertools import chain

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern.names import spoken
from notchbook.pattern.piece import Edge, Piece
from notchbook.units import TOLERANCES

_STRAIGHT = 1e-3
"""Sine of the angle below which two edges are one line: 0.06 degrees, 1 mm in a meter."""


def fold_runs(piece: Piece) -> tuple[tuple[Edge, ...], ...]:
    """The edges on the fold, those together that run on straight into each other, in order."""
    runs: list[list[Edge]] = []
    for edge in piece.outline:
        if edge.kind != "fold":
            continue
        if runs and _runs_on(runs[-1][-1], edge):
            runs[-1].append(edge)
        else:
            runs.append([edge])
    if len(runs) > 1 and _runs_on(runs[-1][-1], runs[0][0]):
        runs[0] = runs.pop() + runs[0]
    return tuple(tuple(run) for run in runs)


def folds(piece: Piece) -> tuple[Edge, ...]:
    """The edges of the one fold, in order round the outline.

    StepRefused ``fold-missing`` when there is none or more than one line, ``fold-not-straight``.
    """
    runs = fold_runs(piece)
    if len(runs) != 1:
        raise StepRefused("fold-missing", piece=spoken(piece.name), count=len(runs))
    run = runs[0]
    length = sum(edge.length for edge in run)
    if length - run[0].path.start.distance_to(run[-1].path.end) > TOLERANCES.sew_length:
        raise StepRefused("fold-not-straight", piece=spoken(piece.name), edge=spoken(run[0].name))
    return run


def fold_line(piece: Piece) -> Path:
    """The fold as one straight line, in the direction of the outline."""
    run = folds(piece)
    return Path.line(run[0].path.start, run[-1].path.end)


def fold_points(piece: Piece) -> frozenset[str]:
    """The names of the points on the fold, which both halves share."""
    return frozenset(chain.from_iterable((edge.start, edge.end) for edge in folds(piece)))


def edges_off_fold(piece: Piece) -> tuple[Edge, ...]:
    """The edges from the end of the fold round to its start."""
    run = folds(piece)
    last = piece.edge_index(run[-1].name)
    count = len(piece.outline)
    return tuple(piece.outline[(last + step) % count] for step in range(1, count - len(run) + 1))


def _runs_on(first: Edge, second: Edge) -> bool:
    """Whether one fold edge goes on into the next without a corner."""
    if first.end != second.start:
        return False
    arriving = first.path.tangent_at(first.length)
    leaving = second.path.tangent_at(0.0)
    return arriving.dot(leaving) > 0.0 and abs(arriving.cross(leaving)) < _STRAIGHT
