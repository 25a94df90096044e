"""Crotch seams as drawn, each from the waist at the center to the crotch point: how they turn the corner."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from notchbook.checks.limits import Limits
from notchbook.checks.measured import Numbers, length
from notchbook.checks.turning import bends
from notchbook.checks.word_runs import WordRun, word_runs
from notchbook.pattern import Pattern, Piece, split_side
from notchbook.pattern.names import last_word

_STRAIGHT = 20.0
"""mm below the waist that give the direction of the straight center."""

_EYE = 20.0
"""mm of a curve over which its roundness is taken: a shorter bend is a corner, which other checks find."""

_BENT = 0.001
"""mm off the straight center from which the seam is taken to bend: what arithmetic does not leave."""


@dataclass(frozen=True, eq=False)
class Crotch:
    """A crotch seam of one panel. ``points`` are its places with the grain upward and the crotch level at
    y = 0, mm; ``hip`` is the whole hip of the trousers at their hip lines, mm (0 where there is none)."""

    run: WordRun
    points: Numbers
    hip: float

    @cached_property
    def foot(self) -> Numbers:
        """Where the straight center, drawn on, meets the crotch level."""
        way = self._down
        share = 0.0 if way[1] == 0.0 else -self.points[0][1] / way[1]
        foot: Numbers = self.points[0] + share * way
        return foot

    @property
    def _down(self) -> Numbers:
        """The direction of the straight center, down from the waist."""
        start = self.run.line.at(0.0)
        along = float(np.hypot(*(self.run.line.at(min(_STRAIGHT, self.run.line.length)) - start)))
        gone = np.hypot(*(self.points - self.points[0]).T)
        first = int(np.searchsorted(gone, along * 0.999))
        down: Numbers = self.points[min(max(first, 1), len(self.points) - 1)] - self.points[0]
        return down

    @property
    def extension(self) -> float:
        """From the foot of the center to the crotch point, across the grain, mm."""
        return abs(float(self.points[-1][0] - self.foot[0]))

    @property
    def corner_depth(self) -> float:
        """From the foot of the center to the curve, at 45 degrees up toward the crotch point, mm; 0 where the
        seam does not pass there."""
        side = 1.0 if self.points[-1][0] > self.foot[0] else -1.0
        ray = np.array([side, 1.0]) / np.sqrt(2.0)
        offsets = self.points - self.foot
        beside, along = offsets @ np.array([-ray[1], ray[0]]), offsets @ ray
        for index in np.nonzero(np.diff(np.sign(beside)))[0]:
            share = beside[index] / (beside[index] - beside[index + 1])
            depth = float(along[index] + share * (along[index + 1] - along[index]))
            if depth > 0.0:
                return depth
        return 0.0

    @property
    def least_radius(self) -> float:
        """The radius of the seam where it bends most, mm; infinite where it is straight."""
        turned = bends(self.run.line, _EYE)
        most = float(np.abs(turned).max(initial=0.0))
        return _EYE / float(np.radians(most)) if most > 0.0 else float("inf")

    @property
    def hollow(self) -> float:
        """How deep the curve hangs below the straight way from its beginning to the crotch point, as a share
        of that way."""
        return _sag(self._curve)

    @property
    def end_hollow(self) -> float:
        """How far the last third of the curve lies from the straight way between its ends, as a share of
        that way: a ramp to the fork has nearly none."""
        return _sag(self._last_third)

    @property
    def end_way(self) -> float:
        """The straight way between the ends of the last third of the curve, mm."""
        return float(np.hypot(*(self._last_third[-1] - self._last_third[0])))

    @cached_property
    def _last_third(self) -> Numbers:
        curve = self._curve
        gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(curve, axis=0).T))])
        begins = 2.0 / 3.0 * gone[-1]
        start = [np.interp(begins, gone, curve[:, axis]) for axis in (0, 1)]
        return np.vstack([start, curve[gone > begins]])

    @cached_property
    def _curve(self) -> Numbers:
        """The places from where the seam leaves its straight center."""
        down, offsets = self._down, self.points - self.points[0]
        strays = np.abs(offsets[:, 0] * down[1] - offsets[:, 1] * down[0]) / np.hypot(*down)
        curve: Numbers = self.points[max(int(np.searchsorted(strays, _BENT)) - 1, 0) :]
        return curve


def crotches(pattern: Pattern) -> Iterator[Crotch]:
    """The crotch seams that lie whole on one piece, from the waist."""
    for run in word_runs(pattern, "crotch_seam"):
        found = run.from_point("waist_center")
        if found is not None and found.panel and last_word(found.last_point) == "crotch_point":
            yield Crotch(found, _upright(found), _hip(pattern, found))


def corner_range(crotch: Crotch, limits: Limits) -> tuple[float, float]:
    """From least to most of the corner depth, mm: less for small bodies, more for large ones."""
    least, most, plus = (
        getattr(limits, f"crotch_{crotch.run.panel}_{word}") for word in ("least", "most", "plus")
    )
    if not crotch.hip:
        return least, plus
    grown = (crotch.hip - limits.crotch_plus_from) / (limits.crotch_plus_full - limits.crotch_plus_from)
    return least * _small(crotch, limits), most + (plus - most) * min(max(grown, 0.0), 1.0)


def least_radius(crotch: Crotch, limits: Limits) -> float:
    """The radius under which the crotch seam is a hook, mm: less for small bodies."""
    usual: float = getattr(limits, f"crotch_{crotch.run.panel}_radius")
    return usual * _small(crotch, limits)


def least_end_hollow(crotch: Crotch, limits: Limits) -> float:
    """The ``end_hollow`` under which the crotch seam ends in a ramp."""
    least: float = getattr(limits, f"crotch_{crotch.run.panel}_end")
    return least


def _sag(points: Numbers) -> float:
    """How far a line lies from its chord at most, over the length of the chord; 0 where that has none."""
    chord, inside = points[-1] - points[0], points - points[0]
    size = float(np.hypot(*chord))
    if size == 0.0:
        return 0.0
    return float(np.abs(chord[0] * inside[:, 1] - chord[1] * inside[:, 0]).max()) / size**2


def _small(crotch: Crotch, limits: Limits) -> float:
    """The share of an adult's figures that a small body has; 1 where no hip is known."""
    return min(1.0, crotch.hip / limits.crotch_small_below) if crotch.hip else 1.0


