"""Whether the rows rise that must rise from size to size."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.body.measure_table import measure_entry
from notchbook.errors import InputError

ALWAYS_RISE: Final = (
    "upper_bust_girth",
    "bust_girth",
    "under_bust_girth",
    "waist_girth",
    "top_hip_girth",
    "belly_girth",
    "hip_girth",
    "thigh_girth",
    "upper_arm_girth",
)
"""Girths that tell sizes apart (common practice, no source). Other girths and widths may stand still between
two sizes, as those of head, wrist and ankle do in published charts; lengths may also fall."""

NEVER_FALL: Final = ("across_back", "across_chest", "shoulder_width_back", "bust_point_width")
"""Widths that no chart lets fall (common practice, no source)."""


def rising_doubts(chart: SizeChart) -> Iterator[ChartDoubt]:
    """One doubt for every row that falls, or stands still where it must rise, with all the places."""
    for key in chart.keys:
        entry = measure_entry(key)
        strictly = key == chart.main_measure or key in ALWAYS_RISE
        if not strictly and entry.kind != "girth" and key not in NEVER_FALL:
            continue
        pairs = list(_falling_pairs(chart, key, strictly=strictly))
        if pairs:
            sizes = tuple(dict.fromkeys(label for pair in pairs for label in pair))
            words = ", ".join(f"{left} to {right}" for left, right in pairs)
            problem = InputError("chart-row-falls", label=entry.label, places=words, where="")
            yield ChartDoubt("check", (key,), sizes, problem)


def _falling_pairs(chart: SizeChart, key: str, *, strictly: bool) -> Iterator[tuple[str, str]]:
    row = chart.row(key)
    known = [(label, value) for label, value in zip(chart.labels, row, strict=True) if value is not None]
    for (left, low), (right, high) in pairwise(known):
        if high < low or (strictly and high == low):
            yield left, right
