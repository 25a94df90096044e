"""The preview of an import as the page shows it, and how far a running import is."""

from typing import Final, Literal

from notchbook.body import DoubtLevel, measure_table
from notchbook.body import SetKind as KindOfSet
from notchbook.body.files.body_columns import ABOUT_COLUMNS
from notchbook.body.importing import Again, MappedLine, Preview, PreviewRow, Question
from notchbook.body.importing import Refusal as Refused
from notchbook.body.importing.mapping import Asked as AskedAbout
from notchbook.body.importing.preview_rows import RowState
from notchbook.workroom.answers.form import Answer, Named
from notchbook.workroom.answers.quantities import label_of, said_value
from notchbook.workroom.answers.refusal import Refusal
from notchbook.workroom.reader import Reader

MOST_ROWS_SHOWN: Final = 60
"""Rows of a preview that go to the page, those with something to say first; all are counted."""


class QuestionAnswer(Answer):
    """What must be answered before anything is stored; ``options`` are the likely answers."""

    about: AskedAbout
    words: str
    options: tuple[str, ...]
    rows: tuple[int, ...]


class MappedAnswer(Answer):
    """One column (or row) of the table: what it would mean, in which unit, and how that was found.

    ``target`` is empty where it is left out; ``question`` is what is still open about it.
    """

    number: int
    name: str
    target: str
    target_label: str
    target_sure: bool
    unit: str
    unit_sure: bool
    has_unit: bool
    why: str
    candidates: tuple[str, ...]
    samples: tuple[str, ...]
    question: QuestionAnswer | None


class CellAnswer(Answer):
    """A cell as the table has it and as it would be stored; ``refused`` says why it cannot be."""

    number: int
    text: str
    stored_text: str
    refused: str


class RowDoubtAnswer(Answer):
    """Something to look at again in a row."""

    level: DoubtLevel
    message: str


class RowAnswer(Answer):
    """One body of the table; ``refusals`` are those of the whole row.

    ``in_book`` is the number of an entry with the same name, or empty, ``choice`` what she said of it.
    ``looks_like`` is the unit that its numbers look like, or empty, while it is to be asked.
    """

    number: int
    name: str
    good: bool
    state: RowState
    in_book: str
    choice: Again | None
    looks_like: str
    cells: tuple[CellAnswer, ...]
    refusals: tuple[str, ...]
    doubts: tuple[RowDoubtAnswer, ...]


class SetAsideLine(Answer):
    """A line of the text that is no body."""

    number: int
    text: str
    why: str


class PreviewAnswer(Answer):
    """The whole import before anything is stored.

    ``place`` says whether a measure stands in a column or a row, ``body_place`` what a body's number counts.
    ``questions`` are those about bodies and not about lines: each speaks of all its ``rows``.
    ``targets`` is all that a line may mean. ``rows`` are at most 60 of ``count``, the loud ones first.
    """

    place: Literal["column", "row"]
    body_place: str
    kind: KindOfSet
    kind_why: str
    ready: bool
    open_questions: int
    questions: tuple[QuestionAnswer, ...]
    count: int
    good: int
    refused: int
    waiting: int
    left_out: int
    to_check: int
    held: bool
    lines: tuple[MappedAnswer, ...]
    targets: tuple[Named, ...]
    rows: tuple[RowAnswer, ...]
    set_aside: tuple[SetAsideLine, ...]


class JobAnswer(Answer):
    """An import that runs or has ended; ``refused`` is why nothing was stored.

    ``left`` counts refused rows, ``left_out`` those that she left out.
    """

    id: int
    state: Literal["running", "done", "stopped", "refused"]
    done: int
    total: int
    left: int
    left_out: int
    first_body: int | None
    refused: Refusal | None


