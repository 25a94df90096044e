"""Judging a pattern by outside code: does an outline cross itself, and is that told?"""

from __future__ import annotations

from typing import Final

import numpy as np
from shapely import LinearRing, is_simple

from notchbook.app.examining import examine
from notchbook.geometry import Cubic
from notchbook.pattern import Pattern, Piece
from notchbook.recipe import Replay

TOLD: Final = frozenset({"outline-crosses", "outline-clockwise", "outline-gap", "outline-not-a-number"})
"""Findings that tell of an outline that no knife can follow."""

CHORDS: Final = 48
"""Chords of a curve; an outline of a piece is then off by a few hundredths of a mm."""

NEAR: Final = 1e-3
"""mm: points nearer than this are one."""


def crossing(pattern: Pattern) -> tuple[str, ...]:
    """The pieces whose outline crosses or touches itself, by shapely on points reckoned with numpy."""
    return tuple(name for name, piece in pattern.pieces.items() if not _is_simple(piece))


def untold(run: Replay) -> tuple[str, ...]:
    """The pieces that cross themselves without a finding that says so."""
    crossed = crossing(run.pattern)
    if not crossed:
        return ()
    told = {one.piece for one in examine(run, cut=False).findings if one.code in TOLD}
    return tuple(name for name in crossed if name not in told)


def _is_simple(piece: Piece) -> bool:
    points = np.vstack([_points(piece, name) for name in _open_edges(piece)])
    ahead = np.linalg.norm(np.roll(points, -1, axis=0) - points, axis=1)
    kept = points[ahead > NEAR]
    return len(kept) > 2 and bool(is_simple(LinearRing(kept)))


def _open_edges(piece: Piece) -> list[str]:
    """The edges round the piece, without the slits of intakes that take up nothing."""
    paths = {edge.name: edge.path for edge in piece.outline}
    slits = {
        leg
        for one in piece.intakes
        if one.has_legs and paths[one.first_leg].start.distance_to(paths[one.second_leg].end) <= 0.01
        for leg in (one.first_leg, one.second_leg)
    }
    return [name for name in paths if name not in slits]


def _points(piece: Piece, name: str) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    rows = []
    for segment in piece.edge(name).path.segments:
        ends = np.array([(segment.start.x, segment.start.y), (segment.end.x, segment.end.y)])
        if not isinstance(segment, Cubic):
            rows.append(ends)
            continue
        handles = [(one.x, one.y) for one in (segment.start_handle, segment.end_handle)]
        t = np.linspace(0.0, 1.0, CHORDS + 1)[:, None]
        a, b, c, d = (np.array(at) for at in (ends[0], *handles, ends[1]))
        rows.append((1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * b + 3 * t**2 * (1 - t) * c + t**3 * d)
    return np.vstack(rows)
