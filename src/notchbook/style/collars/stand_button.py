"""The button of a stand: its place at the center front, half way up, and its hole along the stand."""

from dataclasses import replace

from notchbook.geometry import Path, Point
from notchbook.pattern import InternalLine, Mark, Operation, Piece, part_name, piece_name
from notchbook.style.closures.buttons_laid import ButtonSize
from notchbook.style.closures.figures import HOLE_BEYOND_CENTER
from notchbook.style.collars.stand import StandLines

_THICKNESS = 3.0
"""mm that a hole is longer than its button, for the thickness (common practice, no source)."""


def button_of(diameter: float) -> ButtonSize:
    """The button of a stand, worked across the center."""
    return ButtonSize(diameter, _THICKNESS, "across")


def with_button(piece: Piece, lines: StandLines, button: ButtonSize) -> Piece:
    """The piece with the mark of its button and the line of its hole, where the stand laps over; both ends of
    a stand are marked, and the order of work says which gets the hole."""
    if not lines.is_buttoned:
        return piece
    top = lines.upper.start
    foot = lines.neck.nearest(top)
    ahead = lines.neck.tangent_at(foot.distance_along)
    place = Point((top.x + foot.point.x) / 2.0, (top.y + foot.point.y) / 2.0)
    begin = place + ahead * HOLE_BEYOND_CENTER.value
    hole = Path.line(begin, begin - ahead * button.hole)
    return replace(
        piece,
        marks=(*piece.marks, Mark(part_name(piece.name, "button"), place, "button")),
        lines=(*piece.lines, InternalLine(part_name(piece.name, "buttonhole"), hole, "buttonhole")),
    )


def buttoned(slug: str, lines: StandLines) -> tuple[Operation, ...]:
    """The order to work the hole and sew the button on; none for a stand whose ends only meet."""
    if not lines.is_buttoned:
        return ()
    text = "Work a buttonhole along the stand at the end that laps over, and sew the button at the other."
    return (Operation(part_name(slug, "buttonhole"), "finish", text, at=(piece_name(slug, "stand"),)),)
