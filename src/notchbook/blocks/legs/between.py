"""The girth of finished trousers between their top edge and the hip."""

from notchbook.blocks.legs.given import LevelGirth, TrousersGiven
from notchbook.blocks.legs.shapes import TrouserPanel, TrousersHalf
from notchbook.blocks.legs.widths import place_at_level


def girth_between(half: TrousersHalf, given: TrousersGiven, level: LevelGirth) -> float:
    """The girth of the finished trousers at a level between top edge and hip, darts closed, mm.

    A level below the hip counts as the hip, one at the top edge as the waist.
    """
    at = max(half.front.hip, given.rise + half.depth - level.depth)
    return 2.0 * (_width(half.front, at) + _width(half.back, at))


def _width(panel: TrouserPanel, level: float) -> float:
    """The width of a panel at this level (y) of its outline, its darts closed, mm."""
    if level >= min(panel.waist[0].start.y, panel.side.start.y):
        return panel.closed_waist.length
    across = place_at_level(panel.side.segments, level).x - place_at_level(panel.crotch.segments, level).x
    for dart in panel.waist_darts:
        mouth = (dart.first.y + dart.second.y) / 2.0
        share = (level - dart.point.y) / (mouth - dart.point.y)
        across -= max(0.0, share) * dart.first.distance_to(dart.second)
    return across
