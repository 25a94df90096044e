"""What a foreign table would mean: for each column or row a measure or a field, its unit, and why."""

import re
from dataclasses import dataclass, replace
from typing import Final

from notchbook.body.files.body_columns import ABOUT_COLUMNS, LENGTHS_ABOUT, split_column
from notchbook.body.importing.answers import Answers
from notchbook.body.importing.foreign_table import ForeignTable
from notchbook.body.importing.header_words import header_meaning
from notchbook.body.importing.her_answer import answer_to, check_answers, row_answers
from notchbook.body.importing.line_target import line_target
from notchbook.body.importing.line_units import UnitFound, UnitSaid, find_unit
from notchbook.body.importing.mapping import MappedLine, TableMapping
from notchbook.body.importing.unit_words import LineUnit, UnitWords, read_unit, take_unit
from notchbook.body.measure_set import SetKind
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import plain_key
from notchbook.errors import InputError
from notchbook.units import UNITS

_ASKED_BY_LIKENESS: Final = 60
"""So many unknown headers are compared by likeness; a table with more has none of ours."""

_SIZE: Final = re.compile(r"(size |sz )?([0-9]{1,3}|x{0,4}[sl]|m|[0-9]xl)([-/ ]([0-9]{1,3}|[sml]))?")


def propose(table: ForeignTable, answers: Answers | None = None) -> TableMapping:
    """The meaning of the table by its words, with her answers put in.

    Refused: an answer about what the table does not have (``import-line-unknown``, ``import-row-unknown``),
    with a target that is no measure (``measure-unknown``), or with a unit that its measure cannot be in
    (``measure-unit``).
    """
    said = answers or Answers()
    check_answers(table, said)
    whole = _whole(table)
    lines = []
    likeness = _ASKED_BY_LIKENESS
    for position, line in enumerate(table.lines):
        meaning = header_meaning(line.words)
        likeness -= not (meaning.targets or meaning.left_out)
        target = line_target(table, position, said, compare=likeness > 0)
        lines.append(_with_unit(table, position, said, target, whole))
    kind, why = _kind(table, said)
    return TableMapping(
        table.layout,
        table.place,
        tuple(lines),
        kind,
        why,
        said.population,
        row_answers(said),
        said.again,
    )


@dataclass(frozen=True, slots=True)
class _Whole:
    """What the table as a whole says of units: a line above it, a unit for each body, our own keys."""

    unit: UnitWords
    bodies: frozenset[LineUnit]
    own: bool


def _whole(table: ForeignTable) -> _Whole:
    meanings = [header_meaning(line.words) for line in table.lines]
    return _Whole(
        _unit_above(table),
        frozenset(
            read_unit(text).unit
            for position, meaning in enumerate(meanings)
            if meaning.targets == ("unit",)
            for _body, text in table.cells_of(position)
        ),
        any(meaning.own and "_" in meaning.targets[0] for meaning in meanings),
    )


def _with_unit(
    table: ForeignTable, position: int, answers: Answers, line: MappedLine, whole: _Whole
) -> MappedLine:
    key = _length_key(line.target)
    if not key:
        return line
    foreign = table.lines[position]
    meaning = header_meaning(foreign.words)
    answer = answer_to(answers, foreign)
    said = UnitSaid(
        answered="" if answer is None else answer.unit,
        for_all=answers.unit,
        header=meaning.unit,
        column=foreign.unit_words,
        bodies=whole.bodies,
        own_key=meaning.own and whole.own,
    )
    found = _unit_about(said) if key in LENGTHS_ABOUT else _unit_of(key, said, table, position, whole)
    return replace(line, unit=found.unit, unit_sure=found.sure, unit_why=found.why, rows=found.rows)


def _unit_of(key: str, said: UnitSaid, table: ForeignTable, position: int, whole: _Whole) -> UnitFound:
    """The unit of a measure; what a line above the table says goes before what the values look like."""
    entry = measure_entry(key)
    if said.answered and (said.answered in UNITS) != entry.is_length:
        raise InputError("measure-unit", label=entry.label, unit=said.answered, wanted=entry.unit, where="")
    found = find_unit(entry, said, table.cells_of(position))
    unsaid = not (found.sure or said.header.said or said.column)
    if unsaid and entry.is_length and whole.unit.unit:
        why = f"a line above the table says {whole.unit.said}"
        return replace(found, unit=whole.unit.unit, why=why)
    return found


def _length_key(target: str) -> str:
    """The key whose unit counts for this target, or nothing for words and fields of words."""
    if not target or target in LENGTHS_ABOUT:
        return target
    if target in ABOUT_COLUMNS:
        return ""
    key, field = split_column(target)
    return plain_key(key) if field == "value" else ""


def _unit_about(said: UnitSaid) -> UnitFound:
    """The unit of a heel or of a drop, which no usual range speaks of."""
    unit = said.answered or said.header.unit or said.for_all or ""
    if unit or said.bodies:
        return UnitFound(unit, True, "it is said")
    return UnitFound("", False, "no unit is said")


def _unit_above(table: ForeignTable) -> UnitWords:
    """The unit that a line above the table names, such as ``All measures in cm``."""
    for aside in table.set_aside:
        if 0 < aside.number < table.header_line:
            found = take_unit(aside.text)[1]
            if found.unit:
                return found
    return UnitWords()


def _kind(table: ForeignTable, answers: Answers) -> tuple[SetKind, str]:
    if answers.kind is not None:
        return answers.kind, "you said so"
    if table.layout == "sizes_across" and all(is_size(body.name) for body in table.bodies):
        return "chart", "the columns are sizes"
    return "body", "nothing says otherwise"


def is_size(name: str) -> bool:
    """Whether the words are a size, such as 12, M, XXL or Size 40."""
    return _SIZE.fullmatch(name.lower().strip()) is not None
