"""The drawn figure: the views of a body with the way of the tape of every measure that can be shown."""

from functools import cache
from typing import Final, Literal

from notchbook.body.figure.figure_data import BodyView, body_views
from notchbook.body.figure.figure_parts import Anchor, Figure, Tape, View
from notchbook.body.figure.path_text import path_text
from notchbook.body.figure.tape_lines import TapeLines
from notchbook.body.figure.tape_ways import TapeWay, place_on, tape_ways
from notchbook.body.measure_table import measure_entry
from notchbook.geometry import Path, Point, Transform

SCALE: Final = 8.0
"""mm of the body for one mm of the drawing."""

_MARGIN: Final = 40.0
"""Room above the crown and below the floor, mm of the body."""


@cache
def figure(population: Literal["women", "men"]) -> Figure:
    """The figure with the mean heights of the women or men of ANSUR II (2012), see ``women.toml``.

    InputError ``figure-unknown`` for any other population.
    """
    return Figure(population, SCALE, tuple(_view(view) for view in body_views(population)))


def _view(body: BodyView) -> View:
    top = body.heights["crown"] + _MARGIN
    onto = Transform(1.0 / SCALE, 0.0, 0.0, -1.0 / SCALE, -body.left / SCALE, top / SCALE)
    ways = [way for way in tape_ways() if way.view == body.name]
    return View(
        name=body.name,
        width=(body.right - body.left) / SCALE,
        height=(top + _MARGIN) / SCALE,
        outline=tuple(path_text([line], onto) for line in body.both(body.strokes)),
        details=tuple(path_text([line], onto) for line in [*body.both(body.details), *body.marks.values()]),
        levels=tuple(path_text([line], onto) for line in level_lines(body)),
        tapes=tuple(
            sorted((_tape(way, body, onto) for way in ways), key=lambda tape: tape.number),
        ),
    )


_LEVELS: Final = {
    "front": (("-side:waist", "side:waist"), ("neck pit", "crotch")),
    "back": (("-side:waist", "side:waist"), ("nape", "crotch")),
    "side": (("back:waist", "chest:waist"), ("seam line:armpit", "seam line:ankle bone")),
    "sitting": (("back waist", "front waist"),),
}
"""The ends of the tied waist tape and of the middle or side seam line, by view."""


def level_lines(body: BodyView) -> list[Path]:
    """The tied waist tape, and the middle line or the side seam line, mm of the body."""
    return [Path.line(place_on(body, start), place_on(body, end)) for start, end in _LEVELS[body.name]]


def number_place(way: TapeWay, lines: TapeLines, onto: Transform, up: Point) -> Point:
    """Where the middle of the number stands on paper; ``up`` is one mm of the drawing upward there."""
    share, right, above = way.number
    carrier = lines.seen[0]
    return onto.apply(carrier.point_at(share * carrier.length)) + Point(right * abs(up.y), 0.0) + up * above


def _tape(way: TapeWay, body: BodyView, onto: Transform) -> Tape:
    lines = way.lines(body)
    place = number_place(way, lines, onto, Point(0.0, -1.0))
    return Tape(
        key=way.key,
        number=measure_entry(way.key).number,
        path=path_text(lines.seen, onto),
        hidden_path=path_text(lines.hidden, onto),
        anchor=Anchor(round(place.x, 2), round(place.y, 2)),
        side=way.side,
    )
