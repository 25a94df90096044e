"""A stretch of an edge that is drawn anew over the slashes within it."""

import cmath
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.errors import GeometryError
from notchbook.geometry import Line, Path, Point, Segment, Transform, direction
from notchbook.geometry.offset_fit import fitted_cubic
from notchbook.geometry.solve import solve_rising
from notchbook.style.fullness.rising_curve import RisingCurve

NEAR = 1e-6
"""mm below which two places along an edge are one."""

_STEPS = 72
"""Steps along one run: a fold of 9, so that halved runs are compared at ten places."""

_TARGETS = 9

_FIT = 0.005
"""mm by which a cubic may stray from the line that it stands for."""

_MOST_LATER = 12.0
"""Greatest shift of the bends: nearly all of them then lie in a tenth of the way. Own judgment."""

_ROUNDS = 20
_CLOSED = 1e-10
"""mm by which the end of a stretch may miss its place before it is set there."""

_COARSE = 144
"""Steps of the walk on which the shift of the bends is sought."""

_ENOUGH = 1e-3
"""mm beside its place at which a line needs no shift of its bends."""

_STRAIGHT = 1e-9
"""Radians of turn below which a run is one straight line."""

_GAUSS = ((-math.sqrt(0.6), 5.0 / 18.0), (0.0, 8.0 / 18.0), (math.sqrt(0.6), 5.0 / 18.0))
"""Nodes on [-1, 1] and weights (sum 1) of Gauss's rule with three points."""


@dataclass(frozen=True, slots=True)
class _Node:
    """A place along the stretch as a share 0..1, how far the new line goes there, mm, and its direction."""

    share: float
    gone: float
    heading: float


