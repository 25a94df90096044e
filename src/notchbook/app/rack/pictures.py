"""A picture of each style of the rack for whoever chooses one: its flat, drawn from its own pieces."""

from functools import cache
from typing import Final

from notchbook.app.drafting import completed
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.rack.styles import rack_style
from notchbook.body import set_from_data
from notchbook.geometry import Point
from notchbook.output.flat import draw_flat, garment_flat
from notchbook.output.svg_pen import SvgPen
from notchbook.recipe import replay

_WIDTH: Final = 66.0
_HEIGHT: Final = 48.0
_ROOM: Final = 1.0
"""mm: the picture, and what is left free round it."""


@cache
def pictured_style(number: str) -> str:
    """Front and back of the style as SVG, on the invented body of the pictures; InputError
    ``rack-style-unknown``."""
    style = rack_style(number)
    run = completed(replay(style.recipe, set_from_data(BODY_OF_PICTURES)))
    pen = SvgPen(_HEIGHT)
    low, high = Point(_ROOM, _ROOM), Point(_WIDTH - _ROOM, _HEIGHT - _ROOM)
    draw_flat(pen, garment_flat(run.pattern), low, high, words=False)
    return pen.document(_WIDTH, style.title, style.about)
