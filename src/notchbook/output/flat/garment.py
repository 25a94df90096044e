"""The flat of a whole garment: the views in which it has pieces."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from notchbook.geometry import Box, Path, Point, Transform
from notchbook.output.flat.fork import drawn_apart, has_fork
from notchbook.output.flat.gathers import gather_lines
from notchbook.output.flat.hanging import sleeve_shapes
from notchbook.output.flat.joined import Placing, center_x, laid_on, placed
from notchbook.output.flat.laid import laying
from notchbook.output.flat.lap import closing_lines, lapped_zip_side, side_on_top, turned_in
from notchbook.output.flat.lapel import has_lapel, turned_over
from notchbook.output.flat.leg import drawn_round_leg, leg_edges
from notchbook.output.flat.loops import loop_shapes
from notchbook.output.flat.outer import VIEWS, ViewWord, view_pieces
from notchbook.output.flat.shapes import FlatShape, piece_shape
from notchbook.output.flat.shawl import has_shawl, shawl_turned
from notchbook.output.flat.straps import strap_shapes
from notchbook.output.flat.strips import collar_backs, strip_shapes
from notchbook.output.flat.yoke import loose_in, part_in, yokes
from notchbook.pattern import Pattern, Piece, part_name
from notchbook.pattern.names import Side, instance_of, last_word

_CREASE: Final = "crease_line"

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
    over = {piece.name: piece for piece in yokes(pattern)}
    pieces = (*view_pieces(pattern, view), *over.values())
    loose = frozenset(name for name, piece in over.items() if loose_in(piece, view))
    motions = {
        name: _on_body(pattern.pieces[name], placing)
        for name, placing in placed(pattern, pieces, loose).items()
    }
    behind = collar_backs(pattern, motions) if view == "front" else ()
    straps = strap_shapes(pattern, motions, view)
    for shape in (*behind, *straps, *sleeve_shapes(pattern, view, motions)):
        yield from _both_sides(shape)
    below = {under for under, *_ in laid_on(pattern)}
    for piece in sorted(pieces, key=lambda piece: piece.name not in below):
        if piece.name in motions:
            yield from _sides_of(pattern, piece, motions[piece.name], view)
    is_right_over = "right" in {side_on_top(pattern, piece) for piece in pieces}
    for shape in (*strip_shapes(pattern, motions, view), *loop_shapes(pattern, motions, view)):
        yield from reversed(_both_sides(shape)) if is_right_over else _both_sides(shape)


def _on_body(piece: Piece, placing: Placing) -> Placing:
    """The placing with what reaches round the body drawn as it is seen."""
    if has_fork(piece):
        return drawn_apart(piece, placing)
    return drawn_round_leg(piece, placing) if leg_edges(piece) else placing


def _sides_of(pattern: Pattern, piece: Piece, motion: Placing, view: ViewWord) -> Iterator[FlatShape]:
    """The piece on both of the wearer's sides, the one that laps over last: the other has its buttons below
    it and no holes."""
    top = side_on_top(pattern, piece)
    sides: tuple[Side, ...] = ("left", "right") if top == "right" else ("right", "left")
    for side in sides if piece.cut != "single" else ("right",):
        hidden = _lines_of(pattern, piece, "left" if side == "right" else "right") | _creases(piece)
        is_under = top is not None and side != top and piece.cut == "pair"
        for shape in _drawn(pattern, piece, hidden | closing_lines(piece) if is_under else hidden, view):
            lying = (replace(shape, buttons=()) if is_under else shape).placed(motion)
            if view == "front":
                lying = replace(lying, fine=(*lying.fine, *_pressed(piece, motion)))
            yield lying if side == "right" else lying.transformed(_OTHER_SIDE)


def _drawn(pattern: Pattern, piece: Piece, without: frozenset[str], view: ViewWord) -> tuple[FlatShape, ...]:
    """The piece as this view shows it, in its frame: a yoke to the shoulder, a facing turned in, a lapel
    turned over."""
    whole = piece_shape(piece, without)
    gathered = replace(whole, fine=(*whole.fine, *gather_lines(pattern, piece)))
    shape = turned_in(piece, part_in(piece, gathered, view))
    if has_shawl(piece):
        return tuple(shawl_turned(piece, shape))
    return tuple(turned_over(pattern, piece, shape)) if has_lapel(piece) else (shape,)


def _creases(piece: Piece) -> frozenset[str]:
    """The crease of a leg. It shows in front alone: the back is turned so far about its seat that it would
    run to the center."""
    creases = (line.name for line in piece.lines if last_word(line.name) == _CREASE)
    return frozenset(creases) if has_fork(piece) else frozenset()


def _pressed(piece: Piece, motion: Placing) -> Iterator[Path]:
    """The crease of a leg in one line from end to end: it bends round nothing, though between waist and fork
    the leg is drawn pressed toward the side."""
    laid = laying(piece, center_x(piece))
    for name in _creases(piece):
        crease = piece.line(name).path
        yield Path.line(motion(laid(crease.start)), motion(laid(crease.end)))


def _lines_of(pattern: Pattern, piece: Piece, side: Side) -> frozenset[str]:
    """The inner lines that show on this side of the wearer alone, though one piece serves both: the stitches
    of a fly, which its facing lies under, and those of a lapped zip."""
    return frozenset(line.name for line in piece.lines if _sides(pattern, line.name) == {side})


def _sides(pattern: Pattern, line: str) -> set[Side]:
    """The sides of the wearer that the operation of the line's step works on by a seam; none where it says
    nothing of a side."""
    lapped = lapped_zip_side(pattern, line)
    if lapped is not None:
        return {lapped}
    told = pattern.operations.get(part_name(instance_of(line), last_word(line)))
    seams = [pattern.seams[name] for name in told.at if name in pattern.seams] if told else []
    return {use.side for seam in seams for use in (*seam.first, *seam.second)} - {"both"}


def _both_sides(shape: FlatShape) -> tuple[FlatShape, FlatShape]:
    return shape, shape.transformed(_OTHER_SIDE)
