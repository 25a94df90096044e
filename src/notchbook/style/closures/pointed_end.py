"""A strip that ends in a point at its right-hand end as drawn."""

from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Piece, part_name, spoken

_SHARE = 0.5
"""Length of the point over the width: a right angle. Common practice, no source."""


def with_point(piece: Piece) -> Piece:
    """A plain strip whose right-hand end is a right-angled point. StepRefused ``strip-too-short``."""
    lower, end, upper, left = piece.outline
    width = end.length
    depth = width * _SHARE
    if lower.length <= 2.0 * depth:
        raise StepRefused("strip-too-short", piece=spoken(piece.name), length=lower.length, width=width)
    tip = Point(end.path.start.x, (end.path.start.y + end.path.end.y) / 2.0)
    begin, stop = tip + Point(-depth, -width / 2.0), tip + Point(-depth, width / 2.0)
    point = part_name(piece.name, "tip")
    outline = (
        replace(lower, path=lower.path.with_end(begin)),
        Edge(part_name(piece.name, "lower_point"), Path.line(begin, tip), lower.end, point, end.kind),
        Edge(part_name(piece.name, "upper_point"), Path.line(tip, stop), point, upper.start, end.kind),
        replace(upper, path=upper.path.with_start(stop)),
        left,
    )
    return replace(piece, outline=outline)
