"""How far a line strays into its piece from the straight way between its ends."""

from dataclasses import dataclass

import numpy as np

from notchbook.checks.turning import Stretch, stretches
from notchbook.checks.word_runs import WordRun


@dataclass(frozen=True, slots=True)
class Bow:
    """How far a run bows ``into`` the piece, mm, at which share of the straight way (``chord``, mm) from its
    first end. ``tall`` is the height of its last end, mm, and ``into_height`` at which share of it that place
    lies; heights are square to how the run leaves its first end, as an armhole leaves the underarm.
    """

    chord: float
    into: float
    into_share: float
    tall: float
    into_height: float


def bow(run: WordRun) -> Bow:
    """The bow of a run."""
    points = run.line.points
    chord = points[-1] - points[0]
    size = float(np.hypot(*chord))
    if size == 0.0:
        return Bow(0.0, 0.0, 0.0, 0.0, 0.0)
    offsets = points - points[0]
    left = (chord[0] * offsets[:, 1] - chord[1] * offsets[:, 0]) / size
    inward = left if run.goes_round else -left
    shares = (offsets @ chord) / size**2
    deepest = int(inward.argmax())
    leaving = points[1] - points[0]
    heights = (leaving[0] * offsets[:, 1] - leaving[1] * offsets[:, 0]) / np.hypot(*leaving)
    tall = float(heights[-1])
    height = float(heights[deepest]) / tall if tall else 0.0
    return Bow(size, float(inward[deepest]), float(shares[deepest]), abs(tall), height)


def rounded(run: WordRun, least: float) -> list[Stretch]:
    """The stretches of a run that turn to one side by at least so many degrees, from its first end;
    positive where the piece is round there, negative where it is hollow."""
    sign = 1.0 if run.goes_round else -1.0
    return [Stretch(one.begins, sign * one.turned) for one in stretches(run.line, least)]
