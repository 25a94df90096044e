"""From text to rows of cells: which sign separates them, where quotes hold a cell together."""

import csv
import io
from dataclasses import dataclass
from typing import Final

from notchbook.body.importing.cell_text import clean_cell
from notchbook.errors import InputError

_DELIMITERS: Final = ("\t", ";", "|")
"""Tried in this order, before the comma, which is also a decimal sign, and the colon of notes
(``Bust: 94,5 cm``)."""

_LOOKED_AT: Final = 200
"""Lines that decide on the delimiter."""

_LONGEST_SHOWN: Final = 200
"""Characters of a row that are shown."""

MOST_ROWS: Final = 50_000
MOST_COLUMNS: Final = 1_000
MOST_CELLS: Final = 2_000_000


@dataclass(frozen=True, slots=True)
class GridRow:
    """A row of cleaned cells and the number of its line in the text, from 1."""

    number: int
    cells: tuple[str, ...]

    def cell(self, position: int) -> str:
        """The cell, or nothing beyond the end of the row."""
        return self.cells[position] if position < len(self.cells) else ""

    @property
    def filled(self) -> int:
        """How many cells hold something."""
        return sum(1 for cell in self.cells if cell)

    @property
    def words(self) -> str:
        """What stands in it, as one line to be shown."""
        return " ".join(cell for cell in self.cells if cell)[:_LONGEST_SHOWN]


def find_delimiter(text: str) -> str:
    """The sign that separates cells: tab, semicolon or upright line where half of the lines have it.

    Else the comma or the colon, whichever stands in more lines.
    """
    lines = [line for line in text.split("\n", _LOOKED_AT)[:_LOOKED_AT] if line.strip()]
    count = {sign: sum(sign in line for line in lines) for sign in (*_DELIMITERS, ",", ":")}
    for sign in _DELIMITERS:
        if 2 * count[sign] >= max(len(lines), 1):
            return sign
    return ":" if count[":"] > count[","] else ","


def split_text(text: str, delimiter: str) -> tuple[GridRow, ...]:
    """The rows that hold anything; cells beyond the last filled one are dropped.

    Refused: quotes that do not close (``measures-csv-quotes``), a table without end
    (``import-too-large``).
    """
    rows: list[GridRow] = []
    count = 0
    for number, cells in _raw_rows(text, delimiter):
        cleaned = [clean_cell(cell) for cell in cells]
        while cleaned and not cleaned[-1]:
            cleaned.pop()
        if not cleaned:
            continue
        count += len(cleaned)
        if len(rows) >= MOST_ROWS or len(cleaned) > MOST_COLUMNS or count > MOST_CELLS:
            raise InputError("import-too-large", rows=MOST_ROWS, columns=MOST_COLUMNS, cells=MOST_CELLS)
        rows.append(GridRow(number, tuple(cleaned)))
    return tuple(rows)


def _raw_rows(text: str, delimiter: str) -> list[tuple[int, list[str]]]:
    """Rows with their line numbers: with quotes over line ends where they close, else line by line."""
    try:
        return _read(io.StringIO(text, newline="\n"), delimiter)
    except csv.Error:
        return _line_by_line(text, delimiter)


def _read(stream: io.StringIO, delimiter: str) -> list[tuple[int, list[str]]]:
    found = []
    reader = csv.reader(stream, delimiter=delimiter, strict=True)
    first = 1
    for cells in reader:
        found.append((first, cells))
        first = reader.line_num + 1
    return found


def _line_by_line(text: str, delimiter: str) -> list[tuple[int, list[str]]]:
    found: list[tuple[int, list[str]]] = []
    for number, line in enumerate(text.split("\n"), 1):
        try:
            found.extend((number, cells) for cells in csv.reader([line], delimiter=delimiter, strict=True))
        except csv.Error:
            raise InputError("measures-csv-quotes", where=f"line {number}: ") from None
    return found
