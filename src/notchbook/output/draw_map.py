"""The page map: how the tiles lie together, with the pieces on them."""

from notchbook.geometry import Path, Point, Transform
from notchbook.output import line_styles as style
from notchbook.output.pen import Pen, Text, rectangle
from notchbook.output.tiling import Tiling


def draw_map(pen: Pen, tiling: Tiling, low: Point, width: float, height: float) -> None:
    """The map within a box of this size above ``low``; blank tiles are crossed out and in gray."""
    frames = [tile.frame for tile in tiling.tiles]
    left, bottom = min(f.min_x for f in frames), min(f.min_y for f in frames)
    wide, tall = max(f.max_x for f in frames) - left, max(f.max_y for f in frames) - bottom
    scale = min(width / wide, height / tall)
    start = low + Point(0.0, height - tall * scale)
    motion = Transform(a=scale, d=scale, e=start.x - left * scale, f=start.y - bottom * scale)
    for placement in tiling.sheet.placements:
        outline = placement.piece.cut_line.transformed(placement.motion).transformed(motion)
        pen.fill(outline, 0.9)
        pen.stroke(outline, style.SMALL_CUT)
    for tile in tiling.tiles:
        corner = motion.apply(Point(tile.frame.min_x, tile.frame.min_y))
        opposite = motion.apply(Point(tile.frame.max_x, tile.frame.max_y))
        pen.stroke(rectangle(corner, opposite), style.HAIR if tile.is_blank else style.FRAME)
        if tile.is_blank:
            pen.stroke(Path.line(corner, opposite), style.HAIR)
        size = min(11.0, 0.9 * (opposite.x - corner.x))
        pen.write(
            Text(
                tile.name,
                corner.lerp(opposite, 0.5) - Point(0.0, size * 0.12),
                size,
                bold=not tile.is_blank,
                align="center",
                gray=0.6 if tile.is_blank else 0.0,
                halo=not tile.is_blank,
            )
        )
