"""Truing: a corner where two lines were laid together is drawn as one smooth line."""

from collections.abc import Sequence
from itertools import pairwise
from math import atan2, degrees, radians

from notchbook.errors import GeometryError
from notchbook.geometry import Path, Point, curve_between, run_on
from notchbook.geometry.solve import solve_rising

REACH = 60.0
"""mm on each side of a corner along which the line is drawn anew, at most: a hand's breadth. Own judgment."""

LOST = 0.2
"""mm that truing one corner of a seam may cost; a sharper corner is trued along a shorter stretch."""

LOST_IF_EVENED = 1.0
"""The same where both edges of the seam are drawn anew and made equally long afterward."""

LOST_AT_MOUTH = 0.1
"""The same at the mouth of a closed dart, where the edge is led on by as much so that the waist keeps its
length."""

SHARE = 0.46
"""Greatest share of a line that one corner takes; the next corner takes as much from its other end."""

NO_CORNER = 0.02
"""Degrees below which a line runs on as it is."""

_LEAST_PULL, _MOST_PULL = 0.3, 3.0
"""How far the handles of one curve may be drawn in or out so that it is as long as what it replaces."""

_STRAYS = 0.06
"""Share of its length by which one curve may lie beside the corners that it takes the place of."""


def trued(paths: Sequence[Path], lost: float = LOST) -> tuple[Path, ...]:
    """The lines, each ending where the next begins, with the corners between them drawn smooth.

    Each keeps its share of the joint; both ends of the whole stay, with their directions.
    """
    done = list(paths)
    for index in range(len(done) - 1):
        lengths = paths[index].length, paths[index + 1].length
        done[index], done[index + 1] = _rounded(done[index], done[index + 1], lengths, lost)
    return tuple(done)


def smooth(paths: Sequence[Path]) -> Path:
    """The lines as one smooth line with the same ends and end directions.

    One curve of the same length where there is one that stays near the lines; else the corners alone are
    drawn anew.
    """
    if len(paths) == 1:
        return paths[0]
    return _one_curve(paths) or with_round_corners(paths)


def smooth_parts(parts: Sequence[Path]) -> tuple[Path, ...]:
    """The parts laid together as one fair line as long as they; where that would waver, only the corners are
    rounded."""
    whole = smooth(parts)
    bent = sum(_bent(part) for part in parts)
    corners = sum(abs(turn_between(one, other)) for one, other in pairwise(parts))
    return _parted(whole, parts) if _bent(whole) <= bent + corners + _STEADY else trued(parts, LOST_AT_MOUTH)


_STEADY = 1.0
"""Degrees by which one curve may turn more, to and fro, than the lines in whose place it stands."""

_SAMPLES = 24


def _bent(path: Path) -> float:
    """How much the line turns, to the left and to the right together, degrees."""
    places = [path.tangent_at(path.length * index / _SAMPLES) for index in range(_SAMPLES + 1)]
    return sum(abs(degrees(atan2(a.cross(b), a.dot(b)))) for a, b in pairwise(places))


def _parted(whole: Path, parts: Sequence[Path]) -> tuple[Path, ...]:
    """The line parted again, each part with its share of the length."""
    share = whole.length / sum(part.length for part in parts)
    done: list[Path] = []
    for part in parts[:-1]:
        first, whole = whole.split_at(part.length * share)
        done.append(first)
    return (*done, whole)


def smooth_pair(first: Sequence[Path], second: Sequence[Path]) -> tuple[Path, Path]:
    """Two edges of one seam through the same darts: one curve each where neither strays, else round corners.

    The curves leave and arrive as the lines do; the corners of the lines, the points of darts, lie within
    ``MISSES`` of them.
    """
    curves = [_natural(paths) for paths in (first, second)]
    strays = max(_strays(curve, paths) for curve, paths in zip(curves, (first, second), strict=True))
    apart = abs(curves[0].length - curves[1].length)
    if strays <= MISSES and apart <= _APART:
        return curves[0], curves[1]
    return with_round_corners(first, LOST_IF_EVENED), with_round_corners(second, LOST_IF_EVENED)


