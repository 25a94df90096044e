"""The directions at which spirals through points meet with one curvature."""

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

from notchbook.errors import GeometryError
from notchbook.geometry.point import Point, cosine_and_sine
from notchbook.geometry.spiral import Spiral, spiral_between

_STEPS = 40
_HALVINGS = 12
_NUDGE = 1e-6
"""Radians: the step of a difference quotient, between rounding and bending."""

_SETTLED = 1e-10
"""Curvature mismatch, as turns of one mean chord, that is no more than rounding."""


def fair_spirals(points: Sequence[Point], given: Mapping[int, float]) -> list[Spiral]:
    """One spiral for each pair of neighboring points, with one curvature at points of free direction.

    ``given`` holds directions in degrees by the index of the point. A free end makes its spiral an
    arc. Newton's steps, shortened until they help. GeometryError ``curve-not-fair``.
    """
    chords = [math.atan2((b - a).y, (b - a).x) for a, b in pairwise(points)]
    angles = _first_angles(points, chords)
    fixed = set(given)
    for index, degrees in given.items():
        cosine, sine = cosine_and_sine(degrees)
        wanted = math.atan2(sine, cosine)
        angles[index] = wanted
    free = [index for index in range(len(points)) if index not in fixed]
    spirals = _spirals(points, chords, angles)
    miss = _misses(spirals, free)
    for _ in range(_STEPS):
        if _size(miss) <= _SETTLED:
            return spirals
        steps = _solved(_slopes(points, chords, angles, free, miss), miss)
        spirals, miss = _shortened(points, chords, angles, free, steps, miss)
    if _size(miss) > math.sqrt(_SETTLED):
        raise GeometryError("curve-not-fair")
    return spirals


def _first_angles(points: Sequence[Point], chords: Sequence[float]) -> list[float]:
    """Directions of the arcs through each three neighbors; ends as mirror images of their neighbors."""
    angles = [chords[0]]
    for (before, after), (a, b, c) in zip(
        pairwise(chords), zip(points, points[1:], points[2:], strict=False), strict=True
    ):
        first, second = a.distance_to(b), b.distance_to(c)
        turn = math.remainder(after - before, math.tau)
        angles.append(before + turn * first / (first + second))
    angles.append(chords[-1])
    if len(points) > 2:
        angles[0] = chords[0] - math.remainder(angles[1] - chords[0], math.tau)
        angles[-1] = chords[-1] - math.remainder(angles[-2] - chords[-1], math.tau)
    return angles


def _spirals(points: Sequence[Point], chords: Sequence[float], angles: Sequence[float]) -> list[Spiral]:
    return [_spiral(points, chords, angles, index) for index in range(len(chords))]


def _spiral(points: Sequence[Point], chords: Sequence[float], angles: Sequence[float], index: int) -> Spiral:
    leaving = math.remainder(angles[index] - chords[index], math.tau)
    arriving = math.remainder(angles[index + 1] - chords[index], math.tau)
    return spiral_between(points[index], leaving, points[index + 1], arriving)


def _misses(spirals: Sequence[Spiral], free: Sequence[int]) -> list[float]:
    """How far each free direction is from what it should be, in turns of one mean chord."""
    scale = sum(spiral.length for spiral in spirals) / len(spirals)
    misses = []
    for index in free:
        if index in (0, len(spirals)):
            misses.append(spirals[min(index, len(spirals) - 1)].growth)
        else:
            before, after = spirals[index - 1].curvature_at(1.0), spirals[index].curvature_at(0.0)
            misses.append((after - before) * scale)
    return misses


def _size(misses: Sequence[float]) -> float:
    return max((abs(miss) for miss in misses), default=0.0)


def _slopes(
    points: Sequence[Point],
    chords: Sequence[float],
    angles: list[float],
    free: Sequence[int],
    miss: Sequence[float],
) -> list[list[float]]:
    """How each miss changes with each free direction (row = miss), by difference quotients."""
    columns = []
    for index in free:
        nudged = list(angles)
        nudged[index] += _NUDGE
        changed = _misses(_spirals(points, chords, nudged), free)
        columns.append([(b - a) / _NUDGE for a, b in zip(miss, changed, strict=True)])
    return [list(row) for row in zip(*columns, strict=True)]


def _solved(matrix: list[list[float]], right: Sequence[float]) -> list[float]:
    """The solution of a small system by elimination with row exchange."""
    rows = [[*row, value] for row, value in zip(matrix, right, strict=True)]
    size = len(rows)
    for pivot in range(size):
        best = max(range(pivot, size), key=lambda index: abs(rows[index][pivot]))
        rows[pivot], rows[best] = rows[best], rows[pivot]
        if rows[pivot][pivot] == 0.0:
            raise GeometryError("curve-not-fair")
        for below in range(pivot + 1, size):
            factor = rows[below][pivot] / rows[pivot][pivot]
            rows[below] = [a - factor * b for a, b in zip(rows[below], rows[pivot], strict=True)]
    solution = [0.0] * size
    for pivot in reversed(range(size)):
        known = sum(rows[pivot][index] * solution[index] for index in range(pivot + 1, size))
        solution[pivot] = (rows[pivot][size] - known) / rows[pivot][pivot]
    return solution


def _shortened(
    points: Sequence[Point],
    chords: Sequence[float],
    angles: list[float],
    free: Sequence[int],
    steps: Sequence[float],
    miss: Sequence[float],
) -> tuple[list[Spiral], list[float]]:
    """The spirals after the step, halved until the misses shrink; ``angles`` are moved along."""
    share = 1.0
    for _ in range(_HALVINGS):
        moved = list(angles)
        for index, step in zip(free, steps, strict=True):
            moved[index] -= share * step
        try:
            spirals = _spirals(points, chords, moved)
        except GeometryError:
            share /= 2.0
            continue
        misses = _misses(spirals, free)
        if _size(misses) < _size(miss):
            angles[:] = moved
            return spirals, misses
        share /= 2.0
    raise GeometryError("curve-not-fair")
