"""Which size of a chart goes over the girth that a garment must be drawn over."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.comparing.garment_weights import Garment
from notchbook.body.charts.comparing.size_position import size_position
from notchbook.body.measure_set import MeasureSet

GOES_OVER: Final[Mapping[Garment, str]] = MappingProxyType(
    {"top": "bust_girth", "dress": "bust_girth", "skirt": "hip_girth", "trousers": "hip_girth"}
)
"""The girth by which a pattern is taken: a waist is taken in, a bust or hip that is too small is hardly let
out (common practice, no source)."""

SLACK: Final = 5.0
"""mm by which a size may be smaller than the body and still go over it: half of what two readings of such a
girth may differ by (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class GoesOver:
    """The smallest size that goes over the body at one girth, mm.

    ``size`` is empty where even the ``last`` size is too small, by ``short_by``. ``off`` is the body's girth
    minus that of the nearest size: above 0 the nearest is too small. None where it has no value there.
    """

    key: str
    size: str
    last: str
    short_by: float
    off: float | None


def goes_over(measures: MeasureSet, chart: SizeChart, garment: Garment, nearest: int) -> GoesOver | None:
    """The smallest size that goes over; None where the girth is not known on both or tells no sizes apart.

    ``nearest`` is the place of the nearest size in the chart, from 0.
    """
    key = GOES_OVER[garment]
    measure, row = measures.find(key), chart.row(key)
    if measure is None or size_position(chart, key, measure.value) is None:
        return None
    known = [(label, value) for label, value in zip(chart.labels, row, strict=True) if value is not None]
    last, largest = known[-1]
    at_nearest = row[nearest]
    return GoesOver(
        key=key,
        size=next((label for label, value in known if value >= measure.value - SLACK), ""),
        last=last,
        short_by=max(measure.value - largest, 0.0),
        off=None if at_nearest is None else measure.value - at_nearest,
    )
