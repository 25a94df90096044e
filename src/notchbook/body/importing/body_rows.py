"""The layout with one body a row: where the header stands, and what below it is a body."""

from collections.abc import Iterable, Sequence
from typing import Final

from notchbook.body.importing.cell_text import looks_like_value
from notchbook.body.importing.foreign_table import ForeignBody, ForeignLine, ForeignTable, SetAside
from notchbook.body.importing.header_words import header_meaning, header_words, plain_words
from notchbook.body.importing.split_text import GridRow
from notchbook.body.importing.unit_words import read_unit
from notchbook.body.measure_table import measure_table
from notchbook.body.sides import plain_key
from notchbook.errors import InputError

_LOOKED_AT: Final = 40
"""Rows in which the header is looked for; titles and logos above it are seldom more than ten."""


def header_position(grid: Sequence[GridRow]) -> tuple[int | None, int]:
    """Which row is the header, and a score: two for each measure in it, one for other known words."""
    scores = [_score(row) for row in grid[:_LOOKED_AT]]
    best = max(scores)
    return (scores.index(best), best) if best > 0 else (None, 0)


def body_rows(grid: Sequence[GridRow], delimiter: str, header: int | None) -> ForeignTable:
    """The table below the header; without known words the first row of words above numbers is taken.

    Refused: no such row (``import-nothing-found``).
    """
    position = _first_row_of_words(grid) if header is None else header
    if position is None:
        raise InputError("import-nothing-found")
    head = grid[position]
    columns = _columns(head, grid[position + 1 :])
    units, rest = _units_below(grid[position + 1 :])
    aside = [SetAside(row.number, row.words, "above the header") for row in grid[:position]]
    bodies = []
    for row in rest:
        why = _no_body(row, head)
        if why:
            aside.append(SetAside(row.number, row.words, why))
        else:
            bodies.append(_body(row, columns))
    lines = tuple(
        ForeignLine(name, column + 1, head.cell(column), units.cell(column) if units else "")
        for column, name in zip(columns, unique_names(head.cell(column) for column in columns), strict=True)
    )
    if units:
        aside.append(SetAside(units.number, units.words, "the units of the columns"))
    return ForeignTable("body_a_row", delimiter, head.number, lines, tuple(bodies), tuple(aside))


def unique_names(names: Iterable[str], empty: str = "column") -> tuple[str, ...]:
    """The names, a repeated one with its count (``Hip (2)``), one without words by its place."""
    found: list[str] = []
    taken: set[str] = set()
    counts: dict[str, int] = {}
    for position, words in enumerate(names, 1):
        first = name = words or f"{empty} {position}"
        while name.lower() in taken:
            counts[first.lower()] = counts.get(first.lower(), 1) + 1
            name = f"{first} ({counts[first.lower()]})"
        taken.add(name.lower())
        found.append(name)
    return tuple(found)


def _score(row: GridRow) -> int:
    total = 0
    for cell in row.cells:
        meaning = header_meaning(cell) if cell and not looks_like_value(cell) else None
        if meaning is None:
            total -= 2 if cell else 0
        elif any(is_measure(target) for target in meaning.targets):
            total += 2
        elif meaning.targets:
            total += 1
    return total


def is_measure(target: str) -> bool:
    """Whether the target is a measure and not a field about the whole body."""
    return plain_key(target.partition(".")[0]) in measure_table()


def _first_row_of_words(grid: Sequence[GridRow]) -> int | None:
    for position, row in enumerate(grid[:_LOOKED_AT]):
        words = all(not looks_like_value(cell) for cell in row.cells) and row.filled > 1
        below = grid[position + 1 : position + 4]
        if words and any(looks_like_value(cell) for other in below for cell in other.cells):
            return position
    return None


def _columns(head: GridRow, below: Sequence[GridRow]) -> tuple[int, ...]:
    """The columns with a header, and those between them that have none but hold something."""
    return tuple(
        column
        for column in range(len(head.cells))
        if head.cell(column) or any(row.cell(column) for row in below)
    )


def _units_below(rows: Sequence[GridRow]) -> tuple[GridRow | None, Sequence[GridRow]]:
    """A row under the header that holds nothing but units, and the rows after it."""
    if rows and all(read_unit(cell).said for cell in rows[0].cells if cell):
        return rows[0], rows[1:]
    return None, rows


def _no_body(row: GridRow, head: GridRow) -> str:
    """Why the row is no body; nothing when it is one."""
    if row.cells == head.cells:
        return "the header again"
    first = next(cell for cell in row.cells if cell)
    if plain_words(first).split(" ")[0] in header_words().totals:
        return "a total or a note"
    if row.filled == 1 and not looks_like_value(first) and head.filled > 2:
        return "a line of words"
    return ""


def _body(row: GridRow, columns: Sequence[int]) -> ForeignBody:
    beyond = any(row.cells[columns[-1] + 1 :]) if columns else False
    cells = tuple(row.cell(column) for column in columns)
    return ForeignBody(row.number, "", cells, len(row.cells) if beyond else 0)
