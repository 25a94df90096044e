"""Judges circle and gored skirts from a pattern's plain data with numpy and shapely alone."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import pi
from typing import Any, Final

import numpy as np

from support.bodice_judge import ANGLE, LENGTH, Closure, Points
from support.lower_judge import sharpest
from support.skirt_judge import Judge, length
from upper_figures import inflections

ROUND: Final = 0.01
"""mm by which an arc may leave its circle: a cubic of a quarter turn leaves a radius of 1 m by 0.27 mm, so
arcs must be drawn in short parts."""


@dataclass(frozen=True)
class RingWanted:
    """A circle skirt by its closed forms: waist as sewn, share of the circle, length; mm."""

    waist: float
    share: float
    length: float

    @property
    def radius(self) -> float:
        """Of the waist."""
        return self.waist / (2.0 * pi * self.share)

    @property
    def hem(self) -> float:
        """The whole hem."""
        return self.waist + 2.0 * pi * self.share * self.length

    @property
    def area(self) -> float:
        """Of the cloth inside the sew lines, mm2."""
        return self.share * pi * ((self.radius + self.length) ** 2 - self.radius**2)


class RoundJudge(Judge):
    """Reads every piece of a skirt; each stands for both of the wearer's sides."""

    def whole(self, word: str) -> float:
        """The edges of this name on all pieces, all the way round, mm."""
        return sum(self.times(piece) * self.length(*self.named(piece, word)) for piece in self.pieces)

    def times(self, piece: str) -> float:
        """How often the drawn piece stands in the skirt: a fold or a pair shows half of it."""
        return {"fold": 2.0, "pair": 2.0}.get(self.pieces[piece]["cut"], 1.0)

    def area(self) -> float:
        """The cloth inside the sew lines by shapely, mm2."""
        return float(sum(self.times(piece) * self.polygon(piece).area for piece in self.pieces))

    def corners(self, piece: str) -> dict[str, float]:
        """The inside angle at every corner of the outline, degrees."""
        outline = self.pieces[piece]["outline"]
        return {edge["start"]: self.corner(piece, edge["start"].partition("/")[2]) for edge in outline}


def circle_closures(data: dict[str, Any], wanted: RingWanted) -> Iterator[Closure]:
    """What must agree on a circle skirt of equal sectors."""
    judge = RoundJudge(data)
    yield Closure("waist", judge.whole("waist"), wanted.waist, 1e-3)
    yield Closure("hem", judge.whole("hem"), wanted.hem, LENGTH)
    yield Closure("area", judge.area() / wanted.area, 1.0, 1e-5)
    for piece in judge.pieces:
        for word, radius in (("waist", wanted.radius), ("hem", wanted.radius + wanted.length)):
            fitted, off = circle_through(np.concatenate([judge.edges[n] for n in judge.named(piece, word)]))
            yield Closure(f"{piece} {word} radius", fitted, radius, ROUND)
            yield Closure(f"{piece} {word} round", off, 0.0, ROUND)
        for corner, angle in judge.corners(piece).items():
            yield Closure(f"{corner} square", angle, 90.0, ANGLE)
        yield Closure(f"{piece} in one piece", float(judge.polygon(piece).is_valid), 1.0, 0.0)
    yield from pairs(judge, data)


def circle_through(points: Points) -> tuple[float, float]:
    """Radius of the circle nearest to the points, by least squares, and the farthest that one lies off it."""
    middle = points.mean(axis=0)
    x, y = (points - middle).T
    a, b, c = np.linalg.lstsq(np.column_stack([x, y, np.ones(len(x))]), x**2 + y**2, rcond=None)[0]
    center = np.array([a / 2.0, b / 2.0])
    radius = float(np.sqrt(c + center @ center))
    off = np.abs(np.linalg.norm(points - middle - center, axis=1) - radius)
    return radius, float(off.max())


def pairs(judge: Judge, data: dict[str, Any]) -> Iterator[Closure]:
    """The two sides of every seam, with the ease that it declares."""
    for seam in data["seams"]:
        first, second = (sum(judge.length(use["edge"]) for use in seam[end]) for end in ("first", "second"))
        yield Closure(f"{seam['name']} pair", second - first, seam["ease"], LENGTH)


def gore_closures(data: dict[str, Any], wanted: dict[str, float]) -> Iterator[Closure]:
    """What must agree on a gored skirt: ``waist_girth``, ``hip_girth`` and ``hem_girth``, mm with ease."""
    judge = RoundJudge(data)
    yield Closure("waist", judge.whole("waist"), wanted["waist_girth"], LENGTH)
    yield Closure("hem", judge.whole("hem"), wanted["hem_girth"], LENGTH)
    yield from pairs(judge, data)
    for piece in judge.pieces:
        for corner, angle in judge.corners(piece).items():
            yield Closure(f"{corner} square", angle, 90.0, ANGLE)
        yield Closure(f"{piece} in one piece", float(judge.polygon(piece).is_valid), 1.0, 0.0)
    hip = sum(
        judge.times(line.partition("/")[0]) * length(points)
        for line, points in judge.lines.items()
        if line.endswith("/hip_line")
    )
    yield Closure("hip", hip, wanted["hip_girth"], LENGTH)


def gore_faults(data: dict[str, Any]) -> list[str]:
    """What a patternmaker would send back: a seam that bends both ways or has a corner. One whose flare
    begins below the hip turns outward there, once."""
    judge = RoundJudge(data)
    found = []
    for name, points in judge.edges.items():
        flares_below = f"{name.partition('/')[0]}/flare_line" in judge.lines
        if (count := inflections(points)) > int(flares_below):
            found.append(f"{name} bends both ways {count}")
        if (corner := sharpest(points)) > ANGLE:
            found.append(f"{name} has a corner {corner:.1f}")
    return found
