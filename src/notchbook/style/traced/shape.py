"""The outline of a facing: the traced edges, both ends along the edges beside them, and the free edge."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform, curve_between, direction
from notchbook.pattern import spoken
from notchbook.style.traced.beside import Beside
from notchbook.style.traced.free_line import ended_at, parallel_line
from notchbook.style.traced.shortened import shortened

_POINTED = 1.5
"""Depths that a facing reaches at most along a fold: below a V its free edge is drawn round to the fold.
Own judgment."""


_SLANTING = 0.5
"""Cosine of the least angle at which the free edge may meet a seam: 60 degrees. Own judgment."""


@dataclass(frozen=True, slots=True)
class TracedShape:
    """Four sides, counter-clockwise: the traced ``faced`` edges, the ``last`` end, the ``free`` edge and the
    ``first`` end. ``trims``: how much was taken off each traced edge at its start and at its end, mm."""

    faced: tuple[Path, ...]
    last: Path
    free: Path
    first: Path
    trims: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class ShapeEnd:
    """An end of what is traced: what the outline runs on along, how deep the piece reaches there, and how
    much is taken off for the turn of the cloth (0 where no seam joins it to another), mm.

    ``meets``: where a seam joins it to another traced piece, how far down both their ends reach; else None.
    """

    beside: Beside
    depth: float
    turn: float
    meets: float | None


def traced_shape(
    paths: Sequence[Path], depths: Sequence[float], ends: tuple[ShapeEnd, ShapeEnd], free: Path | None = None
) -> TracedShape:
    """The outline round these edges, from the end before them to the end after them.

    ``free`` is the line given for the free edge, from first to last; None: parallel to the edges.
    StepRefused ``facing-too-deep``.
    """
    before, after = ends
    trims = [(0.0, 0.0)] * len(paths)
    trims[0] = (before.turn, trims[0][1])
    trims[-1] = (trims[-1][0], after.turn)
    faced = tuple(shortened(path, *trim) for path, trim in zip(paths, trims, strict=True))
    line = parallel_line(faced, depths) if free is None else free
    last, line = _ended(line, after, faced[-1])
    first, line = _ended(line.reversed(), before, faced[0].reversed())
    return TracedShape(
        faced,
        last.with_start(faced[-1].end).with_end(line.start),
        line,
        first.reversed().with_start(line.end).with_end(faced[0].start),
        tuple(trims),
    )


def _ended(line: Path, end: ShapeEnd, traced: Path) -> tuple[Path, Path]:
    """The end of the piece from the traced edge down, and the free line cut or bent to meet it there."""
    beside, arriving = end.beside.path, traced.tangent_at(traced.length)
    if end.meets is None:
        crossings = beside.intersections(line)
        if not crossings:
            raise StepRefused(
                "facing-too-deep", depth=end.depth, length=beside.length, edge=spoken(end.beside.edge.name)
            )
        crossing = min(crossings, key=lambda found: found.at_self)
        deepest = _POINTED * end.depth
        if end.beside.edge.kind == "fold" and crossing.at_self > deepest:
            return _rounded_at_fold(line, beside.between(0.0, deepest), end.depth)
        return beside.between(0.0, crossing.at_self), line.between(0.0, crossing.at_other)
    if end.meets >= beside.length - 1.0:
        raise StepRefused(
            "facing-too-deep", depth=end.depth, length=beside.length, edge=spoken(end.beside.edge.name)
        )
    move = traced.end - beside.start
    side = beside.between(0.0, end.meets).transformed(Transform.translation(move.x, move.y))
    kept = line.between(0.0, line.nearest(side.end).distance_along)
    return side, ended_at(kept, side.end, _running_on(arriving, side), end.depth)


def _running_on(arriving: Point, side: Path) -> Point:
    """The direction in which the free edge meets a seam: at the angle at which the traced edge does, so that
    it runs on across the seam as that one does; square where the edge comes in too slanting for it."""
    begins, ends = side.tangent_at(0.0), side.tangent_at(side.length)
    turn = Point(begins.dot(ends), begins.cross(ends)).direction()
    meeting = direction(arriving.direction() + turn)
    if abs(meeting.dot(ends)) <= _SLANTING:
        return meeting
    square = ends.perpendicular()
    return square if square.dot(arriving) > 0.0 else -square


def _rounded_at_fold(line: Path, side: Path, depth: float) -> tuple[Path, Path]:
    """The free line drawn round to the fold, where a parallel would run to a point far below."""
    passes = line.nearest(side.end).distance_along
    kept = line.between(0.0, max(passes - _POINTED * depth, passes / 2.0))
    along = side.tangent_at(side.length)
    square = along.perpendicular()
    if square.dot(side.end - kept.end) < 0.0:
        square = -square
    leaving = kept.tangent_at(kept.length).direction()
    bend = curve_between(kept.end, leaving, side.end, square.direction())
    return side, kept.joined(Path.of(bend))
