"""Whether a size is missing: a step about twice as large as its neighbors, over most rows."""

import statistics
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.body.charts.doubts.label_order import missing_label
from notchbook.errors import InputError

LEAST_SIZES: Final = 4

GAP_RATIO: Final = 1.6
"""A step so many times the larger of its neighbors' leaves out a size. A missing size gives about 2; steps of
published charts that grow with the size reach 1.5 (common practice, no source)."""

GAP_RATIO_OTHERS: Final = 1.4
"""The same for the middle one of the other rows, which are rounded and even less even."""


GAP_RATIO_LABELS: Final = 1.3
"""A step so many times the mean of its neighbors' leaves out a size where the labels leap there too: what
published charts give when one of their sizes is taken out (our own trials on tests/reference/charts)."""


def gap_doubts(chart: SizeChart) -> Iterator[ChartDoubt]:
    """A doubt for every place where a size seems to be missing."""
    for at in gap_places(chart):
        left, right = chart.labels[at], chart.labels[at + 1]
        label = missing_label(chart.labels, at)
        problem = InputError(
            "chart-size-missing", left=left, right=right, missing=label and f": {label}", where=""
        )
        yield ChartDoubt("check", (chart.main_measure,), (left, right), problem)


def gap_places(chart: SizeChart) -> tuple[int, ...]:
    """Every place (0: between the first and the second size) at which a size seems to be missing."""
    main = _steps(chart.row(chart.main_measure))
    if main is None or len(chart.sizes) < LEAST_SIZES:
        return ()
    others = [steps for key in chart.keys if key != chart.main_measure and (steps := _rising(chart, key))]
    return tuple(
        at
        for at in range(len(main))
        if _is_gap(main, others, at) or _is_gap_by_labels(main, others, at, chart.labels)
    )


def _is_gap_by_labels(
    main: Sequence[float], others: Sequence[Sequence[float]], at: int, labels: Sequence[str]
) -> bool:
    if not missing_label(labels, at):
        return False
    ratios = [_mean_ratio(steps, at) for steps in (main, *others)]
    return _mean_ratio(main, at) >= GAP_RATIO_LABELS and statistics.median(ratios) >= GAP_RATIO_LABELS


def _is_gap(main: Sequence[float], others: Sequence[Sequence[float]], at: int) -> bool:
    if _ratio(main, at) < GAP_RATIO:
        return False
    ratios = [_ratio(steps, at) for steps in others]
    return not ratios or statistics.median(ratios) >= GAP_RATIO_OTHERS


def _ratio(steps: Sequence[float], at: int) -> float:
    """The step against the larger of its two neighbors; at an end against the nearest two."""
    near = [at - 1, at + 1]
    if at == 0:
        near = [1, 2]
    elif at == len(steps) - 1:
        near = [at - 1, at - 2]
    beside = [steps[other] for other in near]
    # Where a step beside it falls, a value is wrong rather than a size missing.
    return steps[at] / max(beside) if min(beside) > 0 else 0.0


def _mean_ratio(steps: Sequence[float], at: int) -> float:
    """The step against the mean of the steps beside it."""
    mean = statistics.mean(steps[other] for other in (at - 1, at + 1) if 0 <= other < len(steps))
    return steps[at] / mean if mean > 0 else 0.0


def _rising(chart: SizeChart, key: str) -> Sequence[float] | None:
    steps = _steps(chart.row(key))
    return steps if steps and all(step > 0 for step in steps) else None


def _steps(row: Sequence[float | None]) -> Sequence[float] | None:
    known = [value for value in row if value is not None]
    if len(known) < len(row):
        return None
    return [after - before for before, after in pairwise(known)]