@dataclass(frozen=True, slots=True)
class _Run:
    """The stretch between two corners of the old edge: the nodes of each step, and the directions at the
    steps' ends with their shares of the stretch."""

    steps: tuple[tuple[_Node, ...], ...]
    ends: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Stretch:
    """Along the old ``edge`` from ``begin`` to ``finish``: what is added to its direction (``turn``, radians)
    and what opens, as ``along`` and ``aside`` (mm): ``along_edge`` and not square to it, so that it keeps its
    slopes, else along x and y of the uncut piece, so that it keeps its heights.

    ``start`` and ``goal`` are the ends of the new line. ``inside`` says of both whether the old edge goes on
    there: it must be met without a sudden bend. With ``later`` above 0 the old edge's bends come later along
    the new line, below 0 sooner."""

    edge: Path
    begin: float
    finish: float
    turn: RisingCurve
    along: RisingCurve
    aside: RisingCurve
    start: Point
    goal: Point
    inside: tuple[bool, bool]
    along_edge: bool
    later: float = 0.0

    @staticmethod
    def of(
        edge: Path,
        places: Sequence[float],
        knots: Sequence[float],
        motions: Sequence[Transform],
        *,
        along_edge: bool,
    ) -> "Stretch":
        """The stretch over the slashes at ``places``, each drawn out between the two ``knots`` beside it."""
        turns, along, aside = [_turn(motions[0])], [0.0], [0.0]
        for place, (before, after) in zip(places, pairwise(motions), strict=True):
            turned = turned_by(before, after)
            gap = _opened(edge, place, (before, after), turns[-1] + turned / 2.0)
            if along_edge:
                gap = Point(gap.dot(edge.tangent_at(place)), 0.0)
            turns.append(turns[-1] + turned)
            along.append(along[-1] + gap.x)
            aside.append(aside[-1] + gap.y)
        begin, finish = knots[0], knots[-1]
        inside = (begin > NEAR, finish < edge.length - NEAR)
        passed = [sum(place < knot for place in places) for knot in knots]
        level = inside if along_edge else (True, True)
        return Stretch(
            edge,
            begin,
            finish,
            RisingCurve.through(knots, [turns[count] for count in passed], level=inside),
            RisingCurve.through(knots, [along[count] for count in passed], level=level),
            RisingCurve.through(knots, [aside[count] for count in passed], level=level),
            motions[0].apply(edge.point_at(begin)),
            motions[-1].apply(edge.point_at(finish)),
            inside,
            along_edge,
        )

    def drawn(self) -> tuple[Segment, ...]:
        """As few cubics as follow the new line, split where the old edge had a corner."""
        corners = tuple(
            place for place in self.edge.corners(0.5) if self.begin + NEAR < place < self.finish - NEAR
        )
        if not corners and not any(self.inside):
            return replace(self, later=self._bending_later())._drawn(corners)
        return self._drawn(corners)

    def _bending_later(self) -> float:
        """How much later (or sooner) the bends of the old edge must come for the line to reach its end.

        A hollow waist that is moved apart sideways rises as much over a longer way: it bends later, and still
        one way only. Nothing where that alone cannot do it. Found on a coarse walk; what that leaves open is
        far below a tenth of a pencil line and closed afterward.
        """
        goal = self._goal()
        old = self._coarse_directions()
        shares = [(index + 0.5) / _COARSE for index in range(_COARSE)]
        span = self.finish - self.begin
        places = [self.begin + span * share for share in shares]
        opened = [complex(self.along.slope(place), self.aside.slope(place)) for place in places]
        turned = [cmath.exp(1j * self.turn.at(place)) for place in places]

        def aside(later: float) -> float:
            reached = 0j
            for share, gap, turn in zip(shares, opened, turned, strict=True):
                way = cmath.exp(1j * _between(old, _shifted(share, later)))
                reached += turn * (way * (1.0 + gap) if self.along_edge else way + gap)
            return (reached * span / _COARSE * goal.conjugate()).imag / abs(goal)

        if abs(aside(0.0)) <= _ENOUGH:
            return 0.0
        try:
            return solve_rising(aside, 0.0, 0.25, -_MOST_LATER, _MOST_LATER)
        except GeometryError:
            return 0.0

    def _coarse_directions(self) -> list[float]:
        """The directions of the old edge at even steps, radians, without jumps."""
        found: list[float] = []
        for index in range(_COARSE + 1):
            place = self.begin + (self.finish - self.begin) * index / _COARSE
            angle = math.radians(self.edge.tangent_at(place).direction())
            found.append(_unwound(angle, found[-1] if found else angle))
        return found

    def _goal(self) -> complex:
        return complex(self.goal.x - self.start.x, self.goal.y - self.start.y)

    def _drawn(self, corners: tuple[float, ...]) -> tuple[Segment, ...]:
        runs = [self._run(low, high) for low, high in pairwise((self.begin, *corners, self.finish))]
        bend, longer = self._closed(runs)
        places = list(self._walked(runs, bend, longer))
        places[-1][-1] = self.goal
        drawn: list[Segment] = []
        for run, way in zip(runs, places, strict=True):
            headings = [heading + bend * self._bump(share) for share, heading in run.ends]
            drawn.extend(_fitted(way, headings, 0, len(way) - 1))
        return tuple(drawn)

    def _run(self, low: float, high: float) -> _Run:
        step = (high - low) / _STEPS
        near = self._heading(low, 0.0, "after")
        steps: list[tuple[_Node, ...]] = []
        ends = [(self._share(low), near)]
        for index in range(_STEPS):
            middle = low + step * (index + 0.5)
            nodes: list[_Node] = []
            for node, weight in _GAUSS:
                place = middle + node * step / 2.0
                near = self._heading(place, near)
                gone = weight * step * abs(self._velocity(place))
                nodes.append(_Node(self._share(place), gone, near))
            steps.append(tuple(nodes))
            place = low + step * (index + 1)
            ends.append((self._share(place), self._heading(place, near)))
        return _Run(tuple(steps), tuple(ends))

    def _share(self, place: float) -> float:
        return (place - self.begin) / (self.finish - self.begin)

    def _velocity(self, place: float, side: str = "before") -> complex:
        """Where the new line goes while the old edge goes on by 1 mm, before it is turned, mm."""
        old = self.begin + (self.finish - self.begin) * _shifted(self._share(place), self.later)
        tangent = self.edge.tangent_at(old, "after" if side == "after" else "before")
        way = complex(tangent.x, tangent.y)
        opened = complex(self.along.slope(place), self.aside.slope(place))
        return way * (1.0 + opened) if self.along_edge else way + opened

    def _heading(self, place: float, near: float, side: str = "before") -> float:
        """The direction of the new line, radians, whole turns taken off to be nearest to another."""
        return _unwound(cmath.phase(self._velocity(place, side)) + self.turn.at(place), near)

    def _closed(self, runs: Sequence[_Run]) -> tuple[float, float]:
        """The small bend (radians) and stretch (share) with which the line ends where the moved part begins.

        Two unknowns, by Newton's rule. The bend is nothing at both ends.
        """
        goal = self._goal()
        bend, longer = 0.0, 0.0
        for _ in range(_ROUNDS):
            reached, by_bend = 0j, 0j
            for node in (node for run in runs for step in run.steps for node in step):
                bump = self._bump(node.share)
                part = node.gone * cmath.exp(1j * (node.heading + bend * bump))
                reached += part
                by_bend += 1j * bump * part
            missing = goal - reached * (1.0 + longer)
            if abs(missing) <= _CLOSED:
                break
            steps = _solved(by_bend * (1.0 + longer), reached, missing)
            bend, longer = bend + steps[0], longer + steps[1]
        return bend, longer

    def _walked(self, runs: Sequence[_Run], bend: float, longer: float) -> Iterator[list[Point]]:
        """The places of the new line at the ends of all steps, run by run."""
        here = complex(self.start.x, self.start.y)
        for run in runs:
            way = [Point(here.real, here.imag)]
            for step in run.steps:
                for node in step:
                    angle = node.heading + bend * self._bump(node.share)
                    here += (1.0 + longer) * node.gone * cmath.exp(1j * angle)
                way.append(Point(here.real, here.imag))
            yield way

    def _bump(self, share: float) -> float:
        """Nothing at both ends and 1 at its highest; without a slope too where the old edge goes on."""
        rest = 1.0 - share
        if all(self.inside):
            return 16.0 * (share * rest) ** 2
        if any(self.inside):
            return 6.75 * share * rest * (share if self.inside[0] else rest)
        return 4.0 * share * rest


