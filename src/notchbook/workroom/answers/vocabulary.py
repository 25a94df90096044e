"""What each measure is called and how it is taken, and what each block asks for: the same for every body."""

from typing import Any

from notchbook.app.studio import Studio
from notchbook.body import MeasureEntry, measure_table
from notchbook.errors import as_read
from notchbook.errors import entry as message
from notchbook.recipe import StepDefinition, UsualEase, definition
from notchbook.units import format_degrees
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class MeasureWords(Answer):
    """The words of one measure. ``number`` is its place in measuring order, from 1.

    ``iso`` is the clause of ISO 8559-1:2017, second-hand; empty where none is known. ``twice`` says that the
    tape is laid twice; readings further apart than ``repeat_text`` call for a third.
    """

    key: str
    number: int
    how: str
    level: str
    landmarks: tuple[str, ...]
    iso: str
    iso_doubtful: bool
    twice: bool
    repeat_text: str


class NeededWhen(Answer):
    """Measures that a block needs under a condition: ``with bust shaping``."""

    when: str
    keys: tuple[str, ...]


class BlockEase(Answer):
    """One figure of a block's ease table, mm: what is drafted for a silhouette and wearer (empty: for all),
    and the usual range, empty where no source gives one. ``parameter`` is what overrides it."""

    silhouette: str
    wearer: str
    parameter: str
    of: str
    drafted: float
    drafted_text: str
    usual_text: str
    source: str
    grade: str


class BlockRefusal(Answer):
    """Something that a block refuses to draft: the code, and how it reads."""

    code: str
    message: str


class BlockSheet(Answer):
    """What a block asks for: without the needed measures it is refused, the helpful ones make it better.

    ``sometimes`` are needed under a condition; for the ``estimated`` ones it takes a stated substitute. It is
    ``drafted_with`` other blocks. ``eases`` is its ease table, ``refuses`` what it does not draft.
    """

    block: str
    said: str
    needed: tuple[str, ...]
    helpful: tuple[str, ...]
    sometimes: tuple[NeededWhen, ...]
    estimated: tuple[str, ...]
    drafted_with: tuple[str, ...]
    eases: tuple[BlockEase, ...]
    refuses: tuple[BlockRefusal, ...]


class Vocabulary(Answer):
    """Every measure in measuring order, and the short sheet of every block."""

    measures: tuple[MeasureWords, ...]
    blocks: tuple[BlockSheet, ...]


def vocabulary(studio: Studio, reader: Reader) -> Vocabulary:
    """The words in the reader's unit."""
    blocks = [choice for choice in studio.step_choices() if choice.kind == "block"]
    return Vocabulary(
        measures=tuple(_words(entry, reader) for entry in measure_table().values()),
        blocks=tuple(_block(definition(choice.operation), reader) for choice in blocks),
    )


def _words(entry: MeasureEntry, reader: Reader) -> MeasureWords:
    return MeasureWords(
        key=entry.key,
        number=entry.number,
        how=entry.how,
        level=entry.level,
        landmarks=entry.landmarks,
        iso=entry.iso or "",
        iso_doubtful=entry.iso_doubtful,
        twice=entry.twice,
        repeat_text=_repeat(entry, reader),
    )


def _repeat(entry: MeasureEntry, reader: Reader) -> str:
    if entry.is_length:
        return reader.text(entry.repeat)
    return format_degrees(entry.repeat) if entry.kind == "angle" else f"{entry.repeat:g} kg"


def _block(step: StepDefinition[Any], reader: Reader) -> BlockSheet:
    needs = step.needs
    return BlockSheet(
        block=step.operation,
        said=f"{step.title.removeprefix('Draft ')} block",
        needed=needs.needed,
        helpful=needs.helpful,
        sometimes=tuple(NeededWhen(when=one.when, keys=one.keys) for one in needs.sometimes),
        estimated=needs.estimated,
        drafted_with=step.drafted_with,
        eases=() if step.eases is None else tuple(_ease(row, reader) for row in step.eases()),
        refuses=tuple(
            BlockRefusal(code=code, message=as_read(message(code).message)) for code in step.refuses
        ),
    )


def _ease(row: UsualEase, reader: Reader) -> BlockEase:
    def said(value: float) -> str:
        return reader.text(value) if row.unit == "mm" else f"{value:g} %"

    usual = "" if row.least is None or row.most is None else f"{said(row.least)} to {said(row.most)}"
    return BlockEase(
        silhouette=row.silhouette,
        wearer=row.wearer,
        parameter=row.parameter,
        of=row.of,
        drafted=row.drafted,
        drafted_text=said(row.drafted),
        usual_text=usual,
        source=row.source,
        grade=row.grade,
    )
