"""An edge bent to points beside it: as much of its own shape stays as the points allow."""

from itertools import pairwise
from math import radians, tan

from notchbook.geometry import Cubic, Path, Point, Side
from notchbook.style.edges.batten import Batten, batten
from notchbook.units import TOLERANCES

_LONGEST = 40.0
"""mm; longest stretch that is drawn as one cubic: it then lies within a hundredth of the batten."""


def bent(path: Path, points: list[tuple[float, float]], turns: tuple[float, float], out: float) -> Path:
    """The line with a batten laid along it through ``points``: (mm along it, mm out).

    ``turns`` are the degrees by which it leaves its two ends turned out; 0 keeps the direction. ``out`` is 1
    where out of the piece is left of the line, else -1. Beyond an outermost point that lies on the line
    itself the line stays as it is.
    """
    if turns == (0.0, 0.0) and all(amount == 0.0 for _, amount in points):
        return path
    held_at = _held_at([(0.0, 0.0), *points, (path.length, 0.0)], turns)
    places, amounts = tuple(place for place, _ in held_at), tuple(amount for _, amount in held_at)
    held = batten(places, amounts, (tan(radians(turns[0])), -tan(radians(turns[1]))))
    middle = _chained([_stretch(path, held, span, out) for span in _stretches(path, places)])
    middle = middle.with_start(path.point_at(places[0])).with_end(path.point_at(places[-1]))
    return path.between(0.0, places[0]).joined(middle).joined(path.between(places[-1], path.length))


def _held_at(points: list[tuple[float, float]], turns: tuple[float, float]) -> list[tuple[float, float]]:
    """The points between which the line changes: none beyond an outermost one that lies on it."""
    first = 0 if turns[0] else _on_line(points)
    last = 0 if turns[1] else _on_line(points[::-1])
    return points[first : len(points) - last] if first + last < len(points) - 1 else points


def _on_line(points: list[tuple[float, float]]) -> int:
    """How many points in a row lie on the line before the last such one."""
    away = next((index for index, (_, amount) in enumerate(points) if amount != 0.0), 1)
    return away - 1


def _stretches(path: Path, places: tuple[float, ...]) -> list[tuple[float, float]]:
    """The edge in stretches that hold no joint and no place, and are not too long; what is too short to draw
    is left out between them."""
    inner = (joint for joint in path.distances if places[0] < joint < places[-1])
    stretches: list[tuple[float, float]] = []
    for start, end in pairwise(sorted({*inner, *places})):
        if end - start <= TOLERANCES.sew_length:
            continue
        count = max(1, int((end - start) / _LONGEST) + 1)
        cuts = [start + (end - start) * index / count for index in range(count)] + [end]
        stretches.extend(pairwise(cuts))
    return stretches


def _chained(curves: list[Cubic]) -> Path:
    """The curves as one line, each led to the end of the one before: across a part that was left out."""
    chain = curves[:1]
    for curve in curves[1:]:
        chain.append(curve.with_ends(chain[-1].end, curve.end))
    return Path(tuple(chain))


def _stretch(path: Path, held: Batten, span: tuple[float, float], out: float) -> Cubic:
    third = (span[1] - span[0]) / 3.0
    (start, leaving), (end, arriving) = (
        _held(path, held, distance, out, after=after)
        for distance, after in ((span[0], True), (span[1], False))
    )
    return Cubic(start, start + leaving * third, end - arriving * third, end)


def _held(path: Path, held: Batten, distance: float, out: float, *, after: bool) -> tuple[Point, Point]:
    """Where the batten lies at a distance, and how it moves on for each mm along the edge."""
    side: Side = "after" if after else "before"
    along, curvature = path.tangent_at(distance, side), path.curvature_at(distance, side)
    away = _across(path, distance) * out
    amount, slope = held.at(distance)
    return path.point_at(distance) + away * amount, along * (1.0 - curvature * out * amount) + away * slope


def _across(path: Path, distance: float) -> Point:
    """The unit vector left of the line; at a corner, be it ever so flat, midway between those of both sides,
    so that the stretches before and after it end in one point."""
    before, after = path.tangent_at(distance, "before"), path.tangent_at(distance, "after")
    return (before + after).unit().perpendicular()
