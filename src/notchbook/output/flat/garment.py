"""The flat of a whole garment: the views in which it has pieces."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.geometry import Box, Point, Transform
from notchbook.output.flat.fork import drawn_apart, has_fork
from notchbook.output.flat.hanging import sleeve_shapes, strip_shapes
from notchbook.output.flat.joined import laid_on, placed
from notchbook.output.flat.outer import VIEWS, ViewWord, view_pieces
from notchbook.output.flat.shapes import FlatShape, piece_shape
from notchbook.pattern import Pattern

_OTHER_SIDE = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


@dataclass(frozen=True, slots=True)
class FlatView:
    """The garment from one side, mm, y up, its center at x = 0: shapes in the order in which they cover each
    other."""

    word: ViewWord
    shapes: tuple[FlatShape, ...]

    @property
    def bounds(self) -> Box:
        """The box around all shapes."""
        boxes = [shape.fill.bounds() for shape in self.shapes]
        return Box(
            min(box.min_x for box in boxes),
            min(box.min_y for box in boxes),
            max(box.max_x for box in boxes),
            max(box.max_y for box in boxes),
        )


def garment_flat(pattern: Pattern) -> tuple[FlatView, ...]:
    """Front and back of the garment, as far as it has pieces there."""
    views = (FlatView(view, tuple(_shapes(pattern, view))) for view in VIEWS)
    return tuple(view for view in views if view.shapes)


def _shapes(pattern: Pattern, view: ViewWord) -> Iterator[FlatShape]:
    """Sleeves below, the body over them, what an operation lays under a piece before it, bands and collars on
    top; one side and its reflection."""
    pieces = view_pieces(pattern, view)
    motions = {
        name: drawn_apart(pattern.pieces[name], placing) if has_fork(pattern.pieces[name]) else placing
        for name, placing in placed(pattern, pieces).items()
    }
    for shape in sleeve_shapes(pattern, view, motions):
        yield from _both_sides(shape)
    below = {under for under, *_ in laid_on(pattern)}
    for piece in sorted(pieces, key=lambda piece: piece.name not in below):
        if piece.name in motions:
            shape = piece_shape(piece).placed(motions[piece.name])
            yield from (shape,) if piece.cut == "single" else _both_sides(shape)
    for shape in strip_shapes(pattern, motions):
        yield from _both_sides(shape)


def _both_sides(shape: FlatShape) -> tuple[FlatShape, FlatShape]:
    return shape, shape.transformed(_OTHER_SIDE)
