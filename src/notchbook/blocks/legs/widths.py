"""How wide a panel is at a level: at the thigh and between hip and waist."""

from collections.abc import Sequence

from notchbook.blocks.legs.one_root import one_root
from notchbook.blocks.legs.top import Top
from notchbook.geometry import Cubic, Point, Segment


def place_at_level(segments: Sequence[Segment], level: float) -> Point:
    """The first place of a line running up or down that lies at the level (y, mm); its nearer end where the
    line does not reach so far."""
    for segment in segments:
        low, high = sorted((segment.start.y, segment.end.y))
        if low == high or not low <= level <= high:
            continue
        if isinstance(segment, Cubic):
            _, (y1, y2, y3) = segment.powers
            return segment.at(one_root(segment.start.y - level, y1, y2, y3))
        share = (level - segment.start.y) / (segment.end.y - segment.start.y)
        return segment.start.lerp(segment.end, share)
    ends = segments[0].start, segments[-1].end
    return min(ends, key=lambda end: abs(end.y - level))


def leg_width(side: Sequence[Segment], inseam: Sequence[Segment], below: float) -> float:
    """The width of a panel so far below its crotch point, mm."""
    level = inseam[0].start.y - below
    return place_at_level(side, level).x - place_at_level(inseam, level).x


def top_width(top: Top, up: float) -> float:
    """The width of a top so far above the hip line, its darts closed, mm; at its waist beyond that."""
    center = top.waist[0].start
    if up <= top.side.start.y:
        return top.side.start.x
    if up >= min(center.y, top.side.end.y):
        return top.closed.length
    width = place_at_level((top.side,), up).x - center.x * up / center.y
    for dart in top.darts:
        mouth = (dart.first.y + dart.second.y) / 2.0
        share = (up - dart.point.y) / (mouth - dart.point.y)
        width -= max(0.0, share) * dart.first.distance_to(dart.second)
    return width
