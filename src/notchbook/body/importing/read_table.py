"""Taking a foreign text apart: a client list, a measure list, a size chart, or sets in JSON."""

from notchbook.body.importing.body_rows import body_rows, header_position
from notchbook.body.importing.foreign_table import TEXT_LAYOUTS, ForeignTable, Layout
from notchbook.body.importing.json_table import json_table
from notchbook.body.importing.measure_rows import measure_column, measure_rows
from notchbook.body.importing.split_text import GridRow, find_delimiter, split_text
from notchbook.errors import InputError
from notchbook.units import quoted


def read_table(text: str, layout: Layout | None = None) -> ForeignTable:
    """The table in the text of a CSV or JSON file or of the clipboard; every cell stays text.

    ``layout`` None finds out whether bodies stand in rows or in columns. Refused with InputError: nothing
    in it (``import-empty``), zero bytes (``import-binary``), quotes that do not close
    (``measures-csv-quotes``), no end (``import-too-large``), no measure found by its word anywhere
    (``import-nothing-found``), and for JSON ``measures-json-*``, ``measure-duplicate``, ``measures-shape``.
    """
    plain = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    if "\0" in plain:
        raise InputError("import-binary")
    if not plain.strip():
        raise InputError("import-empty")
    if plain.lstrip()[0] in "[{":
        return json_table(plain)
    if layout is not None and layout not in TEXT_LAYOUTS:
        raise InputError("measure-choice", what="layout", given=quoted(layout), known=TEXT_LAYOUTS, where="")
    delimiter = find_delimiter(plain)
    grid = split_text(plain, delimiter)
    if not grid:
        raise InputError("import-empty")
    return _table(grid, delimiter, layout)


def _table(grid: tuple[GridRow, ...], delimiter: str, layout: Layout | None) -> ForeignTable:
    header, header_score = header_position(grid)
    names, names_score = measure_column(grid)
    in_rows = names_score > header_score if layout is None else layout != "body_a_row"
    found = measure_rows(grid, delimiter, names, layout) if in_rows else body_rows(grid, delimiter, header)
    if not found.bodies or not found.lines:
        raise InputError("import-empty")
    return found