MISSES = 15.0
"""mm by which a seam may pass the point of a dart that it takes in. Trade course notes allow up to an
inch."""

_APART = 3.0
"""mm by which two such curves may differ in length, to be evened at the bottom."""


def _natural(paths: Sequence[Path]) -> Path:
    """One curve from the first end to the last, leaving and arriving as the lines do.

    Where that would make an S, the end that turns less gives way, so that the curve bends evenly.
    """
    first, last = paths[0], paths[-1]
    chord = last.end - first.start
    ahead = chord.direction()
    leaving = _turn(chord, first.tangent_at(0.0))
    arriving = _turn(chord, last.tangent_at(last.length))
    if leaving * arriving > 0.0:
        leaving, arriving = (leaving, -leaving) if abs(leaving) > abs(arriving) else (-arriving, arriving)
    return Path.of(curve_between(first.start, ahead + leaving, last.end, ahead + arriving))


def _turn(before: Point, after: Point) -> float:
    """The turn from one direction to another, degrees, left positive."""
    return Point(before.dot(after), before.cross(after)).direction()


def _strays(curve: Path, paths: Sequence[Path]) -> float:
    """How far the corners of the lines lie beside the curve, mm."""
    return max((curve.nearest(path.end).gap for path in paths[:-1]), default=0.0)


def with_round_corners(paths: Sequence[Path], lost: float = LOST) -> Path:
    """The lines as one line, only the corners between them drawn anew."""
    done = trued(paths, lost)
    whole = done[0]
    for path in done[1:]:
        whole = whole.joined(path)
    return whole


def needs_one_curve(paths: Sequence[Path], lost: float) -> bool:
    """Whether a corner between the lines is so sharp that rounding it over a hand's breadth would cost more
    than ``lost`` mm: rounded over less it is a knuckle, and one curve takes its place."""
    sharpest = max((abs(turn_between(a, b)) for a, b in pairwise(paths)), default=0.0)
    return radians(sharpest) ** 2 * REACH > 12.0 * lost


def turn_between(before: Path, after: Path) -> float:
    """The turn from one line to the next, degrees, left positive."""
    return _turn(before.tangent_at(before.length), after.tangent_at(0.0))


def _one_curve(paths: Sequence[Path]) -> Path | None:
    """One cubic as long as all the lines, through their outer ends; None where it would stray."""
    first, last = paths[0], paths[-1]
    length = sum(path.length for path in paths)

    def drawn(pull: float) -> Path:
        return Path.of(
            curve_between(
                first.start,
                first.tangent_at(0.0).direction(),
                last.end,
                last.tangent_at(last.length).direction(),
                pull,
                pull,
                keep_convex=False,
            )
        )

    try:
        pull = solve_rising(lambda p: drawn(p).length - length, 1.0, 0.1, _LEAST_PULL, _MOST_PULL)
    except GeometryError:
        return None
    curve = drawn(pull)
    return curve if _strays(curve, paths) <= _STRAYS * length else None


def _rounded(before: Path, after: Path, lengths: tuple[float, float], lost: float) -> tuple[Path, Path]:
    turn = abs(turn_between(before, after))
    if turn < NO_CORNER:
        return before, after
    # A smooth line across a corner of t radians is shorter by about reach t² / 12 (small angles); where the
    # lines are round themselves, one curve in their place may cost more and is drawn shorter.
    reach = min(REACH, SHARE * lengths[0], SHARE * lengths[1], 12.0 * lost / radians(turn) ** 2)
    for _ in range(_TRIES):
        drawn = _bridged(before, after, reach)
        if abs(before.length + after.length - drawn[0].length - drawn[1].length) <= 1.5 * lost:
            break
        reach *= 0.7
    return drawn


_TRIES = 8


def _bridged(before: Path, after: Path, reach: float) -> tuple[Path, Path]:
    """One curve from so far before the corner to so far after it, cut at its middle."""
    stop = before.length - reach
    line = Path.of(run_on(before, stop, after, reach))
    first, second = line.split_at(line.length / 2.0)
    return before.split_at(stop)[0].joined(first), second.joined(after.split_at(reach)[1])
