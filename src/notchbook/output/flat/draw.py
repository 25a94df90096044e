"""Drawing the flat into a frame: front and back side by side at one scale."""

from collections.abc import Sequence

from notchbook.geometry import Point, Transform
from notchbook.output.flat.garment import FlatView
from notchbook.output.flat.shapes import FlatShape
from notchbook.output.pen import LineStyle, Pen, Text, circle

FIRM = LineStyle(0.8)
FINE = LineStyle(0.35)
_GAP = 6.0
_WORDS = 8.0
_BUTTON = 6.0
"""Radius of a button of the garment, mm; at the scale of the flat within these."""

_LEAST_BUTTON, _MOST_BUTTON = 0.3, 0.8


def draw_flat(pen: Pen, views: Sequence[FlatView], low: Point, high: Point, *, words: bool = True) -> None:
    """The views beside each other between two corners (mm), as large as fits, each named below."""
    if not views:
        return
    foot = _WORDS if words else 0.0
    room = Point(high.x - low.x - _GAP * (len(views) - 1), high.y - low.y - foot)
    boxes = [view.bounds for view in views]
    scale = min(room.x / sum(box.width for box in boxes), room.y / max(box.height for box in boxes))
    total = scale * sum(box.width for box in boxes) + _GAP * (len(views) - 1)
    left = low.x + (high.x - low.x - total) / 2.0
    for view, box in zip(views, boxes, strict=True):
        motion = Transform(a=scale, d=scale, e=left - scale * box.min_x, f=high.y - scale * box.max_y)
        for shape in view.shapes:
            _draw_shape(
                pen, shape.transformed(motion), min(max(scale * _BUTTON, _LEAST_BUTTON), _MOST_BUTTON)
            )
        if words:
            middle = left + scale * box.width / 2.0
            pen.write(Text(view.word, Point(middle, low.y + 1.0), 9.0, align="center"))
        left += scale * box.width + _GAP


def _draw_shape(pen: Pen, shape: FlatShape, button: float) -> None:
    pen.fill(shape.fill, 1.0)
    for path in shape.lines:
        pen.stroke(path, FIRM)
    for path in shape.fine:
        pen.stroke(path, FINE)
    for place in shape.buttons:
        pen.stroke(circle(place, button), FINE)
