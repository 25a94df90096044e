"""Which of her answers is about which column or row."""

from notchbook.body.importing.answers import Answers, LineAnswer
from notchbook.body.importing.foreign_table import ForeignLine, ForeignTable
from notchbook.errors import InputError
from notchbook.units import quoted, suggestion


def is_meant(name: str, line: ForeignLine) -> bool:
    """Whether her name means this line: its own name, or the sign # with its number."""
    return name.strip().lower() == line.name.lower() or name.strip() == f"#{line.number}"


def answer_to(answers: Answers, line: ForeignLine) -> LineAnswer | None:
    """What she said of the line; of several the last."""
    return next((answer for answer in reversed(answers.lines) if is_meant(answer.name, line)), None)


def check_answers(table: ForeignTable, answers: Answers) -> None:
    """Refuse answers about a column or row that the table does not have (``import-line-unknown``)."""
    for name in (*(line.name for line in answers.lines), *answers.skip):
        if not any(is_meant(name, line) for line in table.lines):
            names = [line.name.lower() for line in table.lines]
            raise InputError(
                "import-line-unknown",
                name=quoted(name),
                place=table.place,
                suggestion=suggestion(name, names),
            )
