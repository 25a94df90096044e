"""Writing a size chart, such as one that comes with the program, to a file that she can edit."""

from pathlib import Path

from notchbook.body.charts import SizeChart, write_chart
from notchbook.errors import InputError
from notchbook.units import Unit


def write_new_chart(chart: SizeChart, place: Path, unit: Unit) -> None:
    """Write the chart as CSV (in ``unit``) or JSON (in mm), by the ending.

    Refused: a file that is there already (``chart-file-exists``), which may hold her own edits; another
    ending (``measures-file-kind``); a place that cannot be written (OutputError).
    """
    if place.exists():
        raise InputError("chart-file-exists", path=str(place))
    write_chart(chart, place, unit)
