"""The first sheet of a tiled print: squares to measure, how to tape, the map, what belongs to it."""

from collections.abc import Sequence

from notchbook.finish import CutPiece
from notchbook.geometry import Path, Point
from notchbook.output import line_styles as style
from notchbook.output.draw_legend import draw_legend, legend_height, legend_items
from notchbook.output.draw_map import draw_map
from notchbook.output.draw_squares import SQUARE_CM, SQUARE_INCH, draw_squares
from notchbook.output.paper_info import PaperInfo
from notchbook.output.pen import MM_PER_POINT, Pen, Text
from notchbook.output.tiling import OVERLAP, Tiling
from notchbook.output.typeset import fitting_size, shortened, wrapped
from notchbook.units import LengthStyle, length_in_words

_LEFT = SQUARE_INCH + 8.0
"""Where the column right of the squares begins, mm."""

_TYPE = 9.0

_GAP = 6.0
"""mm between the squares."""

_BELOW_HEAD = 38.0
"""mm from the top of the frame to the squares, under the head and the words about printing."""

_CONTROL = ("500 mm", "1.5 mm")
_CONTROL_INCHES = ("20 in", "1/16 in")
"""The length that is measured over several sheets, and by how much it may be off (common practice)."""

_NOTCHES = (("Lines and marks", True), ("Snip notches no deeper than they are drawn.", False))


def draw_first_sheet(pen: Pen, pieces: Sequence[CutPiece], info: PaperInfo, tiling: Tiling) -> None:
    """Everything inside the frame of the first sheet."""
    width, height = tiling.paper.frame_width, tiling.paper.frame_height
    _draw_head(pen, info, width, height)
    top = height - _BELOW_HEAD
    draw_squares(pen, Point(0.0, top - SQUARE_CM - SQUARE_INCH - _GAP), _GAP)
    right = width - _LEFT
    place = _paragraphs(pen, _instructions(tiling, info.lengths), Point(_LEFT, top + 2.0), right)
    place = _paragraphs(pen, _NOTCHES, place - Point(0.0, 2.0), right)
    items = legend_items(pieces)
    draw_legend(pen, items, place - Point(0.0, 1.0), right)
    place = place - Point(0.0, 1.0 + legend_height(items))
    if info.estimates:
        place = _paragraphs(pen, _estimates(info), place - Point(0.0, 2.0), right)
    place = _paragraphs(pen, _contents(pieces, info), place - Point(0.0, 2.0), right)
    place = place - Point(0.0, 7.0)
    pen.write(Text("Page map", Point(_LEFT, place.y), 11.0, bold=True))
    draw_map(pen, tiling, Point(_LEFT, 0.0), right, max(20.0, place.y - 3.0))


def _draw_head(pen: Pen, info: PaperInfo, width: float, height: float) -> None:
    size = fitting_size(info.heading, 22.0, 12.0, width - 2.0, bold=True)
    heading = shortened(info.heading, size, width - 2.0, bold=True)
    pen.write(Text(heading, Point(0.0, height - 8.0), size, True))
    pen.write(Text(shortened(info.issue, 12.0, width - 2.0), Point(0.0, height - 15.5), 12.0))
    materials = "; ".join(info.material(key) for key in info.materials)
    line = " · ".join(part for part in (materials, info.maker) if part)
    pen.write(Text(shortened(line, 10.0, width - 2.0), Point(0.0, height - 21.5), 10.0))
    pen.stroke(Path.line(Point(0.0, height - 25.5), Point(width, height - 25.5)), style.RULE)
    pen.write(
        Text(
            "Print at 100 % (actual size), one side, never “fit to page”.",
            Point(0.0, height - 32.0),
            12.0,
            bold=True,
        )
    )


def _instructions(tiling: Tiling, lengths: LengthStyle) -> tuple[tuple[str, bool], ...]:
    count = len(tiling.printed)
    overlap = length_in_words(OVERLAP, lengths if lengths.unit == "in" else LengthStyle("mm"))
    long, off = _CONTROL_INCHES if lengths.unit == "in" else _CONTROL
    return (
        ("Before cutting", True),
        ("Print this sheet alone and measure both squares.", False),
        ("Taping together", True),
        (
            f"{count} sheets follow. Rows have letters, columns have numbers. Cut each sheet along its left "
            f"and top frame. Lay it on the dotted line of the sheet before ({overlap}), so that the "
            "half diamonds make whole ones.",
            False,
        ),
        (f"Then lay a ruler over {long}: {off} off is the most.", False),
    )


def _estimates(info: PaperInfo) -> tuple[tuple[str, bool], ...]:
    return (("Not measured", True), (info.estimate_note, False))


def _contents(pieces: Sequence[CutPiece], info: PaperInfo) -> tuple[tuple[str, bool], ...]:
    rows = [
        (
            f"{piece.number}  {piece.title}: "
            + "; ".join(f"{quantity.material} {quantity.text}" for quantity in piece.quantities),
            False,
        )
        for piece in pieces
    ]
    most = 12
    if len(rows) > most:
        rows = [*rows[:most], (f"and {len(rows) - most} more: see the cutter’s must", False)]
    return (("Pieces", True), *rows, *((note, False) for note in info.notes[:2]))


def _paragraphs(pen: Pen, parts: Sequence[tuple[str, bool]], place: Point, width: float) -> Point:
    for words, is_heading in parts:
        size = 11.0 if is_heading else _TYPE
        step = size * MM_PER_POINT * 1.25
        if is_heading:
            place = place - Point(0.0, 1.6)
        for line in wrapped(words, size, width, is_heading):
            place = place - Point(0.0, step)
            pen.write(Text(line, place, size, bold=is_heading))
    return place
