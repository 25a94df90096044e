"""The sewing order as the page lists it."""

from notchbook.app.sewing_words import line_text
from notchbook.finish.sewing import SewingLine, sewing_order
from notchbook.pattern import Pattern
from notchbook.pattern.resolve import expand
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class SewingRow(Answer):
    """One line of the order. ``edge`` is the first edge that it works on, to be shown on the sheet; ``waits``
    says that it waits for a line which waits for it."""

    number: int
    text: str
    edge: str | None
    waits: bool


def sewing_rows(pattern: Pattern, reader: Reader) -> tuple[SewingRow, ...]:
    """The lines in order, lengths in the reader's unit."""
    order = sewing_order(pattern)
    waiting = set(order.waiting)
    return tuple(
        SewingRow(
            number=line.number,
            text=line_text(line, reader.style),
            edge=_edge(pattern, line),
            waits=line.key in waiting,
        )
        for line in order.lines
    )


def _edge(pattern: Pattern, line: SewingLine) -> str | None:
    for name in line.at:
        intake = pattern.intakes.get(name)
        found = expand(pattern, name if intake is None else intake.first_leg or intake.edge)[0]
        if found and found[0] in pattern.edges:
            return found[0]
    return None