def _between(values: Sequence[float], share: float) -> float:
    """The value at a share of the way along even steps."""
    place = share * (len(values) - 1)
    index = min(int(place), len(values) - 2)
    return values[index] + (values[index + 1] - values[index]) * (place - index)


def _shifted(share: float, later: float) -> float:
    """A share of the way, 0 and 1 kept, smaller between the greater ``later`` is."""
    if later == 0.0:
        return share
    return min(max(math.expm1(later * share) / math.expm1(later), 0.0), 1.0)


def turned_by(before: Transform, after: Transform) -> float:
    """Radians by which the motion ``after`` turns more than ``before``."""
    return _unwound(_turn(after) - _turn(before), 0.0)


def _opened(edge: Path, place: float, motions: tuple[Transform, Transform], turn: float) -> Point:
    """What opens at a slash, mm, seen as the uncut piece lay: turned back by so many radians."""
    point = edge.point_at(place)
    gap = motions[1].apply(point) - motions[0].apply(point)
    return gap.rotated(-math.degrees(turn))


def _solved(first: complex, second: complex, goal: complex) -> tuple[float, float]:
    """x and y of x * first + y * second = goal, as vectors; nothing where the two run the same way."""
    size = first.real * second.imag - first.imag * second.real
    if size == 0.0:
        return 0.0, 0.0
    return (
        (goal.real * second.imag - goal.imag * second.real) / size,
        (first.real * goal.imag - first.imag * goal.real) / size,
    )


def _turn(motion: Transform) -> float:
    return math.atan2(motion.b, motion.a)


def _unwound(angle: float, near: float) -> float:
    """The angle, whole turns taken off, so that it lies nearest to another."""
    return angle + 2.0 * math.pi * round((near - angle) / (2.0 * math.pi))


def _fitted(way: Sequence[Point], headings: Sequence[float], low: int, high: int) -> list[Segment]:
    """Cubics along the places of a line, halved until they fit; a line where it is straight."""
    chord = way[high] - way[low]
    straight = math.radians(chord.direction())
    if all(abs(_unwound(headings[i], straight) - straight) <= _STRAIGHT for i in range(low, high + 1)):
        return [Line(way[low], way[high])]
    stride = max((high - low) // _TARGETS, 1)
    chosen = range(low, high + 1, stride)
    fitted = fitted_cubic(
        [way[index] for index in chosen],
        [direction(math.degrees(headings[index])) for index in chosen],
    )
    if fitted is not None and (fitted[1] <= _FIT or stride == 1):
        return [fitted[0]]
    if stride == 1:
        return [Line(way[low], way[high])]
    middle = (low + high) // 2
    return [*_fitted(way, headings, low, middle), *_fitted(way, headings, middle, high)]
