"""How wide a piece is along a level line, as sewn: what a tape round the garment there would meet."""

from itertools import pairwise

from notchbook.geometry import Path
from notchbook.pattern.piece import InternalLine, Piece

_REACH = 10_000.0
"""mm to either side: farther than any piece is wide."""


def width_at_level(piece: Piece, line: InternalLine, below: float = 0.0) -> float:
    """The width of the piece along a level line of it, or so many mm below, mm.

    Darts in the outline are left out as they lie open; of an inner dart what lies between its legs is taken
    off. The level runs along the line from its start to its end, beyond both.
    """
    along = (line.path.end - line.path.start).unit()
    down = along.perpendicular() * (1.0 if along.x < 0.0 else -1.0)
    middle = line.path.start + down * below
    level = Path.line(middle - along * _REACH, middle + along * _REACH)
    total = sum(
        second - first
        for first, second in pairwise(_met(level, piece.sew_line))
        if piece.sew_line.contains(level.point_at((first + second) / 2.0))
    )
    return total - sum(
        _between_legs(piece, (dart.center_leg, dart.side_leg), level) for dart in piece.inner_darts
    )


def _met(level: Path, other: Path) -> list[float]:
    """Where the level meets a line, mm along the level."""
    return sorted(crossing.at_self for crossing in level.intersections(other))


def _between_legs(piece: Piece, legs: tuple[str, str], level: Path) -> float:
    places = [_met(level, piece.line(leg).path) for leg in legs]
    return abs(places[0][0] - places[1][0]) if all(places) else 0.0
