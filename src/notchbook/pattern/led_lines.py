"""A level line led on to where the cloth ends: to the outline, so to the legs of a dart that opens in it."""

from collections.abc import Sequence
from typing import Final

from notchbook.geometry import Path, Point
from notchbook.pattern.piece import Piece
from notchbook.units import TOLERANCES

MOST_LED: Final = 25.0
"""mm; a line that ends farther than this from the outline was meant to end within the piece. A dart's point
is withdrawn by so much at most: 13 to 25 mm (trade handbooks, from memory)."""

_MOST_SLANT: Final = 4.0
"""How much longer than the gap to the outline the way along the line may be, to be led on or cut off. A level
that meets an edge at less than 15 degrees, as beside a seam that was cut across it and trued, is left as it
is: the piece on the other side has the rest of it. Own judgment."""


def led_to_outline(
    piece: Piece, path: Path, meets: Sequence[Point] = (), ends: tuple[bool, bool] = (True, True)
) -> Path:
    """The line with its ends on the outline of its piece, where that is near.

    ``ends`` says whether its start and its end are led on. An end on one of the points ``meets``, where
    another part of the same level goes on, stays. A dart that was made shorter leaves cloth between its legs
    and a level that was cut with the legs before: sewn, that cloth is in the garment.
    """
    at_start, at_end = ends
    led = _led_on(piece, path, meets) if at_end else path
    return _led_on(piece, led.reversed(), meets).reversed() if at_start else led


def _led_on(piece: Piece, path: Path, meets: Sequence[Point]) -> Path:
    """The path led straight on from its end, or cut off, where the outline is near."""
    if any(path.end.distance_to(point) <= TOLERANCES.closure for point in meets):
        return path
    outline = piece.sew_line
    gap = outline.nearest(path.end).gap
    if not TOLERANCES.closure < gap <= MOST_LED:
        return path
    most = min(2.0 * MOST_LED, _MOST_SLANT * gap)
    if not outline.contains(path.end):
        within = [met.at_self for met in path.intersections(outline) if met.at_self > TOLERANCES.closure]
        last = max(within, default=0.0)
        return path.split_at(last)[0] if within and path.length - last <= most else path
    ahead = Path.line(path.end, path.end + path.tangent_at(path.length) * most)
    met = ahead.intersections(outline)
    if not met:
        return path
    first = min(met, key=lambda crossing: crossing.at_self).point
    near = (
        edge.path for edge in piece.outline if edge.path.nearest(path.end).gap <= gap + TOLERANCES.closure
    )
    if all(edge.nearest(first).gap > TOLERANCES.closure for edge in near):
        return path  # another edge than that at which it was cut
    return path.joined(Path.line(path.end, first))
