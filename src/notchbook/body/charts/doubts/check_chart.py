"""Everything that is to be asked about a size chart before it is used."""

from typing import Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.body.charts.doubts.gaps import gap_doubts
from notchbook.body.charts.doubts.impossible import impossible_doubts
from notchbook.body.charts.doubts.label_order import label_doubts
from notchbook.body.charts.doubts.mixed_units import unit_doubts
from notchbook.body.charts.doubts.proportions import proportion_doubts
from notchbook.body.charts.doubts.rising import rising_doubts
from notchbook.body.charts.doubts.runs import run_doubts
from notchbook.units import LengthStyle

_PLAIN_STYLE: Final = LengthStyle("cm")


def check_chart(
    chart: SizeChart, style: LengthStyle = _PLAIN_STYLE, *, people: bool = True
) -> tuple[ChartDoubt, ...]:
    """All doubts about a chart, stops first; none when its rows run well.

    Looked at: units, values that no body has, labels, missing sizes, rows that fall, values that break
    their run, and with ``people`` (and a chart that names its population) whether the rows go together.
    Steps that differ from size to size are fine. A value is asked about once: what another unit explains is
    not asked about again.
    """
    units = unit_doubts(chart)
    skip = {
        (key, label)
        for key in chart.keys
        for label in chart.labels
        if any(doubt.level == "stop" and doubt.covers(key, label) for doubt in units)
    }
    broken = tuple(run_doubts(chart, style, skip))
    asked = (*units, *broken)
    falling = (doubt for doubt in rising_doubts(chart) if not _asked_already(doubt, asked))
    found = [*units, *broken, *falling, *label_doubts(chart), *gap_doubts(chart)]
    found += [doubt for doubt in impossible_doubts(chart, style) if not _asked_already(doubt, units)]
    if people and not any(doubt.level == "stop" for doubt in found):
        found += proportion_doubts(chart)
    return tuple(sorted(found, key=lambda doubt: doubt.level != "stop"))


def _asked_already(doubt: ChartDoubt, others: tuple[ChartDoubt, ...]) -> bool:
    """Whether another doubt points at one of the cells of this one already."""
    return any(other.covers(doubt.keys[0], label) for other in others for label in doubt.sizes)