def _upright(run: WordRun) -> Numbers:
    """The places of a run with the grain upward and the crotch level at 0."""
    turned = _turned(run.line.points, run.piece)
    level = turned[-1][1]
    for line in run.piece.lines:
        if last_word(line.name) == "crotch_line":
            ends = np.array([[line.path.start.x, line.path.start.y]])
            level = _turned(ends, run.piece)[0][1]
    upright: Numbers = turned - np.array([0.0, level])
    return upright


def _turned(points: Numbers, piece: Piece) -> Numbers:
    angle = np.radians(90.0 - piece.grain.degrees)
    cosine, sine = np.cos(angle), np.sin(angle)
    turned: Numbers = points @ np.array([[cosine, sine], [-sine, cosine]])
    return turned


def _hip(pattern: Pattern, run: WordRun) -> float:
    """The whole hip of the block that the run belongs to, mm: the way between the ends of the frame where a
    block names them, for a hip line runs on to the crotch seam, else that of the hip line."""
    pieces = [
        piece
        for piece in pattern.pieces.values()
        if piece.name.split(".", 1)[0] == run.instance and split_side(piece.name)[1] == run.side
    ]
    return 2.0 * sum(_hip_width(piece) for piece in pieces)


def _hip_width(piece: Piece) -> float:
    """The hip of one piece from its center to its side, mm; 0 without a hip line."""
    ends = {last_word(mark.name): mark.position for mark in piece.marks}
    if {"hip_center", "hip_side"} <= set(ends):
        return ends["hip_center"].distance_to(ends["hip_side"])
    return sum(length(line.path) for line in piece.lines if last_word(line.name) == "hip_line")
