"""The size chart that a preview gives, when its sets are the sizes of one."""

from typing import Final

from notchbook.body.charts import ChartDoubt, SizeChart, check_chart
from notchbook.body.importing.preview_rows import Preview
from notchbook.units import LengthStyle

_STEPPED_BY: Final = ("bust_girth", "waist_girth", "hip_girth")
"""The measures that sizes step by, in this order, where the chart has them (common practice)."""

_LONGEST_NAME: Final = 60


def gives_chart(preview: Preview) -> bool:
    """Whether the sets are sizes of one chart: all of that kind, each with a label of its own."""
    sets = [row.measures for row in preview.rows if row.measures is not None and row.choice != "skip"]
    labels = {measures.label_size for measures in sets if measures.kind == "chart" and measures.label_size}
    return bool(sets) and len(labels) == len(sets)


def preview_chart(preview: Preview, *, only_good: bool = False) -> SizeChart:
    """The chart; refused as :meth:`Preview.sets` and :class:`SizeChart` refuse."""
    sets = preview.sets(only_good=only_good)
    known = {key for measures in sets for key in measures.values}
    name = preview.source[:_LONGEST_NAME] or "Imported chart"
    return SizeChart(
        name,
        sets,
        population=preview.mapping.population,
        source=f"imported from {name}",
        grade="as imported",
        status="imported",
        main_measure=next((key for key in _STEPPED_BY if key in known), next(iter(known))),
    )


def chart_doubts(preview: Preview, style: LengthStyle) -> tuple[ChartDoubt, ...]:
    """What is to be looked at again in the chart as a whole: gaps, rows that fall, mixed units."""
    if not preview.ready or not gives_chart(preview):
        return ()
    return check_chart(preview_chart(preview, only_good=True), style)
