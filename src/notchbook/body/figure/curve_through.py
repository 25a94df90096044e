"""One smooth curve through points, as a bent batten lies."""

import math
from collections.abc import Sequence
from itertools import pairwise

from notchbook.geometry import Path, Point, curve_between


def curve_through(points: Sequence[Point]) -> Path:
    """The open curve through at least two points, neighbors apart; two points give a straight piece.

    The directions at the points solve the mock-curvature equations of J. D. Hobby, "Smooth, easy to compute
    interpolating splines", Discrete and Computational Geometry 1 (1986), with both ends free; the pieces
    between them are those of :func:`~notchbook.geometry.curve_between`.
    """
    chords = [after - before for before, after in pairwise(points)]
    headings = [math.atan2(chord.y, chord.x) for chord in chords]
    turns = [math.remainder(after - before, math.tau) for before, after in pairwise(headings)]
    offsets = _offsets([chord.norm() for chord in chords], [*turns, 0.0])
    pieces = []
    for index, (start, end) in enumerate(pairwise(points)):
        leaving = math.degrees(headings[index] + offsets[index])
        turn = turns[index] if index < len(turns) else 0.0
        arriving = math.degrees(headings[index] + turn + offsets[index + 1])
        pieces.append(curve_between(start, leaving, end, arriving, keep_convex=False))
    return Path(tuple(pieces))


def _offsets(lengths: Sequence[float], turns: Sequence[float]) -> list[float]:
    """At each point the angle from the chord ahead to the curve, radians (at the last: from the one behind).

    ``lengths`` of the chords in mm; ``turns`` from each chord to the next, 0 after the last.
    """
    if len(lengths) == 1:
        return [0.0, 0.0]
    lower, middle, upper, wanted = [0.0], [1.0], [1.0], [-turns[0]]
    for index in range(1, len(lengths)):
        before, after = 1.0 / lengths[index - 1], 1.0 / lengths[index]
        lower.append(before)
        middle.append(2.0 * (before + after))
        upper.append(after)
        wanted.append(-2.0 * before * turns[index - 1] - after * turns[index])
    return _solved([*lower, 1.0], [*middle, 1.0], [*upper, 0.0], [*wanted, 0.0])


def _solved(
    lower: Sequence[float], middle: Sequence[float], upper: Sequence[float], wanted: Sequence[float]
) -> list[float]:
    """The solution of a tridiagonal system."""
    shares, values = [upper[0] / middle[0]], [wanted[0] / middle[0]]
    for index in range(1, len(middle)):
        pivot = middle[index] - lower[index] * shares[index - 1]
        shares.append(upper[index] / pivot)
        values.append((wanted[index] - lower[index] * values[index - 1]) / pivot)
    for index in reversed(range(len(middle) - 1)):
        values[index] -= shares[index] * values[index + 1]
    return values
