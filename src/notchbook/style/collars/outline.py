"""The outline of a collar round its neck edge: the front edge, the point, the outer edge."""

import math
from dataclasses import dataclass
from typing import Literal

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import FairCurve, Path, Point, curve_between, fair_curve, offset

FrontShape = Literal["pointed", "round"]

_ROUNDED = 0.85
"""Share of the front edge that a round front takes. Own judgment."""

_BLEND = 0.55
"""Share of the neck edge, from its front end, over which the width goes over to that of the point. Own
judgment."""

_HELD = ((0.0, 0.5, 1.0), (0.0, 0.75), (0.0, 0.5), (0.0,))
"""Shares of the parallel behind at which the outer edge is held, first the most: where a hollow of the neck
makes a bump, it is held at fewer."""


@dataclass(frozen=True, slots=True)
class Front:
    """The front of a collar: ``point`` mm long from the neck to the tip, which reaches ``lean`` mm farther
    forward than the tip of a square front."""

    shape: FrontShape
    point: float
    lean: float


@dataclass(frozen=True, slots=True)
class CollarLines:
    """The lines of half a collar, counter-clockwise: ``neck`` from the center back to the front, ``end`` to
    the tip (None where the front is round), ``outer`` back to the center, ``center``."""

    neck: Path
    end: Path | None
    outer: Path
    center: Path


def collar_lines(neck: Path, width: float, front: Front, turn: float) -> tuple[CollarLines, CollarLines]:
    """The under and the upper layer on the left of the neck edge, ``width`` mm wide at the center back.

    ``turn`` mm are added on the outer edges of the upper one, which keep their shape. StepRefused
    ``collar-front-short``, ``collar-crosses``.
    """
    try:
        held, led = _fairest(neck, width, front)
        upper = _led(neck, width, front, turn, held)
    except GeometryError as error:
        raise StepRefused("collar-crosses", width=width) from error
    return _lines(neck, front, led.path), _lines(neck, front, upper.path)


def _fairest(neck: Path, width: float, front: Front) -> tuple[tuple[float, ...], FairCurve]:
    """The first of the ways to hold the outer edge that makes it fair, else the fairest."""
    best: tuple[tuple[float, ...], FairCurve] | None = None
    for held in _HELD:
        led = _led(neck, width, front, 0.0, held)
        if best is None or len(led.violations) < len(best[1].violations):
            best = held, led
        if led.is_fair:
            break
    assert best is not None
    return best


def _lines(neck: Path, front: Front, led: Path) -> CollarLines:
    if front.shape == "round":
        outer = led.joined(Path.line(led.end, neck.end)).reversed()
        return CollarLines(neck, None, outer, Path.line(outer.end, neck.start))
    outer = led.reversed()
    return CollarLines(neck, Path.line(neck.end, outer.start), outer, Path.line(outer.end, neck.start))


def _led(neck: Path, width: float, front: Front, turn: float, held: tuple[float, ...]) -> FairCurve:
    """The outer edge from the center on: parallel to the neck behind, then led to the tip, or round to where
    a round front leaves the front edge."""
    behind = offset(neck.between(0.0, neck.length * (1.0 - _BLEND)), width + turn)
    along = behind.tangent_at(behind.length)
    tip = _tip(neck, front, turn)
    if front.shape == "round":
        stop, arriving = neck.end.lerp(tip, 1.0 - _ROUNDED), (neck.end - tip).direction()
        bend = Path.of(curve_between(behind.end, along.direction(), stop, arriving))
        points = [bend.point_at(bend.length * share) for share in (0.5, 1.0)]
        last: float | None = arriving
    else:
        bend = Path.of(curve_between(behind.end, along.direction(), tip, _arriving(behind.end, along, tip)))
        points = [bend.point_at(bend.length * share) for share in (0.4, 0.7, 1.0)]
        last = None
    begin = [behind.point_at(behind.length * share) for share in held]
    return fair_curve([*begin, *points], behind.tangent_at(0.0).direction(), last)


def _tip(neck: Path, front: Front, turn: float) -> Point:
    """Where the front edge ends: as far from the neck as the point is long, forward by the lean."""
    ahead = neck.tangent_at(neck.length)
    if front.point <= abs(front.lean):
        raise StepRefused("collar-front-short", point=front.point, lean=front.lean)
    out = math.sqrt(front.point**2 - front.lean**2)
    return neck.end + ahead.perpendicular() * (out + turn) + ahead * (front.lean + turn)


def _arriving(begin: Point, along: Point, tip: Point) -> float:
    """The direction at the tip of an arc that leaves along the parallel."""
    chord = (tip - begin).unit()
    return chord.direction() + Point(along.dot(chord), along.cross(chord)).direction()
