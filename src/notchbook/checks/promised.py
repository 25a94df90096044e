"""A promised length as it is on the finished outline, and the name that is gone, if one is."""

from itertools import pairwise

from notchbook.checks.measured import length
from notchbook.checks.sewn import sewn
from notchbook.geometry import Point
from notchbook.pattern import Expectation, Pattern
from notchbook.pattern.resolve import Found, resolve


def promised(pattern: Pattern, promise: Expectation) -> tuple[float, str]:
    """The promised length as measured, mm; and, where it cannot be measured, what is gone (else "")."""
    lines = {line.name: line for piece in pattern.pieces.values() for line in piece.lines}
    total = 0.0
    for name in promise.names:
        if name in lines:
            total += length(lines[name].path)
            continue
        answer = resolve(pattern, name)
        if not isinstance(answer, Found):
            return 0.0, name
        total += sum(sewn(pattern, pattern.edges[member]) for member in answer.members)
    for chain in promise.chains:
        way, gone = _way(pattern, promise, chain)
        if gone:
            return 0.0, gone
        total += way
    return total * promise.times, ""


def _way(pattern: Pattern, promise: Expectation, chain: tuple[str, ...]) -> tuple[float, str]:
    """The way along a chain of points; a point on another piece than the first is as good as gone."""
    total = 0.0
    for first, second in pairwise(chain):
        start, end = _place(pattern, first), _place(pattern, second)
        if start is None:
            return 0.0, first
        if end is None or pattern.carriers[first] != pattern.carriers[second]:
            return 0.0, second
        across, down = abs(end.x - start.x), abs(end.y - start.y)
        total += {"straight": (across**2 + down**2) ** 0.5, "across": across, "down": down}[promise.reach]
    return total, ""


def _place(pattern: Pattern, name: str) -> Point | None:
    """Where a corner or mark lies in the frame of its piece; None when there is none of this name."""
    carrier = pattern.carriers.get(name)
    return None if carrier is None else pattern.pieces[carrier].points.get(name)
