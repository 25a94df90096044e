"""The drawn figure with the ways of the tape on paper."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

from notchbook.body import measure_entry
from notchbook.body.figure import SCALE, BodyView, level_lines, number_place, tape_ways
from notchbook.geometry import Point, Transform
from notchbook.output.pen import MM_PER_POINT, LineStyle, Pen, Text
from notchbook.output.typeset import CAP_HEIGHT

OUTLINE: Final = LineStyle(0.9)
DETAIL: Final = LineStyle(0.3, (), 0.55)
LEVEL: Final = LineStyle(0.3, (2.2, 0.8, 0.4, 0.8), 0.6)
TAPE: Final = LineStyle(0.5, (), 0.2)
HIDDEN: Final = LineStyle(0.35, (0.9, 0.7), 0.35)


@dataclass(frozen=True, slots=True)
class FigurePlace:
    """Where a view stands: the paper point of its lower left corner, mm of paper for one mm of the body,
    and the type size of its numbers in points."""

    corner: Point
    scale: float
    number_size: float


def draw_figure_view(
    pen: Pen, view: BodyView, place: FigurePlace, tapes: Collection[str] | None = None
) -> None:
    """One view with its lines, then its tapes, then their numbers, so that no line crosses a number.

    ``tapes`` are the measures whose tapes are drawn; None: all."""
    onto = Transform(
        place.scale, 0.0, 0.0, place.scale, place.corner.x - view.left * place.scale, place.corner.y
    )
    for lines, style in (
        (level_lines(view), LEVEL),
        ([*view.both(view.details), *view.marks.values()], DETAIL),
        (view.both(view.strokes), OUTLINE),
    ):
        for line in lines:
            pen.stroke(line.transformed(onto), style)
    up = Point(0.0, SCALE * place.scale)
    numbers = []
    for way in tape_ways():
        if way.view != view.name or (tapes is not None and way.key not in tapes):
            continue
        lines_of_tape = way.lines(view)
        for line in lines_of_tape.hidden:
            pen.stroke(line.transformed(onto), HIDDEN)
        for line in lines_of_tape.seen:
            pen.stroke(line.transformed(onto), TAPE, way.key)
        numbers.append((measure_entry(way.key).number, number_place(way, lines_of_tape, onto, up)))
    for number, middle in numbers:
        _write_number(pen, number, middle, place.number_size)


def _write_number(pen: Pen, number: int, middle: Point, size: float) -> None:
    base = middle - Point(0.0, CAP_HEIGHT * size * MM_PER_POINT / 2.0)
    pen.write(Text(str(number), base, size, bold=True, align="center", halo=True))
