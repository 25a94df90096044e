"""A foreign table and her answers about it, as the page sends them."""

from typing import Annotated

from pydantic import Field

from notchbook.app.charts.importing import preview_text
from notchbook.body import PopulationName
from notchbook.body import SetKind as KindOfSet
from notchbook.body.files.text_file import MOST_BYTES_BODIES
from notchbook.body.importing import Again, Answers, KnownNames, LineAnswer, Preview, RowAnswer
from notchbook.body.importing.answers import line_unit
from notchbook.units import Unit
from notchbook.workroom.asked.form import Asked, Text


class LineSaid(Asked):
    """What she said of one column or row: its meaning and its unit; what is empty stays as proposed."""

    number: int
    target: Text = ""
    unit: Text = ""
    left_out: bool = False


class RowSaid(Asked):
    """What she said of one body by its number: the unit of its bare numbers, and whether it is stored.

    ``choice`` skip leaves it out, add keeps it although the book has one of its name; null: not said.
    """

    number: int
    unit: Unit | None = None
    choice: Again | None = None


class AskedTable(Asked):
    """The text of a table, the name of its list, and her answers; ``kind`` null: as the table says.

    ``again`` is what becomes of all bodies whose names the book has already, where ``rows`` say nothing.
    """

    text: Annotated[str, Field(max_length=MOST_BYTES_BODIES)]
    source: Text = ""
    unit: Unit | None = None
    lines: Annotated[tuple[LineSaid, ...], Field(max_length=2000)] = ()
    kind: KindOfSet | None = None
    population: PopulationName | None = None
    rows: Annotated[tuple[RowSaid, ...], Field(max_length=50_000)] = ()
    again: Again | None = None

    def preview(self, known: KnownNames | None = None) -> Preview:
        """What would be stored; refused as :func:`notchbook.app.charts.importing.preview_text` says.

        ``known`` are the names that the book has already.
        """
        return preview_text(self.text, self.source, self._answers(), known=known)

    def _answers(self) -> Answers:
        kept = [line for line in self.lines if not line.left_out and (line.target or line.unit)]
        return Answers(
            unit=self.unit,
            lines=tuple(LineAnswer(f"#{line.number}", line.target, line_unit(line.unit)) for line in kept),
            skip=tuple(f"#{line.number}" for line in self.lines if line.left_out),
            kind=self.kind,
            population=self.population,
            rows=tuple(RowAnswer(row.number, row.unit, row.choice) for row in self.rows),
            again=self.again,
        )


class ImportAsked(AskedTable):
    """The same, to be stored; ``only_good`` leaves refused rows out."""

    only_good: bool = False


class ChartImportAsked(AskedTable):
    """The same, to be stored as one size chart under this name."""

    name: Text
