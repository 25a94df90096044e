"""Where a value stands among the sizes of a chart."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final, Literal

from notchbook.body.charts.chart import SizeChart
from notchbook.body.measure_table import measure_entry

LEAST_STEP: Final = 0.5
"""Below half of what two readings differ by, a step is lost in the tape (common practice, no source)."""

Beyond = Literal["", "below", "above"]

_WHOLE_NUMBER: Final = re.compile(r"[1-9]\d*|0")


@dataclass(frozen=True, slots=True)
class SizePosition:
    """A value in mm (degrees, kg) among the sizes.

    ``place`` counts steps from the first size (0); 3.4 lies four tenths of the way from the fourth to the
    fifth, below 0 it is smaller than the first. ``lower`` and ``upper`` are the sizes on both sides (the
    nearest two where it lies ``beyond`` the chart), ``nearest`` the nearer of them. ``by`` is how far it lies
    beyond the last size in the unit of the value, else 0. ``share`` is how far it lies from ``lower`` to
    ``upper``, 0 to 1.
    """

    key: str
    value: float
    place: float
    lower: str
    upper: str
    nearest: str
    beyond: Beyond = ""
    by: float = 0.0
    share: float = 0.0

    @property
    def number(self) -> str:
        """Between labels that are numbers, the size as a number, ``12.4``; empty elsewhere."""
        if self.beyond or not (_WHOLE_NUMBER.fullmatch(self.lower) and _WHOLE_NUMBER.fullmatch(self.upper)):
            return ""
        low, high = float(self.lower), float(self.upper)
        return f"{low + self.share * (high - low):.1f}"

    @property
    def words(self) -> str:
        """``between 12 and 14, nearer 12``, ``below 8``, ``above 20``; :attr:`number` has the decimal."""
        if self.beyond:
            return f"{self.beyond} {self.nearest}"
        if self.lower == self.upper:
            return self.nearest
        return f"between {self.lower} and {self.upper}, nearer {self.nearest}"


def size_position(chart: SizeChart, key: str, value: float) -> SizePosition | None:
    """Where the value stands, or None where the row does not tell sizes apart.

    Between two sizes it is read off the straight line; beyond the ends the nearest step is drawn on. A row
    tells sizes apart when it has at least two values, rises from each to the next, and its mean step is at
    least LEAST_STEP of what two readings of the tape may differ by.
    """
    known = [(place, row) for place, row in enumerate(chart.row(key)) if row is not None]
    if len(known) < 2 or any(after <= before for (_, before), (_, after) in pairwise(known)):
        return None
    mean_step = (known[-1][1] - known[0][1]) / (known[-1][0] - known[0][0])
    if mean_step < LEAST_STEP * measure_entry(key).repeat:
        return None
    at = _segment([row for _, row in known], value)
    (left, low), (right, high) = known[at], known[at + 1]
    place = left + (right - left) * (value - low) / (high - low)
    return _position(chart, key, value, place, known)


def _segment(values: Sequence[float], value: float) -> int:
    """The step on which the value lies; the first or last one beyond the ends."""
    inside = sum(value >= other for other in values) - 1
    return min(max(inside, 0), len(values) - 2)


def _position(
    chart: SizeChart, key: str, value: float, place: float, known: Sequence[tuple[int, float]]
) -> SizePosition:
    labels = chart.labels
    (first, smallest), (last, largest) = known[0], known[-1]
    if value < smallest:
        return SizePosition(
            key, value, place, labels[first], labels[first], labels[first], "below", smallest - value
        )
    if value > largest:
        return SizePosition(
            key, value, place, labels[last], labels[last], labels[last], "above", value - largest
        )
    exact = next((at for at, row in known if row == value), None)
    if exact is not None:
        return SizePosition(key, value, float(exact), labels[exact], labels[exact], labels[exact])
    lower = max(at for at, row in known if row < value)
    upper = min(at for at, row in known if row > value)
    share = (place - lower) / (upper - lower)
    nearest = lower if share <= 0.5 else upper
    return SizePosition(key, value, place, labels[lower], labels[upper], labels[nearest], share=share)
