"""Half necks as drawn, each from the center to the side-neck point, darts closed."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import numpy as np

from notchbook.checks.bow import rounded
from notchbook.checks.measured import Dense
from notchbook.checks.turning import STEP, Stretch, turns
from notchbook.checks.word_runs import WordRun, word_runs
from notchbook.pattern import Pattern
from notchbook.pattern.names import last_word, split_side


def necks(pattern: Pattern) -> Iterator[WordRun]:
    """The half necks that lie whole on one piece, walked from the nape or the neck pit."""
    for run in word_runs(pattern, "neck"):
        found = run.from_point("nape") or run.from_point("neck_pit")
        if found is not None:
            yield found


_CORNER = 45.0
"""Degrees within 3 mm from which a neckline turns a corner, as a square one does. Own judgment."""


def outward_bends(run: WordRun, least: float) -> list[Stretch]:
    """The stretches of a half neck that bend outward by at least so many degrees where it should not.

    A round neck bends one way. A square one is two lines with a corner between, each of which may bend either
    way, as to come in square to the shoulder, but not both ways.
    """
    places = [0.0, *_corners(run.line), run.line.length]
    if len(places) == 2:
        return [one for one in rounded(run, least) if one.turned > 0.0]
    found: list[Stretch] = []
    for begin, end in pairwise(places):
        leg = replace(run, line=_between(run.line, begin + _AT_CORNER, end - _AT_CORNER))
        bends = rounded(leg, least)
        if len(bends) > 1:
            shift = begin + _AT_CORNER
            found.extend(Stretch(one.begins + shift, one.turned) for one in bends if one.turned > 0.0)
    return found


def _between(line: Dense, begin: float, end: float) -> Dense:
    """The line from one distance along it to another, mm."""
    inside = (line.along > begin) & (line.along < end)
    points = np.vstack([line.at(begin), line.points[inside], line.at(end)])
    return Dense(points, np.concatenate(([begin], line.along[inside], [end])) - begin)


_AT_CORNER = 3.0
"""mm on either side of a corner that belong to it."""


def _corners(line: Dense) -> list[float]:
    """How far along a line turns a corner, mm."""
    each = np.abs(turns(line))
    if len(each) < 3:
        return []
    over = np.convolve(each, np.ones(3), "same")
    places = [index for index in range(len(each)) if over[index] >= _CORNER]
    firsts = [index for at, index in enumerate(places) if at == 0 or index - places[at - 1] > 1]
    return [(first + 1) * STEP for first in firsts]


def rise_and_width(run: WordRun) -> tuple[float, float]:
    """How far the side-neck point stands above the center and beside it, mm, along and across the center."""
    x, y = run.line.points[-1] - run.line.points[0]
    upright = _upright(run)
    up, aside = x * np.cos(upright) + y * np.sin(upright), x * np.sin(upright) - y * np.cos(upright)
    return float(abs(up)), float(abs(aside))


def lowered_by(run: WordRun) -> float:
    """How far the neck was cut down at the center from the neck base of the body, mm along the center, where
    that is marked on the piece; else 0."""
    bases = [mark.position for mark in run.piece.marks if last_word(mark.name) == "neck_base"]
    if not bases:
        return 0.0
    x, y = run.line.points[0]
    upright = _upright(run)
    return float(abs((bases[0].x - x) * np.cos(upright) + (bases[0].y - y) * np.sin(upright)))


def _upright(run: WordRun) -> float:
    """The direction of the center, radians: on the bias the grain runs aslant to it.

    The center is the edge beside the neck, or a line drawn on a piece that was unfolded; without either the
    grain stands for it.
    """
    first, last = run.edges[0], run.edges[-1]
    beside = run.piece.edge_before(first.name) if run.goes_round else run.piece.edge_after(last.name)
    paths = [beside.path] if beside.kind == "fold" or _is_center(beside.name) else []
    paths += [line.path for line in run.piece.lines if _is_center(line.name)]
    if not paths:
        return float(np.radians(run.piece.grain.degrees))
    end = run.piece.points[run.first_point]
    path = min(paths, key=lambda one: one.nearest(end).gap)
    return float(np.radians(path.tangent_at(path.nearest(end).distance_along).direction()))


def _is_center(name: str) -> bool:
    """Whether an edge or line is called a center of the garment."""
    return split_side(name)[0].split("/")[1] in _CENTERS


_CENTERS = ("center_front", "center_back")
