"""Which of her answers is about which column or row."""

from notchbook.body.importing.answers import Answers, LineAnswer, RowAnswer
from notchbook.body.importing.foreign_table import ForeignLine, ForeignTable
from notchbook.errors import InputError
from notchbook.units import nearest_name, quoted


def is_meant(name: str, line: ForeignLine) -> bool:
    """Whether her name means this line: its own name, or the sign # with its number."""
    return name.strip().lower() == line.name.lower() or name.strip() == f"#{line.number}"


def answer_to(answers: Answers, line: ForeignLine) -> LineAnswer | None:
    """What she said of the line; of several the last."""
    return next((answer for answer in reversed(answers.lines) if is_meant(answer.name, line)), None)


def check_answers(table: ForeignTable, answers: Answers) -> None:
    """Refuse answers about what the table does not have.

    ``import-line-unknown`` for a column or row of a measure, ``import-row-unknown`` for a body.
    """
    for name in (*(line.name for line in answers.lines), *answers.skip):
        if not any(is_meant(name, line) for line in table.lines):
            raise InputError(
                "import-line-unknown",
                name=quoted(name),
                place=table.place,
                suggestion=_suggestion(name, table),
            )
    numbers = body_numbers(table)
    for row in answers.rows:
        if row.number not in numbers:
            raise InputError("import-row-unknown", number=row.number, place=table.body_place)


def body_numbers(table: ForeignTable) -> frozenset[int]:
    """The numbers by which the bodies of the table are called."""
    if table.own_sets:
        return frozenset(range(1, len(table.own_sets) + 1))
    return frozenset(body.number for body in table.bodies)


def row_answers(answers: Answers) -> dict[int, RowAnswer]:
    """What she said of single bodies, by their numbers; what is said later goes before."""
    found: dict[int, RowAnswer] = {}
    for said in answers.rows:
        before = found.get(said.number, said)
        found[said.number] = RowAnswer(said.number, said.unit or before.unit, said.choice or before.choice)
    return found


def _suggestion(name: str, table: ForeignTable) -> str:
    """A sentence that offers the nearest name in the letters of the table, or nothing."""
    names = {line.name.lower(): line.name for line in table.lines}
    near = nearest_name(name, names)
    return f"Did you mean {quoted(names[near])}? " if near else ""
