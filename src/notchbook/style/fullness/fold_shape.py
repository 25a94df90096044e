"""The edge in a fold: what is cut so that it lies even with the edge when the fold is closed."""

import math
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.style.fullness.opening import Opening

_FAR = 1000.0
"""How many times its own length the inner fold is followed beyond both ends to meet the edge."""


@dataclass(frozen=True, slots=True)
class FoldShape:
    """The edge in a fold, in the frame of the part with the fold line: from the fold line to the inner fold
    and from there to the placement line; and the placement line itself, from the edge into the piece."""

    to_inner: Path
    to_placement: Path
    placement: Path


def fold_shape(edge: Path, fold: Opening) -> FoldShape:
    """The shape of the edge in one fold.

    ``edge`` is the finished edge from the fold line outward, over the side under which the folded cloth will
    lie; ``fold`` the fold line (start at the edge) and what the whole fold takes at either end, opening to
    the other side. Folded, the two layers lie under the edge: the first is its reflection at the fold line,
    the second the reflection of that one at the inner fold, half way to the placement line.

    StepRefused ``fold-deeper-than-edge`` where the edge ends sooner than the fold is deep.
    """
    inner = half_of(fold).motion()
    at_fold = Transform.reflection(fold.start, fold.end)
    inner_start, inner_end = inner.apply(fold.start), inner.apply(fold.end)
    at_inner = Transform.reflection(inner_start, inner_end)
    folded = Path.line(at_fold.apply(inner_start), at_fold.apply(inner_end))
    reached = _reach(edge, folded, fold)
    to_inner = edge.between(0.0, reached).transformed(at_fold)
    to_placement = to_inner.transformed(at_inner).reversed()
    placement = Path.line(fold.start, fold.end).transformed(at_fold.then(at_inner))
    return FoldShape(to_inner, to_placement, placement)


def half_of(fold: Opening) -> Opening:
    """The opening half as wide: done twice it is the whole."""
    share = 1.0 / (2.0 * math.cos(math.radians(fold.angle) / 4.0))
    return Opening(fold.start, fold.end, fold.at_start * share, fold.at_end * share, fold.leftward)


def twice(fold: Opening) -> Opening:
    """The opening done twice."""
    share = 2.0 * math.cos(math.radians(fold.angle) / 2.0)
    return Opening(fold.start, fold.end, fold.at_start * share, fold.at_end * share, fold.leftward)


def _reach(edge: Path, folded: Path, fold: Opening) -> float:
    """How far along the edge the folded cloth reaches under it, mm."""
    along = folded.end - folded.start
    line = Path.line(folded.start - along * _FAR, folded.end + along * _FAR)
    met = [crossing.at_self for crossing in edge.intersections(line)]
    if not met:
        depth = abs(_aside(folded.start, fold))
        raise StepRefused("fold-deeper-than-edge", depth=depth, room=edge.length)
    return min(met)


def _aside(place: Point, fold: Opening) -> float:
    """How far a place lies beside the fold line, mm."""
    return (fold.end - fold.start).unit().cross(place - fold.start)
