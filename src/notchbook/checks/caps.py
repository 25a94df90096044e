"""Halves of sleeve caps as drawn, each from its underarm, and how they lie on the armhole."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from shapely import LineString, distance
from shapely import points as places

from notchbook.checks.armholes import armholes
from notchbook.checks.corners import corner
from notchbook.checks.limits import Limits
from notchbook.checks.measured import Numbers, start_direction
from notchbook.checks.subject import Subject
from notchbook.checks.walks import WalkedSeam, notches_met, walked_seams
from notchbook.checks.word_runs import WordRun, word_runs
from notchbook.pattern import Pattern
from notchbook.pattern.names import last_word

_STARTS = {"cap_front": "underarm_front", "cap_back": "underarm_back"}

_TOP = "cap_top"
"""The last word of the point at which both halves of a cap meet."""


@dataclass(frozen=True, eq=False)
class LaidCap:
    """Half a cap and the armhole that it is sewn to from the underarm, with their seam.

    ``notches`` holds, for each notch that both have, its label and the two ways from the underarm, mm:
    on the armhole, on the cap.
    """

    cap: WordRun
    armhole: WordRun
    walked: WalkedSeam
    notches: tuple[tuple[str, float, float], ...]

    @property
    def is_front(self) -> bool:
        """Whether it is the front half."""
        return self.cap.word == "cap_front"


def caps(pattern: Pattern) -> Iterator[WordRun]:
    """The halves of caps that lie whole on one piece, walked from the underarm; of a raglan only the lower
    part is left, which is no half."""
    for run in word_runs(pattern, *_STARTS):
        found = run.from_point(_STARTS[run.word])
        if found is not None and last_word(found.last_point) == _TOP:
            yield found


def laid_caps(pattern: Pattern) -> Iterator[LaidCap]:
    """Each half cap with the armhole that one seam sews it to from both their underarms."""
    holes = list(armholes(pattern))
    seams = list(walked_seams(pattern))
    for cap in caps(pattern):
        for hole in holes:
            for walked in seams:
                side = _side_of(walked, cap, hole)
                if side is not None:
                    yield LaidCap(cap, hole, walked, _notches(pattern, walked, side))


def _side_of(walked: WalkedSeam, cap: WordRun, hole: WordRun) -> int | None:
    """On which side of a seam the cap is sewn to the armhole, both from their underarms; else None."""
    for side in (0, 1):
        run, other = walked.runs[side], walked.runs[1 - side]
        if run[0].start == cap.first_point and other[0].start == hole.first_point:
            names = {step.edge.name for step in run}, {step.edge.name for step in other}
            if names[0] & {e.name for e in cap.edges} and names[1] & {e.name for e in hole.edges}:
                return side
    return None


def _notches(pattern: Pattern, walked: WalkedSeam, side: int) -> tuple[tuple[str, float, float], ...]:
    on_cap = {met.label: met.distance for met in notches_met(pattern, walked, side)}
    on_hole = {met.label: met.distance for met in notches_met(pattern, walked, 1 - side)}
    return tuple((label, on_hole[label], on_cap[label]) for label in on_hole if label in on_cap)


def lay_length(laid: LaidCap, limits: Limits) -> float:
    """How far up from the underarm the cap is to lie on the armhole, mm: less on a small armhole."""
    return min(limits.lay_length, limits.lay_share * laid.armhole.line.length)


def lay_gap(laid: LaidCap, length: float) -> float:
    """The widest gap between the first ``length`` mm of the cap and the armhole, mm, when the underarms
    are laid together with their seams, the cap turned over onto the armhole."""
    cap, hole = laid_points(laid.cap), laid_points(laid.armhole)
    count = int(min(length, laid.cap.line.length))
    along = np.arange(count + 1.0)
    lower = np.column_stack([np.interp(along, laid.cap.line.along, cap[:, axis]) for axis in (0, 1)])
    return float(np.max(distance(LineString(hole), places(lower))))


def most_lay(subject: Subject, laid: LaidCap) -> float:
    """How far the lower cap may leave its armhole, mm: more where the sleeve's cloth stretches."""
    limits = subject.limits
    if laid.cap.piece.stretches:
        return limits.lay_stretch
    return limits.lay_front if laid.is_front else limits.lay_back


def laid_points(run: WordRun) -> Numbers:
    """The points of a run with its underarm at 0, the seam beside it down along -y, the run toward +x."""
    edge = run.edges[0] if run.goes_round else run.edges[-1]
    path = edge.path if run.goes_round else edge.path.reversed()
    beside = corner(run.piece, edge, "start" if run.goes_round else "end").degrees
    seam = np.radians(start_direction(path) + (beside if run.goes_round else -beside))
    offsets = run.line.points - run.line.points[0]
    turned = (offsets[:, 0] + 1j * offsets[:, 1]) * np.exp(-1j * (seam + np.pi / 2.0))
    return np.column_stack([-turned.real if run.goes_round else turned.real, turned.imag])
