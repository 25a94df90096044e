"""A small picture of a piece, for cards and maps."""

from notchbook.finish import CutPiece
from notchbook.geometry import Path, Point, Transform
from notchbook.output import line_styles as style
from notchbook.output.layout import Placement, lay_out
from notchbook.output.pen import Pen

_LEAST = 9.0
"""mm that the longer side of a small picture has at least. Own judgment."""


def upright(piece: CutPiece) -> Placement:
    """The piece with its grain up, at the origin."""
    return lay_out((piece,)).placements[0]


def draw_small(pen: Pen, piece: CutPiece, center: Point, scale: float) -> None:
    """The cut line, darts and grain, ``scale`` times full size, its middle at ``center``; a piece that would
    become a speck larger, so that its shape is seen."""
    placed = upright(piece)
    scale = max(scale, _LEAST / max(placed.box.width, placed.box.height))
    middle = placed.box.center
    motion = placed.motion.then(
        Transform(a=scale, d=scale, e=center.x - middle.x * scale, f=center.y - middle.y * scale)
    )
    pen.stroke(piece.cut_line.transformed(motion), style.SMALL_CUT)
    for dart in piece.darts:
        pen.stroke(dart.first_leg.transformed(motion), style.SMALL_LINE)
        pen.stroke(dart.second_leg.transformed(motion), style.SMALL_LINE)
    start, end = motion.apply(piece.grain.start), motion.apply(piece.grain.end)
    pen.stroke(Path.line(start, end), style.SMALL_LINE)
    along = (end - start).unit()
    for tip, way in ((end, along), (start, -along)):
        if tip is start and piece.grain.one_way:
            continue
        head = min(1.6, 0.3 * start.distance_to(end))
        side = way.perpendicular() * (0.3 * head)
        pen.fill(Path.polyline((tip, tip - way * head + side, tip - way * head - side), closed=True), 0.35)
