"""Size charts for tests: a plain one that runs evenly, and the published ones of tests/reference/charts."""

from house import ROOT
from notchbook.body import Measure, MeasureSet
from notchbook.body.charts import SizeChart, read_chart

PUBLISHED = sorted((ROOT / "tests" / "reference" / "charts").glob("*.csv"))

EVEN_ROWS = {
    "bust_girth": (800.0, 40.0),
    "waist_girth": (640.0, 40.0),
    "hip_girth": (900.0, 35.0),
    "back_waist_length": (400.0, 3.0),
}
"""Key -> the first value and the step, mm."""


def even_chart(sizes: int = 7, first_label: int = 34) -> SizeChart:
    """A chart with even steps, labels 34, 36, 38 ..."""
    return SizeChart(
        "Even",
        tuple(
            MeasureSet(
                "size",
                {key: Measure(start + at * step, "chart") for key, (start, step) in EVEN_ROWS.items()},
                "chart",
                label_size=str(first_label + 2 * at),
            )
            for at in range(sizes)
        ),
    )


def published(name: str) -> SizeChart:
    """A published chart by the name of its file."""
    return read_chart(ROOT / "tests" / "reference" / "charts" / f"{name}.csv")
