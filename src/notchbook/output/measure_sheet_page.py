"""Drawing one page of a measure sheet."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.body.figure import BodyView, tape_ways
from notchbook.geometry import Path, Point
from notchbook.output import line_styles as style
from notchbook.output.draw_figure import FigurePlace, draw_figure_view
from notchbook.output.measure_sheet_rows import SheetBox, SheetRow
from notchbook.output.pen import Pen, Text, rectangle
from notchbook.output.typeset import fitting_size, shortened, text_width, wrapped

HEAD: Final = 42.0
LATER_HEAD: Final = 13.0
FOOT: Final = 8.0
"""Heights of the head of the first and of later pages and of the foot; mm."""

LINE: Final = 10.2
"""Height of a line of boxes, mm."""

GAP: Final = 7.0
"""Between the two columns, mm."""

_BOX_WIDTH: Final = 16.0
_BOX_HEIGHT: Final = 8.6
_NUMBER: Final = 8.0
"""Width of the column of numbers, mm."""

_HOW_SIZE: Final = 6.7
"""Type size of the short way, points."""

_SLACK: Final = 0.01
"""mm by which words that were made to fit may be wider, for rounding alone would shorten them."""

_SMALL: Final = 0.36
"""Size of the sitting figure beside the others."""


@dataclass(frozen=True, slots=True)
class SheetField:
    """A field of the head: name, value (empty: a line to write on), share of the width of its line."""

    name: str
    value: str
    share: float


@dataclass(frozen=True, slots=True)
class SheetHead:
    """The head of a sheet: its fields line by line, as they are read."""

    name: str
    fields: tuple[tuple[SheetField, ...], ...]
    unit: str


def draw_head(pen: Pen, head: SheetHead, width: float, top: float) -> None:
    """Title, name and the lines to fill in, below ``top``."""
    pen.write(Text("Measure sheet", Point(0.0, top - 7.5), 20.0, True))
    title = text_width("Measure sheet", 20.0, True) + 10.0
    _field(pen, "name or code", head.name, (title, width), top - 7.5, 15.0)
    for index, fields in enumerate(head.fields):
        left = 0.0
        for field in fields:
            right = left + field.share * width
            gap = 0.0 if field is fields[-1] else 5.0
            _field(pen, field.name, field.value, (left, right - gap), top - 20.0 - 12.0 * index, 11.0)
            left = right
    pen.stroke(Path.line(Point(0.0, top - 37.0), Point(width, top - 37.0)), style.RULE)


def draw_later_head(pen: Pen, head: SheetHead, width: float, top: float) -> None:
    """The one line above later pages."""
    pen.write(Text("Measure sheet", Point(0.0, top - 5.5), 11.0, True))
    start = text_width("Measure sheet", 11.0, True) + 8.0
    _field(pen, "name or code", head.name, (start, width - 20.0), top - 5.5, 11.0)
    pen.write(Text(head.unit, Point(width, top - 5.5), 11.0, True, align="right"))
    pen.stroke(Path.line(Point(0.0, top - 8.5), Point(width, top - 8.5)), style.RULE)


def draw_foot(pen: Pen, page: tuple[int, int], width: float) -> None:
    """What to mind, and the page (number, of how many)."""
    pen.stroke(Path.line(Point(0.0, 5.0), Point(width, 5.0)), style.SQUARE)
    words = "Tie the waist tape first. Left and right are the wearer’s. “again”: lift the tape and read anew."
    pen.write(Text(words, Point(0.0, 1.0), 8.0))
    pen.write(Text(f"page {page[0]} of {page[1]}", Point(width, 1.0), 8.0, align="right"))


def draw_figures(
    pen: Pen, views: Sequence[BodyView], width: float, low: float, height: float, tapes: Collection[str]
) -> None:
    """Front, back and side in one row, ``height`` tall from ``low`` up; sitting small between the legs, if
    anything is measured there. ``tapes`` are the measures whose tapes lie on them."""
    standing = [view for view in views if view.name != "sitting"]
    across = sum(view.right - view.left for view in standing)
    tall = max(view.heights["crown"] for view in standing)
    scale = min(width / across, height / tall)
    left = (width - across * scale) / 2.0
    base = low + (height - tall * scale) / 2.0
    middles = []
    for view in standing:
        draw_figure_view(pen, view, FigurePlace(Point(left, base), scale, 7.5), tapes)
        middles.append(left - view.left * scale)
        left += (view.right - view.left) * scale
    for view in views:
        if view.name == "sitting" and any(way.view == "sitting" and way.key in tapes for way in tape_ways()):
            shrunk = scale * _SMALL
            middle = middles[0] + 0.56 * (middles[1] - middles[0])
            corner = Point(middle - (view.right - view.left) * shrunk / 2.0, base)
            draw_figure_view(pen, view, FigurePlace(corner, shrunk, 7.5), tapes)


def draw_row(pen: Pen, row: SheetRow, left: float, top: float, width: float) -> None:
    """Number, name, short way and boxes of one measure in a column, below ``top``."""
    height = LINE * len(row.boxes)
    room = _room(row, width)
    pen.write(Text(str(row.number), Point(left, top - 4.6), 11.0, True))
    size = fitting_size(row.name, 10.0, 7.5, room, True)
    pen.write(
        Text(shortened(row.name, size, room + _SLACK, True), Point(left + _NUMBER, top - 3.9), size, True)
    )
    for index, words in enumerate(how_lines(row, width)):
        pen.write(Text(words, Point(left + _NUMBER, top - 6.7 - 2.5 * index), _HOW_SIZE, gray=0.25))
    for turn, boxes in enumerate(row.boxes):
        for place, box in enumerate(boxes):
            x = left + width - _BOX_WIDTH * (len(boxes) - place)
            _draw_box(pen, box, Point(x, top - LINE * (turn + 1) + 0.9))
    pen.stroke(Path.line(Point(left, top - height), Point(left + width, top - height)), style.HAIR)


def how_lines(row: SheetRow, width: float) -> tuple[str, ...]:
    """The short way of a measure as it is broken into lines beside its boxes."""
    return wrapped(row.how, _HOW_SIZE, _room(row, width))


def _room(row: SheetRow, width: float) -> float:
    return width - _NUMBER - 2.0 - _BOX_WIDTH * max(len(boxes) for boxes in row.boxes)


def _draw_box(pen: Pen, box: SheetBox, low: Point) -> None:
    high = low + Point(_BOX_WIDTH, _BOX_HEIGHT)
    pen.stroke(rectangle(low, high), style.SQUARE)
    if box.caption:
        pen.write(Text(box.caption, Point(low.x + 0.7, high.y - 2.2), 5.5, gray=0.35))
    if box.value:
        size = fitting_size(box.value, 11.0, 6.0, _BOX_WIDTH - 2.0)
        pen.write(Text(box.value, Point(high.x - 1.0, low.y + 1.3), size, align="right"))


def _field(pen: Pen, name: str, value: str, room: tuple[float, float], base: float, size: float) -> None:
    """A name, and behind it a line to write on or the value."""
    pen.write(Text(name, Point(room[0], base), 8.5, gray=0.35))
    start = room[0] + text_width(name, 8.5) + 1.5
    pen.stroke(Path.line(Point(start, base - 1.2), Point(room[1], base - 1.2)), style.HAIR)
    if value:
        width = room[1] - start
        least = fitting_size(value, size, 7.0, width, True)
        pen.write(Text(shortened(value, least, width + _SLACK, True), Point(start, base), least, True))
