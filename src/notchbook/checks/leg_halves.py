"""The two halves of a leg panel below its knee, to either side of the crease, as measured."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from notchbook.checks.measured import Numbers, dense
from notchbook.geometry import Path, Point
from notchbook.pattern import Piece
from notchbook.pattern.names import last_word

_LEVELS = (80.0, 200.0)
"""mm below the knee: the calf, and half way from there to the hem of a grown-up's leg."""


@dataclass(frozen=True, slots=True)
class LegHalves:
    """How much wider, at a level below the knee, the one half of a leg is than the other, mm: ``off`` is
    above 0 where the half to the right of the crease, looking up, is the wider. ``place`` lies on the
    crease."""

    off: float
    place: Point


def halves_below_knee(piece: Piece, crease: Path) -> Iterator[LegHalves]:
    """The halves at each level that lies between knee and hem; nothing where one of these is missing."""
    knees = [line.path for line in piece.lines if last_word(line.name) == "knee_line"]
    hems = [edge.path for edge in piece.outline if last_word(edge.name) == "hem"]
    way = crease.end - crease.start
    if len(knees) != 1 or len(hems) != 1 or way.norm() == 0.0:
        return
    knee, hem = (_middle(path) - crease.start for path in (knees[0], hems[0]))
    up = way.unit() if way.dot(knee - hem) > 0.0 else way.unit() * -1.0
    knee_up, hem_up = knee.dot(up), hem.dot(up)
    rows = np.vstack([dense(edge.path).points for edge in piece.outline])
    offsets = rows - np.array([crease.start.x, crease.start.y])
    along, aside = offsets @ np.array([up.x, up.y]), offsets @ np.array([-up.y, up.x])
    for below in _LEVELS:
        level = knee_up - below
        crossings = _crossings(along - level, aside)
        if level > hem_up and len(crossings) == 2:
            yield LegHalves(-float(crossings.sum()), crease.start + up * level)


def _middle(path: Path) -> Point:
    return path.start.lerp(path.end, 0.5)


def _crossings(over: Numbers, aside: Numbers) -> Numbers:
    """Where the outline crosses a level, beside the crease, mm."""
    before = np.nonzero((over[:-1] > 0.0) != (over[1:] > 0.0))[0]
    share = over[before] / (over[before] - over[before + 1])
    found: Numbers = aside[before] + share * (aside[before + 1] - aside[before])
    return found
