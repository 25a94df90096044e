"""What an import would store, row by row, and what it refuses: plain data for the page and the screen."""

from dataclasses import dataclass

from notchbook.body.doubts.doubt import DoubtLevel, Repair
from notchbook.body.importing.foreign_table import ForeignTable, SetAside
from notchbook.body.importing.mapping import Question, TableMapping
from notchbook.body.measure import Measure, Status
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import quoted


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
    """

    number: int
    id: str
    name: str
    values: tuple[PreviewValue, ...] = ()
    refusals: tuple[Refusal, ...] = ()
    doubts: tuple[RowDoubt, ...] = ()
    measures: MeasureSet | None = None
    contradicted: bool = False

    @property
    def good(self) -> bool:
        """Whether it can be stored whole: nothing refused, and no contradiction in it."""
        return self.measures is not None and not self.refusals and not self.contradicted


@dataclass(frozen=True, slots=True)
class Preview:
    """The whole import before anything is stored.

    ``good``, ``refused`` and ``to_check`` count rows; rows to check are good ones with a doubt.
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
        return self.mapping.open_questions

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
        return len(self.rows) - self.good

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
        (``import-rows-refused``), and no good row at all (``import-no-rows``).
        """
        if self.questions:
            raise InputError("import-not-ready", count=len(self.questions), first=self.questions[0].words)
        if self.refused and not only_good:
            bad = next(row for row in self.rows if not row.good)
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


def refusal_of(line: str, text: str, error: InputError) -> Refusal:
    """The refusal of a cell (or of a whole row) in words."""
    return Refusal(line, quoted(text), error.code, error.text(), error.next_step())
