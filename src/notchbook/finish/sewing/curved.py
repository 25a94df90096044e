"""How an edge bends, for its allowances: hollow ones are clipped so that they open, wedges are cut out of
rounded ones so that nothing lies double, corners are clipped to the stitches (common practice, no source)."""

from collections.abc import Iterable
from itertools import pairwise
from typing import Final

from notchbook.geometry import Path
from notchbook.geometry.path import turn_degrees
from notchbook.pattern import Edge

_BENT: Final = 15.0
"""Degrees in all from which an edge is no longer straight to a pair of scissors. Own judgment."""

_CORNER: Final = 30.0
"""Degrees of a corner within an edge. Own judgment."""

_SHARES: Final = tuple(index / 8.0 for index in range(9))
"""Places along a segment by its parameter: steps small enough that none of them is a corner."""


def clip_words(edges: Iterable[Edge]) -> str:
    """What is done to the allowances outside these edges of one outline, counter-clockwise; may be empty."""
    run = list(edges)
    turns = [turn for edge in run for turn in _turns(edge.path)]
    turns += [
        turn_degrees(one.path.segments[-1].tangent(1.0), following.path.segments[0].tangent(0.0))
        for one in run
        for following in run
        if one.end == following.start
    ]
    hollow = -sum(turn for turn in turns if -_CORNER < turn < 0.0)
    rounded = sum(turn for turn in turns if 0.0 < turn < _CORNER)
    words = []
    if hollow >= _BENT:
        words.append("clip them in the hollow curve")
    if rounded >= _BENT and rounded > hollow:
        words.append("cut wedges out of them round the curve")
    if any(turn <= -_CORNER for turn in turns):
        words.append("clip into the corners")
    return ", ".join(words)


def hollow(edges: Iterable[Edge]) -> float:
    """By how much the edges bend inward in all, degrees: their allowance must spread by as much."""
    return -sum(turn for edge in edges for turn in _turns(edge.path) if turn < 0.0)


def _turns(path: Path) -> list[float]:
    """By how much the path turns along each segment, in small steps, and from one to the next, degrees; to
    the left is positive."""
    tangents = [segment.tangent(share) for segment in path.segments for share in _SHARES]
    return [turn_degrees(first, second) for first, second in pairwise(tangents)]
