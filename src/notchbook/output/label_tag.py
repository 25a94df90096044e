"""What the label of a small piece has no room for: written beside the piece, with a line that leads to it."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from notchbook.finish import CutPiece, LabelBox
from notchbook.geometry import Box, Path, Point, Transform
from notchbook.output import line_styles as style
from notchbook.output.draw_label import label_words, lines_size, write_lines
from notchbook.output.label_lines import LabelLine
from notchbook.output.layout import is_strip
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pen import Pen, circle
from notchbook.output.typeset import wrapped

_AWAY: Final = 5.0
"""mm between the box of the piece and the words beside it."""

_NARROWEST, _WIDEST = 60.0, 150.0
"""mm within which the words are broken into lines, as wide as the piece otherwise."""

_INTO: Final = 2.0
"""mm by which the leading line ends inside the cut line."""

_DOT: Final = 0.7
"""Radius of the dot at its end, mm."""


def with_tags(pieces: Sequence[CutPiece], info: PaperInfo) -> tuple[CutPiece, ...]:
    """The pieces, those with too little room with a place set aside for words beside them."""
    return tuple(tagged(piece, info) for piece in pieces)


def tagged(piece: CutPiece, info: PaperInfo) -> CutPiece:
    """The piece with room below it, as it lies to be read, for what its label has no room for."""
    lines = label_words(piece, info).beside
    if not lines or piece.tag is not None:
        return piece
    turn, box = _as_read(piece)
    length, height = lines_size(_broken(lines, box.width))
    low = Point(box.min_x, box.min_y - _AWAY - height)
    back = turn.inverse()
    along = back.apply(Point(1.0, 0.0)) - back.apply(Point(0.0, 0.0))
    center = back.apply(low + Point(length / 2.0, height / 2.0))
    return replace(piece, tag=LabelBox(center, length, height, along.direction(), True))


def draw_tag(pen: Pen, piece: CutPiece, info: PaperInfo) -> None:
    """The words beside the piece, and the line from them into it."""
    if piece.tag is None:
        return
    _, box = _as_read(piece)
    lines = _broken(label_words(piece, info).beside, box.width)
    write_lines(pen, lines, 1.0, piece.tag)
    up = Point(0.0, 1.0).rotated(piece.tag.degrees)
    upper_left = piece.tag.corners[3]
    start = upper_left + Point(min(6.0, piece.tag.length / 2.0), 0.0).rotated(piece.tag.degrees) + up
    met = piece.cut_line.nearest(start).point
    end = met + (met - start).unit() * _INTO
    pen.stroke(Path.line(start, end), style.HAIR)
    pen.fill(circle(end, _DOT), 0.0)


def _as_read(piece: CutPiece) -> tuple[Transform, Box]:
    """The turn that lays the piece to be read, its grain up or, on a strip, to the right; its box so."""
    turn = Transform.rotation(90.0 - piece.grain.degrees)
    box = piece.cut_line.transformed(turn).bounds()
    if is_strip(box):
        turn = turn.then(Transform.rotation(-90.0))
        box = piece.cut_line.transformed(turn).bounds()
    return turn, box


def _broken(lines: Sequence[LabelLine], width: float) -> tuple[LabelLine, ...]:
    room = min(max(width, _NARROWEST), _WIDEST)
    return tuple(
        replace(line, words=words)
        for line in lines
        for words in wrapped(line.words, line.size, room, line.bold)
    )
