"""Where darts open from a style line, it is drawn smooth with the darts closed, as one trues a waist."""

from collections.abc import Sequence
from dataclasses import replace

from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge
from notchbook.style.lines.truing import smooth_parts

Legs = tuple[Edge, Edge]
"""The two legs of a dart in the outline: to its point and back."""


def with_smooth_mouths(parts: Sequence[Path], legs: Sequence[Legs]) -> tuple[list[Path], list[Legs]]:
    """The parts of a line, between which darts open, and the legs of these, with the mouths drawn smooth.

    Both are in the direction of the outline. With the darts closed the parts are one fair line as long as
    before, or but for rounded corners. The legs of a dart end in one place then, so that they agree.
    """
    motions = [Transform.identity()]
    for first, second in legs:
        motions.append(_closing(first, second).then(motions[-1]))
    laid = [part.transformed(motion) for part, motion in zip(parts, motions, strict=True)]
    for index in range(1, len(laid)):
        laid[index] = laid[index].with_start(laid[index - 1].end)
    opened = [
        part.transformed(motion.inverse()) for part, motion in zip(smooth_parts(laid), motions, strict=True)
    ]
    ended = [
        (_started(first, opened[index].end), _ended(second, opened[index + 1].start))
        for index, (first, second) in enumerate(legs)
    ]
    return opened, ended


def _closing(first: Edge, second: Edge) -> Transform:
    """The motion that lays the second leg on the first where they open: half of a double-ended dart bends at
    the waist, and there only its end by the mouth lies flat."""
    mouth, there = first.path.start, second.path.end
    along, away = first.path.tangent_at(0.0), -second.path.tangent_at(second.path.length)
    return Transform.carrying(there, there + away, mouth, mouth + along)


def _started(leg: Edge, place: Point) -> Edge:
    return replace(leg, path=leg.path.with_start(place))


def _ended(leg: Edge, place: Point) -> Edge:
    return replace(leg, path=leg.path.with_end(place))
