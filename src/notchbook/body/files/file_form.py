"""Telling a file of many bodies from a file of one."""

from pathlib import Path
from typing import Final

from notchbook.body.files.csv_lines import read_sheet
from notchbook.body.files.text_file import MOST_BYTES_BODIES, read_text_file
from notchbook.errors import InputError

_TABLE_ENDINGS: Final = (".csv", ".tsv", ".txt")


def holds_many_bodies(path: Path) -> bool:
    """Whether the file is a table with a line for each body: its header has a column ``id``.

    False for what cannot be read: reading it as one body says then what is wrong.
    """
    if path.suffix.lower() not in _TABLE_ENDINGS:
        return False
    try:
        columns = read_sheet(read_text_file(path, MOST_BYTES_BODIES)).columns
    except InputError:
        return False
    return "id" in columns and "measure" not in columns
