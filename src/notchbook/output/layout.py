"""Laying the pieces of one style out on one sheet of paper."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from notchbook.finish import CutPiece
from notchbook.geometry import Box, Transform

GAP = 10.0
"""mm of paper between pieces, room for the shears (common practice)."""


MARGIN = 5.0
"""mm of paper round all pieces, so that no cut line falls on the edge of the sheet."""


@dataclass(frozen=True, slots=True)
class Placement:
    """A piece with the rigid motion that lays it on the sheet, and its box there."""

    piece: CutPiece
    motion: Transform
    box: Box


@dataclass(frozen=True, slots=True)
class Sheet:
    """The pieces on a sheet of ``width`` by ``height`` mm, its origin at the lower left."""

    placements: tuple[Placement, ...]
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class _Turned:
    """A piece turned so that its grain runs up."""

    piece: CutPiece
    turn: Transform
    box: Box


def lay_out(pieces: Iterable[CutPiece], gap: float = GAP, width: float | None = None) -> Sheet:
    """The pieces with their grain up, ``gap`` mm apart, none over another, none reflected.

    Tall pieces come first, each as low as it goes, then as far left. ``width`` (mm) is the width that may
    be used; a wider piece widens the sheet. Left out, the sheet becomes about as wide as it is high.
    """
    turned = [_upright(piece) for piece in pieces]
    if not turned:
        return Sheet((), 0.0, 0.0)
    turned.sort(key=lambda item: (-round(item.box.height, 3), item.piece.number))
    widest = max(item.box.width for item in turned)
    if width is None:
        area = sum((item.box.width + gap) * (item.box.height + gap) for item in turned)
        width = max(area**0.5, turned[0].box.height)
    return _packed(turned, gap, max(width, widest + 2.0 * MARGIN))


def candidate_sheets(pieces: Sequence[CutPiece], widths: Iterable[float], gap: float = GAP) -> list[Sheet]:
    """The sheets for several widths, those left out that the widest piece does not fit."""
    turned = [_upright(piece) for piece in pieces]
    turned.sort(key=lambda item: (-round(item.box.height, 3), item.piece.number))
    widest = max((item.box.width for item in turned), default=0.0)
    least = widest + 2.0 * MARGIN
    fitting = [width for width in widths if width >= least] or [least]
    return [_packed(turned, gap, width) for width in fitting]


def _upright(piece: CutPiece) -> _Turned:
    along = (piece.grain.end - piece.grain.start).direction()
    turn = Transform.identity() if abs(along - 90.0) < 1e-9 else Transform.rotation(90.0 - along)
    return _Turned(piece, turn, piece.cut_line.transformed(turn).bounds())


def _packed(turned: Sequence[_Turned], gap: float, width: float) -> Sheet:
    """Each box on the skyline of those before, where its top comes lowest."""
    limit = width - MARGIN + gap
    skyline = [(MARGIN, MARGIN, limit)]
    placements = []
    for item in turned:
        x, y = _lowest(skyline, item.box.width + gap, limit)
        motion = item.turn.then(Transform.translation(x - item.box.min_x, y - item.box.min_y))
        box = Box(x, y, x + item.box.width, y + item.box.height)
        placements.append(Placement(item.piece, motion, box))
        skyline = _raised(skyline, x, x + item.box.width + gap, y + item.box.height + gap)
    return Sheet(
        tuple(placements),
        max(placement.box.max_x for placement in placements) + MARGIN,
        max(placement.box.max_y for placement in placements) + MARGIN,
    )


def _lowest(skyline: list[tuple[float, float, float]], width: float, limit: float) -> tuple[float, float]:
    """The lowest, then leftmost place on the skyline of (start, height, end) steps for this width."""
    best: tuple[float, float] | None = None
    for start, _, _ in skyline:
        if start + width > limit + 1e-6:
            continue
        y = max(height for begin, height, end in skyline if begin < start + width and end > start)
        if best is None or y < best[1]:
            best = (start, y)
    return best or (skyline[0][0], max(height for _, height, _ in skyline))


def _raised(
    skyline: list[tuple[float, float, float]], left: float, right: float, height: float
) -> list[tuple[float, float, float]]:
    """The skyline with a step of this height from left to right."""
    steps = []
    for begin, level, end in skyline:
        if begin < left:
            steps.append((begin, level, min(end, left)))
        if end > right:
            steps.append((max(begin, right), level, end))
    steps.append((left, height, right))
    return sorted(step for step in steps if step[2] > step[0])
