"""A segment as a cubic, so that it can be bent."""

from notchbook.geometry import Cubic, Segment

_THIRD = 1.0 / 3.0


def as_cubic(segment: Segment) -> Cubic:
    """A straight segment as a cubic with handles at its thirds; a cubic as it is."""
    if isinstance(segment, Cubic):
        return segment
    start, end = segment.start, segment.end
    return Cubic(start, start.lerp(end, _THIRD), start.lerp(end, 2.0 * _THIRD), end)
