"""A size chart from an imported table whose sizes stand side by side."""

from dataclasses import replace
from typing import Final

from notchbook.body import MeasureSet
from notchbook.body.charts import SizeChart
from notchbook.body.importing import Preview
from notchbook.errors import InputError

MAIN_MEASURES: Final = ("bust_girth", "hip_girth", "waist_girth")
"""What the sizes of a chart step by, the likeliest first (common practice, no source)."""


def imported_chart(shown: Preview, name: str) -> SizeChart:
    """One chart of all sets of the preview, in the order of the table; their names are the labels.

    Every row must be good: a chart with a size left out is another chart. Refused: as
    :meth:`Preview.sets` says, and what :class:`SizeChart` refuses (no name, a label that stands twice).
    """
    sets = shown.sets()
    if not sets:
        raise InputError("chart-empty", name=name, where="")
    sizes = tuple(_size(measures) for measures in sets)
    known = {key for size in sizes for key in size.values}
    main = next((key for key in MAIN_MEASURES if key in known), min(known))
    return SizeChart(
        name=name,
        sizes=sizes,
        population=sizes[0].population,
        source=f"imported from {shown.source or 'a list'}",
        status="imported",
        main_measure=main,
    )


def _size(measures: MeasureSet) -> MeasureSet:
    label = measures.label_size or measures.name.removeprefix("Size ").removeprefix("size ")
    return replace(measures, kind="chart", label_size=label)
