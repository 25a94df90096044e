"""Size charts in files: JSON, or CSV with a column for each size and a line for each measure."""

import csv
import io
import json
from fractions import Fraction
from pathlib import Path
from typing import Any, Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.chart_data import (
    CHART_FORMAT,
    CHART_WORDS,
    Rows,
    chart_about,
    chart_from_data,
    chart_key,
    chart_to_data,
    read_row,
)
from notchbook.body.files.csv_lines import read_sheet, split_line
from notchbook.body.files.read_json import json_data
from notchbook.body.files.set_data import unit_of
from notchbook.body.files.text_file import MOST_BYTES_ONE_BODY, read_text_file
from notchbook.body.files.write_measures import replace_file
from notchbook.body.measure_table import measure_entry
from notchbook.errors import InputError
from notchbook.units import (
    MM_PER_UNIT,
    Unit,
    decimal_text,
    located_errors,
    quoted,
)

MARGIN_SIGN: Final = ".margin"
"""After the key of a line in a CSV file that gives the margins (±) of a computed row."""

_DECIMALS: Final[dict[Unit, int]] = {"mm": 6, "cm": 7, "in": 8}
"""Places that are kept where a value cannot be written exactly: a fraction of a nanometer."""


def read_chart(path: str | Path) -> SizeChart:
    """The chart in a file, JSON or CSV by its ending; without a name in it the file's name is taken.

    Refused with InputError that names the file, and where it can line, measure and size: ``measures-file-*``,
    ``chart-*`` (see :func:`chart_from_data`), ``measures-csv-*``. Values that no body has pass: see
    :func:`notchbook.body.charts.check_chart`.
    """
    place = Path(path)
    suffix = place.suffix.lower()
    if suffix not in (".json", ".csv", ".tsv", ".txt") and not place.is_dir():
        raise InputError("measures-file-kind", file=quoted(place.name), known=(".json", ".csv"))
    text = read_text_file(place, MOST_BYTES_ONE_BODY)
    with located_errors(quoted(place.name)):
        if suffix == ".json":
            return chart_from_data(json_data(text), default_name=place.stem)
        return chart_from_csv(text, default_name=place.stem)


def holds_chart(path: str | Path) -> bool:
    """Whether a file that can be read is a size chart rather than the measures of one body or of many."""
    text = read_text_file(Path(path), MOST_BYTES_ONE_BODY)
    if Path(path).suffix.lower() == ".json":
        return f'"{CHART_FORMAT}"' in text
    columns = [cell.lower() for cell in _header(text)]
    return columns[:1] == ["measure"] and "value" not in columns


def chart_from_csv(text: str, default_name: str = "") -> SizeChart:
    """The chart in the text: a header ``measure`` and the labels of the sizes, then a line for each measure.

    Lines ``name``, ``unit``, ``population`` and the others of :data:`CHART_WORDS` say their word in the first
    cell. ``KEY.margin`` gives the margins of a row.
    """
    if not text.strip():
        raise InputError("chart-not-a-chart", where="")
    sheet = read_sheet(text)
    header = _header(text)[: len(sheet.columns)]
    if sheet.columns[0] != "measure" or len(header) < 2:
        raise InputError("chart-not-a-chart", where="")
    labels = header[1:]
    words: dict[str, str] = {}
    lines: list[tuple[int, str, list[str]]] = []
    for number, line in sheet.lines:
        with located_errors(f"line {number}"):
            cells = list(sheet.row(line).values())
            name = cells[0].lower()
            if name in words:
                raise InputError("measure-duplicate", key=quoted(name), where="")
            if name in CHART_WORDS:
                words[name] = cells[1]
            else:
                lines.append((number, name, cells[1:]))
    rows = _csv_rows(lines, labels, unit_of(words), margins=False)
    margins = _csv_rows(lines, labels, unit_of(words), margins=True)
    return chart_about(words, labels, rows, margins, default_name)


def write_chart(chart: SizeChart, path: str | Path, unit: Unit = "mm") -> None:
    """Write the chart, as JSON (in mm) or CSV (in ``unit``) by the ending; the file is whole or not there.

    Reading it again gives an equal chart, in CSV and inches to a millionth of a millimeter. Refused: another
    ending (``measures-file-kind``), a place that cannot be written (OutputError).
    """
    place = Path(path)
    if place.suffix.lower() == ".json":
        replace_file(place, chart_json(chart))
    elif place.suffix.lower() == ".csv":
        replace_file(place, chart_csv(chart, unit))
    else:
        raise InputError("measures-file-kind", file=quoted(place.name), known=(".json", ".csv"))


def chart_json(chart: SizeChart) -> str:
    """The chart as JSON text, in mm, one line for each measure."""
    data = chart_to_data(chart)
    inside: dict[str, Any] = {name: data.pop(name) for name in ("measures", "margins") if name in data}
    lines = [f"  {_json(name)}: {_json(value)}" for name, value in data.items()]
    for name, rows in inside.items():
        texts = ",\n".join(f"    {_json(key)}: {_json(row)}" for key, row in rows.items())
        lines.append(f"  {_json(name)}: {{\n{texts}\n  }}")
    return "{\n" + ",\n".join(lines) + "\n}\n"


def chart_csv(chart: SizeChart, unit: Unit = "mm") -> str:
    """The chart as CSV text, lengths in ``unit``."""
    data = chart_to_data(chart)
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\n")
    writer.writerow(("measure", *chart.labels))
    for name in CHART_WORDS:
        if name == "unit":
            writer.writerow((name, unit))
        elif name == "waist_drop" and name in data:
            writer.writerow((name, _number(data[name], unit)))
        elif name in data:
            writer.writerow((name, data[name]))
    for key in chart.keys:
        writer.writerow((key, *(_cell(key, value, unit) for value in chart.row(key))))
        if any(key in row for row in chart.margins.values()):
            row = (chart.margin(label, key) for label in chart.labels)
            writer.writerow((key + MARGIN_SIGN, *(_cell(key, value, unit) for value in row)))
    return stream.getvalue()


def _csv_rows(
    lines: list[tuple[int, str, list[str]]], labels: list[str], unit: Unit | None, *, margins: bool
) -> Rows:
    found: dict[str, tuple[float | None, ...]] = {}
    for number, name, cells in lines:
        if name.endswith(MARGIN_SIGN) != margins:
            continue
        with located_errors(f"line {number}"):
            key = chart_key(name.removesuffix(MARGIN_SIGN))
            if key in found:
                raise InputError("measure-duplicate", key=key, where="")
            found[key] = read_row(key, cells, labels, unit)
    return found


def _header(text: str) -> list[str]:
    """The cells of the first line as they stand, capitals kept."""
    first = next((line for line in text.split("\n") if line.strip()), "")
    return split_line(first, read_sheet(text).delimiter) if first else []


def _cell(key: str, value: float | None, unit: Unit) -> str:
    if value is None:
        return ""
    return _number(value, unit if measure_entry(key).is_length else "mm")


def _number(value: float, unit: Unit) -> str:
    exact = Fraction(repr(value)) / MM_PER_UNIT[unit]
    return decimal_text(exact) or str(round(float(exact), _DECIMALS[unit]))


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)
