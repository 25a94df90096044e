"""A size chart as plain data, the same in files, in the book and over the wire."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from notchbook.body.charts.chart import CHART_STATUSES, SizeChart
from notchbook.body.files.fields import check_fields, choice, text_of
from notchbook.body.files.raw_value import read_quantity
from notchbook.body.files.set_data import unit_of
from notchbook.body.measure import Measure
from notchbook.body.measure_set import POPULATIONS, RISE_METHODS, WAIST_LEVELS, MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import split_key
from notchbook.errors import InputError
from notchbook.units import Unit, located_errors, parse_length, quoted

CHART_FORMAT: Final = "notchbook size chart"
CHART_FORMAT_VERSION: Final = 1

CHART_WORDS: Final = (
    "name",
    "population",
    "source",
    "grade",
    "status",
    "main_measure",
    "unit",
    "waist_level",
    "waist_drop",
    "rise_method",
    "caveat",
    "note",
)
"""What the data says of the whole chart, one word or line each."""

CHART_FIELDS: Final = ("format", "format_version", *CHART_WORDS, "sizes", "measures", "margins")


def chart_to_data(chart: SizeChart) -> dict[str, Any]:
    """The chart as plain data in mm (degrees, kg), a list over the sizes for each measure; empty cells null.

    Reading it again (:func:`chart_from_data`) gives an equal chart.
    """
    first = chart.sizes[0] if chart.sizes else None
    more: tuple[tuple[str, object], ...] = (
        ("population", chart.population),
        ("source", chart.source),
        ("grade", chart.grade),
        ("status", chart.status),
        ("main_measure", chart.main_measure),
        ("unit", "mm"),
        ("waist_level", first.waist_level if first else None),
        ("waist_drop", first.waist_drop if first else 0.0),
        ("rise_method", first.rise_method if first else None),
        ("caveat", chart.caveat),
        ("note", chart.note),
    )
    data: dict[str, Any] = {
        "format": CHART_FORMAT,
        "format_version": CHART_FORMAT_VERSION,
        "name": chart.name,
        **{name: value for name, value in more if value},
        "sizes": list(chart.labels),
        "measures": {key: [_number(value) for value in chart.row(key)] for key in chart.keys},
    }
    margins = {key: _margin_row(chart, key) for key in chart.keys}
    known = {key: row for key, row in margins.items() if any(value is not None for value in row)}
    return {**data, "margins": known} if known else data


def chart_from_data(data: object, default_name: str = "") -> SizeChart:
    """The chart that the data describes; a value is a number in ``unit`` or a text such as ``37 1/2 in``.

    Impossible values pass, so that a chart with a slip can be looked over
    (:func:`notchbook.body.charts.check_chart`). Refused with InputError that names measure and size: no
    chart (``chart-not-a-chart``), a newer form (``chart-newer``), rows of another length than the sizes
    (``chart-row-length``), what cannot be read as a number, and what :class:`SizeChart` refuses.
    """
    if not isinstance(data, Mapping) or data.get("format") != CHART_FORMAT:
        raise InputError("chart-not-a-chart", where="")
    version = data.get("format_version")
    if isinstance(version, bool) or not isinstance(version, int) or version > CHART_FORMAT_VERSION:
        raise InputError("chart-newer", found=quoted(str(version)), known=CHART_FORMAT_VERSION, where="")
    check_fields(data, CHART_FIELDS)
    labels = _labels(data.get("sizes", []))
    unit = unit_of(data)
    return chart_about(
        data,
        labels,
        _rows(data.get("measures", {}), labels, unit),
        _rows(data.get("margins", {}), labels, unit),
        default_name,
    )


Rows = Mapping[str, Sequence[float | None]]
"""Key -> its value for each size, mm; None where a cell is empty."""


def chart_about(
    words: Mapping[str, object], labels: Sequence[str], rows: Rows, margins: Rows, default_name: str
) -> SizeChart:
    """The chart with these rows; name, population and the like (:data:`CHART_WORDS`) as text in ``words``."""
    population = text_of(words, "population")
    main = text_of(words, "main_measure") or "bust_girth"
    return SizeChart(
        name=text_of(words, "name") or default_name,
        sizes=tuple(_size(words, label, at, rows) for at, label in enumerate(labels)),
        population=choice(population, "population", POPULATIONS) if population else None,
        source=text_of(words, "source"),
        grade=text_of(words, "grade"),
        status=choice(text_of(words, "status") or "typed", "status", CHART_STATUSES),
        caveat=text_of(words, "caveat"),
        note=text_of(words, "note"),
        main_measure=split_key(main)[0],
        keys=tuple(rows),
        margins={
            label: {key: half for key, row in margins.items() if (half := row[at]) is not None}
            for at, label in enumerate(labels)
        },
    )


def _size(words: Mapping[str, object], label: str, at: int, rows: Rows) -> MeasureSet:
    method = text_of(words, "rise_method")
    drop = text_of(words, "waist_drop")
    return MeasureSet(
        name=label or "size",
        label_size=label,
        kind="chart",
        values={key: Measure(value, "chart") for key, row in rows.items() if (value := row[at]) is not None},
        waist_level=choice(text_of(words, "waist_level") or "natural", "waist_level", WAIST_LEVELS),
        waist_drop=parse_length(drop, unit_of(words)) if drop else 0.0,
        rise_method=choice(method, "rise_method", RISE_METHODS) if method else None,
    )


def _labels(given: object) -> tuple[str, ...]:
    if not isinstance(given, list):
        raise InputError("measures-shape", what="sizes", wanted="a list of labels", where="")
    return tuple(text_of({"size": label}, "size") for label in given)


def _rows(given: object, labels: Sequence[str], unit: Unit | None) -> dict[str, tuple[float | None, ...]]:
    if not isinstance(given, Mapping):
        raise InputError("measures-shape", what="measures", wanted="a table of keys and rows", where="")
    found: dict[str, tuple[float | None, ...]] = {}
    for text_key, row in given.items():
        with located_errors(quoted(str(text_key))):
            if not isinstance(row, list):
                raise InputError("measures-shape", what="A row", wanted="a list of values", where="")
            key = chart_key(str(text_key))
            if key in found:
                raise InputError("measure-duplicate", key=key, where="")
            texts = ["" if value is None else text_of({"value": value}, "value") for value in row]
            found[key] = read_row(key, texts, labels, unit)
    return found


def chart_key(text: str) -> str:
    """The key that the text names; a side is refused (``chart-sides``)."""
    key, side = split_key(text.strip().lower())
    if side != "both":
        raise InputError("chart-sides", key=quoted(text), where="")
    return key


def read_row(
    key: str, texts: Sequence[str], labels: Sequence[str], unit: Unit | None
) -> tuple[float | None, ...]:
    """The values of a row as typed, one for each size; an empty text is an empty cell."""
    if len(texts) != len(labels):
        raise InputError("chart-row-length", key=key, given=len(texts), wanted=len(labels), where="")
    return tuple(read_cell(key, text, label, unit) for text, label in zip(texts, labels, strict=True))


def read_cell(key: str, text: str, label: str, unit: Unit | None) -> float | None:
    """The value of one cell as typed, mm (degrees, kg), or None; impossible values pass."""
    if not text.strip():
        return None
    with located_errors(f"{key}, size {quoted(label)}"):
        return Measure(read_quantity(measure_entry(key), text, "", unit)[0], "chart").value


def _margin_row(chart: SizeChart, key: str) -> list[float | int | None]:
    return [_number(chart.margin(label, key)) for label in chart.labels]


def _number(value: float | None) -> float | int | None:
    return int(value) if value is not None and value.is_integer() else value
