"""What she may do to a size chart: each edit as data."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.body import POPULATIONS, PopulationName, RawValue, measure_entry, read_value
from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.chart_data import chart_key
from notchbook.body.charts.editing import (
    add_size,
    interpolate_size,
    remove_row,
    remove_size,
    rename_size,
    set_cell,
    set_row,
)
from notchbook.errors import InputError
from notchbook.units import Unit, located_errors, quoted


@dataclass(frozen=True, slots=True)
class SetChartCell:
    """A value of a size as she typed it; a bare number is in ``unit``, an empty text empties the cell."""

    size: str
    key: str
    text: str
    unit: Unit

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart with the value; refused in words when it cannot be read or no body has it."""
        return set_cell(chart, self.size, chart_key(self.key), _typed(self.key, self.text, self.unit))


@dataclass(frozen=True, slots=True)
class AddChartSize:
    """A new size, at the end or before another; ``texts`` are its values as typed, by key."""

    size: str
    unit: Unit
    before: str | None = None
    texts: Mapping[str, str] | None = None

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart with the size; refused when the label is empty or stands already."""
        typed = {
            chart_key(key): _typed(key, text, self.unit) for key, text in (self.texts or {}).items() if text
        }
        values = {key: value for key, value in typed.items() if value is not None}
        return add_size(chart, self.size, self.before, values)


@dataclass(frozen=True, slots=True)
class InterpolateChartSize:
    """A new size between two neighbors, ``share`` of the way from the lower to the upper one."""

    size: str
    lower: str
    upper: str
    share: float = 0.5

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart with the size between the two."""
        return interpolate_size(chart, self.size, self.lower, self.upper, self.share)


@dataclass(frozen=True, slots=True)
class RemoveChartSize:
    """A size taken out."""

    size: str

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart without the size."""
        return remove_size(chart, self.size)


@dataclass(frozen=True, slots=True)
class RenameChartSize:
    """Another label for a size."""

    size: str
    label: str

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart with the label."""
        return rename_size(chart, self.size, self.label)


@dataclass(frozen=True, slots=True)
class SetChartRow:
    """A measure over all sizes as typed, one text for each size; none at all makes an empty row."""

    key: str
    unit: Unit
    texts: tuple[str, ...] = ()

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart with the row; refused when there are more or fewer texts than sizes."""
        key = chart_key(self.key)
        if not self.texts:
            return replace(chart, keys=(*chart.keys, key))
        row: list[float | None] = []
        for at, text in enumerate(self.texts):
            place = chart.labels[at] if at < len(chart.labels) else str(at + 1)
            with located_errors(f"size {quoted(place)}"):
                row.append(_typed(key, text, self.unit))
        return set_row(chart, key, row)


@dataclass(frozen=True, slots=True)
class RemoveChartRow:
    """A measure taken out of all sizes."""

    key: str

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart without the row."""
        return remove_row(chart, chart_key(self.key))


@dataclass(frozen=True, slots=True)
class RenameChart:
    """Another name for the chart."""

    name: str

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart under its new name."""
        return replace(chart, name=self.name)


@dataclass(frozen=True, slots=True)
class DescribeChart:
    """Where the figures come from, how sure they are, a note and a caveat; None leaves a text as it is."""

    source: str | None = None
    grade: str | None = None
    note: str | None = None
    caveat: str | None = None

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart with these words."""
        return replace(
            chart,
            source=chart.source if self.source is None else self.source,
            grade=chart.grade if self.grade is None else self.grade,
            note=chart.note if self.note is None else self.note,
            caveat=chart.caveat if self.caveat is None else self.caveat,
        )


@dataclass(frozen=True, slots=True)
class SetChartPopulation:
    """Whom the chart is for; empty for nobody in particular."""

    population: str

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart for these people."""
        return replace(chart, population=_population(self.population))


@dataclass(frozen=True, slots=True)
class SetMainMeasure:
    """The measure that the sizes step by."""

    key: str

    def apply(self, chart: SizeChart) -> SizeChart:
        """The chart with its main measure."""
        return replace(chart, main_measure=chart_key(self.key))


ChartEdit = (
    SetChartCell
    | AddChartSize
    | InterpolateChartSize
    | RemoveChartSize
    | RenameChartSize
    | SetChartRow
    | RemoveChartRow
    | RenameChart
    | DescribeChart
    | SetChartPopulation
    | SetMainMeasure
)


def _typed(key: str, text: str, unit: Unit) -> float | None:
    """The value that was typed, held to what a body can have; None for an empty text."""
    if not text.strip():
        return None
    measure_entry(key)
    return read_value(key, RawValue(text), unit)[1].value


def _population(word: str) -> PopulationName | None:
    for known in POPULATIONS:
        if word == known:
            return known
    if word:
        raise InputError("measure-choice", what="population", given=quoted(word), known=POPULATIONS, where="")
    return None