def preview_answer(shown: Preview, reader: Reader) -> PreviewAnswer:
    """The preview in the reader's unit."""
    questions = {question.number: question for question in shown.questions if question.number}
    loud = [row for row in shown.rows if not row.good or row.doubts or row.in_book]
    quiet = [row for row in shown.rows if row.good and not row.doubts and not row.in_book]
    first = sorted([*loud, *quiet][:MOST_ROWS_SHOWN], key=lambda row: row.number)
    return PreviewAnswer(
        place=shown.mapping.place,
        body_place=shown.table.body_place,
        kind=shown.mapping.kind,
        kind_why=shown.mapping.kind_why,
        ready=shown.ready,
        open_questions=len(shown.questions),
        questions=tuple(
            QuestionAnswer(about=one.about, words=one.words, options=one.options, rows=one.rows)
            for one in shown.questions
            if not one.number
        ),
        count=len(shown.rows),
        good=shown.good,
        refused=shown.refused,
        waiting=shown.waiting,
        left_out=shown.left_out,
        to_check=shown.to_check,
        held=shown.held,
        lines=tuple(_line(line, questions.get(line.number)) for line in shown.mapping.lines),
        targets=_targets(),
        rows=tuple(_row(row, shown, reader) for row in first),
        set_aside=tuple(
            SetAsideLine(number=one.number, text=one.text, why=one.why) for one in shown.set_aside
        ),
    )


def _targets() -> tuple[Named, ...]:
    names = (*(name for name in ABOUT_COLUMNS if name != "status"), *measure_table())
    return tuple(Named(name=name, said=target_label(name)) for name in names)


def _line(line: MappedLine, question: Question | None) -> MappedAnswer:
    return MappedAnswer(
        number=line.number,
        name=line.name,
        target=line.target,
        target_label=target_label(line.target),
        target_sure=line.target_sure,
        unit=line.unit,
        unit_sure=line.unit_sure,
        has_unit=bool(line.unit or line.unit_why),
        why="; ".join(word for word in (line.why, line.unit_why) if word),
        candidates=line.candidates,
        samples=line.samples,
        question=None
        if question is None
        else QuestionAnswer(
            about=question.about,
            words=_asked_words(question, line.target),
            options=question.options,
            rows=question.rows,
        ),
    )


def _asked_words(question: Question, target: str) -> str:
    """The question with measures called by their names and not by their keys."""
    if question.about == "twice":
        return question.words.replace(f"all say {target}", f"all say {target_label(target).lower()}")
    if question.about != "measure" or not question.options:
        return question.words
    options = " or ".join(target_label(option).lower() for option in question.options)
    return question.words.replace(" or ".join(question.options), options)


def target_label(target: str) -> str:
    """What a target is called: the measure, a field of one, or a word about the whole body."""
    if not target or target in ABOUT_COLUMNS:
        return _ABOUT_LABELS.get(target, target)
    key, _, field = target.partition(".")
    return f"{label_of(key)}, {field}" if field else label_of(key)


_ABOUT_LABELS: Final = {
    "": "left out",
    "waist_level": "waist level",
    "waist_drop": "waist lower by",
    "rise_method": "how the rise was taken",
    "taken_as": "taken as",
    "label_size": "size on the label",
    "taken_on": "date",
    "taken_by": "measured by",
}


def _row(row: PreviewRow, shown: Preview, reader: Reader) -> RowAnswer:
    by_name = {refusal.line: refusal for refusal in row.refusals if refusal.line}
    values = {value.key: value for value in row.values}
    body = next((one for one in shown.table.bodies if one.number == row.number), None)
    cells = []
    for line, text in zip(shown.mapping.lines, body.cells if body else (), strict=False):
        value, refused = values.get(line.target), by_name.get(line.name)
        cells.append(
            CellAnswer(
                number=line.number,
                text=text,
                stored_text="" if value is None or refused else said_value(value.key, value.value, reader),
                refused=_refused_words(line.target, refused) if refused else "",
            )
        )
    return RowAnswer(
        number=row.number,
        name=row.name,
        good=row.good,
        state=row.state,
        in_book=row.in_book,
        choice=row.choice,
        looks_like=row.other_unit or "",
        cells=tuple(cells),
        refusals=tuple(f"{one.message} {one.next_step}" for one in row.refusals if not one.line),
        doubts=tuple(RowDoubtAnswer(level=one.level, message=one.message) for one in row.doubts),
    )


def _refused_words(key: str, refused: Refused) -> str:
    """Why a cell is refused; it stands in its place, so the place is not named."""
    return f"{refused.message.removeprefix(f'{key}: ')} {refused.next_step}"
