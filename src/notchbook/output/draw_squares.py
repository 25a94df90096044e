"""The squares by which a print is checked before cloth is cut: 10 cm and 4 in."""

from notchbook.geometry import Point
from notchbook.output import line_styles as style
from notchbook.output.pen import Pen, Text, rectangle

SQUARE_CM = 100.0
SQUARE_INCH = 101.6
"""mm; 4 in, for 1 in is 25.4 mm exactly (international yard, 1959)."""

_TOLERANCE = {
    SQUARE_CM: "0.5 mm off is still right, 1 mm is not",
    SQUARE_INCH: "1/64 in off is still right, 1/32 in is not",
}
"""10 cm within 0.5 mm (common practice); on an inch ruler 1/64 in is 0.4 mm and 1/32 in is 0.8 mm."""


def draw_square(pen: Pen, corner: Point, size: float, words: str) -> None:
    """One square and what it must measure; the tolerance stands in the unit of the square."""
    pen.stroke(rectangle(corner, corner + Point(size, size)), style.SQUARE, words)
    center = corner + Point(size / 2.0, size / 2.0)
    pen.write(Text(words, center + Point(0.0, 4.0), 20.0, bold=True, align="center"))
    pen.write(Text("measure both ways with a ruler", center - Point(0.0, 4.0), 9.0, align="center"))
    pen.write(Text(_TOLERANCE[size], center - Point(0.0, 9.0), 9.0, align="center"))


def draw_squares(pen: Pen, corner: Point, gap: float = 6.0) -> None:
    """Both squares, the metric one on top, their lower left corner at ``corner``."""
    draw_square(pen, corner, SQUARE_INCH, "4 in")
    draw_square(pen, corner + Point(0.0, SQUARE_INCH + gap), SQUARE_CM, "10 cm")
