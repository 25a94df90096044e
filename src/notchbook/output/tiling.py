"""Cutting a big sheet into tiles for a home or office printer."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise
from typing import Literal

from notchbook.finish import CutPiece
from notchbook.geometry import Box, Path, Point
from notchbook.output.layout import Placement, Raster, Sheet, candidate_sheets

Paper = Literal["a4", "letter", "both"]

OVERLAP = 10.0
"""mm by which neighboring tiles repeat each other; 10 to 15 in use, and more than the 3 to 6.4 mm that
printers cannot reach at the edge of the paper."""


@dataclass(frozen=True, slots=True)
class PaperFormat:
    """A page and the frame that is printed on it, mm; the frame is centered on the page."""

    name: str
    page_width: float
    page_height: float
    frame_width: float
    frame_height: float

    @property
    def margins(self) -> tuple[float, float]:
        """Free paper left and right, above and below, mm."""
        return (self.page_width - self.frame_width) / 2.0, (self.page_height - self.frame_height) / 2.0


FORMATS: dict[Paper, PaperFormat] = {
    "a4": PaperFormat("A4", 210.0, 297.0, 190.0, 277.0),
    "letter": PaperFormat("Letter", 215.9, 279.4, 195.0, 259.0),
    "both": PaperFormat("A4 or Letter", 210.0, 279.4, 190.0, 254.0),
}
"""Sizes of ISO 216 and of North American Letter; margins of at least 10 mm keep clear of what printers
cannot reach. The frame of 190 x 254 mm (7 1/2 x 10 in) prints on both; its page is as wide as A4 and as
high as Letter."""


@dataclass(frozen=True, slots=True)
class Tile:
    """One tile: row from the top (A, B, ...), column from the left (1, 2, ...), and its frame on the
    sheet, mm. ``is_blank`` when no piece lies on it: it is not printed, but keeps its name."""

    row: int
    column: int
    frame: Box
    is_blank: bool

    @property
    def name(self) -> str:
        """``B3``; after Z comes AA."""
        return f"{row_letters(self.row)}{self.column + 1}"


@dataclass(frozen=True, slots=True)
class Tiling:
    """A sheet cut into rows and columns of tiles, in reading order."""

    sheet: Sheet
    paper: PaperFormat
    rows: int
    columns: int
    tiles: tuple[Tile, ...]

    @property
    def printed(self) -> tuple[Tile, ...]:
        """The tiles with something on them."""
        return tuple(tile for tile in self.tiles if not tile.is_blank)


def tile_count(extent: float, frame: float, overlap: float = OVERLAP) -> int:
    """How many tiles of this frame cover an extent, mm: ceil((extent - overlap) / (frame - overlap))."""
    return max(1, math.ceil((extent - overlap) / (frame - overlap) - 1e-9))


def row_letters(row: int) -> str:
    """A to Z, then AA, AB and so on."""
    letters = ""
    row += 1
    while row > 0:
        row, rest = divmod(row - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def best_tiling(pieces: Sequence[CutPiece], paper: PaperFormat) -> Tiling:
    """The tiling with the fewest printed sheets; of equals the one with the fewest columns."""
    step = paper.frame_width - OVERLAP
    raster = Raster(step, paper.frame_height - OVERLAP, paper.frame_width, paper.frame_height)
    widths = [step * count + OVERLAP for count in range(1, 13)]
    tilings = [_trimmed(tiled(sheet, paper)) for sheet in candidate_sheets(pieces, widths, raster)]
    return min(tilings, key=lambda tiling: (len(tiling.printed), len(tiling.tiles), tiling.columns))


def tiled(sheet: Sheet, paper: PaperFormat) -> Tiling:
    """The tiles of a sheet; the lowest row stands on its lower edge, the first column on its left edge.

    A tile is blank when all that lies on it is printed on the tiles before it as well.
    """
    columns = tile_count(sheet.width, paper.frame_width)
    rows = tile_count(sheet.height, paper.frame_height)
    outlines = [_outline(placement) for placement in sheet.placements]
    step = paper.frame_height - OVERLAP
    tiles = []
    for row in range(rows):
        top = (rows - 1 - row) * step + paper.frame_height
        for column in range(columns):
            left = column * (paper.frame_width - OVERLAP)
            frame = Box(left, top - paper.frame_height, left + paper.frame_width, top)
            own = Box(
                left + (OVERLAP if column else 0.0), frame.min_y, frame.max_x, top - (OVERLAP if row else 0.0)
            )
            is_blank = not any(touches(own, box, points) for box, points in outlines)
            tiles.append(Tile(row, column, frame, is_blank))
    return Tiling(sheet, paper, rows, columns, tuple(tiles))


def _trimmed(tiling: Tiling) -> Tiling:
    """Without the rows below and the columns to the right of all that is printed."""
    rows = max((tile.row for tile in tiling.printed), default=0) + 1
    columns = max((tile.column for tile in tiling.printed), default=0) + 1
    tiles = tuple(tile for tile in tiling.tiles if tile.row < rows and tile.column < columns)
    return replace(tiling, rows=rows, columns=columns, tiles=tiles)


def touches(frame: Box, box: Box, outline: Sequence[Point]) -> bool:
    """Whether the area inside an outline (with its box) reaches into the frame."""
    if not frame.is_near(box):
        return False
    center = frame.center
    return any(_segment_touches(frame, a, b) for a, b in pairwise(outline)) or _winds_round(outline, center)


def _outline(placement: Placement) -> tuple[Box, tuple[Point, ...]]:
    points = tuple(map(placement.motion.apply, _flattened(placement.piece.cut_line)))
    return placement.box, points


@lru_cache(maxsize=256)
def _flattened(cut_line: Path) -> tuple[Point, ...]:
    """The line as a polyline: each piece is laid a hundred times before the best tiling is found."""
    return cut_line.flattened(0.2)


def _segment_touches(frame: Box, a: Point, b: Point) -> bool:
    """Clips the segment to the frame (Liang and Barsky's method); most lie beside it, told at once."""
    if (a.x < frame.min_x and b.x < frame.min_x) or (a.x > frame.max_x and b.x > frame.max_x):
        return False
    if (a.y < frame.min_y and b.y < frame.min_y) or (a.y > frame.max_y and b.y > frame.max_y):
        return False
    low, high = 0.0, 1.0
    for start, change, least, most in (
        (a.x, b.x - a.x, frame.min_x, frame.max_x),
        (a.y, b.y - a.y, frame.min_y, frame.max_y),
    ):
        if abs(change) < 1e-12:
            if not least <= start <= most:
                return False
            continue
        first, second = sorted(((least - start) / change, (most - start) / change))
        low, high = max(low, first), min(high, second)
    return low <= high


def _winds_round(outline: Sequence[Point], place: Point) -> bool:
    inside = False
    for a, b in pairwise(outline):
        if (a.y > place.y) != (b.y > place.y):
            at = a.x + (place.y - a.y) / (b.y - a.y) * (b.x - a.x)
            inside ^= at > place.x
    return inside
