"""The layouts with one measure a row: a list of one body, or a chart with sizes as columns."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.body.importing.body_rows import is_measure, unique_names
from notchbook.body.importing.cell_text import looks_like_value
from notchbook.body.importing.foreign_table import ForeignBody, ForeignLine, ForeignTable, Layout, SetAside
from notchbook.body.importing.header_words import LONGEST_HEADER, header_meaning, header_words, plain_words
from notchbook.body.importing.split_text import GridRow
from notchbook.body.importing.unit_words import read_unit, take_unit
from notchbook.errors import InputError

_NAME_COLUMNS: Final = 3
"""The names of measures stand in one of so many first columns, after a number or a code."""

_LOOKED_AT: Final = 400
"""Rows that decide on it: there are not so many measures."""


def measure_column(grid: Sequence[GridRow]) -> tuple[int | None, int]:
    """Which column names the measures, and a score: two for each row that names one beside a value."""
    first = grid[:_LOOKED_AT]
    scores = [sum(2 for row in first if _names_measure(row, column)) for column in range(_NAME_COLUMNS)]
    best = max(scores)
    return (scores.index(best), best) if best else (None, 0)


def measure_rows(
    grid: Sequence[GridRow], delimiter: str, names: int | None, layout: Layout | None
) -> ForeignTable:
    """The table with a body for each column of values. Refused: ``import-nothing-found``."""
    column = 0 if names is None else names
    head = _header(grid, column)
    roles = _roles(grid, column, head)
    if not roles.values:
        raise InputError("import-nothing-found")
    found = _sort_rows(grid, column, head, roles)
    unit = take_unit(head.cell(column)[:LONGEST_HEADER])[1].said if head else ""
    lines = tuple(
        _line(row, name, row.cell(column), roles, unit)
        for row, name in zip(
            found.rows, unique_names((row.cell(column) for row in found.rows), "row"), strict=True
        )
    )
    bodies = tuple(
        ForeignBody(place + 1, _body_name(head, place, roles), tuple(row.cell(place) for row in found.rows))
        for place in roles.values
    )
    said: Layout = layout or ("measure_a_row" if len(bodies) == 1 else "sizes_across")
    aside = (*found.aside, *_columns_aside(head, roles))
    return ForeignTable(said, delimiter, head.number if head else 0, lines, bodies, aside)


@dataclass(frozen=True, slots=True)
class _Roles:
    """What the columns hold: values of bodies, units, fields of a measure, or nothing of use."""

    values: tuple[int, ...]
    fields: tuple[tuple[int, str], ...]
    left_out: tuple[int, ...]

    @property
    def unit(self) -> int | None:
        """The column of units, if there is one."""
        return next((place for place, field in self.fields if field == "unit"), None)


@dataclass(frozen=True, slots=True)
class _Sorted:
    rows: tuple[GridRow, ...]
    aside: tuple[SetAside, ...]


def _names_measure(row: GridRow, column: int) -> bool:
    name = row.cell(column)
    if not name or looks_like_value(name):
        return False
    others = (cell for place, cell in enumerate(row.cells) if place != column)
    if not any(looks_like_value(cell) for cell in others):
        return False
    return any(is_measure(target) for target in header_meaning(name).targets)


def _header(grid: Sequence[GridRow], column: int) -> GridRow | None:
    """The last row above the first measure whose first word is that of a corner, such as Size."""
    corners = header_words().corners
    found = None
    for row in grid:
        if _names_measure(row, column):
            break
        corner = plain_words(take_unit(row.cell(column)[:LONGEST_HEADER])[0])
        if (not corner or corner in corners) and any(row.cells[column + 1 :]):
            found = row
    return found


def _roles(grid: Sequence[GridRow], column: int, head: GridRow | None) -> _Roles:
    below = [row for row in grid if head is None or row.number > head.number]
    width = max(len(row.cells) for row in grid)
    values, fields, left_out = [], [], []
    for place in range(column + 1, width):
        title = plain_words(head.cell(place)) if head else ""
        cells = [row.cell(place) for row in below if row.cell(place)]
        field = header_words().fields.get(title)
        if title in header_words().left_out or not (cells or title):
            left_out.append(place)
        elif field or (cells and all(read_unit(cell).said for cell in cells)):
            fields.append((place, field or "unit"))
        elif any(looks_like_value(cell) for cell in cells):
            values.append(place)
        else:
            left_out.append(place)
    return _Roles(tuple(values), tuple(fields), tuple(left_out))


def _sort_rows(grid: Sequence[GridRow], column: int, head: GridRow | None, roles: _Roles) -> _Sorted:
    """The rows that hold something for a body, and those that do not: titles, headings, notes."""
    rows, aside = [], []
    for row in grid:
        if head is not None and row.number <= head.number:
            if row is not head:
                aside.append(SetAside(row.number, row.words, "above the header"))
            continue
        filled = [row.cell(place) for place in roles.values if row.cell(place)]
        first = plain_words(row.cell(column)).split(" ")[0]
        if not filled:
            aside.append(SetAside(row.number, row.words, "no value in it"))
        elif first in header_words().totals and not header_meaning(row.cell(column)).targets:
            aside.append(SetAside(row.number, row.words, "a total or a note"))
        elif head is not None and row.cells == head.cells:
            aside.append(SetAside(row.number, row.words, "the header again"))
        else:
            rows.append(row)
    return _Sorted(tuple(rows), tuple(aside))


def _line(row: GridRow, name: str, words: str, roles: _Roles, corner_unit: str) -> ForeignLine:
    """The row as a line; without a unit of its own it has that of the corner (``Measure in cm``)."""
    own = row.cell(roles.unit) if roles.unit is not None else ""
    unit = own or ("" if header_meaning(words).unit.said else corner_unit)
    fields = tuple(
        (field, row.cell(place)) for place, field in roles.fields if field != "unit" and row.cell(place)
    )
    return ForeignLine(name, row.number, words, unit, fields)


def _body_name(head: GridRow | None, place: int, roles: _Roles) -> str:
    name = head.cell(place) if head else ""
    if len(roles.values) == 1 and plain_words(name) in ("value", "values", ""):
        return ""
    return name or f"column {place + 1}"


def _columns_aside(head: GridRow | None, roles: _Roles) -> tuple[SetAside, ...]:
    named = ((place, head.cell(place) if head else "") for place in roles.left_out)
    return tuple(SetAside(0, name, "a column without values") for _place, name in named if name)
