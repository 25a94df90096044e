"""One curve between two directions whose quickest bend is about as soft as it can be."""

from math import sqrt

from notchbook.blocks.stretch.figures import figure
from notchbook.geometry import Cubic, Point, direction


def round_curve(start: Point, leaving: float, end: Point, arriving: float) -> Cubic:
    """The curve that leaves and arrives in these directions (degrees): nearly an arc as long as the shorter
    way to where both meet, and nearly straight along the longer one. Both must meet between the ends."""
    first, last = direction(leaving), direction(arriving)
    chord, turn = end - start, first.cross(last)
    before, after = chord.cross(last) / turn, first.cross(chord) / turn
    long = figure("round.arc_share")
    short = min(long * sqrt(max(before, after) / min(before, after)), figure("round.most_share"))
    shares = (short, long) if before < after else (long, short)
    return Cubic(start, start + first * (shares[0] * before), end - last * (shares[1] * after), end)
