"""Laying the pieces of one style out on one sheet of paper."""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from notchbook.finish import CutPiece
from notchbook.geometry import Box, Transform

GAP = 10.0
"""mm of paper between pieces, room for the shears (common practice)."""


MARGIN = 3.0
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
class Raster:
    """The tiles of a sheet as far as laying out needs them, mm: from one tile to the next, and how wide and
    high a tile is; the first one stands at the origin of the sheet."""

    step_x: float
    step_y: float
    frame_width: float
    frame_height: float


@dataclass(frozen=True, slots=True)
class _Turned:
    """A piece turned so that its grain runs along the sheet, up or (lying) to the right."""

    piece: CutPiece
    turn: Transform
    box: Box


_STRIP = 3.0
"""From this many times as long as wide, a piece is a strip and may lie on its side to save sheets."""

_ORDERS: tuple[Callable[[_Turned], float], ...] = (
    lambda item: item.box.height,
    lambda item: item.box.width,
    lambda item: item.box.width * item.box.height,
)
"""What may come first: the tall, the wide, the large."""


def lay_out(pieces: Iterable[CutPiece], gap: float = GAP, width: float | None = None) -> Sheet:
    """The pieces with their grain up, ``gap`` mm apart, none over another, none reflected.

    Tall pieces come first, each as low as it goes, then as far left. ``width`` (mm) is the width that may
    be used; a wider piece widens the sheet. Left out, the sheet becomes about as wide as it is high.
    """
    turned = _ordered([_upright(piece) for piece in pieces], _ORDERS[0])
    if not turned:
        return Sheet((), 0.0, 0.0)
    widest = max(item.box.width for item in turned)
    if width is None:
        area = sum((item.box.width + gap) * (item.box.height + gap) for item in turned)
        width = max(area**0.5, turned[0].box.height)
    return _packed(turned, gap, max(width, widest + 2.0 * MARGIN))


def candidate_sheets(
    pieces: Sequence[CutPiece], widths: Sequence[float], raster: Raster, gap: float = GAP
) -> Iterator[Sheet]:
    """Sheets of several widths to choose from, those left out that the widest piece does not fit.

    The grain stays along the paper: it runs up, or for strips such as bands to the right in half of the
    candidates. In another half pieces move on to the next tile where that needs fewer tiles for them.
    """
    upright = [_upright(piece) for piece in pieces]
    lying = [_laid(item) for item in upright]
    for turned in [upright] if lying == upright else [upright, lying]:
        least = max((item.box.width for item in turned), default=0.0) + 2.0 * MARGIN
        for order in _ORDERS:
            ordered = _ordered(turned, order)
            for width in [width for width in widths if width >= least] or [least]:
                yield _packed(ordered, gap, width)
                yield _packed(ordered, gap, width, raster)


def _ordered(turned: Iterable[_Turned], order: Callable[[_Turned], float]) -> list[_Turned]:
    return sorted(turned, key=lambda item: (-round(order(item), 3), item.piece.number))


def _upright(piece: CutPiece) -> _Turned:
    along = (piece.grain.end - piece.grain.start).direction()
    turn = Transform.identity() if abs(along - 90.0) < 1e-9 else Transform.rotation(90.0 - along)
    return _Turned(piece, turn, piece.drawn_bounds(turn))


def _laid(item: _Turned) -> _Turned:
    """A strip on its side, its words reading from the left; other pieces as they are."""
    if not is_strip(item.piece.cut_line.transformed(item.turn).bounds()):
        return item
    turn = item.turn.then(Transform.rotation(-90.0))
    return replace(item, turn=turn, box=item.piece.drawn_bounds(turn))


def is_strip(upright: Box) -> bool:
    """Whether a piece with this box, its grain up, is a strip that may lie on its side."""
    return upright.height >= _STRIP * upright.width


def _packed(turned: Sequence[_Turned], gap: float, width: float, raster: Raster | None = None) -> Sheet:
    """Each box on the skyline of those before, where its top comes lowest."""
    limit = width - MARGIN + gap
    skyline = [(MARGIN, MARGIN, limit)]
    placements = []
    for item in turned:
        x, y = _lowest(skyline, item.box, gap, limit, raster)
        motion = item.turn.then(Transform.translation(x - item.box.min_x, y - item.box.min_y))
        box = Box(x, y, x + item.box.width, y + item.box.height)
        placements.append(Placement(item.piece, motion, box))
        skyline = _raised(skyline, x, x + item.box.width + gap, y + item.box.height + gap)
    return Sheet(
        tuple(placements),
        max(placement.box.max_x for placement in placements) + MARGIN,
        max(placement.box.max_y for placement in placements) + MARGIN,
    )


def _lowest(
    skyline: list[tuple[float, float, float]], box: Box, gap: float, limit: float, raster: Raster | None
) -> tuple[float, float]:
    """The lowest, then leftmost place on the skyline of (start, height, end) steps for this box."""
    best: tuple[float, float] | None = None
    width = box.width + gap
    for start, _, _ in skyline:
        left = start
        if raster is not None:
            left = _moved_on(start, box.width, raster.step_x, raster.frame_width)
        if left + width > limit + 1e-6:
            continue
        y = max(height for begin, height, end in skyline if begin < left + width and end > left)
        if raster is not None:
            y = _moved_on(y, box.height, raster.step_y, raster.frame_height)
        if best is None or y < best[1]:
            best = (left, y)
    return best or (skyline[0][0], max(height for _, height, _ in skyline))


def _moved_on(start: float, extent: float, step: float, frame: float) -> float:
    """The start, or that of the next tile where the extent then lies on fewer tiles."""
    following = (math.floor(start / step) + 1) * step + MARGIN
    return min(start, following, key=lambda place: (_tiles_under(place, extent, step, frame), place))


def _tiles_under(start: float, extent: float, step: float, frame: float) -> int:
    last = max(0, math.ceil((start + extent - frame) / step - 1e-9))
    return last - math.floor(start / step) + 1


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
