"""Lines of a CSV file, each read on its own so that one bad line harms no other."""

import csv
from dataclasses import dataclass
from typing import Final

from notchbook.errors import InputError
from notchbook.units import quoted

_DELIMITERS: Final = (",", ";", "\t")


@dataclass(frozen=True, slots=True)
class CsvSheet:
    """A header and the lines below it. ``lines`` are (line number from 1, text), without blank ones."""

    columns: tuple[str, ...]
    delimiter: str
    lines: tuple[tuple[int, str], ...]

    def row(self, line: str) -> dict[str, str]:
        """The cells of a line by column, trimmed; missing cells at the end are empty.

        Refused: more cells than columns (``measures-csv-cells``), quotes that do not close
        (``measures-csv-quotes``). A cell cannot hold a line end.
        """
        cells = split_line(line, self.delimiter)
        if any(cells[len(self.columns) :]):
            raise InputError("measures-csv-cells", cells=len(cells), columns=len(self.columns), where="")
        padded = [*cells, *[""] * len(self.columns)]
        return dict(zip(self.columns, padded, strict=False))


def read_sheet(text: str) -> CsvSheet:
    """The sheet in the text. Columns are separated by comma, semicolon or tab, whichever the header has.

    Refused: a header with a column twice or without a name (``measures-csv-header``).
    """
    numbered = [(number, line) for number, line in enumerate(text.split("\n"), 1) if line.strip()]
    header = numbered[0][1]
    delimiter = max(_DELIMITERS, key=header.count)
    columns = tuple(name.lower() for name in split_line(header, delimiter))
    while columns and not columns[-1]:
        columns = columns[:-1]
    for name in columns:
        if not name or columns.count(name) > 1:
            raise InputError("measures-csv-header", column=quoted(name) or "(no name)", where="")
    return CsvSheet(columns, delimiter, tuple(numbered[1:]))


def split_line(line: str, delimiter: str) -> list[str]:
    """The trimmed cells of one line; quotes must close on it (``measures-csv-quotes``).

    An inch sign at the end of a bare cell is no quote: ``37 1/2"`` is kept as typed.
    """
    try:
        rows = list(csv.reader([line], delimiter=delimiter, strict=True))
    except csv.Error:
        raise InputError("measures-csv-quotes", where="") from None
    return [cell.strip() for cell in rows[0]]
