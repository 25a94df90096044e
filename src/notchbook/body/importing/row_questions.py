"""What is asked about single bodies: the unit of a row, and whether one that is known is stored again."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from notchbook.body.importing.answers import AGAIN_WORDS
from notchbook.body.importing.mapping import Question
from notchbook.body.importing.unit_words import UNIT_WORDS
from notchbook.units import Unit, quoted

if TYPE_CHECKING:
    from notchbook.body.importing.preview_rows import PreviewRow

_NAMED: Final = 6


def row_questions(rows: "Sequence[PreviewRow]", place: str) -> tuple[Question, ...]:
    """One question for all rows that look alike, and one for all whose names the book has already."""
    asked = [row for row in rows if row.state != "left_out"]
    units: dict[tuple[Unit, Unit | None], list[PreviewRow]] = {}
    for row in asked:
        if row.other_unit is not None:
            units.setdefault((row.other_unit, row.unit), []).append(row)
    known = tuple(row for row in asked if row.in_book and row.choice is None and row.state != "refused")
    again = (_again_question(known, place),) if known else ()
    return (*(_unit_question(same, place) for same in units.values()), *again)


def _unit_question(rows: "Sequence[PreviewRow]", place: str) -> Question:
    first = rows[0]
    assert first.other_unit is not None
    looks, verb = UNIT_WORDS[first.other_unit], "looks" if len(rows) == 1 else "look"
    among = f", and {UNIT_WORDS[first.unit]} are said" if first.unit else ""
    words = f"{_places(rows, place)} {verb} like {looks}{among}: in which unit are the numbers?"
    options = tuple(unit for unit in (first.other_unit, first.unit) if unit)
    return Question("", 0, "row_unit", words, options, tuple(row.number for row in rows))


def _again_question(rows: "Sequence[PreviewRow]", place: str) -> Question:
    named = [f"{place} {row.number}, “{quoted(row.name)}”, as {row.in_book}" for row in rows[:_NAMED]]
    more = f"; and {len(rows) - _NAMED} more" if len(rows) > _NAMED else ""
    words = f"Already in the book: {'; '.join(named)}{more}. Leave out, or keep as another?"
    return Question("", 0, "again", words, AGAIN_WORDS, tuple(row.number for row in rows))


def _places(rows: "Sequence[PreviewRow]", place: str) -> str:
    numbers = [str(row.number) for row in rows[:_NAMED]]
    more = f" and {len(rows) - _NAMED} more" if len(rows) > _NAMED else ""
    return f"{place.capitalize()}{'s' if len(rows) > 1 else ''} {', '.join(numbers)}{more}"
