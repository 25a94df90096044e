"""Where the tape goes for each measure: the table of ``tapes.toml`` and the places that it names."""

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any, Final, Literal

from notchbook.body.figure.figure_data import REFLECTED, BodyView
from notchbook.body.figure.figure_parts import TapeSide, ViewName
from notchbook.body.figure.tape_lines import TapeLines, along, bent, loop, ring, slope, span
from notchbook.geometry import Path, Point

TapeKind = Literal["round", "loop", "along", "bent", "span", "slope"]
Place = str | tuple[str, float, float]

_LINES: Final = {"loop": loop, "along": along, "bent": bent, "span": span, "slope": slope}
_SAG: Final = 0.05
_FAR: Final = 1.0e4


@dataclass(frozen=True, slots=True)
class TapeWay:
    """One line of the table; :mod:`notchbook.body.figure.tape_ways` reads it, ``tapes.toml`` explains it."""

    key: str
    view: ViewName
    side: TapeSide
    kind: TapeKind
    points: tuple[Place, ...]
    number: tuple[float, float, float]
    hidden: tuple[Place, ...] = ()
    also: tuple[Place, ...] = ()
    sag: float = _SAG

    def lines(self, view: BodyView) -> TapeLines:
        """The lines of the tape on this body."""
        points = [place_on(view, place) for place in self.points]
        if self.kind == "round":
            return ring(points[0], points[1], self.sag)
        drawn = _LINES[self.kind](points)
        more, covered = (_curve(view, places) for places in (self.also, self.hidden))
        return TapeLines((*drawn.seen, *more), (*drawn.hidden, *covered))


def _curve(view: BodyView, places: Sequence[Place]) -> tuple[Path, ...]:
    return along([place_on(view, place) for place in places]).seen if places else ()


@cache
def tape_ways() -> tuple[TapeWay, ...]:
    """Every way of the table, in its order."""
    text = files("notchbook.body.figure").joinpath("tapes.toml").read_text(encoding="utf-8")
    return tuple(_way(words) for words in tomllib.loads(text)["tape"])


def place_on(view: BodyView, place: Place) -> Point:
    """The point that a place means: ``bust point``, ``-side:waist``, ``("nape", -14, 0)``; mm of the body."""
    if not isinstance(place, str):
        name, right, up = place
        return place_on(view, name) + Point(right, up)
    if place.startswith("-"):
        return REFLECTED.apply(place_on(view, place[1:]))
    name, _, height = place.partition(":")
    if not height:
        return view.points[name]
    if name in view.points:
        return Point(view.points[name].x, view.heights[height])
    return _crossing(_line(view, name), view.heights[height])


def _line(view: BodyView, name: str) -> Path:
    return view.strokes[name] if name in view.strokes else view.details[name]


def _crossing(line: Path, height: float) -> Point:
    level = Path.line(Point(-_FAR, height), Point(_FAR, height))
    return line.intersections(level)[0].point


def _way(words: Mapping[str, Any]) -> TapeWay:
    exact = {
        "points": _places(words["points"]),
        "hidden": _places(words.get("hidden", [])),
        "also": _places(words.get("also", [])),
        "number": tuple(words["number"]),
    }
    return TapeWay(**{**words, **exact})


def _places(places: Sequence[str | list[Any]]) -> tuple[Place, ...]:
    return tuple(place if isinstance(place, str) else (place[0], place[1], place[2]) for place in places)
