"""Half necks as drawn, each from the center to the side-neck point, darts closed."""

from collections.abc import Iterator

import numpy as np

from notchbook.checks.word_runs import WordRun, word_runs
from notchbook.pattern import Pattern
from notchbook.pattern.names import last_word


def necks(pattern: Pattern) -> Iterator[WordRun]:
    """The half necks that lie whole on one piece, walked from the nape or the neck pit."""
    for run in word_runs(pattern, "neck"):
        found = run.from_point("nape") or run.from_point("neck_pit")
        if found is not None:
            yield found


def rise_and_width(run: WordRun) -> tuple[float, float]:
    """How far the side-neck point stands above the center and beside it, mm, along and across the grain."""
    x, y = run.line.points[-1] - run.line.points[0]
    grain = np.radians(run.piece.grain.degrees)
    up, aside = x * np.cos(grain) + y * np.sin(grain), x * np.sin(grain) - y * np.cos(grain)
    return float(abs(up)), float(abs(aside))


def lowered_by(run: WordRun) -> float:
    """How far the neck was cut down at the center from the neck base of the body, mm along the grain, where
    that is marked on the piece; else 0."""
    bases = [mark.position for mark in run.piece.marks if last_word(mark.name) == "neck_base"]
    if not bases:
        return 0.0
    x, y = run.line.points[0]
    grain = np.radians(run.piece.grain.degrees)
    return float(abs((bases[0].x - x) * np.cos(grain) + (bases[0].y - y) * np.sin(grain)))
