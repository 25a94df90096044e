"""The legend of the first sheet: each kind of line and mark on the pieces, drawn beside its meaning."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Final

from notchbook.finish import CutPiece
from notchbook.geometry import Path, Point
from notchbook.output import line_styles as style
from notchbook.output.draw_piece import draw_bars, draw_button, inner_style
from notchbook.output.pen import MM_PER_POINT, LineStyle, Pen, Text, circle
from notchbook.output.typeset import CAP_HEIGHT

_TYPE: Final = 8.5
_ROW: Final = 5.0
"""mm from row to row."""

_SAMPLE: Final = 14.5
"""Length of a sample, mm."""

_GAP: Final = 2.0

_INNER_LINES: Final = (
    (style.LEVEL, "level"),
    (style.FOLD, "fold"),
    (style.PLACEMENT, "fold lies here"),
    (style.STITCHES, "stitched here"),
    (style.ROLL, "rolls back here"),
    (style.SLASH, "slash"),
)

Sample = Callable[[Pen, Point], None]
"""Draws a sample whose middle lies to the right of a point on the left."""


@dataclass(frozen=True, slots=True)
class LegendItem:
    """A sample and what it means."""

    words: str
    draw: Sample


def legend_items(pieces: Sequence[CutPiece]) -> tuple[LegendItem, ...]:
    """What these pieces carry, in the order in which a stranger meets it."""
    return tuple(_items(pieces))


def legend_height(items: Sequence[LegendItem]) -> float:
    """The height of the legend in two columns, mm."""
    return _ROW * ((len(items) + 1) // 2)


def draw_legend(pen: Pen, items: Sequence[LegendItem], corner: Point, width: float) -> None:
    """The legend in two columns below ``corner``, its upper left, ``width`` mm wide."""
    rows = (len(items) + 1) // 2
    for index, item in enumerate(items):
        column, row = divmod(index, rows)
        place = corner + Point(column * width / 2.0, -_ROW * (row + 0.5))
        item.draw(pen, place)
        base = place + Point(_SAMPLE + _GAP, -CAP_HEIGHT * _TYPE * MM_PER_POINT / 2.0)
        pen.write(Text(item.words, base, _TYPE))


def _items(pieces: Sequence[CutPiece]) -> Iterator[LegendItem]:
    yield LegendItem("cut", partial(_line, line=style.CUT))
    yield LegendItem("sew", partial(_line, line=style.SEW))
    if any(piece.darts for piece in pieces):
        yield LegendItem("dart, stitch", partial(_line, line=style.DART_LEG))
        yield LegendItem("dart, fold", partial(_line, line=style.DART_FOLD))
    drawn = {inner_style(one, {fold.placement for fold in p.folds}) for p in pieces for one in p.lines}
    for line, meaning in _INNER_LINES:
        if line in drawn:
            yield LegendItem(meaning, partial(_line, line=line))
    if style.BUTTONHOLE in drawn:
        yield LegendItem("buttonhole", _buttonhole)
    if any(piece.folds for piece in pieces):
        yield LegendItem("lay the fold", _laid)
    if any(piece.fold is not None and not piece.fold.on_fold for piece in pieces):
        yield LegendItem("center", partial(_line, line=style.CENTER))
    if any(piece.fold is not None and piece.fold.on_fold for piece in pieces):
        yield LegendItem("place on fold", _fold)
    yield LegendItem("grain", _grain)
    yield from _notch_items(pieces)
    if any(piece.drills for piece in pieces):
        yield LegendItem("drill hole or awl", _drill)
    marks = {mark.kind for piece in pieces for mark in piece.marks}
    if "point" in marks:
        yield LegendItem("point to mark", _cross)
    if "button" in marks:
        yield LegendItem("button", _button)


def _notch_items(pieces: Sequence[CutPiece]) -> Iterator[LegendItem]:
    notches = [notch for piece in pieces for notch in piece.notches]
    is_doubled = any(len(notch.cut_positions) > 1 for notch in notches)
    if notches:
        yield LegendItem("notch", partial(_notch, count=1))
    if is_doubled:
        yield LegendItem("notch of the back", partial(_notch, count=2))


def _line(pen: Pen, left: Point, *, line: LineStyle) -> None:
    pen.stroke(Path.line(left, left + Point(_SAMPLE, 0.0)), line)


def _buttonhole(pen: Pen, left: Point) -> None:
    hole = Path.line(left, left + Point(_SAMPLE, 0.0))
    pen.stroke(hole, style.BUTTONHOLE)
    draw_bars(pen, hole)


def _button(pen: Pen, left: Point) -> None:
    draw_button(pen, left + Point(_SAMPLE / 2.0, 0.0), 0.4 * _ROW)


def _laid(pen: Pen, left: Point) -> None:
    tip = left + Point(_SAMPLE, 0.0)
    pen.stroke(Path.line(left, tip), style.GRAIN)
    base, side = tip - Point(2.4, 0.0), Point(0.0, 0.7)
    pen.fill(Path.polyline((tip, base + side, base - side), closed=True), 0.0)


def _fold(pen: Pen, left: Point) -> None:
    low, high = left - Point(0.0, 1.2), left + Point(_SAMPLE, -1.2)
    arm = Point(0.0, 2.4)
    pen.stroke(Path.polyline((low, low + arm, high + arm, high)), style.FOLD_BRACKET)


def _grain(pen: Pen, left: Point) -> None:
    right = left + Point(_SAMPLE, 0.0)
    pen.stroke(Path.line(left, right), style.GRAIN)
    for tip, inward in ((left, Point(2.4, 0.0)), (right, Point(-2.4, 0.0))):
        side = Point(0.0, 0.7)
        pen.fill(Path.polyline((tip, tip + inward + side, tip + inward - side), closed=True), 0.0)


def _notch(pen: Pen, left: Point, *, count: int) -> None:
    edge = left + Point(0.0, 1.3)
    pen.stroke(Path.line(edge, edge + Point(_SAMPLE, 0.0)), style.CUT)
    for index in range(count):
        place = edge + Point(_SAMPLE / 2.0 + (index - (count - 1) / 2.0) * 2.5, 0.0)
        pen.stroke(Path.line(place, place - Point(0.0, 2.8)), style.NOTCH)


def _drill(pen: Pen, left: Point) -> None:
    middle = left + Point(_SAMPLE / 2.0, 0.0)
    pen.stroke(circle(middle, 1.3), style.DRILL)
    for arm in (Point(2.2, 0.0), Point(0.0, 2.2)):
        pen.stroke(Path.line(middle - arm, middle + arm), style.DRILL)


def _cross(pen: Pen, left: Point) -> None:
    middle = left + Point(_SAMPLE / 2.0, 0.0)
    for arm in (Point(2.0, 0.0), Point(0.0, 2.0)):
        pen.stroke(Path.line(middle - arm, middle + arm), style.MARK)
