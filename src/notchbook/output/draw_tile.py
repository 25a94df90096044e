"""What each tile carries beside its part of the pieces: frame, name, head and match marks."""

from notchbook.geometry import Path, Point
from notchbook.output import line_styles as style
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pen import Pen, Text, rectangle
from notchbook.output.tiling import OVERLAP, Tile, Tiling
from notchbook.output.typeset import shortened, text_width

_DIAMOND = 5.0
"""Half the height of a match mark, mm."""


def draw_tile_ground(pen: Pen, tile: Tile, tiling: Tiling) -> None:
    """What lies under the pieces: the tile's name, large and pale, in the upper left of its frame."""
    pen.write(
        Text(
            tile.name, Point(OVERLAP + 4.0, tiling.paper.frame_height - OVERLAP - 16.0), 36.0, True, gray=0.85
        )
    )


def draw_tile_frame(pen: Pen, tile: Tile, tiling: Tiling, info: PaperInfo) -> None:
    """Frame, dotted lines on which the next tiles are laid, half diamonds, and the head line below."""
    width, height = tiling.paper.frame_width, tiling.paper.frame_height
    pen.stroke(rectangle(Point(0.0, 0.0), Point(width, height)), style.FRAME)
    last_column, last_row = tile.column == tiling.columns - 1, tile.row == tiling.rows - 1
    if not last_column:
        line = Path.line(Point(width - OVERLAP, 0.0), Point(width - OVERLAP, height))
        pen.stroke(line, style.OVERLAP)
        _half_diamond(pen, Point(width - OVERLAP, height / 2.0), Point(-1.0, 0.0))
    if not last_row:
        pen.stroke(Path.line(Point(0.0, OVERLAP), Point(width, OVERLAP)), style.OVERLAP)
        _half_diamond(pen, Point(width / 2.0, OVERLAP), Point(0.0, 1.0))
    if tile.column > 0:
        _half_diamond(pen, Point(0.0, height / 2.0), Point(1.0, 0.0))
    if tile.row > 0:
        _half_diamond(pen, Point(width / 2.0, height), Point(0.0, -1.0))
    _head_line(pen, tile, info, width)


def _half_diamond(pen: Pen, middle: Point, inward: Point) -> None:
    along = inward.perpendicular() * _DIAMOND
    tip = middle + inward * _DIAMOND
    pen.stroke(Path.polyline((middle - along, tip, middle + along), closed=True), style.MATCH)


def _head_line(pen: Pen, tile: Tile, info: PaperInfo, width: float) -> None:
    """Below the frame, but clear of the edge that printers cannot reach."""
    base = -3.2
    pen.write(Text(tile.name, Point(0.0, base), 9.0, bold=True))
    start = text_width(tile.name, 9.0, bold=True) + 3.0
    words = " · ".join(part for part in (info.heading, info.issue) if part)
    pen.write(Text(shortened(words, 8.0, width - start - 24.0), Point(start, base), 8.0))
    pen.write(Text("print at 100 %", Point(width, base), 8.0, align="right"))
