"""What each measure is called and how it is taken, and what each block asks for: the same for every body."""

from notchbook.app.studio import Studio
from notchbook.body import MeasureEntry, measure_table
from notchbook.recipe import definition
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


class BlockSheet(Answer):
    """What a block asks for: without the needed measures it is refused, the helpful ones make it better."""

    block: str
    said: str
    needed: tuple[str, ...]
    helpful: tuple[str, ...]


class Vocabulary(Answer):
    """Every measure in measuring order, and the short sheet of every block."""

    measures: tuple[MeasureWords, ...]
    blocks: tuple[BlockSheet, ...]


def vocabulary(studio: Studio, reader: Reader) -> Vocabulary:
    """The words in the reader's unit."""
    blocks = [choice for choice in studio.step_choices() if choice.kind == "block"]
    return Vocabulary(
        measures=tuple(_words(entry, reader) for entry in measure_table().values()),
        blocks=tuple(_block(choice.operation, choice.title) for choice in blocks),
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


def _block(operation: str, title: str) -> BlockSheet:
    needs = definition(operation).needs
    said = f"{title.removeprefix('Draft ')} block"
    return BlockSheet(block=operation, said=said, needed=needs.needed, helpful=needs.helpful)
