"""What an import would store, row by row, and what it refuses: plain data for the page and the screen."""

from dataclasses import dataclass
from typing import Literal

from notchbook.body.doubts.doubt import DoubtLevel, Repair
from notchbook.body.importing.answers import Again
from notchbook.body.importing.foreign_table import ForeignTable, SetAside
from notchbook.body.importing.mapping import Question, TableMapping
from notchbook.body.importing.row_questions import row_questions
from notchbook.body.measure import Measure, Status
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import Unit, quoted

RowState = Literal["good", "refused", "asked", "left_out"]
"""What becomes of a row: stored, refused, waiting for an answer, or left out as she said."""


@dataclass(frozen=True, slots=True)
class PreviewValue:
    """One value as it would be stored: ``text`` as the table has it, ``value`` in mm, degrees or kg."""

    key: str
    text: str
    value: float
    status: Status
    error: float | None = None


@dataclass(frozen=True, slots=True)
class Refusal:
    """A cell (or, without ``line``, a whole row) that cannot be stored: where, and why in words."""

    line: str
    text: str
    code: str
    message: str
    next_step: str


@dataclass(frozen=True, slots=True)
class RowDoubt:
    """Something to look at again in a row, or a stop. ``repairs`` are offered, never applied."""

    level: DoubtLevel
    code: str
    message: str
    next_step: str
    keys: tuple[str, ...]
    repairs: tuple[Repair, ...] = ()


@dataclass(frozen=True, slots=True)
class PreviewRow:
    """One body: ``number`` is its line (or its column), ``id`` what the table calls it, may be empty.

    ``measures`` is the set that would be stored; None when nothing can be. ``contradicted``: its values
    cannot all be right, whatever the body. What is only unlikely in a population is a doubt, no more.

    ``in_book`` is the number of an entry of the book with the same name, ``choice`` what she said of that or
    of the row. ``unit`` is that of its bare numbers, ``other_unit`` the one that they look like, while it is
    open: then nothing of it is read. ``unread`` names the lines whose cell waits for an answer.
    """

    number: int
    id: str
    name: str
    values: tuple[PreviewValue, ...] = ()
    refusals: tuple[Refusal, ...] = ()
    doubts: tuple[RowDoubt, ...] = ()
    measures: MeasureSet | None = None
    contradicted: bool = False
    in_book: str = ""
    choice: Again | None = None
    unit: Unit | None = None
    other_unit: Unit | None = None
    unread: tuple[str, ...] = ()

    @property
    def state(self) -> RowState:
        """What becomes of it. A row that the book may have already is good, and asked about beside that."""
        if self.choice == "skip":
            return "left_out"
        if self.other_unit is not None:
            return "asked"
        if self.measures is None or self.refusals or self.contradicted:
            return "refused"
        return "asked" if self.unread else "good"

    @property
    def good(self) -> bool:
        """Whether it can be stored whole: nothing refused, no contradiction in it, and no cell unread."""
        return self.state == "good"


@dataclass(frozen=True, slots=True)
class Preview:
    """The whole import before anything is stored.

    ``good``, ``refused``, ``waiting`` and ``left_out`` count all rows. Rows ``to_check`` are good ones with a
    doubt.
    ``held``: the rows that name a population were held against it, which is left out in long tables.
    """

    table: ForeignTable
    mapping: TableMapping
    rows: tuple[PreviewRow, ...]
    source: str = ""
    held: bool = True

    @property
    def questions(self) -> tuple[Question, ...]:
        """What must be answered first."""
        return (*self.mapping.open_questions, *row_questions(self.rows, self.table.body_place))

    @property
    def ready(self) -> bool:
        """Whether nothing is open and something can be stored."""
        return not self.questions and self.good > 0

    @property
    def good(self) -> int:
        """Rows that can be stored."""
        return sum(row.good for row in self.rows)

    @property
    def refused(self) -> int:
        """Rows that cannot."""
        return sum(row.state == "refused" for row in self.rows)

    @property
    def waiting(self) -> int:
        """Rows of which something is not read before a question is answered."""
        return sum(row.state == "asked" for row in self.rows)

    @property
    def left_out(self) -> int:
        """Rows that she leaves out."""
        return sum(row.state == "left_out" for row in self.rows)

    @property
    def to_check(self) -> int:
        """Rows that can be stored and have something to look at again."""
        return sum(row.good and bool(row.doubts) for row in self.rows)

    @property
    def set_aside(self) -> tuple[SetAside, ...]:
        """Lines of the text that are no bodies and no measures."""
        return self.table.set_aside

    def sets(self, *, only_good: bool = False) -> tuple[MeasureSet, ...]:
        """The sets to store, in the order of the table.

        Refused: open questions (``import-not-ready``), refused rows unless ``only_good``
        (``import-rows-refused``), no good row at all (``import-no-rows``), and only rows that she leaves out
        (``import-all-left-out``).
        """
        if self.questions:
            raise InputError("import-not-ready", count=len(self.questions), first=self.questions[0].words)
        if self.rows and self.left_out == len(self.rows):
            raise InputError("import-all-left-out", rows=len(self.rows))
        if self.refused and not only_good:
            bad = next(row for row in self.rows if row.state == "refused")
            raise InputError(
                "import-rows-refused", refused=self.refused, rows=len(self.rows), first=first_words(bad)
            )
        if not self.good:
            raise InputError("import-no-rows", rows=len(self.rows))
        return tuple(row.measures for row in self.rows if row.good and row.measures is not None)


def first_words(row: PreviewRow) -> str:
    """Why a row is refused, in its first words."""
    stops = (doubt.message for doubt in row.doubts if doubt.level == "stop")
    return next(iter((*(refusal.message for refusal in row.refusals), *stops)), "")


def shown_value(key: str, text: str, measure: Measure) -> PreviewValue:
    """The measure as the preview shows it, beside the text that it was read from."""
    return PreviewValue(key, text, measure.value, measure.status, measure.error)


def refusal_of(line: str, text: str, error: InputError, hint: str = "") -> Refusal:
    """The refusal of a cell (or of a whole row) in words; ``hint`` stands before what to do."""
    return Refusal(line, quoted(text), error.code, error.text(), f"{hint}{error.next_step()}")
