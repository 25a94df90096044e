"""Whether the values of a size go together as they do on people."""

from collections.abc import Iterator
from typing import Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.body.measure_table import measure_entry
from notchbook.errors import InputError

LEAST_SHARE: Final = 0.5
"""Share of the sizes in which a row must be unusual before it is asked about (common practice, no source): a
row that is another measure than its name says is off in all, and a single size is found by its run. In a
published chart for civilians a row of girths may leave the usual in its largest sizes."""


def proportion_doubts(chart: SizeChart) -> Iterator[ChartDoubt]:
    """A doubt for every row that is rare among people who have the other values of its sizes.

    Without a population nothing is said: nobody is foretold from people who are not named.
    """
    if chart.population is None:
        return
    # Loaded only here: the model of a population needs numerics, which no other look at a chart does.
    from notchbook.body.population import population

    model = population(chart.population)
    found: dict[str, list[tuple[str, float]]] = {}
    for size in chart.sizes:
        for score in model.scores(size):
            if abs(score.z) > model.look_again:
                found.setdefault(score.key, []).append((size.label_size, score.z))
    for key, sizes in found.items():
        if len(sizes) >= LEAST_SHARE * len(chart.sizes):
            labels = tuple(label for label, _ in sizes)
            problem = InputError(
                "chart-proportion",
                label=measure_entry(key).label,
                sizes=labels,
                way="large" if sum(z for _, z in sizes) > 0 else "small",
                people=model.words,
                where="",
            )
            yield ChartDoubt("check", (key,), labels, problem)
