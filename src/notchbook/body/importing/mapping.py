"""What each column or row of a foreign table means, why, and what is still to be asked."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from notchbook.body.importing.answers import Again, RowAnswer
from notchbook.body.importing.foreign_table import Layout, Place
from notchbook.body.importing.unit_words import LineUnit
from notchbook.body.measure_set import PopulationName, SetKind

Asked = Literal["measure", "unit", "twice", "row_unit", "again"]


@dataclass(frozen=True, slots=True)
class MappedLine:
    """One column (or row): ``target`` is a key, a field about the body or ``KEY.FIELD``; empty leaves it out.

    ``candidates`` are what it may mean instead. ``unit`` is that of its bare numbers, empty where there is
    none to say: text, cells that name their own, rows that name theirs. ``target_sure`` and ``unit_sure``
    say whether the table itself (or she) said so; ``why`` and ``unit_why`` how it was found.
    ``rows`` are the numbers of the rows (or columns) that a question about the unit is about.
    """

    name: str
    number: int
    target: str
    target_sure: bool
    why: str
    candidates: tuple[str, ...] = ()
    unit: LineUnit = ""
    unit_sure: bool = True
    unit_why: str = ""
    rows: tuple[int, ...] = ()
    samples: tuple[str, ...] = ()

    @property
    def sure(self) -> bool:
        """Whether nothing is to be asked about it."""
        return self.target_sure and self.unit_sure

    @property
    def left_out(self) -> bool:
        """Whether nothing of it is stored."""
        return not self.target


@dataclass(frozen=True, slots=True)
class Question:
    """Something that must be answered before anything is stored.

    ``about`` says what is asked: the measure, the unit, or which of two lines with one meaning counts; of
    bodies, the unit of their rows, or whether those that the book has already are stored again: then
    ``number`` is 0. ``options`` are the likely answers, ``rows`` where to look.
    """

    line: str
    number: int
    about: Asked
    words: str
    options: tuple[str, ...] = ()
    rows: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class TableMapping:
    """The meaning of a whole table. ``kind`` counts for every set without one of its own.

    ``rows`` is what she said of single bodies by their numbers, ``again`` of those that the book has already.
    """

    layout: Layout
    place: Place
    lines: tuple[MappedLine, ...]
    kind: SetKind
    kind_why: str
    population: PopulationName | None = None
    rows: Mapping[int, RowAnswer] = field(default_factory=dict)
    again: Again | None = None

    @property
    def open_questions(self) -> tuple[Question, ...]:
        """What is to be asked, in the order of the table: first what it means, then its unit."""
        found: list[Question] = []
        for line in self.lines:
            if not line.target_sure:
                found.append(_measure_question(line, self.place))
            elif not line.unit_sure:
                found.append(_unit_question(line, self.place))
        return (*found, *_twice(self.lines, self.place))


def _measure_question(line: MappedLine, place: Place) -> Question:
    if len(line.candidates) == 1:
        words = f"“{line.name}”: is it {line.candidates[0]}, or another measure, or is the {place} left out?"
    elif line.target:
        words = f"“{line.name}” may be {' or '.join(line.candidates)}: which, or leave the {place} out?"
    else:
        words = f"“{line.name}” is not known: which measure is it, or leave the {place} out?"
    return Question(line.name, line.number, "measure", words, line.candidates, line.rows)


def _unit_question(line: MappedLine, place: Place) -> Question:
    words = f"“{line.name}”: {line.unit_why}. In which unit are the numbers of this {place}?"
    options = (line.unit,) if line.unit else ()
    return Question(line.name, line.number, "unit", words, options, line.rows)


_NAMED: Final = 6
"""So many of the lines that say the same are named."""

JOINED: Final = ("name", "note")
"""Fields that several columns may fill together: first and last name."""


def _twice(lines: tuple[MappedLine, ...], place: Place) -> tuple[Question, ...]:
    by_target: dict[str, list[MappedLine]] = {}
    for line in lines:
        if line.target and line.target_sure and line.target not in JOINED:
            by_target.setdefault(line.target, []).append(line)
    return tuple(
        Question(
            same[-1].name,
            same[-1].number,
            "twice",
            f"{' and '.join(f'“{line.name}”' for line in same[:_NAMED])} all say {target}: keep one {place}.",
            tuple(line.name for line in same[:_NAMED]),
        )
        for target, same in by_target.items()
        if len(same) > 1
    )
