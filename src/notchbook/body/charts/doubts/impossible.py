"""Whether a value is one that no body has."""

from collections.abc import Iterator

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.body.doubts.limits import refuse_impossible
from notchbook.errors import InputError
from notchbook.units import LengthStyle, located, quoted


def impossible_doubts(chart: SizeChart, style: LengthStyle) -> Iterator[ChartDoubt]:
    """A stop for every value that no body has, a child's or an adult's."""
    for size in chart.sizes:
        for key, measure in size.values.items():
            try:
                refuse_impossible(key, measure.value, style)
            except InputError as error:
                problem = located(error, f"size {quoted(size.label_size)}")
                yield ChartDoubt("stop", (key,), (size.label_size,), problem)
