"""A promised length as it is on the finished outline, and the name that is gone, if one is."""

import math
from dataclasses import dataclass
from itertools import pairwise

from notchbook.checks.measured import length
from notchbook.checks.sewn import sewn
from notchbook.geometry import Point
from notchbook.pattern import Expectation, Pattern
from notchbook.pattern.expectation import Reach
from notchbook.pattern.laid_pleats import laid_away
from notchbook.pattern.promise_parts import Gone, PromiseParts, promise_parts


def promised(pattern: Pattern, promise: Expectation) -> tuple[float, str]:
    """The promised length as measured, mm; and, where it cannot be measured, what is gone (else "").

    Panels that a distance runs over are laid together by the pattern; every length is measured here.
    """
    parts = promise_parts(pattern, promise)
    if isinstance(parts, Gone):
        return 0.0, parts.name
    return _length(pattern, promise, parts), ""


@dataclass(frozen=True, slots=True)
class Room:
    """How long a girth is as the body may use it, mm, the piece where it begins, and whether its cloth was
    chosen for its stretch."""

    length: float
    piece: str
    stretches: bool


def room_of(pattern: Pattern, promise: Expectation) -> Room | None:
    """The girth as far as there is cloth, with its pleats open but where they are stitched down; None where
    it cannot be measured."""
    parts = promise_parts(pattern, promise, to_outline=True)
    if isinstance(parts, Gone):
        return None
    stitched = sum(
        laid_away(pattern.piece_of(line.name), line.path, stitched_only=True) for line in parts.lines
    )
    first = next(iter((*parts.edges, *(line.name for line in parts.lines), *promise.parts)))
    piece = pattern.piece_of(first)
    whole = _length(pattern, promise, parts) - promise.times * stitched
    return Room(whole, piece.name, piece.stretches)


def _length(pattern: Pattern, promise: Expectation, parts: PromiseParts) -> float:
    total = sum(length(line.path) for line in parts.lines)
    total += sum(sewn(pattern, pattern.edges[edge]) for edge in parts.edges)
    for chain in parts.chains:
        total += sum(_apart(first, second, promise.reach) for first, second in pairwise(chain))
    return total * promise.times


def _apart(start: Point, end: Point, reach: Reach) -> float:
    across, down = abs(end.x - start.x), abs(end.y - start.y)
    return {"straight": math.hypot(across, down), "across": across, "down": down}[reach]
