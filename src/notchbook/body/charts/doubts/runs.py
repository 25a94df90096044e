"""Whether a value breaks the run of its row.

Steps of a chart need not be even, and in published charts they are not; but they change slowly. A value that
lies off the line through its neighbors by more than the steps ever bend elsewhere is asked about.
"""

import statistics
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.body.charts.doubts.gaps import gap_places
from notchbook.body.measure_table import measure_entry
from notchbook.body.quantity_words import quantity_text
from notchbook.errors import InputError
from notchbook.units import LengthStyle

LEAST_VALUES: Final = 5
"""Values of a row below which no run can be seen."""

MOST_BROKEN: Final = 3
"""Values asked about in one row; where more break the run there is none."""

BEND_FACTOR: Final = 4.0
"""So many times the usual bend of a row is too much, and so is the share BEND_SHARE of its usual step: what
published tables stay below, by our own trials on those of tests/reference/charts (common practice)."""

BEND_SHARE: Final = 0.4

FLOOR_SHARE: Final = 0.8
"""Share of the tolerance of a second reading that every row may bend, however even it is."""


@dataclass(frozen=True, slots=True)
class _Point:
    at: float
    value: float
    label: str


def run_doubts(
    chart: SizeChart, style: LengthStyle, skip: Collection[tuple[str, str]] = ()
) -> Iterator[ChartDoubt]:
    """A doubt for every value that breaks its run, with what would follow it; ``skip``: cells left out."""
    places = _places(chart)
    for key in chart.keys:
        points = [
            _Point(at, value, label)
            for at, label, value in zip(places, chart.labels, chart.row(key), strict=True)
            if value is not None and (key, label) not in skip
        ]
        for point, expected in _breaking(points, FLOOR_SHARE * measure_entry(key).repeat):
            entry = measure_entry(key)
            problem = InputError(
                "chart-cell-off-run",
                label=entry.label,
                size=point.label,
                given=quantity_text(entry, point.value, style),
                expected=quantity_text(entry, expected, style),
                where="",
            )
            yield ChartDoubt("check", (key,), (point.label,), problem, expected)


def _places(chart: SizeChart) -> tuple[float, ...]:
    """Where each size stands; a missing size is counted."""
    gaps = gap_places(chart)
    place, places = 0.0, []
    for at in range(len(chart.sizes)):
        places.append(place)
        place += 2.0 if at in gaps else 1.0
    return tuple(places)


def _breaking(points: list[_Point], floor: float) -> Iterator[tuple[_Point, float]]:
    for _ in range(MOST_BROKEN):
        if len(points) < LEAST_VALUES:
            return
        worst = min(range(len(points)), key=lambda at: _roughness(_without(points, at)))
        rest = _without(points, worst)
        allowed = _allowed(rest, floor)
        expected = _expected(rest, points[worst].at)
        if abs(points[worst].value - expected) <= allowed * _doubtfulness(points[worst].at, rest):
            return
        yield points[worst], expected
        points = rest


def _doubtfulness(at: float, points: Sequence[_Point]) -> float:
    """How much less sure a place beyond the ends is: half as much again, times its distance in sizes."""
    beyond = max(points[0].at - at, at - points[-1].at, 0.0)
    return max(1.5 * beyond, 1.0)


def _without(points: Sequence[_Point], at: int) -> list[_Point]:
    return [*points[:at], *points[at + 1 :]]


def _bends(points: Sequence[_Point]) -> list[float]:
    """How far each inner value lies off the line between its neighbors."""
    return [
        middle.value - _on_line(left, right, middle.at)
        for left, middle, right in zip(points, points[1:], points[2:], strict=False)
    ]


def _roughness(points: Sequence[_Point]) -> float:
    return sum(bend * bend for bend in _bends(points))


def _allowed(points: Sequence[_Point], floor: float) -> float:
    bend = statistics.median(abs(bend) for bend in _bends(points))
    step = statistics.median(
        abs(right.value - left.value) / (right.at - left.at) for left, right in pairwise(points)
    )
    return max(BEND_FACTOR * bend, BEND_SHARE * step, floor)


def _expected(points: Sequence[_Point], at: float) -> float:
    """The value of the run at a place between two points, or beyond the ends."""
    right = next((index for index, point in enumerate(points) if point.at > at), len(points) - 1)
    right = max(right, 1)
    return _on_line(points[right - 1], points[right], at)


def _on_line(left: _Point, right: _Point, at: float) -> float:
    return left.value + (right.value - left.value) * (at - left.at) / (right.at - left.at)
