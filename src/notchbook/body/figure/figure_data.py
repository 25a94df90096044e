"""The points of the drawn figures, from ``women.toml`` and ``men.toml``, in mm of the body."""

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any, Final, Literal

from notchbook.body.figure.curve_through import curve_through
from notchbook.body.figure.figure_parts import ViewName
from notchbook.body.measure_set import POPULATIONS
from notchbook.errors import InputError
from notchbook.geometry import Path, Point, Transform
from notchbook.units import quoted

VIEWS: Final[tuple[ViewName, ...]] = ("front", "back", "side", "sitting")
HALF_VIEWS: Final[tuple[ViewName, ...]] = ("front", "back")
REFLECTED: Final = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


@dataclass(frozen=True, slots=True)
class BodyView:
    """One view of a body: x from its middle or plumb line, y up from the floor, mm of the body.

    ``strokes`` and ``details`` by name; of a front or back view they are one half, and the other is their
    reflection. ``marks`` stand once. ``left`` and ``right`` are the edges of the view.
    """

    name: ViewName
    left: float
    right: float
    heights: Mapping[str, float]
    points: Mapping[str, Point]
    strokes: Mapping[str, Path]
    details: Mapping[str, Path]
    marks: Mapping[str, Path]

    @property
    def is_half(self) -> bool:
        """Whether strokes and details are to be reflected."""
        return self.name in HALF_VIEWS

    def both(self, lines: Mapping[str, Path]) -> list[Path]:
        """The lines of the whole body."""
        halves = list(lines.values())
        return halves + [half.transformed(REFLECTED) for half in halves] if self.is_half else halves


@cache
def body_views(population: Literal["women", "men"]) -> tuple[BodyView, ...]:
    """The views of the figure in the order front, back, side, sitting.

    InputError ``figure-unknown`` for any other population.
    """
    if population not in POPULATIONS:
        raise InputError("figure-unknown", given=quoted(str(population)), known=POPULATIONS, where="")
    data = figure_data(population)
    return tuple(_view(name, data) for name in VIEWS)


@cache
def figure_data(population: Literal["women", "men"]) -> dict[str, Any]:
    """The file as it stands."""
    text = files("notchbook.body.figure").joinpath(f"{population}.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def _view(name: ViewName, data: dict[str, Any]) -> BodyView:
    own = data[name]
    is_half = name in HALF_VIEWS
    shared = data["both"]["strokes"] if is_half else {}
    return BodyView(
        name,
        own["left"],
        own["right"],
        {level: float(words["mm"]) for level, words in data["heights"].items()},
        {point: Point(float(x), float(y)) for point, (x, y) in own["points"].items()},
        _paths({**shared, **own["strokes"]}, is_half=is_half),
        _paths(own["details"], is_half=is_half),
        _paths(own.get("marks", {})),
    )


def _paths(lines: Mapping[str, list[list[float]]], *, is_half: bool = False) -> dict[str, Path]:
    return {name.replace("_", " "): _curve(points, is_half=is_half) for name, points in lines.items()}


def _curve(rows: Sequence[Sequence[float]], *, is_half: bool) -> Path:
    """The curve through the points; where half a body meets its middle line, it runs smoothly across it.

    A row of three numbers at an end is a guide: it bends the curve, which stops before it.
    """
    points = [Point(float(row[0]), float(row[1])) for row in rows]
    first, last = int(len(rows[0]) == 3), int(len(rows[-1]) == 3)
    if is_half and points[0].x == 0.0:
        points, first = [REFLECTED.apply(points[1]), *points], 1
    if is_half and points[-1].x == 0.0:
        points, last = [*points, REFLECTED.apply(points[-2])], 1
    pieces = curve_through(points).segments
    return Path(pieces[first : len(pieces) - last])
