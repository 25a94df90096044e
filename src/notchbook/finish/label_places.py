"""Other places for the label of a cut piece: within a part of it, as the sheet of paper on which it lies."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy

from notchbook.finish.cut_piece import CutPiece, LabelBox
from notchbook.finish.free_room import Cells, line_cells, summed
from notchbook.finish.piece_room import LABEL_SIZES, Room, nearest_window, room_of
from notchbook.geometry import Box, Path, Point
from notchbook.pattern import Grain


def label_places(
    piece: CutPiece, parts: Sequence[Sequence[Point]], words: tuple[float, float]
) -> Iterator[LabelBox]:
    """Clear boxes for the label, each wholly within one of the parts, the best liked first.

    ``parts`` are rectangles along the grain by their corners in the frame of the piece; ``words`` is the
    length and height, mm, that the label takes now. Of each size, the larger first, the place nearest to that
    of now is given; the label keeps its direction.
    """
    along_grain = piece.grain.degrees
    room = _room(piece, along_grain)
    to_room = room.back.inverse()
    wanted = to_room.apply(piece.label.center)
    boxes = [Box.around(map(to_room.apply, corners)) for corners in parts]
    sums = [summed(room.lined | _outside(room, box)) for box in boxes]
    turned = abs((piece.label.degrees - along_grain + 90.0) % 180.0 - 90.0) > 45.0
    for length, height in (words, *LABEL_SIZES):
        size = (height, length) if turned else (length, height)
        found = (nearest_window(room.grid, one, *size, wanted) for one in sums)
        centers = [center for center in found if center is not None]
        if centers:
            center = room.back.apply(min(centers, key=lambda place: place.distance_to(wanted)))
            yield replace(piece.label, center=center, length=length, height=height, is_clear=True)


def _room(piece: CutPiece, along_grain: float) -> Room:
    """The room of the piece, its grain line being in the way too."""
    lines = [line.path for line in piece.lines]
    if piece.fold is not None:
        lines.append(piece.fold.path)
    grain = Grain(along_grain)
    room = room_of(piece.sew_line, grain, (piece.darts, piece.drills), tuple(lines))
    arrow = Path.line(*map(room.back.inverse().apply, (piece.grain.start, piece.grain.end)))
    taken = line_cells(room.grid, (arrow,))
    taken[:, 1:] |= taken[:, :-1]
    taken[:, :-1] |= taken[:, 1:]
    return replace(room, solid=room.solid | taken, lined=room.lined | taken)


def _outside(room: Room, part: Box) -> Cells:
    """The cells that do not lie wholly within a part."""
    grid = room.grid
    lefts = grid.box.min_x + numpy.arange(grid.columns) * grid.size
    lows = grid.box.min_y + numpy.arange(grid.rows) * grid.size
    columns = (lefts >= part.min_x) & (lefts + grid.size <= part.max_x)
    rows = (lows >= part.min_y) & (lows + grid.size <= part.max_y)
    return ~(rows[:, None] & columns[None, :])
