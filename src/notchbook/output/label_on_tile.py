"""The label of a piece on one sheet of paper, where the piece has room for it there."""

import math
from collections.abc import Sequence
from dataclasses import replace

from notchbook.finish import CutPiece, label_places
from notchbook.geometry import Box, Point
from notchbook.output.draw_label import label_size, label_words
from notchbook.output.layout import Placement
from notchbook.output.paper_info import PaperInfo
from notchbook.output.tiling import OVERLAP, Tiling

_CLEAR = 6.0
"""mm that a label keeps from where two sheets are laid on each other: the match marks stand there."""

_LEAST_SHARE = 0.6
"""A label may shrink to this share of its size rather than be cut by the edge of a sheet; own judgment."""


def on_one_tile(placement: Placement, tiling: Tiling, info: PaperInfo) -> CutPiece:
    """The piece with its label moved within it onto one tile; as it is where the label lies on one already,
    or where no tile has room for it in a type that is nearly as large."""
    piece = placement.piece
    words = label_size(piece, info)
    if words == (0.0, 0.0):
        return piece
    inner = [_inner(tile.frame) for tile in tiling.printed if placement.box.is_near(tile.frame)]
    now = [placement.motion.apply(corner) for corner in _corners(piece, words)]
    if any(_holds(box, now) for box in inner):
        return piece
    to_piece = placement.motion.inverse()
    parts = [tuple(to_piece.apply(corner) for corner in _box_corners(box)) for box in inner]
    for label in label_places(piece, parts, words):
        moved = replace(piece, label=label)
        told = label_words(moved, info)
        is_told = piece.tag is not None or not told.beside
        if is_told and _share(words, told.size) >= _LEAST_SHARE:
            return moved
    return piece


def _share(words: tuple[float, float], moved: tuple[float, float]) -> float:
    """How large the label has become: by its area, as it may be broken into other lines."""
    return math.sqrt(moved[0] * moved[1] / (words[0] * words[1]))


def _inner(frame: Box) -> Box:
    """A tile without the strips on which its neighbors are laid."""
    by = OVERLAP + _CLEAR
    return Box(frame.min_x + by, frame.min_y + by, frame.max_x - by, frame.max_y - by)


def _box_corners(box: Box) -> tuple[Point, ...]:
    return (
        Point(box.min_x, box.min_y),
        Point(box.max_x, box.min_y),
        Point(box.max_x, box.max_y),
        Point(box.min_x, box.max_y),
    )


def _corners(piece: CutPiece, words: tuple[float, float]) -> tuple[Point, ...]:
    """The corners of what the label's words take, in the frame of the piece."""
    along = Point(1.0, 0.0).rotated(piece.label.degrees) * (words[0] / 2.0)
    up = Point(0.0, 1.0).rotated(piece.label.degrees) * (words[1] / 2.0)
    center = piece.label.center
    return center + along + up, center + along - up, center - along - up, center - along + up


def _holds(box: Box, corners: Sequence[Point]) -> bool:
    return all(box.min_x <= c.x <= box.max_x and box.min_y <= c.y <= box.max_y for c in corners)
