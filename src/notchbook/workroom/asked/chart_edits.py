"""Edits of a size chart as the page sends them."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.app.charts import chart_edits as app
from notchbook.body import PopulationName
from notchbook.workroom.asked.form import Asked, Expected, Key, Text
from notchbook.workroom.reader import Reader

Note = Annotated[str, Field(max_length=2000)]


class SetChartCell(Asked):
    """A value as typed; a bare number is in the reader's unit, an empty text empties the cell."""

    do: Literal["set-cell"]
    size: Text
    key: Key
    text: Text

    def for_app(self, reader: Reader) -> app.SetChartCell:
        """The edit; the app reads the text."""
        return app.SetChartCell(self.size, self.key, self.text, reader.unit)


class AddChartSize(Asked):
    """A new empty size at the end, or before another."""

    do: Literal["add-size"]
    size: Text
    before: Text | None = None

    def for_app(self, reader: Reader) -> app.AddChartSize:
        """The edit."""
        return app.AddChartSize(self.size, reader.unit, self.before)


class InterpolateChartSize(Asked):
    """A new size half way between two neighbors."""

    do: Literal["interpolate-size"]
    size: Text
    lower: Text
    upper: Text

    def for_app(self, _reader: Reader) -> app.InterpolateChartSize:
        """The edit."""
        return app.InterpolateChartSize(self.size, self.lower, self.upper)


class RemoveChartSize(Asked):
    """A size taken out."""

    do: Literal["remove-size"]
    size: Text

    def for_app(self, _reader: Reader) -> app.RemoveChartSize:
        """The edit."""
        return app.RemoveChartSize(self.size)


class RenameChartSize(Asked):
    """Another label for a size."""

    do: Literal["rename-size"]
    size: Text
    label: Text

    def for_app(self, _reader: Reader) -> app.RenameChartSize:
        """The edit."""
        return app.RenameChartSize(self.size, self.label)


class AddChartRow(Asked):
    """A measure with empty cells."""

    do: Literal["add-row"]
    key: Key

    def for_app(self, reader: Reader) -> app.SetChartRow:
        """The edit."""
        return app.SetChartRow(self.key, reader.unit)


class RemoveChartRow(Asked):
    """A measure taken out of all sizes."""

    do: Literal["remove-row"]
    key: Key

    def for_app(self, _reader: Reader) -> app.RemoveChartRow:
        """The edit."""
        return app.RemoveChartRow(self.key)


class RenameChart(Asked):
    """Another name for the chart."""

    do: Literal["rename-chart"]
    name: Text

    def for_app(self, _reader: Reader) -> app.RenameChart:
        """The edit."""
        return app.RenameChart(self.name)


class DescribeChart(Asked):
    """Where the figures come from, how sure they are, and a note; what is not sent stays."""

    do: Literal["describe-chart"]
    source: Note | None = None
    grade: Note | None = None
    note: Note | None = None

    def for_app(self, _reader: Reader) -> app.DescribeChart:
        """The edit."""
        return app.DescribeChart(self.source, self.grade, self.note)


class SetChartPopulation(Asked):
    """Whom the chart is for; null: nobody in particular."""

    do: Literal["set-chart-population"]
    population: PopulationName | None

    def for_app(self, _reader: Reader) -> app.SetChartPopulation:
        """The edit."""
        return app.SetChartPopulation(self.population or "")


class SetMainMeasure(Asked):
    """The measure that the sizes step by."""

    do: Literal["set-main-measure"]
    key: Key

    def for_app(self, _reader: Reader) -> app.SetMainMeasure:
        """The edit."""
        return app.SetMainMeasure(self.key)


ChartEdit = Annotated[
    SetChartCell
    | AddChartSize
    | InterpolateChartSize
    | RemoveChartSize
    | RenameChartSize
    | AddChartRow
    | RemoveChartRow
    | RenameChart
    | DescribeChart
    | SetChartPopulation
    | SetMainMeasure,
    Field(discriminator="do"),
]


class ChartChange(Expected):
    """An edit of a chart and the version that she has seen."""

    edit: ChartEdit


class NewChart(Asked):
    """A chart of her own: a copy of a computed one (``women``, ``men``) or an empty one."""

    name: Text
    like: PopulationName | None = None
