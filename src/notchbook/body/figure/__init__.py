"""The drawn figure: a body from all sides with the way of the tape of each measure."""

from notchbook.body.figure.drawn_figure import SCALE, figure, level_lines, number_place
from notchbook.body.figure.figure_data import BodyView, body_views
from notchbook.body.figure.figure_parts import Anchor, Figure, Tape, TapeSide, View, ViewName
from notchbook.body.figure.figure_svg import figure_svg, number_box
from notchbook.body.figure.tape_ways import TapeWay, tape_ways

__all__ = [
    "SCALE",
    "Anchor",
    "BodyView",
    "Figure",
    "Tape",
    "TapeSide",
    "TapeWay",
    "View",
    "ViewName",
    "body_views",
    "figure",
    "figure_svg",
    "level_lines",
    "number_box",
    "number_place",
    "tape_ways",
]
