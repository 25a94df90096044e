"""How an outline turns from place to place: stretches that bend one way, inflections, bumps."""

from dataclasses import dataclass

import numpy as np

from notchbook.checks.measured import Dense, Numbers

STEP = 1.0
"""mm between the places where the turning of an edge is looked at."""
_STRAIGHT = 1e-6
"""Degrees a step below which a line is straight: what arithmetic leaves of a ruler's line."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch that turns to one side: where it begins (mm along) and how far it turns in all, degrees,
    counter-clockwise positive."""

    begins: float
    turned: float


def turns(line: Dense, step: float = STEP) -> list[float]:
    """How much a line turns at places one step apart, degrees; none on a line of under three steps."""
    count = int(line.length / step)
    if count < 3:
        return []
    places = np.arange(count + 1) * step
    points = np.column_stack([np.interp(places, line.along, line.points[:, axis]) for axis in (0, 1)])
    steps = np.diff(points, axis=0)
    ways = np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))
    return [float(turn) for turn in np.degrees(np.diff(ways))]


def stretches(line: Dense, least: float) -> list[Stretch]:
    """The stretches that turn to one side by at least so much, degrees; two that follow on one side
    across a smaller waver are one."""
    found: list[tuple[int, float]] = []
    for index, turn in enumerate(turns(line)):
        if abs(turn) < _STRAIGHT:
            continue
        if found and found[-1][1] * turn > 0.0:
            found[-1] = (found[-1][0], found[-1][1] + turn)
        else:
            found.append((index, turn))
    merged: list[Stretch] = []
    for index, turned in found:
        if abs(turned) < least:
            continue
        if merged and merged[-1].turned * turned > 0.0:
            merged[-1] = Stretch(merged[-1].begins, merged[-1].turned + turned)
        else:
            merged.append(Stretch(index * STEP, turned))
    return merged


def bends(line: Dense, window: float) -> Numbers:
    """How much the line turns over each window of so many mm (centered), degrees, at places a step apart."""
    each = np.array(turns(line))
    width = max(1, round(window / STEP))
    if len(each) < width:
        return np.zeros(0)
    return np.convolve(each, np.ones(width), "valid")
